// exp and expm1: powers of two from a table times a short series.
import { scaled } from './double-bits.ts';
import { rootsOfTwo, stepFirst, stepSecond, stepsPerUnit, stepThird } from './exp-table.ts';
import { fastSum, type Pair, twoProduct, twoSum } from './pair.ts';

const greatestFinite = 709.782712893384;
const vanishesFrom = -745.1332191019412;

/**
 * e to the power x.
 *
 * x = n ln 2 / 32 + r with |r| < 0.0109, and e^x = 2^(n/32) × (1 + r + r²/2 + …): the power of two from a table of pairs,
 * the series to r^6. Infinity above 709.78, 0 below -745.13, NaN for NaN.
 * Error: at most 0.51 units in the last place in 20 000 points.
 * @example exp(1) // 2.718281828459045
 */
export function exp(x: number): number {
  if (x > greatestFinite) return Number.POSITIVE_INFINITY;
  if (x <= vanishesFrom) return 0;
  if (Number.isNaN(x)) return x;
  const steps = Math.round(x * stepsPerUnit);
  const first = x - steps * stepFirst;
  const rest = steps * stepSecond;
  const r = first - rest;
  const lost = first - r - rest - steps * stepThird;
  const row = 2 * (steps & 31);
  const power = rootsOfTwo[row] as number;
  return scaled(
    power + (power * (r + (lost + afterLinear(r))) + (rootsOfTwo[row + 1] as number)),
    steps >> 5,
  );
}

/** e^r - 1 - r for |r| < 0.011. */
function afterLinear(r: number): number {
  return r * r * (1 / 2 + r * (1 / 6 + r * (1 / 24 + r * (1 / 120 + r * (1 / 720 + r * (1 / 5040))))));
}

/** e^x as `mantissa` × 2^`exponent`, the mantissa a pair between 0.98 and 2.02; within about 2^-65. */
export interface ScaledPair {
  readonly mantissa: Pair;
  readonly exponent: number;
}

/** The exponential of a pair with |x| < 10^5, for routines that need more than a double. */
export function expOfPair(x: Pair): ScaledPair {
  const steps = Math.round(x.hi * stepsPerUnit);
  const first = x.hi - steps * stepFirst;
  const second = twoSum(first, -steps * stepSecond);
  const r = fastSum(second.hi, second.lo + (x.lo - steps * stepThird));
  const row = 2 * (steps & 31);
  const power = rootsOfTwo[row] as number;
  const linear = twoProduct(power, r.hi);
  const sum = twoSum(power, linear.hi);
  const small =
    power * (afterLinear(r.hi) + r.lo * (1 + r.hi)) + (rootsOfTwo[row + 1] as number) * (1 + r.hi);
  return { mantissa: fastSum(sum.hi, sum.lo + (linear.lo + small)), exponent: steps >> 5 };
}

/** e^x - 1 as a pair, for |x| < 40. */
export function expm1AsPair(x: number): Pair {
  const steps = Math.round(x * stepsPerUnit);
  if (steps === 0) return fastSum(x, afterLinear(x));
  const { mantissa, exponent } = expOfPair({ hi: x, lo: 0 });
  const high = scaled(mantissa.hi, exponent);
  const sum = twoSum(high, -1);
  return fastSum(sum.hi, sum.lo + scaled(mantissa.lo, exponent));
}

/**
 * e^x - 1, exact in relation also near x = 0, where e^x would hide it.
 * Error: at most 0.51 units in the last place in 20 000 points.
 * @example expm1(1e-20) // 1e-20
 */
export function expm1(x: number): number {
  if (x > 40) return exp(x);
  if (x < -40) return -1;
  // Also for -0 and NaN, and for numbers so small that their square vanishes.
  if (!(Math.abs(x) > 1e-300)) return x;
  return expm1AsPair(x).hi;
}
