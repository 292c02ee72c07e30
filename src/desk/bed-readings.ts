// What was read behind the beds, and when a bed was changed, as lines of a sheet.
import type { BedResult, BedStory } from '../account/index.ts';
import { type DayRule, formatIsoUtc, formatShortStamp } from '../ground/units/index.ts';
import type { BedChangeLine, BedReading } from '../papers/index.ts';
import { dayAt } from './bed-parameter.ts';
import type { DatedTrend } from './dated-trend.ts';

const COVERAGE = 2;

export function readingLines(
  { results, standing }: BedStory,
  by: {
    readonly dayRule: DayRule;
    readonly trends: readonly DatedTrend[];
    readonly refOf: (id: string) => string;
  },
): readonly BedReading[] {
  const { dayRule, trends, refOf } = by;
  return results.flatMap((result) => {
    const { atMs, entry, parameter, value, unit, below, throughputL } = result;
    const trend = trends.find((one) => one.trend.parameter === parameter && one.trend.unit === unit)?.trend;
    if (trend === undefined) return [];
    const { random, calibration } = trend.doubt;
    return [
      {
        ref: refOf(entry),
        id: entry,
        stamp: formatShortStamp(atMs, dayRule),
        ...dayAt(atMs, dayRule),
        parameter,
        value,
        u95: COVERAGE * Math.sqrt(random * random + calibration * calibration * value * value),
        unit,
        below,
        throughputL,
        of: ofWhich(result, standing.sinceMs),
      },
    ];
  });
}

function ofWhich({ atMs, isMixed }: BedResult, sinceMs: number): BedReading['of'] {
  if (atMs < sinceMs) return 'beds before';
  return isMixed ? 'mixed water' : 'these beds';
}

export function changeLines(
  { past }: BedStory,
  { dayRule, refOf }: { readonly dayRule: DayRule; readonly refOf: (id: string) => string },
): readonly BedChangeLine[] {
  return past.map(({ endMs, entry, leadL, toldL }) => ({
    day: dayAt(endMs, dayRule).day,
    at: formatIsoUtc(endMs),
    ref: refOf(entry),
    reckonedL: leadL,
    toldL,
  }));
}
