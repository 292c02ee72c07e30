// Daily use per person, learned from closed days, with its day-to-day noise, its memory and the doubt of its mean.
import type { UsageDay } from '../account/index.ts';

/** Fewer closed days than this are not learned from: the outpost's norm stands in, and is called a norm. */
export const FEWEST_DAYS = 5;
/** Closed days that are looked at, the youngest ones. */
export const MOST_DAYS = 28;
/** Doubt of a norm between crews, relative, one standard deviation. @source outpost practice, see docs/methods/cover.md */
export const NORM_RELATIVE_U = 0.25;

export interface DailyUse {
  readonly basis: 'learned' | 'norm';
  /** Net use for one person and day, in milligrams. */
  readonly meanMg: number;
  /** One standard deviation of that mean. */
  readonly meanUMg: number;
  /** One standard deviation from day to day, for one person's share of the whole crew's day. */
  readonly dayUMg: number;
  /** Correlation of one day with the next, 0 to 0.8. */
  readonly memory: number;
  readonly days: number;
  readonly entries: readonly string[];
}

/**
 * Mean use per person and day of the last closed days, each weighted by the days that it spans.
 * u(mean)² = s²/N · (1+ρ)/(1−ρ) · ν/(ν−2) with N the days that the n intervals span and ν = n−1: the doubt of a mean of days
 * that remember each other, small n widened as Student's t.
 * @param usage closed intervals in the order of time
 * @param normMg the outpost's norm per person and day, or null
 * @returns null when there are too few days and no norm
 * @source textbook statistics; the form of the effective sample size from memory
 */
export function dailyUse(usage: readonly UsageDay[], normMg: number | null): DailyUse | null {
  const days = usage.filter((day) => day.peopleAboard > 0).slice(-MOST_DAYS);
  if (days.length < FEWEST_DAYS) return normMg === null ? null : fromNorm(normMg);
  const perPerson = days.map((day) => day.netMg / (day.days * day.peopleAboard));
  const weights = days.map((day) => day.days);
  const total = weights.reduce((sum, weight) => sum + weight, 0);
  const meanMg = perPerson.reduce((sum, value, k) => sum + value * (weights[k] ?? 0), 0) / total;
  const squares = perPerson.reduce(
    (sum, value, k) => sum + (weights[k] ?? 0) * (value - meanMg) * (value - meanMg),
    0,
  );
  const n = days.length;
  // An interval of two days has half the noise of one, so its square counts twice.
  const variance = squares / (n - 1);
  const memory = memoryOf(perPerson, meanMg);
  const longRun = (1 + memory) / (1 - memory);
  const small = (n - 1) / (n - 3);
  return {
    basis: 'learned',
    meanMg,
    meanUMg: Math.sqrt((variance / total) * longRun * small),
    dayUMg: Math.sqrt(variance),
    memory,
    days: total,
    entries: days.map((day) => day.entry),
  };
}

function fromNorm(normMg: number): DailyUse {
  const u = Math.abs(normMg) * NORM_RELATIVE_U;
  return {
    basis: 'norm',
    meanMg: normMg,
    meanUMg: u,
    dayUMg: Math.abs(normMg) * 0.1,
    memory: 0,
    days: 0,
    entries: [],
  };
}

/** Lag-one correlation, drawn towards 0 while there are few days, never below 0 nor above 0.8. */
function memoryOf(values: readonly number[], mean: number): number {
  let products = 0;
  let squares = 0;
  values.forEach((value, k) => {
    squares += (value - mean) * (value - mean);
    const next = values[k + 1];
    if (next !== undefined) products += (value - mean) * (next - mean);
  });
  if (squares === 0) return 0;
  const drawn = (products / squares) * (values.length / (values.length + 10));
  return Math.min(0.8, Math.max(0, drawn));
}
