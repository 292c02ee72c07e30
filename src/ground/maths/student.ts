// Student's t distribution: probabilities and quantiles.
import { exp } from './exponential.ts';
import { log1p } from './logarithm.ts';
import { normalQuantile } from './normal-distribution.ts';
import { tailQuantile } from './quantile-search.ts';
import { deviance, stirlingError } from './stirling.ts';

const TWO_PI = 6.283185307179586;
const MOST_DEGREES = 1e6;
const MOST_TERMS = 100_000;
/** Beyond these a square or a density would lie among numbers that a double hardly holds. */
const LARGEST_T = 1e100;
const LEAST_TAIL = 1e-100;

/**
 * The probability that a t of so many degrees of freedom is at most `t`.
 *
 * ½ + t f(t) F / 2 with F the continued fraction of the incomplete beta function, from its nearer end.
 * Error: relative, at most 6.9e-15 in 500 points.
 * @param t from -1e100 to 1e100, or infinite; `degrees` from 1 to a million, not necessarily whole
 * @throws RangeError if t or the degrees are out of range.
 * @source as, 26.7; didonato-morris-1992; loader-2000
 * @example studentCdf({ t: 2.92, degrees: 16 }) // 0.99499…
 */
export function studentCdf({ t, degrees }: { readonly t: number; readonly degrees: number }): number {
  mustHaveDegrees(degrees);
  const size = Math.abs(t);
  if (!(size <= LARGEST_T || size === Number.POSITIVE_INFINITY))
    throw new RangeError(`a t is from -${LARGEST_T} to ${LARGEST_T} or infinite, not ${t}`);
  if (t < 0) return upperTail(-t, degrees);
  return isNear(t, degrees) ? 0.5 + middle(t, degrees) : 1 - upperTail(t, degrees);
}

/**
 * The t below which such a number lies with the probability given: the inverse of `studentCdf`.
 * Error: relative, at most 2.3e-15 in 500 points.
 * @param probability from 1e-100 to 1, or 0; 0 gives -Infinity, 1 gives Infinity
 * @throws RangeError if the probability or the degrees are out of range.
 * @source as, 26.7.5 for the first guess
 * @example studentQuantile({ probability: 0.995, degrees: 16 }) // 2.920781622425…
 */
export function studentQuantile({
  probability,
  degrees,
}: {
  readonly probability: number;
  readonly degrees: number;
}): number {
  mustHaveDegrees(degrees);
  if (probability === 0) return Number.NEGATIVE_INFINITY;
  if (!(probability >= LEAST_TAIL && probability <= 1))
    throw new RangeError(`a probability is 0, or from ${LEAST_TAIL} to 1, not ${probability}`);
  if (probability === 1) return Number.POSITIVE_INFINITY;
  if (probability === 0.5) return 0;
  const sign = probability < 0.5 ? -1 : 1;
  const start = guess(probability, degrees);
  // From 0.25 to 1 these differences are exact.
  if (probability > 0.25 && probability < 0.75) {
    const at = (t: number) => ({ tail: middle(t, degrees), pull: timesDensity(t, degrees) });
    return sign * tailQuantile(at, { wanted: Math.abs(probability - 0.5), start, side: 'lower' });
  }
  const at = (t: number) => ({ tail: upperTail(t, degrees), pull: timesDensity(t, degrees) });
  const wanted = probability < 0.5 ? probability : 1 - probability;
  return sign * tailQuantile(at, { wanted, start, side: 'upper' });
}

/** The normal quantile with its first correction for the degrees; its sign is of no matter here. */
function guess(probability: number, degrees: number): number {
  const z = Math.abs(normalQuantile(probability));
  return z * (1 + (z * z + 1) / (4 * degrees));
}

/** t f(t), with f(t) = Γ((n+1)/2) / (√(n π) Γ(n/2)) (1 + t²/n)^(−(n+1)/2): f alone would vanish far out. @source loader-2000 */
function timesDensity(t: number, degrees: number): number {
  const spread = (t * t) / degrees;
  const [half, next] = [degrees / 2, (degrees + 1) / 2];
  const constant = stirlingError(next) - stirlingError(half) - deviance(half, next);
  return exp(constant - half * log1p(spread)) * (t / Math.sqrt(TWO_PI * (1 + spread)));
}

/** The shares of t² and of the degrees in their sum: each is worked out, for 1 less the other would lose its digits. */
function sharesOf(t: number, degrees: number): { ofSquare: number; ofDegrees: number } {
  const sum = degrees + t * t;
  return { ofSquare: (t * t) / sum, ofDegrees: degrees / sum };
}

/** Where the fraction from the middle is the shorter one. */
function isNear(t: number, degrees: number): boolean {
  return sharesOf(t, degrees).ofSquare < 3 / (degrees + 5);
}

/** P(0 ≤ T ≤ t) for t ≥ 0. */
function middle(t: number, degrees: number): number {
  if (!isNear(t, degrees)) return 0.5 - upperTail(t, degrees);
  const { ofSquare, ofDegrees } = sharesOf(t, degrees);
  const fraction = betaFraction({ x: ofSquare, rest: ofDegrees }, { a: 0.5, b: degrees / 2 });
  return (timesDensity(t, degrees) / 2) * fraction;
}

/** P(T > t) for t ≥ 0. */
function upperTail(t: number, degrees: number): number {
  if (t === Number.POSITIVE_INFINITY) return 0;
  if (isNear(t, degrees)) return 0.5 - middle(t, degrees);
  const { ofSquare, ofDegrees } = sharesOf(t, degrees);
  const fraction = betaFraction({ x: ofDegrees, rest: ofSquare }, { a: degrees / 2, b: 0.5 });
  return (timesDensity(t, degrees) / 2) * fraction;
}

/**
 * I_x(a, b) over x^a (1 − x)^b / B(a, b): a continued fraction in which 1 − x counts as it is given.
 * @source didonato-morris-1992
 */
function betaFraction(
  { x, rest }: { readonly x: number; readonly rest: number },
  { a, b }: { readonly a: number; readonly b: number },
): number {
  // (a + b)(1 − x) − b, from the side on which it is no small difference.
  const first = 1 + (a <= b ? a - (a + b) * x : (a + b) * rest - b);
  let [before, now] = [
    { over: 0, under: 1 },
    { over: 1, under: first / (1 + 1 / a) },
  ];
  let fraction = now.over / now.under;
  for (let n = 1; n < MOST_TERMS; n += 1) {
    const part = n / a;
    const w = n * (b - n) * x;
    const narrow = a / (a + 2 * n - 1);
    const p = 1 + (n - 1) / a;
    const alpha = p * (p + b / a) * narrow * narrow * w * x;
    const beta = n + w / (a + 2 * n - 1) + ((1 + part) / (1 + 1 / a + 2 * part)) * (first + n * (rest + 1));
    const over = alpha * before.over + beta * now.over;
    const under = alpha * before.under + beta * now.under;
    const next = over / under;
    if (Math.abs(next - fraction) <= 1.2e-16 * next) return next;
    fraction = next;
    // Divided by the same number at every step, so that neither grows without end.
    [before, now] = [
      { over: now.over / under, under: now.under / under },
      { over: next, under: 1 },
    ];
  }
  throw new RangeError(`the fraction for Student's distribution does not end at ${a} and ${b}`);
}

function mustHaveDegrees(degrees: number): void {
  if (!(degrees >= 1 && degrees <= MOST_DEGREES))
    throw new RangeError(`degrees of freedom are from 1 to ${MOST_DEGREES}, not ${degrees}`);
}
