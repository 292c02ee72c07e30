// The way down to the least sum of squares, and how it ended.
import {
  type CurvePoint,
  type CurveSurface,
  columnsOf,
  type Left,
  lengthOf,
  timesVector,
} from './curve-surface.ts';
import { columnLengths, dampedStep, offsetOf, wholeStep } from './damped-step.ts';
import type { LeastSquares } from './least-squares.ts';
import type { Matrix } from './matrix.ts';

export interface Bounds {
  readonly low?: number;
  readonly high?: number;
}

/**
 * `settled`: at a least sum of squares, to working precision. `out of steps`: still falling. `stuck`: no step brings the sum
 * down and yet it is no least one. `undetermined`: another curve fits as well, so that no one set of parameters is the best.
 */
export type FitVerdict = 'settled' | 'out of steps' | 'stuck' | 'undetermined';

/** Ends of each parameter, in their order; infinite where there is none. */
export interface Limits {
  readonly low: Float64Array;
  readonly high: Float64Array;
}

export interface Descent {
  readonly verdict: FitVerdict;
  readonly here: Left;
  /** Places of the parameters that no bound holds. */
  readonly free: readonly number[];
  /** The step that is left, with what it knows of the doubts; null where several would do. */
  readonly whole: LeastSquares | null;
  readonly offset: number;
  readonly steps: number;
}

const FIRST_DAMPING = 1e-3;
/** A damping beyond this makes no step that moves a double. */
const LARGEST_DAMPING = 1e20;
/** At an offset this small the sum of squares is at its least to about 1 part in 10¹². */
const SETTLED_OFFSET = 1e-6;
/** So close that a further step moves no digit that a doubt leaves standing. */
const CLOSE_OFFSET = 1e-11;
const MOST_POLISHES = 10;
const EPSILON = 2.220446049250313e-16;

/** Where the walk stands: the slopes there, which parameters are free, and the step that the straight curve would take. */
interface Standing {
  readonly here: Left;
  readonly free: readonly number[];
  readonly slopes: Matrix;
  readonly whole: LeastSquares | null;
  readonly offset: number;
  /** Length of what rounding makes of what is left. */
  readonly rounding: number;
}

/**
 * Walks down from a start until no step helps, and says what that place is.
 * @throws RangeError if the curve or its slopes are not finite at the start
 * @source nielsen-1999 for the damping; bates-watts-1981 for the end
 */
export function descent<Name extends string, At>(
  surface: CurveSurface<Name, At>,
  start: Float64Array,
  { limits, mostSteps }: { readonly limits: Limits; readonly mostSteps: number },
): Descent {
  const begin = surface.at(start);
  const first = begin === null ? null : standingAt(surface, begin, limits);
  if (first === null) throw new RangeError('the curve has no finite value with finite slopes at the start');
  let standing: Standing = first;
  let scales = columnLengths(standing.slopes);
  let damping = FIRST_DAMPING;
  let growth = 2;
  let steps = 0;
  while (steps < mostSteps && damping < LARGEST_DAMPING && standing.offset > CLOSE_OFFSET) {
    steps += 1;
    const tried = tryStep(surface, standing, { limits, scales, damping });
    if (tried === null) {
      damping *= growth;
      growth *= 2;
      continue;
    }
    standing = tried.standing;
    const each = columnLengths(standing.slopes);
    scales = scales.map((scale, at) => Math.max(scale, each[at] as number));
    const bend = 2 * tried.gain - 1;
    damping = Math.max(damping * Math.max(1 / 3, 1 - bend * bend * bend), 1e-30);
    growth = 2;
  }
  const verdict = verdictOf(standing, steps >= mostSteps);
  return { ...polished(surface, standing, limits), verdict, steps };
}

/**
 * Near the least sum its own rounding hides a step's gain, but not the angle: whole steps go on while that falls, and the sum
 * rises by no more than rounding.
 */
function polished<Name extends string, At>(
  surface: CurveSurface<Name, At>,
  from: Standing,
  limits: Limits,
): Standing {
  let standing = from;
  for (let step = 0; step < MOST_POLISHES && standing.offset <= SETTLED_OFFSET; step += 1) {
    const { whole, free, here, rounding } = standing;
    if (whole === null) break;
    const slack = 4 * rounding * lengthOf(here.left);
    const there = surface.at(moved(here.parameters, { free, step: whole.solution, limits }));
    if (there === null || there.sumOfSquares > here.sumOfSquares + slack) break;
    const next = standingAt(surface, there, limits);
    if (next === null || !(next.offset < standing.offset)) break;
    standing = next;
  }
  return standing;
}

/** The parameters a step further, each no further than its bounds. */
function moved(
  parameters: Float64Array,
  by: { readonly free: readonly number[]; readonly step: Float64Array; readonly limits: Limits },
): Float64Array {
  const { low, high } = by.limits;
  const there = Float64Array.from(parameters);
  by.free.forEach((at, k) => {
    const aimed = (there[at] as number) + (by.step[k] as number);
    there[at] = Math.min(high[at] as number, Math.max(low[at] as number, aimed));
  });
  return there;
}

function verdictOf({ whole, offset }: Standing, ranOut: boolean): FitVerdict {
  if (whole !== null && offset <= SETTLED_OFFSET) return 'settled';
  if (ranOut) return 'out of steps';
  return whole === null ? 'undetermined' : 'stuck';
}

/** Null where the slopes are not finite. A parameter is held at its bound while the sum would fall beyond it. */
function standingAt<Name extends string, At>(
  surface: CurveSurface<Name, At>,
  here: Left,
  { low, high }: Limits,
): Standing | null {
  const slopes = surface.slopes(here.parameters);
  if (slopes === null) return null;
  const free = Array.from(here.parameters.keys()).filter((at) => {
    const value = here.parameters[at] as number;
    if (value > (low[at] as number) && value < (high[at] as number)) return true;
    const pull = dot(columnsOf(slopes, [at]).values, here.left);
    return value <= (low[at] as number) ? pull > 0 : pull < 0;
  });
  const whole = free.length === 0 ? null : wholeStep(columnsOf(slopes, free), here.left);
  const rounding = roundingAt(here, surface);
  const offset = offsetAt({ here, free, slopes, whole, rounding });
  return { here, free, slopes, whole, offset, rounding };
}

function offsetAt({ free, slopes, whole, rounding }: Omit<Standing, 'offset'>): number {
  if (free.length === 0) return 0;
  if (whole === null) return Number.POSITIVE_INFINITY;
  return offsetOf(columnsOf(slopes, free), whole, 2 * rounding);
}

/** What is left is a difference of value and curve, each rounded. */
function roundingAt<Name extends string, At>({ left }: Left, { points }: CurveSurface<Name, At>): number {
  let squares = 0;
  left.forEach((each, at) => {
    const { value, u = 1 } = points[at] as CurvePoint<At>;
    const size = Math.abs(value / u) + Math.abs(each);
    squares += size * size;
  });
  return EPSILON * Math.sqrt(squares);
}

/** A step that brings the sum down, and how much of what it promised it kept; null if it does not. */
function tryStep<Name extends string, At>(
  surface: CurveSurface<Name, At>,
  { here, free, slopes }: Standing,
  by: { readonly limits: Limits; readonly scales: readonly number[]; readonly damping: number },
): { readonly standing: Standing; readonly gain: number } | null {
  const { limits, damping } = by;
  const among = columnsOf(slopes, free);
  const scales = free.map((at) => by.scales[at] as number);
  const step = dampedStep(among, here.left, { scales, damping });
  const parameters = moved(here.parameters, { free, step, limits });
  free.forEach((at, k) => {
    step[k] = (parameters[at] as number) - (here.parameters[at] as number);
  });
  if (step.every((each) => each === 0)) return null;
  const there = surface.at(parameters);
  if (there === null || !(there.sumOfSquares < here.sumOfSquares)) return null;
  const standing = standingAt(surface, there, limits);
  if (standing === null) return null;
  const straight = timesVector(among, step).map((each, row) => (here.left[row] as number) - each);
  const promised = here.sumOfSquares - lengthOf(straight) * lengthOf(straight);
  const gain = promised > 0 ? (here.sumOfSquares - there.sumOfSquares) / promised : 0;
  return { standing, gain: Math.min(gain, 1) };
}

function dot(a: Float64Array, b: Float64Array): number {
  let sum = 0;
  for (let at = 0; at < a.length; at += 1) sum += (a[at] as number) * (b[at] as number);
  return sum;
}
