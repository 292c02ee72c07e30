// Where a function passes through 0 between two ends at which its signs differ: Brent's method.

/** No narrower than this many units in the last place is looked for. */
const NARROW = 2.220446049250313e-16;
/** Brent's method takes ten steps or so on a smooth function; on a step it halves, and 1100 halvings pass the whole range of doubles. */
const MOST_STEPS = 2500;

/**
 * Brent's method: inverse quadratic interpolation or the secant where they gain ground, else a bisection. The bracket is
 * never lost, so a step is found as surely as a smooth passage.
 * @param ends `low` < `high`; the function has other signs at them, or is 0 at one
 * @param close an absolute value of the function that is near enough to 0
 * @returns a point at which the function is `close` to 0; else the end of the last bracket, at most four units in the last
 * place wide, at which it has the sign that it has at `high`
 * @throws RangeError if the signs at the ends do not differ, or if the function gives a NaN
 * @source brent-1973 (chapter 4)
 * @example rootBetween((x) => x * x - 2, { low: 0, high: 2 }) // 1.4142135623730951
 */
export function rootBetween(
  of: (x: number) => number,
  ends: { readonly low: number; readonly high: number },
  close = 0,
): number {
  const { low, high } = ends;
  const [atLow, atHigh] = [of(low), of(high)];
  if (!(low < high) || Number.isNaN(atLow) || Number.isNaN(atHigh) || isSameSide(atLow, atHigh))
    throw new RangeError(`no passage through 0 between ${low} and ${high}`);
  if (Math.abs(atLow) <= close) return low;
  const bracket = new Bracket(low, atLow, high, atHigh);
  for (let step = 1; step <= MOST_STEPS && !bracket.isClosed(close); step++) {
    const x = bracket.next();
    const value = of(x);
    if (Number.isNaN(value)) throw new RangeError(`a function gave no number at ${x}`);
    bracket.take(x, value);
  }
  return bracket.answer(close, atHigh);
}

/** A 0 counts to the side above. */
function isSameSide(one: number, other: number): boolean {
  return one < 0 === other < 0 && one !== 0 && other !== 0;
}

/** The best point, the point across from it, and the best before: plain fields, so that a step makes nothing new. */
class Bracket {
  #best: number;
  #bestValue: number;
  #across: number;
  #acrossValue: number;
  #before: number;
  #beforeValue: number;
  #move: number;
  #moveBefore: number;

  constructor(low: number, atLow: number, high: number, atHigh: number) {
    this.#best = high;
    this.#bestValue = atHigh;
    this.#across = low;
    this.#acrossValue = atLow;
    this.#before = low;
    this.#beforeValue = atLow;
    this.#move = high - low;
    this.#moveBefore = this.#move;
    this.#putBestFirst();
  }

  isClosed(close: number): boolean {
    return (
      Math.abs(this.#bestValue) <= close ||
      Math.abs(this.#across - this.#best) / 2 <= NARROW * Math.abs(this.#best)
    );
  }

  /** Where to look next. */
  next(): number {
    const least = NARROW * Math.abs(this.#best);
    const half = (this.#across - this.#best) / 2;
    const guess = this.#interpolated();
    // Brent's two conditions: inside three quarters of the bracket, and less than half of the move before the last.
    const gains =
      Math.abs(this.#moveBefore) >= least &&
      guess * half > 0 &&
      Math.abs(guess) < 1.5 * Math.abs(half) - least / 2 &&
      Math.abs(guess) < Math.abs(this.#moveBefore) / 2;
    this.#moveBefore = gains ? this.#move : half;
    this.#move = gains ? guess : half;
    return this.#best + (Math.abs(this.#move) > least ? this.#move : Math.sign(half) * least);
  }

  /** The move from the best point by inverse quadratic interpolation, or by the secant where only two points differ; NaN if neither is of use. */
  #interpolated(): number {
    if (Math.abs(this.#beforeValue) <= Math.abs(this.#bestValue)) return Number.NaN;
    const s = this.#bestValue / this.#beforeValue;
    const span = this.#across - this.#best;
    if (this.#before === this.#across) return (span * s) / (s - 1);
    const q = this.#beforeValue / this.#acrossValue;
    const r = this.#bestValue / this.#acrossValue;
    const over = s * (span * q * (q - r) - (this.#best - this.#before) * (r - 1));
    return -over / ((q - 1) * (r - 1) * (s - 1));
  }

  take(x: number, value: number): void {
    this.#before = this.#best;
    this.#beforeValue = this.#bestValue;
    this.#best = x;
    this.#bestValue = value;
    if (value < 0 === this.#acrossValue < 0) {
      this.#across = this.#before;
      this.#acrossValue = this.#beforeValue;
      this.#move = x - this.#before;
      this.#moveBefore = this.#move;
    }
    this.#putBestFirst();
  }

  #putBestFirst(): void {
    if (Math.abs(this.#acrossValue) >= Math.abs(this.#bestValue)) return;
    this.#before = this.#best;
    this.#beforeValue = this.#bestValue;
    this.#best = this.#across;
    this.#bestValue = this.#acrossValue;
    this.#across = this.#before;
    this.#acrossValue = this.#beforeValue;
  }

  answer(close: number, atHigh: number): number {
    if (Math.abs(this.#bestValue) <= close) return this.#best;
    return this.#bestValue < 0 === atHigh < 0 ? this.#best : this.#across;
  }
}
