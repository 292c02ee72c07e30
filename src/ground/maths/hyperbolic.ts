// tanh.
import { expm1AsPair } from './exponential.ts';
import { addPairs, dividePairs } from './pair.ts';

/**
 * The hyperbolic tangent, t / (t + 2) with t = e^(2x) - 1, as pairs.
 * Error: at most 0.51 units in the last place in 20 000 points.
 * @example tanh(0.5) // 0.46211715726000973
 */
export function tanh(x: number): number {
  const size = Math.abs(x);
  if (size > 20) return Math.sign(x);
  // Also for -0 and NaN; the cube of such an x is below its last place.
  if (!(size > 1e-9)) return x;
  const t = expm1AsPair(2 * size);
  return Math.sign(x) * dividePairs(t, addPairs(t, { hi: 2, lo: 0 })).hi;
}
