// An error that readings repeat: what was assumed of it, where it stands in the estimator, and what taught it.
import { msPerDay } from '../ground/units/index.ts';
import type { Estimator } from './estimator.ts';

/**
 * `calibration`: relative error of an instrument · `gauge`: offset of a gauge · `shell`: error that every gauging of a tank repeats ·
 * `norm`: relative error of a flow that nobody measures · `remainder`, `level`: where a unit leaves a buffer ·
 * `opening`: what was told of a content when it was first told · `body water`: what the crew carries beside what is normal.
 */
export type ErrorKind =
  | 'calibration'
  | 'gauge'
  | 'shell'
  | 'norm'
  | 'remainder'
  | 'level'
  | 'opening'
  | 'body water';

export interface ErrorState {
  readonly kind: ErrorKind;
  /** Instrument, norm, store or pool. */
  readonly of: string;
  readonly place: number;
  /** One standard deviation that was assumed before any reading. */
  assumedU: number;
  /** A random walk: so much, one standard deviation, after one day. 0: it stays. */
  driftPerSqrtDay: number;
  /** Up to when its walk is in the estimator. */
  walkedToMs: number;
  /** Entries whose readings taught something of it, the youngest ones, and how many there were in all. */
  lessons: readonly string[];
  lessonsInAll: number;
}

/** More lessons than this are not listed; they are counted. */
const MOST_LESSONS = 60;

/** A reading that takes less than this part off the variance taught nothing that is worth naming. Ours, no source. */
const LEAST_TAUGHT = 0.02;

export function errorKey(kind: ErrorKind, of: string): string {
  return `${kind}:${of}`;
}

/**
 * Brings the walk of an error up to an instant. A walk is independent of everything else, so it need not be walked until the
 * error is looked at: what was read in between says nothing of it.
 */
export function walkTo(estimator: Estimator, error: ErrorState, ms: number): void {
  if (ms <= error.walkedToMs) return;
  const variance = walkVariance(error, ms);
  error.walkedToMs = ms;
  if (variance > 0) estimator.widen(error.place, variance);
}

/** Variance that the walk has brought since it was last put into the estimator. */
export function walkVariance(error: ErrorState, ms: number): number {
  const { driftPerSqrtDay: drift, walkedToMs } = error;
  return drift === 0 || ms <= walkedToMs ? 0 : (drift * drift * (ms - walkedToMs)) / msPerDay;
}

/** A new calibration, or a content that is told anew: nothing of what was learned holds any more. */
export function startAnew(
  estimator: Estimator,
  error: ErrorState,
  { assumedU, ms }: { readonly assumedU: number; readonly ms: number },
): void {
  estimator.reset(error.place, 0, assumedU * assumedU);
  Object.assign(error, { assumedU, walkedToMs: ms, lessons: [], lessonsInAll: 0 });
}

/** Variances of some errors before a reading, to see afterwards which of them it taught. */
export function variancesOf(estimator: Estimator, errors: Iterable<ErrorState>): Map<ErrorState, number> {
  const variances = new Map<ErrorState, number>();
  for (const error of errors) variances.set(error, estimator.variance(error.place));
  return variances;
}

/** Notes the entry of a reading with every error that it taught. */
export function noteLessons(
  estimator: Estimator,
  before: ReadonlyMap<ErrorState, number>,
  entry: string,
): void {
  for (const [error, variance] of before) {
    if (estimator.variance(error.place) >= variance * (1 - LEAST_TAUGHT) || error.lessons.at(-1) === entry)
      continue;
    error.lessons = [...error.lessons.slice(1 - MOST_LESSONS), entry];
    error.lessonsInAll += 1;
  }
}
