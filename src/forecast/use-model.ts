// What a crew uses a day, learned as a mean, a mood that lasts for days, and the noise of each day: Bayes on a small grid.
import { exp } from '../ground/maths/index.ts';
import { UseFilter, type UsePrior } from './use-filter.ts';

/** What one person used in one closed interval. */
export interface UsedInterval {
  readonly usedMg: number;
  /** Whole days that it spans. */
  readonly days: number;
  /** Whole days before it of which nothing is known. */
  readonly daysBefore: number;
}

/** What the days taught under one assumption of how long a mood lasts and how large mood and noise are. Milligrams a person. */
export interface UseCase {
  /** Share of belief; those of all cases add up to 1. */
  readonly weight: number;
  /** What is left of a mood on the next day, 0 to below 1. */
  readonly memory: number;
  /** Variances of what a day adds to the mood, and of the noise of a day. */
  readonly moodStepVariance: number;
  readonly noiseVariance: number;
  /** Long-run mean of a day, and the mood of the last one, with their covariance. */
  readonly meanMg: number;
  readonly moodMg: number;
  readonly meanVariance: number;
  readonly moodVariance: number;
  readonly covariance: number;
}

/** The grid: what is left of a mood after a day, the spread of a day in units of the scale, the mood's part of its variance. Ours. */
const MEMORIES = [0.4, 0.7, 0.85, 0.92, 0.97] as const;
const SPREADS = [0.7, 1, 1.4, 2, 3] as const;
const MOOD_SHARES = [0.25, 0.6, 0.9] as const;

/** Cases that are this much less likely than the likeliest one are left out: together they are less than a ten-thousandth. */
const LEAST_LIKELY = 1e-6;

/**
 * Learns from closed intervals: use(t) = mean + mood(t) + noise(t), mood(t) = memory · mood(t − 1) + step(t).
 * Each of the 75 cases of the grid is a Kalman filter; before the days were seen all are equally likely, afterwards each
 * weighs by its likelihood.
 * @param intervals in the order of time, milligrams for one person
 * @param prior mean of crews in general, its spread between crews (one standard deviation), and the scale of the grid
 * @param quietDays whole days since the last interval of which nothing is known
 * @returns cases whose weights add up to 1
 * @throws RangeError for a spread or a scale that is not above 0, and for figures that are no numbers
 * @source kalman-1960 for the filter; the grid of cases with Bayes weights is common practice
 * @example learnUse([], { meanMg: 2, uMg: 1, scaleMg: 1 }).length // 75
 */
export function learnUse(
  intervals: readonly UsedInterval[],
  prior: UsePrior,
  quietDays = 0,
): readonly UseCase[] {
  const cases = gridOf(prior.scaleMg).map((assumed) => {
    const filter = new UseFilter(prior, assumed);
    for (const { usedMg, days, daysBefore } of intervals) {
      filter.pass(daysBefore);
      filter.read(usedMg, days);
    }
    filter.pass(quietDays);
    return { ...filter.state(), logLikelihood: filter.logLikelihood() };
  });
  const most = Math.max(...cases.map(({ logLikelihood }) => logLikelihood));
  if (!Number.isFinite(most)) throw new RangeError('a use was learned from figures that are no numbers');
  const kept = cases
    .map(({ logLikelihood, ...one }) => ({ ...one, weight: exp(logLikelihood - most) }))
    .filter(({ weight }) => weight >= LEAST_LIKELY);
  const all = kept.reduce((sum, { weight }) => sum + weight, 0);
  return kept.map((one) => ({ ...one, weight: one.weight / all }));
}

function gridOf(scaleMg: number) {
  return MEMORIES.flatMap((memory) =>
    SPREADS.flatMap((spread) =>
      MOOD_SHARES.map((share) => {
        const variance = spread * spread * scaleMg * scaleMg;
        return { memory, moodVariance: share * variance, noiseVariance: (1 - share) * variance };
      }),
    ),
  );
}
