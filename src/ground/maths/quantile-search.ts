// The search that turns a tail probability around: Newton's steps on the logarithm of the tail, held between bounds.
import { exp } from './exponential.ts';
import { log } from './logarithm.ts';

/** More steps than this are never wanted: bounds halve at the worst. */
const MOST_STEPS = 400;

const epsilon = 2.220446049250313e-16;

/** A tail at x > 0, and x times the density there: what the tail changes by when x changes in proportion. */
export interface TailAt {
  readonly tail: number;
  readonly pull: number;
}

/**
 * The x > 0 at which a tail has the probability wanted. A lower tail rises with x, an upper one falls.
 *
 * In the logarithms of both x and tail the curve is nearly straight wherever it is small, so that few steps are needed
 * however far out the answer lies.
 * @param search `start` any x > 0, the better the faster
 */
export function tailQuantile(
  at: (x: number) => TailAt,
  search: { readonly wanted: number; readonly start: number; readonly side: 'lower' | 'upper' },
): number {
  const { wanted, side } = search;
  const direction = side === 'lower' ? 1 : -1;
  let low = 0;
  let high = Number.POSITIVE_INFINITY;
  let x = search.start;
  for (let step = 0; step < MOST_STEPS; step += 1) {
    const { tail, pull } = at(x);
    const excess = tail > 0 ? relativeExcess(tail, wanted) : Number.NEGATIVE_INFINITY;
    const next = stepped(x, (-direction * excess * tail) / pull);
    if (Math.abs(next - x) <= epsilon * x) return next;
    if (excess * direction > 0) high = Math.min(high, x);
    else low = Math.max(low, x);
    x = between(next, low, high);
    if (high - low <= epsilon * low) return x;
  }
  return x;
}

/** ln(tail / wanted), also where they are nearly equal. */
function relativeExcess(tail: number, wanted: number): number {
  const near = (tail - wanted) / wanted;
  return Math.abs(near) < 1e-4 ? near - (near * near) / 2 : log(tail) - log(wanted);
}

/** x moved by a step in its logarithm. */
function stepped(x: number, step: number): number {
  if (!Number.isFinite(step)) return Number.NaN;
  return Math.abs(step) < 1e-4 ? x + x * step * (1 + step / 2) : x * exp(Math.max(-30, Math.min(30, step)));
}

/** The next x if it lies between the bounds; else their middle, in the logarithm, or well beyond the one that is known. */
function between(next: number, low: number, high: number): number {
  if (next > low && next < high) return next;
  if (high === Number.POSITIVE_INFINITY) return low * 1024;
  return low === 0 ? high / 1024 : Math.sqrt(low) * Math.sqrt(high);
}
