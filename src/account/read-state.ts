// One reading into the estimator: what it says of a state that may err by itself, and what it teaches of the errors that it shares.
import type { AnyEntry } from '../book/index.ts';
import { noteLessons, variancesOf } from './error-state.ts';
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
  const { place, shared, valueKg: value, uKg: u, recordOf } = reading;
  const places = [place, ...shared.map((error) => error.place)];
  const weights = [1, ...shared.map(({ weight }) => weight)];
  const { estimator } = fold;
  const expected = estimator.sum(places, weights);
  const innovation = value - expected.mean;
  const variance = expected.variance + u * u;
  const isFarOff = innovation * innovation > FAR_OFF * FAR_OFF * variance;
  const own = estimator.variance(place);
  const redundancy = variance > 0 ? Math.max(0, 1 - own / variance) : 1;
  // What is asked about by itself says nothing of an instrument; too small a doubt shows in the others all the same.
  if (isFarOff) estimator.widen(place, innovation * innovation);
  else if (recordOf !== null)
    fold.records.set(recordOf, withReading(fold.records.get(recordOf) ?? [], { innovation, variance }));
  const before = variancesOf(estimator, fold.errors.values());
  estimator.read({ places, weights, value, u });
  noteLessons(estimator, before, entry.id);
  return { innovation, variance, isFarOff, redundancy };
}
