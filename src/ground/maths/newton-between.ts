// Where a function with a known slope passes through 0 between two ends: Newton's steps that never leave the bracket.

const NARROW = 4 * 2.220446049250313e-16;
/** Steps below this, in relation to x, that shrink no more are rounding. */
const FAINT = 1e-10;
const MOST_STEPS = 400;

/**
 * Writes the value of a function at x into `at[0]` and its slope into `at[1]`.
 * It writes into an array that is handed in, so that a step makes nothing new.
 */
export type ValueAndSlope = (x: number, at: Float64Array) => void;

export interface NewtonSearch {
  readonly low: number;
  readonly high: number;
  /** Where to begin, between the ends. */
  readonly start: number;
  /**
   * A relative step of Newton's that is small enough to be the last; the default is four units in the last place. As steps
   * shrink by squares, 1e-8 leaves an error of about 1e-16. Bisections always go on to the last digits.
   */
  readonly narrow?: number;
}

/**
 * Newton's steps x − f/f′, held between the ends; a step that would leave the bracket, or that gains less than half of the
 * one before, is a bisection. Where steps are as small as the function's own rounding and shrink no more, it stops.
 * @param search `low` < `high` with f at most 0 at `low` and at least 0 at `high`: an end is looked at only where the steps
 * run up to it, as each look costs as much as a step
 * @param at two numbers of room; afterwards value and slope at the last point looked at
 * @returns the root
 * @throws RangeError for a NaN, for ends turned round, for a bracket without a root, and where 400 steps do not end
 * @source textbook numerical analysis, from memory
 * @example newtonBetween((x, at) => { at[0] = x * x - 2; at[1] = 2 * x; }, { low: 0, high: 2, start: 1 }) // 1.4142135623730951
 */
export function newtonBetween(of: ValueAndSlope, search: NewtonSearch, at = new Float64Array(2)): number {
  let { low, high, start: x } = search;
  const narrow = search.narrow ?? NARROW;
  if (!(low < high && x >= low && x <= high)) throw new RangeError(`no bracket: ${low}, ${x}, ${high}`);
  let moveBefore = high - low;
  for (let step = 0; step < MOST_STEPS; step++) {
    const value = lookedAt(of, x, at);
    if (value === 0) return x;
    if (value < 0) low = x;
    else high = x;
    const newton = value / (at[1] as number);
    const isInside = x - newton >= low && x - newton <= high;
    const size = Math.abs(newton);
    if (isInside && size >= moveBefore / 2 && size <= FAINT * Math.abs(x)) return x;
    const isNewton = isInside && size <= moveBefore / 2;
    const move = isNewton ? newton : x - (low + (high - low) / 2);
    const next = x - move;
    if (Math.abs(move) <= (isNewton ? narrow : NARROW) * Math.abs(next) || next === x)
      return insideOf(of, next, search, at);
    moveBefore = Math.abs(move);
    x = next;
  }
  throw new RangeError(`no root found between ${search.low} and ${search.high} in ${MOST_STEPS} steps`);
}

function lookedAt(of: ValueAndSlope, x: number, at: Float64Array): number {
  of(x, at);
  if (Number.isNaN(at[0]) || Number.isNaN(at[1])) throw new RangeError(`a function gave no number at ${x}`);
  return at[0] as number;
}

/** A root close to an end is one only if the function has the sign there that a root asks for. */
function insideOf(of: ValueAndSlope, root: number, { low, high }: NewtonSearch, at: Float64Array): number {
  const near = FAINT * Math.abs(root);
  const isLost =
    (root - low <= near && lookedAt(of, low, at) > 0) || (high - root <= near && lookedAt(of, high, at) < 0);
  if (isLost) throw new RangeError(`no passage through 0 between ${low} and ${high}`);
  return root;
}
