// Covers after a reading ahead of time, against the covers that come when the reading is entered.
import { describe, expect, test } from 'vitest';
import { dayLine, holm, litres, type Told } from '../../tests/journeys/told.ts';
import { coverAfter, coversInDoubt } from './cover-after.ts';

function week(): Told {
  const told = holm();
  for (let day = 1; day <= 8; day++)
    told.goTo(day, 21).tell(
      'day-line',
      dayLine(day, {
        condensate: (990 + 3 * day) % 1000,
        product: 3,
        strokes: 205 + (day % 4),
        flushes: 12,
      }),
    );
  return told;
}

const GRADES = ['drinking', 'technical'];

describe.each([
  ['C-01', 'drinking', 'free'],
  ['C-04', 'drinking', 'free'],
  ['C-02', 'technical', 'free'],
  ['R1', 'drinking', 'to floor'],
] as const)('%s, %s, %s', (store, grade, reach) => {
  const told = week();
  const position = told.position();
  const cover = coversInDoubt(position, GRADES).find((each) => each.grade === grade && each.reach === reach);
  const ahead = position.afterReading(store);
  if (cover === undefined || ahead === null) throw new Error('no cover');
  const after = coverAfter(position, ahead, cover);

  test('the cover foretold is the cover that comes', () => {
    const valueL = told.believed(store).valueL;
    const later = week();
    if (store === 'R1')
      later.tell('pvt', {
        store,
        amount: litres(valueL),
        ...{ bottleVolumeL: 5, tankVolumeL: 180, bottleBeforeKPaAbs: 400, bottleAfterKPaAbs: 150 },
        ...{ bottleBeforeC: 20, bottleAfterC: 20, tankBeforeKPaAbs: 110, tankAfterKPaAbs: 150 },
        ...{ tankBeforeC: 20, tankAfterC: 20 },
      });
    else later.tell('weigh', { store, amount: litres(valueL), instrument: 'balance' });
    const come = coversInDoubt(later.position(), GRADES).find(
      (each) => each.grade === grade && each.reach === reach,
    );
    expect(after.halfWidthDays.after).toBeCloseTo(come?.halfWidthDays ?? 0, 3);
    expect(Math.abs(after.stockUMg.after - (come?.stock.uMg ?? 0))).toBeLessThanOrEqual(40);
  });

  test('it is narrower than before, and the stock as large', () => {
    expect(after.halfWidthDays.after).toBeLessThan(after.halfWidthDays.before ?? 0);
    expect(after.stockUMg.after).toBeLessThan(after.stockUMg.before);
    expect(after.stockMg).toBe(cover.stock.massMg);
  });
});

test('a reading of water that has no part in a cover leaves it as it is', () => {
  const position = week().position();
  const cover = coversInDoubt(position, ['technical'])[0];
  const ahead = position.afterReading('KB');
  if (cover === undefined || ahead === null) throw new Error('no cover');
  const { halfWidthDays } = coverAfter(position, ahead, cover);
  expect(halfWidthDays.after).toBe(halfWidthDays.before);
});

test('one cover a grade, and one more for the grade of the reserve; without an end or without data it has no width', () => {
  const covers = coversInDoubt(week().position(), [...GRADES, 'raw']);
  expect(covers.map(({ grade, reach }) => `${grade} ${reach}`)).toEqual([
    'drinking free',
    'drinking to floor',
    'technical free',
    'raw free',
  ]);
  // More of it is made than used, so it has no end.
  expect(covers.at(-1)?.halfWidthDays).toBeNull();
  expect(coversInDoubt(holm().position(), ['iodine'])[0]).toMatchObject({ draw: null, halfWidthDays: null });
});
