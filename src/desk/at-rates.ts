// Days at the rates of policy, as figures with what they rest on.
import type { Position } from '../account/index.ts';
import { coverAtRates, type DaysAtRate } from '../forecast/index.ts';
import type { Because, CoverAtRateFigure, SheetFigure } from '../papers/index.ts';

/** Coverage factor of the printed ±. @source GUM 6.3.3 */
const COVERAGE = 2;

/** Planning and survival; null for another grade than that of the reserve, or where nobody is aboard. */
export function atRatesFigures(position: Position, grade: string): readonly CoverAtRateFigure[] | null {
  const rates = coverAtRates(position, grade);
  if (rates === null) return null;
  return rates.map((each) => {
    const because: Because = {
      entries: each.because,
      method: 'cover-at-rate',
      inputs: [
        { name: 'rate', value: each.rate, unit: '' },
        { name: 'litres a person and day', value: each.litresPerPersonDay, unit: 'L/d' },
        { name: 'people', value: each.people, unit: '' },
      ],
    };
    const days = (at: DaysAtRate): SheetFigure => ({
      value: at.days,
      u95: COVERAGE * at.uDays,
      unit: 'd',
      because,
    });
    return {
      rate: each.rate,
      litresPerPersonDay: each.litresPerPersonDay,
      people: each.people,
      free: days(each.free),
      toFloor: days(each.toFloor),
      reserve: days(each.reserve),
    };
  });
}
