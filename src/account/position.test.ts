// A position: what it says stands still, its accounts add up to nothing, and readings change belief and never the ledger.
import { expect, test } from 'vitest';
import { MG_PER_L } from '../../tests/journeys/holm.ts';
import { dayLine, holm, litres } from '../../tests/journeys/told.ts';

test('what readings changed stands against unaccounted, and the sum stays exactly 0', () => {
  const told = holm();
  told.goTo(1, 12).tell('weigh', { store: 'C-04', amount: litres(16, 0.2), method: 'balance' });
  const { valueL } = told.believed('C-04');
  expect(valueL).toBeGreaterThan(16);
  expect(valueL).toBeLessThan(17);
  expect(told.ledgerL('C-04')).toBe(18);
  const position = told.position();
  expect(position.accountsMg.get('unaccounted')).toBe(Math.round((18 - valueL) * MG_PER_L));
  expect(position.closureMg).toBe(0);
});

test('a loss that a person booked and a reading that takes it back close to exactly 0', () => {
  const told = holm();
  told.goTo(1, 12).tell('movement', { from: 'C-04', to: 'unaccounted', amount: litres(5, 0.5) });
  // A reading without doubt puts back what was booked as lost, to the milligram.
  told.goTo(1, 13).tell('stock-count', {
    count: 'count',
    readings: [{ store: 'C-04', amount: { ...litres(18), uMg: 0 }, method: 'counted' }],
  });
  expect(told.believed('C-04').valueL).toBe(18);
  expect(told.position().closureMg).toBe(0);
});

test('a position does not move with the fold that it was taken from', () => {
  const told = holm();
  const before = told.position();
  const sum = before.sumOf(['C-01', 'C-04']);
  told.goTo(1, 21).tell('day-line', dayLine(1, { condensate: 993, product: 3, strokes: 300, flushes: 12 }));
  told.goTo(1, 22).tell('movement', { from: 'C-04', to: 'outside', amount: litres(5, 1) });
  expect(before.sumOf(['C-01', 'C-04'])).toEqual(sum);
  expect(before.usageDays('drinking')).toEqual([]);
  expect(before.findings).toHaveLength(0);
  expect(told.position().sumOf(['C-01', 'C-04']).massMg).toBeLessThan(sum.massMg);
});

test('a sum has the doubts that its stores share inside', () => {
  const told = holm();
  for (const to of ['C-03', 'W-02']) {
    told
      .goTo(1, 12)
      .tell('movement', { from: 'R1', to, amount: litres(10), hose: 'H-1', method: 'flow meter' });
  }
  const position = told.position();
  const [a, b] = [position.sumOf(['C-03']), position.sumOf(['W-02'])];
  const both = position.sumOf(['C-03', 'W-02']);
  // One calibration of 1 % is in both fills, so their doubts do not add as squares only.
  expect(both.uMg).toBeGreaterThan(Math.sqrt(a.uMg * a.uMg + b.uMg * b.uMg) * 1.1);
  expect(both.uMg).toBeLessThan(a.uMg + b.uMg);
  const all = position.sumOf(position.stores.map(({ facts }) => facts.id));
  expect(all.massMg).toBe(position.stores.reduce((sum, store) => sum + store.massMg, 0));
});

test('by the ledger alone and with the estimator the same milligrams are moved', () => {
  const both = [holm(), holm({ estimating: false })] as const;
  for (const told of both) {
    for (let day = 1; day <= 6; day++) {
      told.goTo(day, 9).tell('movement', { from: 'tap', to: 'people', amount: litres(0.3), use: 'drink' });
      told.goTo(day, 12).tell('weigh', { store: 'C-01', amount: litres(19 - day, 0.2), method: 'balance' });
      told.goTo(day, 21).tell(
        'day-line',
        dayLine(day, {
          condensate: (990 + 3 * day) % 1000,
          product: 3,
          strokes: day === 4 ? null : 200,
          flushes: 12,
        }),
      );
    }
  }
  expect([...both[0].fold.ledger.balances()]).toEqual([...both[1].fold.ledger.balances()]);
  expect(both[1].position().closureMg).toBe(0);
});

test('age and word of a store come from its last direct reading and what moved since', () => {
  const told = holm();
  const find = (id: string) => told.position().stores.find(({ facts }) => facts.id === id);
  expect(find('C-04')).toMatchObject({ howKnown: 'opening', ageMs: 0 });
  told.goTo(1, 12).tell('weigh', { store: 'C-04', amount: litres(17.9, 0.2), method: 'balance' });
  told.goTo(1, 18);
  expect(find('C-04')).toMatchObject({ howKnown: 'weighed', ageMs: 6 * 3_600_000 });
  told.tell('movement', { from: 'C-04', to: 'outside', amount: litres(1) });
  expect(find('C-04')).toMatchObject({ howKnown: 'reckoned', ageMs: 6 * 3_600_000 });
});

test('negative stock is said, never clamped, unless what flows in waits to be read', () => {
  const told = holm();
  told.goTo(1, 12).tell('meter', { readings: [{ instrument: 'product', value: 6 }] });
  expect(told.findings('negative-stock')).toHaveLength(0);
  told.goTo(1, 13).tell('movement', { from: 'W-02', to: 'outside', amount: litres(3) });
  expect(told.findings('negative-stock').map(({ where }) => where.store)).toEqual(['W-02']);
  expect(told.believed('W-02').valueL).toBe(-3);
});
