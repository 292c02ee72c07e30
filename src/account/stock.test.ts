// Free water where a figure cannot be true: what is missing counts nowhere, what is too much counts as full.
import { expect, test } from 'vitest';
import { holm, litres, type Told } from '../../tests/journeys/told.ts';
import { freeStock } from './stock.ts';

const freeL = (told: Told) => {
  const position = told.position();
  return Math.round((freeStock(position, 'drinking').massMg / position.mgPerL) * 10) / 10;
};
const move = (told: Told, from: string, to: string, valueL: number) =>
  told.tell('movement', { from, to, amount: litres(valueL) });

test('a store below nothing takes away from the others what it gave and did not have', () => {
  const told = holm();
  const before = freeL(told);
  told.goTo(1, 9).tell('declared-empty', { store: 'C-04', counters: [] });
  const without = freeL(told);
  move(told, 'C-04', 'outside', 11);
  expect(before).toBeGreaterThan(without);
  expect(told.findings('negative-stock').map(({ severity, where }) => [severity, where.store])).toEqual([
    ['act-now', 'C-04'],
  ]);
  const missingL = -told.believed('C-04').valueL;
  expect(freeL(told)).toBeCloseTo(Math.max(0, without - missingL), 1);
});

test('a store above full counts as full, and stands in a finding as long as it does', () => {
  const told = holm();
  move(told.goTo(1, 9), 'unaccounted', 'PB', 40);
  const position = told.position();
  const buffer = position.stores.find(({ facts }) => facts.id === 'PB');
  if (buffer === undefined) throw new Error('no PB');
  expect(told.findings('stands-over-capacity').map(({ where }) => where.store)).toEqual(['PB']);
  const others = position.stores.filter(({ facts }) => facts.id !== 'PB');
  const without = freeStock({ ...position, stores: others }, 'drinking').massMg;
  expect(freeStock(position, 'drinking').massMg - without).toBe(
    buffer.facts.capacityMg - buffer.facts.remainderMg,
  );
  move(told.goTo(1, 10), 'PB', 'outside', 40);
  expect(told.findings('stands-over-capacity')).toEqual([]);
});

test('waste that stands over its capacity is said too, and no headline hangs on it', () => {
  const told = holm();
  move(told.goTo(1, 9), 'outside', 'W-02', 90);
  expect(told.findings('stands-over-capacity').map(({ severity, where }) => [severity, where.store])).toEqual(
    [['act-today', 'W-02']],
  );
});
