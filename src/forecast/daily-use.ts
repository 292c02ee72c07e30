// Daily use per person: learned from closed days, or the outpost's norm while there are too few.
import type { UsageDay } from '../account/index.ts';
import { msPerDay } from '../ground/units/index.ts';
import { sureUse } from './use-ahead.ts';
import { learnUse, type UseCase, type UsedInterval } from './use-model.ts';

/** Fewer closed days than this are not learned from: the outpost's norm stands in, and is called a norm. */
export const FEWEST_DAYS = 5;
/** Closed days that are looked at, the youngest ones. */
export const MOST_DAYS = 90;
/** Doubt of a norm between crews, relative, one standard deviation. @source outpost practice, see docs/methods/cover.md */
export const NORM_RELATIVE_U = 0.25;
/** Noise of a day by the norm, relative, one standard deviation. Ours, no source. */
const NORM_DAY_U = 0.1;
/** A silence longer than this has let any mood fade. */
const LONGEST_SILENCE_DAYS = 60;

export interface DailyUse {
  readonly basis: 'learned' | 'norm';
  /** Net use for one person and day in the long run, in milligrams. */
  readonly meanMg: number;
  /** One standard deviation of that mean. */
  readonly meanUMg: number;
  /** One standard deviation from day to day, for one person's share of the whole crew's day. */
  readonly dayUMg: number;
  /** Correlation of one day with the next, as likely as it is believed. */
  readonly memory: number;
  readonly days: number;
  readonly entries: readonly string[];
  /** What the days ahead are reckoned from. */
  readonly cases: readonly UseCase[];
}

/** The outpost's norm per person and day: used less made, and both together. */
export interface NormOfDay {
  readonly netMg: number;
  readonly grossMg: number;
}

/**
 * Learned from the last closed days, whatever the crew: use is reckoned by person.
 * @param usage closed intervals in the order of time
 * @param norm the outpost's norm, or null: then the days alone speak
 * @param atMs the present; days since the last interval let its mood fade. Absent: the end of that interval
 * @returns null when there are too few days and no norm
 */
export function dailyUse(usage: readonly UsageDay[], norm: NormOfDay | null, atMs?: number): DailyUse | null {
  const days = usage.filter((day) => day.peopleAboard > 0).slice(-MOST_DAYS);
  if (days.length < FEWEST_DAYS) return norm === null ? null : fromNorm(norm);
  const lastMs = days.at(-1)?.endMs ?? 0;
  const quietDays = silenceOf((atMs ?? lastMs) - lastMs);
  const { meanMg, dayUMg } = plainMean(days);
  const cases =
    dayUMg === 0
      ? [sureUse({ meanMg, uMg: 0, dayUMg: 0 })]
      : learnUse(days.map(intervalOf), priorOf(norm, { meanMg, dayUMg }), quietDays);
  return {
    basis: 'learned',
    ...summary(cases),
    days: days.reduce((sum, day) => sum + day.days, 0),
    entries: days.map((day) => day.entry),
    cases,
  };
}

function fromNorm({ netMg }: NormOfDay): DailyUse {
  const size = Math.abs(netMg);
  const cases = [sureUse({ meanMg: netMg, uMg: size * NORM_RELATIVE_U, dayUMg: size * NORM_DAY_U })];
  return { basis: 'norm', ...summary(cases), days: 0, entries: [], cases };
}

/** Whole days of which nothing is known; what is left of a day is none. */
function silenceOf(ms: number): number {
  return Math.min(LONGEST_SILENCE_DAYS, Math.max(0, Math.floor(ms / msPerDay)));
}

function intervalOf(day: UsageDay, k: number, days: readonly UsageDay[]): UsedInterval {
  const before = days[k - 1];
  const between = before === undefined ? 0 : day.endMs - before.endMs - day.days * msPerDay;
  // Lines are not made at the same minute: half a day is none.
  return {
    usedMg: day.netMg / day.peopleAboard,
    days: day.days,
    daysBefore: silenceOf(between + msPerDay / 2),
  };
}

/** Mean and spread of a day, each interval weighted by the days that it spans: the scale of the grid. */
function plainMean(days: readonly UsageDay[]): { meanMg: number; dayUMg: number } {
  const rates = days.map((day) => ({ rate: day.netMg / (day.days * day.peopleAboard), weight: day.days }));
  const all = rates.reduce((sum, { weight }) => sum + weight, 0);
  const meanMg = rates.reduce((sum, { rate, weight }) => sum + rate * weight, 0) / all;
  // An interval of two days has half the noise of one, so its square counts twice.
  const squares = rates.reduce(
    (sum, { rate, weight }) => sum + weight * (rate - meanMg) * (rate - meanMg),
    0,
  );
  return { meanMg, dayUMg: Math.sqrt(squares / (days.length - 1)) };
}

/** Crews differ by a quarter in what they use and in what they make; without a norm the spread is so wide that it says nothing. */
function priorOf(norm: NormOfDay | null, plain: { meanMg: number; dayUMg: number }) {
  const { meanMg, dayUMg: scaleMg } = plain;
  if (norm === null) return { meanMg, uMg: 4 * (Math.abs(meanMg) + scaleMg), scaleMg };
  return { meanMg: norm.netMg, uMg: Math.max(NORM_RELATIVE_U * norm.grossMg, scaleMg), scaleMg };
}

/** Mean, doubts and memory over all cases. */
function summary(cases: readonly UseCase[]): Pick<DailyUse, 'meanMg' | 'meanUMg' | 'dayUMg' | 'memory'> {
  const over = (of: (one: UseCase) => number) => cases.reduce((sum, one) => sum + one.weight * of(one), 0);
  const moodOf = ({ moodStepVariance: q, memory }: UseCase) => q / (1 - memory * memory);
  const meanMg = over((one) => one.meanMg);
  const between = over((one) => (one.meanMg - meanMg) * (one.meanMg - meanMg));
  return {
    meanMg,
    meanUMg: Math.sqrt(over((one) => one.meanVariance) + between),
    dayUMg: Math.sqrt(over((one) => moodOf(one) + one.noiseVariance)),
    memory: over((one) => {
      const mood = moodOf(one);
      return mood === 0 ? 0 : (one.memory * mood) / (mood + one.noiseVariance);
    }),
  };
}
