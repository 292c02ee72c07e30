// Swapped labels: two readings that are each other's mirror image are one finding; anything less is two far-off readings.
import { expect, test } from 'vitest';
import { holm, litres, type Told } from '../../tests/journeys/told.ts';

const weigh = (told: Told, when: number, store: string, value: number) =>
  told
    .goTo(1 + Math.floor(when), 9 + (when % 1))
    .tell('weigh', { store, amount: litres(value), method: 'balance' });

/** The book expects 20 L in C-01 and 18 L in C-04. */
function read(first: number, second: number, days = 0.5): Told {
  const told = holm();
  weigh(told, 0, 'C-01', first);
  weigh(told, days, 'C-04', second);
  return told;
}

const said = (told: Told) => [
  told.findings('labels-swapped').length,
  told.findings('reading-far-off').length,
];

test('each was read as the other: said once, with both readings and both entries', () => {
  const told = read(18.1, 19.9);
  expect(said(told)).toEqual([1, 1]);
  const [finding] = told.findings('labels-swapped');
  expect(finding?.where.store).toBe('C-04');
  expect(finding?.entries).toEqual([told.entries[2]?.id, told.entries[1]?.id]);
  expect(finding?.data).toMatchObject({
    other: 'C-01',
    otherRef: 'holm 2',
    otherEntryNo: 'holm:2',
    readMg: 19_900_000,
    expectedMg: 18_000_000,
    otherReadMg: 18_100_000,
    otherExpectedMg: 20_000_000,
  });
});

test('both readings are used as they were entered', () => {
  const told = read(18.1, 19.9);
  expect(told.believed('C-01').valueL).toBeCloseTo(18.1, 1);
  expect(told.believed('C-04').valueL).toBeCloseTo(19.9, 1);
});

test.each([
  ['the other store is where it should be', 18.1, 18],
  ['both lack about the same', 18.1, 16.1],
  ['the second is off by more than the first', 18.1, 21.5],
  ['equal and opposite, but neither fits the other store', 15, 23],
])('%s: labels are not swapped', (_what, first, second) => {
  const told = read(first, second);
  expect(told.findings('labels-swapped')).toEqual([]);
  expect(told.findings('reading-far-off').length).toBeGreaterThan(0);
});

test('fourteen days apart may be one swap, fifteen are not', () => {
  expect(said(read(18.1, 19.9, 13.9))[0]).toBe(1);
  expect(said(read(18.1, 19.9, 15))).toEqual([0, 2]);
});

test('one store read twice, out and back, is no swap', () => {
  const told = holm();
  weigh(told, 0, 'C-01', 18);
  weigh(told, 0.5, 'C-01', 20);
  expect(said(told)[0]).toBe(0);
});

test('the youngest twenty far-off readings are remembered, and a copy has its own', () => {
  const told = holm();
  for (let k = 0; k < 30; k += 1) weigh(told, k / 50, 'C-04', k % 2 === 0 ? 12 : 18);
  expect(told.fold.farOff.length).toBeLessThanOrEqual(20);
  const copy = told.fold.clone();
  const before = copy.farOff.length;
  weigh(told, 0.7, 'C-01', 12);
  expect(copy.farOff).toHaveLength(before);
});
