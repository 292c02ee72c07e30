// The incomplete gamma function, as the two tails of the gamma distribution.
import { exp } from './exponential.ts';
import { deviance, stirlingError } from './stirling.ts';

const TWO_PI = 6.283185307179586;
const SMALLEST = 1e-300;
/** More terms than this are never wanted for shapes up to a million. */
const MOST_TERMS = 100_000;

/** The probability below and above; the smaller one is exact in relation, the larger is 1 less that. */
export interface Tails {
  readonly lower: number;
  readonly upper: number;
}

/**
 * x^a e^−x / Γ(a + 1), the Poisson density carried over to any a > 0: never the quotient of two huge numbers.
 * @source loader-2000
 */
export function gammaDensityTimes(a: number, x: number): number {
  if (x === 0) return 0;
  return exp(-stirlingError(a) - deviance(a, x)) / Math.sqrt(TWO_PI * a);
}

/**
 * P(a, x) = γ(a, x) / Γ(a) and Q = 1 − P, for a > 0 and x ≥ 0: a series below x = a + 1, a continued fraction above.
 * @source as, 6.5.29 and 6.5.31
 */
export function gammaTails(a: number, x: number): Tails {
  if (x === Number.POSITIVE_INFINITY) return { lower: 1, upper: 0 };
  if (x < a + 1) {
    const lower = gammaDensityTimes(a, x) * lowerSeries(a, x);
    return { lower, upper: 1 - lower };
  }
  const upper = gammaDensityTimes(a, x) * a * upperFraction(a, x);
  return { lower: 1 - upper, upper };
}

/** 1 + x/(a+1) + x²/((a+1)(a+2)) + … */
function lowerSeries(a: number, x: number): number {
  let term = 1;
  let sum = 1;
  for (let count = 1; count < MOST_TERMS; count += 1) {
    term *= x / (a + count);
    if (term < sum * 1e-17) return sum;
    sum += term;
  }
  throw new RangeError(`the series for the gamma distribution does not end at shape ${a}`);
}

/** 1/(x + 1 − a − 1(1 − a)/(x + 3 − a − 2(2 − a)/(x + 5 − a − …))), by Lentz's method. */
function upperFraction(a: number, x: number): number {
  let b = x + 1 - a;
  let c = 1 / SMALLEST;
  let d = 1 / b;
  let fraction = d;
  for (let count = 1; count < MOST_TERMS; count += 1) {
    const numerator = -count * (count - a);
    b += 2;
    d = 1 / awayFromZero(numerator * d + b);
    c = awayFromZero(b + numerator / c);
    fraction *= d * c;
    if (Math.abs(d * c - 1) < 2.3e-16) return fraction;
  }
  throw new RangeError(`the fraction for the gamma distribution does not end at shape ${a}`);
}

function awayFromZero(value: number): number {
  return Math.abs(value) < SMALLEST ? SMALLEST : value;
}
