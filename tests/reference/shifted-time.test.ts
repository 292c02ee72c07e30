// Time in the account: the estimator knows none, so the same history a month later gives the same bits.
import { expect, test } from 'vitest';
import { HOLM } from '../journeys/holm.ts';
import { at, dayLine, holmOpening, litres, Told } from '../journeys/told.ts';

/** Nine days at Holm, begun so many days later; the file's first day moves with them. */
function nineDays(laterDays: number): Told {
  const first = new Date(Date.UTC(2147, 0, 1 + laterDays)).toISOString().slice(0, 10);
  const text = HOLM.replace('dayOne: 2147-01-01', `dayOne: ${first}`);
  if (laterDays !== 0 && text === HOLM) throw new Error('the first day stands elsewhere in the file now');
  const told = new Told(text);
  told.goTo(laterDays, 21).tell('opening', holmOpening({ asOfMs: at(laterDays, 21) }));
  for (let day = 1; day <= 9; day += 1) {
    const on = laterDays + day;
    told.goTo(on, 9).tell('movement', { from: 'tap', to: 'people', amount: litres(0.4), use: 'drink' });
    if (day % 2 === 0)
      told
        .goTo(on, 11)
        .tell('movement', { from: 'R1', to: 'C-03', amount: litres(2), hose: 'H-1', method: 'flow meter' });
    if (day % 3 === 0)
      told.goTo(on, 14).tell('weigh', { store: 'C-03', amount: litres(day, 0.2), method: 'balance' });
    told
      .goTo(on, 21)
      .tell(
        'day-line',
        dayLine(day, { condensate: (990 + 3 * day) % 1000, product: 3, strokes: 200, flushes: 12 }),
      );
  }
  return told;
}

test('the same nine days 30 days, a year and 60 years later: every mean and covariance bit for bit', () => {
  const here = nineDays(0);
  const { size } = here.fold.estimator;
  expect(size).toBeGreaterThan(10);
  for (const later of [30, 365, 60 * 365]) {
    const there = nineDays(later);
    expect(there.fold.estimator.size).toBe(size);
    for (let a = 0; a < size; a += 1) {
      expect(there.fold.estimator.mean(a)).toBe(here.fold.estimator.mean(a));
      for (let b = 0; b <= a; b += 1)
        expect(there.fold.estimator.covariance(a, b)).toBe(here.fold.estimator.covariance(a, b));
    }
    expect([...there.fold.ledger.balances()]).toEqual([...here.fold.ledger.balances()]);
    expect(there.position().findings.map(({ code }) => code)).toEqual(
      here.position().findings.map(({ code }) => code),
    );
  }
});
