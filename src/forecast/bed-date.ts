// When a bed reaches a limit: the throughput at the limit, as it was learned, against the litres that are to be expected.
import type { BedFit, BedStory, Position } from '../account/index.ts';
import { leadUsedL } from '../account/index.ts';
import { normalCdf, rootBetween } from '../ground/maths/index.ts';
import { msPerDay } from '../ground/units/index.ts';
import { type DailyUse, dailyUse, type NormOfDay } from './daily-use.ts';
import { type PeopleFrom, peopleAhead } from './people-ahead.ts';
import { usedAhead } from './use-ahead.ts';

/** Further ahead no date is told. */
export const FURTHEST_DAYS = 730;
/** Ends of the band, and its middle. */
const QUANTILES = { q10: 0.1, q50: 0.5, q90: 0.9 } as const;
/** Finer than a minute no date is looked for. */
const FINEST_DAYS = 1 / 1440;

/** What goes through the beds from here on. */
export interface FeedAhead {
  /** For one person and day, learned from the lines, or the norm. */
  readonly use: DailyUse;
  readonly people: readonly PeopleFrom[];
  /** Litres a day with those who are aboard now, and one standard deviation of that mean. */
  readonly litresPerDay: number;
  readonly litresPerDayU: number;
  readonly mgPerL: number;
}

/** Litres to a limit, and the date on which they have gone through. */
export interface BedDate {
  /** Litres from now; below 0 where the limit was passed already. */
  readonly leftL: Quantiles;
  /** Null beyond two years. */
  readonly ms: Quantiles<number | null>;
}

export interface Quantiles<T = number> {
  readonly q10: T;
  readonly q50: T;
  readonly q90: T;
}

/**
 * What is expected to go through the beds.
 * @returns null with fewer than five days of counters where the file tells no norm of vapour either
 */
export function feedAhead(position: Position, { fed }: BedStory): FeedAhead | null {
  const usage = fed.map(({ day, endMs, days, peopleAboard, massMg, entry }) => ({
    day,
    endMs,
    days,
    peopleAboard,
    netMg: massMg,
    entry,
  }));
  const use = dailyUse(usage, vapourNorm(position), position.atMs);
  if (use === null) return null;
  const people = peopleAhead(position);
  const perL = position.peopleAboard / position.mgPerL;
  return {
    use,
    people,
    litresPerDay: use.meanMg * perL,
    litresPerDayU: use.meanUMg * perL,
    mgPerL: position.mgPerL,
  };
}

/** What people give off and condensers collect is what the purifier gets. */
function vapourNorm({ index, mgPerL }: Position): NormOfDay | null {
  const litres = index.outpost.norms.vapourCollectedLPerPersonDay ?? 0;
  return litres > 0 ? { netMg: litres * mgPerL, grossMg: litres * mgPerL } : null;
}

/**
 * Quantiles of the date on which the limit is reached: the chance that so much has gone through by then, over all curves that fit.
 *
 * P(date before t) = Σ w_k Φ((F(t) − V_k + V_now) / u(t)), where F(t) is the expected feed, V_k the throughput at the limit of a
 * curve with the weight w_k, and u(t) the doubt of the feed with the grain of the grid.
 * @param fit as learned
 * @param story what has gone through by now
 * @param feed what is to be expected
 * @source docs/methods/bed-life.md
 */
export function bedDate(fit: BedFit, story: BedStory, feed: FeedAhead): BedDate {
  const left = leftOf(fit, leadUsedL(story).valueL);
  const chance = (days: number): number => {
    const { litres, u } = litresAhead(feed, story.countedToMs, days);
    const own = Math.sqrt(u * u + fit.grainL * fit.grainL);
    return left.reduce((sum, { weight, leftL }) => sum + weight * normalCdf((litres - leftL) / own), 0);
  };
  const dateOf = (share: number): number | null => {
    if (chance(0) >= share) return story.countedToMs;
    if (chance(FURTHEST_DAYS) < share) return null;
    const days = rootBetween((at) => chance(at) - share, { low: 0, high: FURTHEST_DAYS }, FINEST_DAYS);
    return story.countedToMs + days * msPerDay;
  };
  return { leftL: each((share) => quantileOf(left, share)), ms: each(dateOf) };
}

function each<T>(of: (share: number) => T): Quantiles<T> {
  return { q10: of(QUANTILES.q10), q50: of(QUANTILES.q50), q90: of(QUANTILES.q90) };
}

interface Left {
  readonly weight: number;
  readonly leftL: number;
}

/** As many steps are as good as thousands of cases. */
const BINS = 240;

/** Litres to the limit in even steps, the least first. */
function leftOf({ cases }: BedFit, usedL: number): readonly Left[] {
  const all = cases.map(({ limitAtL }) => limitAtL - usedL);
  let low = Number.POSITIVE_INFINITY;
  let high = Number.NEGATIVE_INFINITY;
  for (const one of all) {
    if (one < low) low = one;
    if (one > high) high = one;
  }
  const step = Math.max(1e-9, (high - low) / BINS);
  const weights = new Float64Array(BINS + 1);
  const sums = new Float64Array(BINS + 1);
  all.forEach((leftL, k) => {
    const bin = Math.min(BINS, Math.floor((leftL - low) / step));
    const weight = cases[k]?.weight ?? 0;
    weights[bin] = (weights[bin] as number) + weight;
    sums[bin] = (sums[bin] as number) + weight * leftL;
  });
  return [...weights].flatMap((weight, bin) =>
    weight === 0 ? [] : [{ weight, leftL: (sums[bin] as number) / weight }],
  );
}

function quantileOf(left: readonly Left[], share: number): number {
  let sum = 0;
  for (const { weight, leftL } of left) {
    sum += weight;
    if (sum >= share) return leftL;
  }
  return left.at(-1)?.leftL ?? 0;
}

/** Litres that go through in so many days, with the people of each of them. */
export function litresAhead(
  { use, people, mgPerL }: FeedAhead,
  fromMs: number,
  days: number,
): { readonly litres: number; readonly u: number } {
  const whole = momentsOf(use, days);
  let mean = 0;
  people.forEach(({ fromMs: since, people: count }, k) => {
    const begin = k === 0 ? 0 : Math.max(0, (since - fromMs) / msPerDay);
    const next = people[k + 1];
    const end = next === undefined ? days : Math.min(days, Math.max(0, (next.fromMs - fromMs) / msPerDay));
    if (end > begin) mean += count * (momentsOf(use, end).mean - momentsOf(use, begin).mean);
  });
  // People who come and go change its size, and its doubt with it.
  const count = whole.mean === 0 ? (people[0]?.people ?? 0) : mean / whole.mean;
  return { litres: mean / mgPerL, u: (Math.abs(count) * whole.u) / mgPerL };
}

/** One person's feed over some days: all cases as one normal distribution of the same mean and variance. */
function momentsOf({ cases }: DailyUse, days: number): { readonly mean: number; readonly u: number } {
  const ahead = usedAhead(days, cases);
  const mean = ahead.reduce((sum, one) => sum + one.weight * one.meanMg, 0);
  const variance = ahead.reduce(
    (sum, one) => sum + one.weight * (one.variance + (one.meanMg - mean) * (one.meanMg - mean)),
    0,
  );
  return { mean, u: Math.sqrt(variance) };
}
