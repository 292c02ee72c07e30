// One reading into the estimator: what it says of a state that may err by itself, and what it teaches of the errors that it shares.
import type { AnyEntry } from '../book/index.ts';
import { noteLessons, variancesOf } from './error-state.ts';
import type { Estimator } from './estimator.ts';
import type { Fold } from './fold.ts';
import type { SharedError } from './gauge-doubt.ts';
import { withReading } from './instrument-record.ts';

/** A reading this many of its own standard deviations from what was expected is asked about first. */
const FAR_OFF = 3;

export interface StateReading {
  /** Place of the state that is read. */
  readonly place: number;
  readonly shared: readonly SharedError[];
  /** In kilograms, one standard deviation of what is new in it. */
  readonly valueKg: number;
  readonly uKg: number;
  /** Instrument or way of reading that this counts for in its record; null: for none. */
  readonly recordOf: string | null;
  /** The state itself comes from a reading that is no surer to be right than this one: where they disagree, both are doubted. */
  readonly isOneOfSeveral?: boolean;
}

export interface ReadOutcome {
  /** Reading less what was expected, kilograms, and the variance of that. */
  readonly innovation: number;
  readonly variance: number;
  readonly isFarOff: boolean;
  /** How far other evidence checks the reading: 0 it alone tells, 1 it added nothing. */
  readonly redundancy: number;
}

/**
 * Reads. So far off that chance does not do it, something happened to this state that is in no entry: then its own variance
 * is widened by ν² first, so that the instruments it shares are not bent by it.
 */
export function readState(fold: Fold, entry: AnyEntry, reading: StateReading): ReadOutcome {
  const { place, shared, valueKg: value, uKg, recordOf } = reading;
  let u = uKg;
  const places = [place, ...shared.map((error) => error.place)];
  const weights = [1, ...shared.map(({ weight }) => weight)];
  const { estimator } = fold;
  const expected = estimator.sum(places, weights);
  const innovation = value - expected.mean;
  const variance = expected.variance + uKg * uKg;
  const isFarOff = innovation * innovation > FAR_OFF * FAR_OFF * variance;
  const own = estimator.variance(place);
  const redundancy = variance > 0 ? Math.max(0, 1 - own / variance) : 1;
  // What is asked about by itself says nothing of an instrument; too small a doubt shows in the others all the same.
  if (isFarOff && reading.isOneOfSeveral === true)
    u = doubtBoth(estimator, reading, { variance, times: (innovation * innovation) / variance });
  else if (isFarOff) estimator.widen(place, innovation * innovation);
  else if (recordOf !== null)
    fold.records.set(recordOf, withReading(fold.records.get(recordOf) ?? [], { innovation, variance }));
  const before = variancesOf(estimator, fold.errors.values());
  estimator.read({ places, weights, value, u });
  noteLessons(estimator, before, entry.id);
  return { innovation, variance, isFarOff, redundancy };
}

/**
 * Two readings of one thing that cannot both be right, and nothing says which: both variances grow by the factor that makes them
 * agree, so that the best value stays between them and whichever was taken first makes no difference.
 * @returns the doubt of the reading, one standard deviation; the state is widened
 * @source birge-1932, from memory
 */
function doubtBoth(
  estimator: Estimator,
  { place, shared, uKg }: StateReading,
  by: { readonly variance: number; readonly times: number },
): number {
  let common = estimator.variance(place);
  for (const error of shared) common += error.weight * estimator.covariance(place, error.place);
  const ofState = Math.min(by.variance, Math.max(0, common));
  estimator.widen(place, (by.times - 1) * ofState);
  return Math.sqrt(uKg * uKg + (by.times - 1) * (by.variance - ofState));
}
