// How thin the lower tail of the normal distribution is: its logarithm, and its edge over what lies below, without loss far out.
import { rootHalf } from './erfc-table.ts';
import { scaledErfcOf } from './error-function.ts';
import { exp } from './exponential.ts';
import { log } from './logarithm.ts';
import { normalCdf } from './normal-distribution.ts';
import { multiplyPairs } from './pair.ts';

/** √(2/π) and 1/√(2π). */
const ROOT_TWO_PER_PI = 0.7978845608028654;
const DENSITY_AT_NOUGHT = 0.3989422804014327;
/** Below this the scaled complement of the error function is taken: there the plain one is about to lose its digits. */
const IN_TAIL = -1;
const ROOT_HALF = { hi: rootHalf[0] as number, lo: rootHalf[1] as number };

/**
 * The logarithm of the probability that a standard normal number is at most z: ln Φ(z); it never vanishes.
 * @param z any number; −Infinity gives −Infinity
 * @throws RangeError for NaN
 * @source as, 7.1.13 and 26.2.29
 * @example logNormalCdf(-40) // -804.6084420137538
 */
export function logNormalCdf(z: number): number {
  mustBeNumber(z);
  if (z === Number.NEGATIVE_INFINITY) return z;
  return z < IN_TAIL ? log(scaledTail(z) / 2) - (z * z) / 2 : log(normalCdf(z));
}

/**
 * The density at z over the probability below it: φ(z)/Φ(z), about −z far below nought.
 * @param z any finite number, or Infinity for 0
 * @throws RangeError for NaN
 * @source as, 26.2.13 (from memory); the ratio is known as the inverse of Mills' ratio
 * @example normalEdge(0) // 0.7978845608028654
 */
export function normalEdge(z: number): number {
  mustBeNumber(z);
  if (z === Number.POSITIVE_INFINITY) return 0;
  return z < IN_TAIL ? ROOT_TWO_PER_PI / scaledTail(z) : normalDensity(z) / normalCdf(z);
}

/** The density of the standard normal distribution. */
export function normalDensity(z: number): number {
  return DENSITY_AT_NOUGHT * exp((-z * z) / 2);
}

/** exp(z²/2) erfc(−z/√2): the tail below z, freed of what makes it vanish. */
function scaledTail(z: number): number {
  return scaledErfcOf(multiplyPairs({ hi: -z, lo: 0 }, ROOT_HALF)).hi;
}

function mustBeNumber(z: number): void {
  if (Number.isNaN(z)) throw new RangeError('a tail was asked at no number');
}
