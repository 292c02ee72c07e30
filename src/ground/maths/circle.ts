// sin and cos of an angle of any size.
import {
  perRightAngle,
  perRightAngleBits,
  perRightAngleLong,
  rightAngleFirst,
  rightAngleLong,
  rightAngleRest,
  rightAngleSecond,
  rightAngleThird,
} from './circle-table.ts';
import { exponentOf, powerOfTwo } from './double-bits.ts';
import { addPairs, fastSum, type Pair, twoSum } from './pair.ts';

/** An angle as a count of right angles (0 to 3) and the rest, from -π/4 to π/4. */
interface Turned {
  readonly quadrant: number;
  readonly rest: Pair;
}

/** Up to here the count of right angles has at most 20 bits, and its products with the parts of π/2 are exact. */
const shortAngle = 1_000_000;

function turned(x: number): Turned {
  if (Math.abs(x) <= Math.PI / 4) return { quadrant: 0, rest: { hi: x, lo: 0 } };
  return Math.abs(x) <= shortAngle ? turnedByParts(x) : turnedByIntegers(x);
}

function turnedByParts(x: number): Turned {
  const count = Math.round(x * perRightAngle);
  let rest = twoSum(x, -count * rightAngleFirst);
  rest = addPairs(rest, { hi: -count * rightAngleSecond, lo: 0 });
  rest = addPairs(rest, { hi: -count * rightAngleThird, lo: -count * rightAngleRest });
  return { quadrant: count & 3, rest };
}

const fractionBits = 200;
const fractionMask = (1n << BigInt(fractionBits)) - 1n;
const halfFraction = 1n << BigInt(fractionBits - 1);

/** x × 2/π in integers: x is a whole number times a power of two, and 2/π is known to 1280 bits, so the turn is exact. */
function turnedByIntegers(x: number): Turned {
  const power = exponentOf(x) - 52;
  const whole = BigInt(Math.abs(x) * powerOfTwo(-power));
  const turns = (whole * perRightAngleLong) >> BigInt(perRightAngleBits - fractionBits - power);
  let quadrant = Number((turns >> BigInt(fractionBits)) & 3n);
  let fraction = turns & fractionMask;
  if (fraction >= halfFraction) {
    quadrant += 1;
    fraction -= 1n << BigInt(fractionBits);
  }
  const rest = pairFromFraction((fraction * rightAngleLong) >> 160n);
  return x > 0
    ? { quadrant: quadrant & 3, rest }
    : { quadrant: -quadrant & 3, rest: { hi: -rest.hi, lo: -rest.lo } };
}

function pairFromFraction(fraction: bigint): Pair {
  const high = Number(fraction);
  const unit = powerOfTwo(-fractionBits);
  return { hi: high * unit, lo: Number(fraction - BigInt(high)) * unit };
}

/** sin(r) for |r| ≤ π/4: r - r³/6 + … */
function sineOf({ hi, lo }: Pair): number {
  const square = hi * hi;
  if (square < 1e-20) return hi;
  const after =
    -1 / 6 +
    square *
      (1 / 120 +
        square *
          (-1 / 5040 +
            square *
              (1 / 362880 +
                square *
                  (-1 / 39916800 +
                    square * (1 / 6227020800 + square * (-1 / 1307674368000 + square / 355687428096000))))));
  return hi + (hi * square * after + lo * (1 - square / 2));
}

/** cos(r) for |r| ≤ π/4: 1 - r²/2 + …, the first two terms without loss. */
function cosineOf({ hi, lo }: Pair): number {
  const square = hi * hi;
  const half = square / 2;
  const after =
    1 / 24 +
    square *
      (-1 / 720 +
        square *
          (1 / 40320 +
            square *
              (-1 / 3628800 +
                square *
                  (1 / 479001600 +
                    square *
                      (-1 / 87178291200 + square * (1 / 20922789888000 - square / 6402373705728000))))));
  const sum = fastSum(1, -half);
  return sum.hi + (sum.lo + (square * square * after - hi * lo));
}

/**
 * The sine of an angle in radians, of any size. NaN for an infinite angle.
 * Error: at most 0.73 units in the last place in 20 000 points.
 * @example sin(1) // 0.8414709848078965
 */
export function sin(x: number): number {
  if (!Number.isFinite(x)) return Number.NaN;
  const { quadrant, rest } = turned(x);
  const size = quadrant & 1 ? cosineOf(rest) : sineOf(rest);
  return quadrant & 2 ? -size : size;
}

/**
 * The cosine of an angle in radians, of any size. NaN for an infinite angle.
 * Error: at most 0.69 units in the last place in 20 000 points.
 * @example cos(1) // 0.5403023058681398
 */
export function cos(x: number): number {
  if (!Number.isFinite(x)) return Number.NaN;
  const { quadrant, rest } = turned(x);
  const size = quadrant & 1 ? sineOf(rest) : cosineOf(rest);
  return quadrant === 1 || quadrant === 2 ? -size : size;
}
