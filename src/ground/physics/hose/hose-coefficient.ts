// One figure learned of a hose from its own runs: by how much a push takes longer than predicted, and how surely.
import { exp, log, studentQuantile } from '../../maths/index.ts';
import { stayAboveZero } from '../stay-within.ts';

/** One push whose time was taken. */
export interface HoseRun {
  /** What was predicted with a factor of 1, in seconds. */
  readonly predictedSeconds: number;
  readonly takenSeconds: number;
}

/** What is believed of any hose before its first run. */
export interface HosePrior {
  /** One standard deviation of the logarithm of the factor. */
  readonly factorU: number;
  /** One standard deviation of the logarithm by which runs of one hose differ from each other. */
  readonly runU: number;
  /** By how many runs that scatter is believed. */
  readonly runUDegrees: number;
}

/** Common practice, to be corrected by an outpost's own runs: 25 % on data of the hose, 3 % between runs. */
export const HOSE_PRIOR: HosePrior = { factorU: 0.25, runU: 0.03, runUDegrees: 4 };

/** With more of them Student's quantile is that of the normal distribution to six digits. */
const MOST_DEGREES = 1e6;

export interface HoseCoefficient {
  /** Taken over predicted time: the median of what is believed. */
  readonly factor: number;
  /** One standard deviation of the factor. */
  readonly u: number;
  /** By how much a next run may differ, 95 %, as factors on what is predicted without this coefficient. */
  readonly nextRun: { readonly lowFactor: number; readonly highFactor: number };
  /** One standard deviation of the logarithm of a next run. */
  readonly nextRunU: number;
  readonly runs: number;
}

/**
 * The factor of a hose, log-normal: its prior and the mean of ln(taken / predicted), weighed by their doubts.
 *
 * ln k has the weight 1/τ² of the prior and n/s² of the runs; s² is pooled from the prior scatter and the scatter seen. The
 * band of a next run is Student's, with the degrees of freedom of Welch and Satterthwaite, as s is itself uncertain.
 * @param runs seconds, above 0; runs that were interrupted, kinked or ended in gas are left out by who asks
 * @param prior spreads above 0; `HOSE_PRIOR` if nothing better is known
 * @returns factor with u, and the band of a next run, which narrows with every run
 * @throws OutsideRange for a time that is not above 0
 * @source gum (4.3, G.4.1); conjugate normal mean, from memory; held against simulated histories
 * @example hoseCoefficient([{ predictedSeconds: 950, takenSeconds: 1000 }]).factor // 1.0519
 */
export function hoseCoefficient(runs: readonly HoseRun[], prior: HosePrior = HOSE_PRIOR): HoseCoefficient {
  const logs = runs.map(({ predictedSeconds, takenSeconds }) => {
    mustBeTime('predicted time', predictedSeconds);
    mustBeTime('time taken', takenSeconds);
    return log(takenSeconds / predictedSeconds);
  });
  const count = logs.length;
  const mean = count === 0 ? 0 : logs.reduce((sum, each) => sum + each, 0) / count;
  const { variance: run, degrees } = scatterOf(logs, mean, prior);
  const own = 1 / (1 / (prior.factorU * prior.factorU) + count / run);
  const centre = (own * count * mean) / run;
  const next = own + run;
  // The part of the next run's variance that rests on s².
  const resting = run + (own * own * count) / run;
  const share = next / resting;
  const wide = studentQuantile({
    probability: 0.975,
    degrees: Math.min(MOST_DEGREES, degrees * share * share),
  });
  const half = Math.sqrt(next) * wide;
  const factor = exp(centre);
  return {
    factor,
    u: factor * Math.sqrt(own),
    nextRun: { lowFactor: exp(centre - half), highFactor: exp(centre + half) },
    nextRunU: Math.sqrt(next),
    runs: count,
  };
}

/** The variance between runs: the prior's and that seen, each by its degrees of freedom. */
function scatterOf(
  logs: readonly number[],
  mean: number,
  { runU, runUDegrees }: HosePrior,
): { readonly variance: number; readonly degrees: number } {
  const seen = logs.reduce((sum, each) => sum + (each - mean) * (each - mean), 0);
  const degrees = runUDegrees + Math.max(0, logs.length - 1);
  return { variance: (runUDegrees * runU * runU + seen) / degrees, degrees };
}

function mustBeTime(quantity: string, value: number): void {
  stayAboveZero({ quantity, value, unit: 's', source: 'gum' });
}
