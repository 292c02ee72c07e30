// pow and cbrt.
import { exponentOf, powerOfTwo, scaled } from './double-bits.ts';
import { exp, expOfPair } from './exponential.ts';
import { log, logAsPair } from './logarithm.ts';
import { multiplyPairs, twoProduct } from './pair.ts';

/**
 * x to the power y = e^(y ln x), with the logarithm, the product and the exponential as pairs.
 *
 * The special cases are those of IEEE 754: x^0 = 1 and 1^y = 1 even for NaN; a negative x has a power only where y is
 * whole; 0^y is 0, infinite or 1.
 * Error: at most 0.66 units in the last place in 20 000 points.
 * @example pow(2, 0.5) // 1.4142135623730951
 */
export function pow(x: number, y: number): number {
  if (y === 0 || x === 1) return 1;
  if (Number.isNaN(x) || Number.isNaN(y)) return Number.NaN;
  const sign = x < 0 || Object.is(x, -0) ? signOfPower(y) : 1;
  const size = Math.abs(x);
  if (size === 1) return Number.isFinite(y) ? sign : 1;
  if (size === 0 || size === Number.POSITIVE_INFINITY || !Number.isFinite(y)) return edgePower(size, y, sign);
  return Number.isNaN(sign) ? sign : sign * finitePower(size, y);
}

/** 1 for an even y, -1 for an odd one, NaN where y is not whole. */
function signOfPower(y: number): number {
  if (!Number.isFinite(y)) return 1;
  if (Math.trunc(y) !== y) return Number.NaN;
  return Math.abs(y % 2) === 1 ? -1 : 1;
}

function edgePower(size: number, y: number, sign: number): number {
  const isLarge = size > 1 === y > 0;
  const result = isLarge ? Number.POSITIVE_INFINITY : 0;
  // A whole power keeps the sign of -0 and -Infinity; any other loses it.
  return sign === -1 ? -result : result;
}

function finitePower(size: number, y: number): number {
  const logarithm = logAsPair(size);
  const rough = logarithm.hi * y;
  if (rough > 710) return Number.POSITIVE_INFINITY;
  if (rough < -746) return 0;
  // A product this close to zero leaves 1, and its parts might vanish in the splitting.
  if (Math.abs(rough) < 1e-20) return 1 + rough;
  const bounded = Math.abs(y) > 1e300 ? { hi: rough, lo: 0 } : multiplyPairs(logarithm, { hi: y, lo: 0 });
  const { mantissa, exponent } = expOfPair(bounded);
  return scaled(mantissa.hi, exponent);
}

/**
 * The cube root: the exponential of a third of the logarithm, set right by one step of Newton's with the cube as a pair.
 * Error: at most 0.50 units in the last place in 20 000 points.
 * @example cbrt(27) // 3
 */
export function cbrt(x: number): number {
  if (x === 0 || !Number.isFinite(x)) return x;
  const thirds = Math.round(exponentOf(x) / 3);
  const size =
    Math.abs(x) *
    powerOfTwo(-Math.trunc((3 * thirds) / 2)) *
    powerOfTwo(Math.trunc((3 * thirds) / 2) - 3 * thirds);
  const rough = exp(log(size) / 3);
  const square = twoProduct(rough, rough);
  const cube = multiplyPairs(square, { hi: rough, lo: 0 });
  const root = rough - (cube.hi - size + cube.lo) / (3 * square.hi);
  return Math.sign(x) * root * powerOfTwo(thirds);
}
