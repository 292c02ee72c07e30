// The chi-square distribution: probabilities below and above a value, and quantiles.
import { gammaDensityTimes, gammaTails, type Tails } from './gamma-tails.ts';
import { normalQuantile } from './normal-distribution.ts';
import { tailQuantile } from './quantile-search.ts';

export interface ChiSquareValue {
  readonly value: number;
  readonly degrees: number;
}

const MOST_DEGREES = 1e6;
/** A smaller tail would lie among numbers that a double hardly holds. */
const LEAST_TAIL = 1e-100;

/**
 * The probability that a sum of `degrees` squares of standard normal numbers is at most `value`.
 * P(degrees/2, value/2); 0 for a negative value.
 * Error: relative, at most 8.2e-15 in 500 points up to 100 000 degrees.
 * @param value any number; `degrees` from 1 to a million, not necessarily whole
 * @throws RangeError if the value is NaN or the degrees are out of range.
 * @source as, 26.4; loader-2000
 * @example chiSquareCdf({ value: 3.841, degrees: 1 }) // 0.949986…
 */
export function chiSquareCdf(of: ChiSquareValue): number {
  return tailsOf(of).lower;
}

/**
 * The probability that such a sum exceeds `value`, exact in relation also where it is small: what a test quotes.
 * Error: relative, at most 4.0e-14 in 500 points up to 100 000 degrees.
 * @throws RangeError if the value is NaN or the degrees are out of range.
 * @source as, 26.4; loader-2000
 * @example chiSquareUpper({ value: 20.31, degrees: 3 }) // 0.000146…
 */
export function chiSquareUpper(of: ChiSquareValue): number {
  return tailsOf(of).upper;
}

function tailsOf({ value, degrees }: ChiSquareValue): Tails {
  mustHaveDegrees(degrees);
  if (Number.isNaN(value)) throw new RangeError('a sum of squares that is NaN has no probability');
  return value <= 0 ? { lower: 0, upper: 1 } : gammaTails(degrees / 2, value / 2);
}

/**
 * The value below which such a sum lies with the probability given: the inverse of `chiSquareCdf`.
 * Error: relative, at most 5.2e-15 in 500 points.
 * @param probability from 1e-100 to 1, or 0; 0 gives 0, 1 gives Infinity
 * @throws RangeError if the probability or the degrees are out of range.
 * @source as, 26.4.17 for the first guess
 * @example chiSquareQuantile({ probability: 0.95, degrees: 4 }) // 9.487729…
 */
export function chiSquareQuantile({
  probability,
  degrees,
}: {
  readonly probability: number;
  readonly degrees: number;
}): number {
  mustHaveDegrees(degrees);
  if (probability === 0) return 0;
  if (!(probability >= LEAST_TAIL && probability <= 1))
    throw new RangeError(`a probability is 0, or from ${LEAST_TAIL} to 1, not ${probability}`);
  if (probability === 1) return Number.POSITIVE_INFINITY;
  const isLower = probability <= 0.5;
  const a = degrees / 2;
  const half = tailQuantile(
    (x) => {
      const tails = gammaTails(a, x);
      return { tail: isLower ? tails.lower : tails.upper, pull: gammaDensityTimes(a, x) * a };
    },
    {
      wanted: isLower ? probability : 1 - probability,
      start: guess(probability, degrees) / 2,
      side: isLower ? 'lower' : 'upper',
    },
  );
  return 2 * half;
}

/** Wilson and Hilferty: the cube root is nearly normal. */
function guess(probability: number, degrees: number): number {
  const part = 2 / (9 * degrees);
  const root = 1 - part + normalQuantile(probability) * Math.sqrt(part);
  const found = degrees * root * root * root;
  return found > 0 ? found : degrees * 1e-3;
}

function mustHaveDegrees(degrees: number): void {
  if (!(degrees >= 1 && degrees <= MOST_DEGREES))
    throw new RangeError(`degrees of freedom are from 1 to ${MOST_DEGREES}, not ${degrees}`);
}
