// The natural logarithm of a double as two doubles, in plain numbers: the same sums as `logOfPair`, without making pairs.
import { exponentOf, powerOfTwo } from './double-bits.ts';
import { firstIndex, lnTwoFirst, lnTwoRest, reciprocals } from './log-table.ts';

const splitter = 134217729; // 2^27 + 1

/** What the last logarithm left over: a second number to give out. A number in a variable would be made anew each time. */
const left = new Float64Array(1);

/** What `logHigh` left over: ln x is the sum of the two, within about 2^-68. To be read before the next call. */
export function logLeft(): number {
  return left[0] as number;
}

/** The product's error of `a × b = product`, by splitting (see `twoProduct`). */
export function productLeft(a: number, b: number, product: number): number {
  const aShadow = splitter * a;
  const aHigh = aShadow - (aShadow - a);
  const aLow = a - aHigh;
  const bShadow = splitter * b;
  const bHigh = bShadow - (bShadow - b);
  const bLow = b - bHigh;
  return aHigh * bHigh - product + aHigh * bLow + aLow * bHigh + aLow * bLow;
}

/** The error of `a + b = sum` (see `twoSum`). */
function sumLeft(a: number, b: number, sum: number): number {
  const shadow = sum - a;
  return a - (sum - shadow) + (b - shadow);
}

/** ln x of a positive normal x, rounded to a double; what is left over is at `logLeft`. */
export function logHigh(x: number): number {
  let power = exponentOf(x);
  let scale = powerOfTwo(-power);
  if (x * scale > Math.SQRT2) {
    power += 1;
    scale *= 0.5;
  }
  const m = x * scale;
  const row = 3 * (Math.round(m * 128) - firstIndex);
  const reciprocal = reciprocals[row] as number;
  const product = m * reciprocal;
  const productRest = productLeft(m, reciprocal, product);
  const f = product - 1 + productRest;
  const fRest = productRest - (f - (product - 1));
  // ln(1 + f): the square in full, the higher terms in doubles.
  const plainSquare = f * f;
  const squareRest = productLeft(f, f, plainSquare) + (f * fRest + fRest * f);
  const square = plainSquare + squareRest;
  const linear = f - 0.5 * square;
  const after =
    -0.5 * square -
    (linear - f) +
    (fRest - 0.5 * (squareRest - (square - plainSquare)) + square * f * afterSquare(f));
  const small = linear + after;
  const smallRest = after - (small - linear);
  // k ln 2 - ln c, and all together.
  const twos = power * lnTwoFirst;
  const table = reciprocals[row + 1] as number;
  const coarse = twos + table;
  const twosRest = power * lnTwoRest;
  const fine = coarse + twosRest;
  const fineRest =
    sumLeft(coarse, twosRest, fine) + (sumLeft(twos, table, coarse) + (reciprocals[row + 2] as number));
  const base = fine + fineRest;
  const baseRest = fineRest - (base - fine);
  const sum = base + small;
  const sumRest = sumLeft(base, small, sum) + (baseRest + smallRest);
  const result = sum + sumRest;
  left[0] = sumRest - (result - sum);
  return result;
}

/** (ln(1 + f) - f + f²/2) / f³ for |f| < 0.0066. */
export function afterSquare(f: number): number {
  return (
    1 / 3 -
    f *
      (1 / 4 -
        f * (1 / 5 - f * (1 / 6 - f * (1 / 7 - f * (1 / 8 - f * (1 / 9 - f * (1 / 10 - f * (1 / 11))))))))
  );
}
