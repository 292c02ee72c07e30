// One quantity that is read behind the beds, and what goes through them, as figures of a sheet.
import type { BedStory, Position } from '../account/index.ts';
import type { BedDate, FeedAhead } from '../forecast/index.ts';
import { type DayRule, dayOf, dayStartUtcMs, formatIsoUtc, msPerDay } from '../ground/units/index.ts';
import type { BedDates, BedDay, BedFeed, BedParameter, SheetFigure } from '../papers/index.ts';
import type { DatedTrend } from './dated-trend.ts';

const METHOD = 'bed-life';
const COVERAGE = 2;

/** A day with its part: 36.5 is noon of Day 36. */
export function dayAt(ms: number, dayRule: DayRule): { readonly day: number; readonly at: string } {
  const day = dayOf(ms, dayRule);
  return { day: day + (ms - dayStartUtcMs(day, dayRule)) / msPerDay, at: formatIsoUtc(Math.round(ms)) };
}

export function datesOf(date: BedDate | null, dayRule: DayRule): BedDates | null {
  if (date === null) return null;
  const one = (ms: number | null): BedDay => (ms === null ? null : dayAt(ms, dayRule));
  const { q10, q50, q90 } = date.ms;
  return { q10: one(q10), q50: one(q50), q90: one(q90) };
}

export function parameterOf(
  { dayRule }: Position,
  of: { readonly dated: DatedTrend; readonly refOf: (id: string) => string },
): BedParameter {
  const { trend, date } = of.dated;
  const { parameter, unit, limit, limitId, readings, moves, line, share, fit } = trend;
  const because = {
    entries: readings.map(({ entry }) => entry),
    method: METHOD,
    inputs: [
      { name: limitId, value: limit, unit },
      { name: 'life by the outpost file', value: fit.prior.lifeL, unit: 'L' },
      { name: 'its u', value: fit.prior.lifeUL, unit: 'L' },
    ],
  };
  const figure = (value: number, u: number, as: string): SheetFigure => ({
    value,
    u95: COVERAGE * u,
    unit: as,
    because,
  });
  const last = readings.at(-1);
  return {
    parameter,
    unit,
    limit,
    readings: readings.length,
    last:
      last === undefined
        ? null
        : { value: last.value, below: last.below, day: dayOf(last.atMs, dayRule), ref: of.refOf(last.entry) },
    moves,
    perDay: line === null ? null : figure(line.perDay, line.perDayU, `${unit}/d`),
    wayPercent: share === null ? null : 100 * share,
    limitAt: figure(fit.limitAtL, fit.limitAtUL, 'L'),
    left: date === null ? null : { ...date.leftL, unit: 'L' },
    dates: datesOf(date, dayRule),
  };
}

export function feedOf(
  { dayRule }: Position,
  of: { readonly story: BedStory; readonly feed: FeedAhead; readonly trends: readonly DatedTrend[] },
): BedFeed {
  const { story, feed, trends } = of;
  const { use, people, litresPerDay, litresPerDayU } = feed;
  const inputs = [{ name: 'people aboard', value: people[0]?.people ?? 0, unit: '' }];
  return {
    perDay: {
      value: litresPerDay,
      u95: COVERAGE * litresPerDayU,
      unit: 'L/d',
      because: { entries: use.entries.slice(-5), method: METHOD, inputs },
    },
    basis: use.basis,
    people: people.map(({ fromMs, people: count }) => ({ day: dayOf(fromMs, dayRule), people: count })),
    load: loadOf(story, trends, litresPerDay),
  };
}

/** What the last reading of the feed says that a day brings; null where nobody has read it. */
function loadOf(
  { feedResults }: BedStory,
  trends: readonly DatedTrend[],
  litresPerDay: number,
): SheetFigure | null {
  const parameter = trends.find(({ trend }) => trend.unit === 'mg/L')?.trend.parameter;
  const last = feedResults.findLast(
    (one) => one.parameter === parameter && one.unit === 'mg/L' && !one.below,
  );
  if (last === undefined) return null;
  const inputs = [{ name: 'read in the feed', value: last.value, unit: 'mg/L' }];
  return {
    value: last.value * litresPerDay,
    u95: null,
    unit: 'mg/d',
    because: { entries: [last.entry], method: METHOD, inputs },
  };
}
