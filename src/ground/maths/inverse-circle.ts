// atan, asin and acos: an angle from a table, and a short series for what it leaves.
import { anglesOfTangents, rightAngle } from './inverse-circle-table.ts';
import { addPairs, dividePairs, fastSum, type Pair, twoProduct, twoSum } from './pair.ts';

/** Below this an angle, its sine and its tangent are one double: x³/6 is less than a twentieth of a unit in the last place. */
const faint = 1 / 268435456; // 2^-28
/** Beyond this the arc of a tangent differs from a right angle by less than half a unit. */
const steep = 18014398509481984; // 2^54
const quarterTurn: Pair = { hi: rightAngle[0] as number, lo: rightAngle[1] as number };
const halfTurn: Pair = { hi: 2 * quarterTurn.hi, lo: 2 * quarterTurn.lo };

/** The angle of a ratio of two pairs, `rise` ≥ 0 over `run` > 0 with rise ≤ run: the angle of k/32, and the angle of what is left. */
function angleUpToHalfRight(rise: Pair, run: Pair): Pair {
  const step = Math.round((32 * rise.hi) / run.hi);
  const tangent = step / 32;
  const left = step < 2 ? dividePairs(rise, run) : turnedBack(rise, run, tangent);
  const square = left.hi * left.hi;
  const small = fastSum(left.hi, left.lo + left.hi * square * afterLinear(square));
  if (step < 2) return small;
  return addPairs(
    { hi: anglesOfTangents[2 * step] as number, lo: anglesOfTangents[2 * step + 1] as number },
    small,
  );
}

/** tan(a - b) of tan a = rise / run and tan b = t: (rise - t run) / (run + t rise). */
function turnedBack(rise: Pair, run: Pair, tangent: number): Pair {
  const above = addPairs(rise, timesShort(run, -tangent));
  const below = addPairs(run, timesShort(rise, tangent));
  return dividePairs(above, below);
}

function timesShort(pair: Pair, factor: number): Pair {
  const product = twoProduct(pair.hi, factor);
  return fastSum(product.hi, product.lo + pair.lo * factor);
}

/** (atan r - r) / r³ by r², for |r| < 0.047. */
function afterLinear(square: number): number {
  return (
    -1 / 3 +
    square *
      (1 / 5 + square * (-1 / 7 + square * (1 / 9 + square * (-1 / 11 + square * (1 / 13 - square / 15)))))
  );
}

/** The angle of rise over run, both at least 0 and not both 0, from 0 to a right angle. */
function angleOf(rise: Pair, run: Pair): Pair {
  if (rise.hi <= run.hi) return angleUpToHalfRight(rise, run);
  const rest = angleUpToHalfRight(run, rise);
  return addPairs(quarterTurn, { hi: -rest.hi, lo: -rest.lo });
}

/** √(1 - x²) of |x| ≤ 1, as a pair. */
function across(x: number): Pair {
  const square = twoProduct(x, x);
  const rest = addPairs(twoSum(1, -square.hi), { hi: -square.lo, lo: 0 });
  if (rest.hi <= 0) return { hi: 0, lo: 0 };
  const root = Math.sqrt(rest.hi);
  const again = twoProduct(root, root);
  return fastSum(root, (rest.hi - again.hi - again.lo + rest.lo) / (2 * root));
}

/**
 * The angle in radians, from -π/2 to π/2, whose tangent is x.
 * Error: at most 0.50 units in the last place in 20 000 points.
 * @example atan(1) // 0.7853981633974483
 */
export function atan(x: number): number {
  const size = Math.abs(x);
  // Also for NaN.
  if (!(size > faint)) return x;
  if (size >= steep) return Math.sign(x) * quarterTurn.hi;
  return Math.sign(x) * angleOf({ hi: size, lo: 0 }, { hi: 1, lo: 0 }).hi;
}

/**
 * The angle in radians, from -π/2 to π/2, whose sine is x. NaN outside -1 to 1.
 * Error: at most 0.50 units in the last place in 20 000 points.
 * @example asin(0.5) // 0.5235987755982989
 */
export function asin(x: number): number {
  const size = Math.abs(x);
  if (size > 1) return Number.NaN;
  if (!(size > faint)) return x;
  return Math.sign(x) * angleOf({ hi: size, lo: 0 }, across(size)).hi;
}

/**
 * The angle in radians, from 0 to π, whose cosine is x. NaN outside -1 to 1.
 * Error: at most 0.50 units in the last place in 20 000 points.
 * @example acos(0.5) // 1.0471975511965979
 */
export function acos(x: number): number {
  const size = Math.abs(x);
  if (!(size <= 1)) return Number.NaN;
  if (size < faint) return addPairs(quarterTurn, { hi: -x, lo: 0 }).hi;
  const angle = angleOf(across(size), { hi: size, lo: 0 });
  return x > 0 ? angle.hi : addPairs(halfTurn, { hi: -angle.hi, lo: -angle.lo }).hi;
}
