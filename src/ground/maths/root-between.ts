// Where a function passes through 0 between two ends at which its signs differ.

/** No narrower than this many units in the last place is looked for. */
const NARROW = 4 * 2.220446049250313e-16;
/** Regula falsi takes ten steps or so; where it creeps, every fourth step is a bisection and these are enough. */
const MOST_STEPS = 200;

/**
 * Regula falsi in the Illinois form, with a bisection at every fourth step: fast on smooth functions, sure on steps.
 * @param ends `low` < `high`; the function is below 0 at the first and at least 0 at the second
 * @param close an absolute value of the function that is near enough to 0
 * @returns the end of the last bracket at which the function is at least 0, or a point at which it is `close` to 0
 * @throws RangeError if the signs at the ends are not these, or if the function gives a NaN
 * @source textbook numerical analysis, from memory
 * @example rootBetween((x) => x * x - 2, { low: 0, high: 2 }, 1e-15) // 1.414213562373095
 */
export function rootBetween(
  of: (x: number) => number,
  ends: { readonly low: number; readonly high: number },
  close: number,
): number {
  let [low, high] = [ends.low, ends.high];
  let [below, above] = [of(low), of(high)];
  if (!(low < high && below < 0 && above >= 0))
    throw new RangeError(`no passage from below 0 between ${low} and ${high}`);
  let stayed: 'low' | 'high' | null = null;
  for (let step = 1; step <= MOST_STEPS && high - low > NARROW * Math.abs(high); step++) {
    const falsi = (low * above - high * below) / (above - below);
    const isInside = falsi > low && falsi < high;
    const x = step % 4 === 0 || !isInside ? low + (high - low) / 2 : falsi;
    const value = of(x);
    if (Number.isNaN(value)) throw new RangeError(`a function gave no number at ${x}`);
    if (Math.abs(value) <= close) return x;
    // An end that stays twice counts half, so that the next guess falls on its side.
    if (value < 0) {
      [low, below] = [x, value];
      if (stayed === 'high') above /= 2;
      stayed = 'high';
    } else {
      [high, above] = [x, value];
      if (stayed === 'low') below /= 2;
      stayed = 'low';
    }
  }
  return high;
}
