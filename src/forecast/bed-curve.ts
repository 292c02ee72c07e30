// What will be read behind the beds, day by day: the curves that fit, at the throughput that is to be expected.
import { type BedStory, type BedTrend, leadUsedL, readingOf } from '../account/index.ts';
import { msPerDay } from '../ground/units/index.ts';
import { type FeedAhead, litresAhead, type Quantiles } from './bed-date.ts';

export interface CurvePoint {
  readonly atMs: number;
  readonly throughputL: number;
  /** One standard deviation of the litres from now on. */
  readonly throughputUL: number;
  readonly reading: Quantiles;
  readonly isAhead: boolean;
}

/**
 * The band of the curve at the readings that taught it, at the last line, and on the days ahead.
 * @param days how many days ahead
 */
export function bedCurve(
  { trend, story, feed }: { readonly trend: BedTrend; readonly story: BedStory; readonly feed: FeedAhead },
  days: number,
): readonly CurvePoint[] {
  const reading = bandOf(trend);
  const usedL = leadUsedL(story).valueL;
  const behind = trend.readings
    .filter(({ atMs }) => atMs < story.countedToMs)
    .map(({ atMs, throughputL }) => ({ atMs, throughputL, throughputUL: 0, isAhead: false }));
  const ahead = Array.from({ length: days + 1 }, (_, day) => {
    const { litres, u } = litresAhead(feed, story.countedToMs, day);
    const atMs = story.countedToMs + day * msPerDay;
    return { atMs, throughputL: usedL + litres, throughputUL: u, isAhead: day > 0 };
  });
  return [...behind, ...ahead].map((point) => ({ ...point, reading: reading(point.throughputL) }));
}

/** Quantiles of what the curves say at a throughput. */
function bandOf({ fit }: BedTrend): (throughputL: number) => Quantiles {
  const curves = fit.cases.map((one) => ({ weight: one.weight, reading: readingOf(one, fit.prior.limit) }));
  return (throughputL) => {
    const said = curves.map(({ weight, reading }) => ({ weight, value: reading(throughputL) }));
    said.sort((a, b) => a.value - b.value);
    const at = (share: number): number => {
      let sum = 0;
      for (const { weight, value } of said) {
        sum += weight;
        if (sum >= share) return value;
      }
      return said.at(-1)?.value ?? 0;
    };
    return { q10: at(0.1), q50: at(0.5), q90: at(0.9) };
  };
}
