// Steps of ordinary differential equations: Dormand and Prince's pair of orders 5 and 4, with its error held.
import { pow } from './power.ts';
import { rootBetween } from './root-between.ts';

/** Writes dy/dt at (t, y) into `slope`. */
export type Slopes = (t: number, y: Float64Array, slope: Float64Array) => void;

/** A figure of the state; where it comes to 0 or below, the integration stops. */
export type Crossing = (t: number, y: Float64Array) => number;

export interface StepRules {
  /** How far off a step may be in relation to the state; the default is 1e-10. */
  readonly relativeError?: number;
  /** How far off a step may be near 0, in the unit of the state; the default is 1e-12. */
  readonly absoluteError?: number;
  /** The length of the first step; the default is a guess from the slopes. */
  readonly firstStep?: number;
  /** The default is 100 000. */
  readonly mostSteps?: number;
}

export interface Run {
  /** Where it stopped. */
  readonly t: number;
  readonly stoppedBy: 'end' | 'crossing';
  /** Steps kept and steps tried again. */
  readonly steps: number;
  readonly refused: number;
}

/** The weights of the seven slopes of a step, row after row: those that make the point at which the next slope is taken. */
// biome-ignore format: a table reads by rows
const WEIGHTS = new Float64Array([
  1 / 5, 0, 0, 0, 0, 0,
  3 / 40, 9 / 40, 0, 0, 0, 0,
  44 / 45, -56 / 15, 32 / 9, 0, 0, 0,
  19372 / 6561, -25360 / 2187, 64448 / 6561, -212 / 729, 0, 0,
  9017 / 3168, -355 / 33, 46732 / 5247, 49 / 176, -5103 / 18656, 0,
  35 / 384, 0, 500 / 1113, 125 / 192, -2187 / 6784, 11 / 84,
]);
const NODES = new Float64Array([0, 1 / 5, 3 / 10, 4 / 5, 8 / 9, 1, 1]);
/** Fifth order less fourth order. */
// biome-ignore format: a table reads by rows
const ERROR_WEIGHTS = new Float64Array([
  71 / 57600, 0, -71 / 16695, 71 / 1920, -17253 / 339200, 22 / 525, -1 / 40,
]);
const STAGES = 7;

/**
 * An integrator for a system of one size. All room is made once: a step makes nothing new.
 *
 * Each step is taken by both orders and is tried again, shorter, where they differ by more than the rules allow. A crossing
 * is looked for by steps of the method itself from the start of the step in which the sign changed, so that its place is as
 * exact as the run; two crossings within one step are not seen.
 * @source dormand-prince-1980 (RK5(4)7M)
 * @example
 * const y = new Float64Array([1]);
 * new DormandPrince(1, (_t, y, slope) => { slope[0] = -y[0]; }).run(y, { from: 0, to: 1 }); // y[0] is 0.36787944…
 */
export class DormandPrince {
  readonly #size: number;
  readonly #of: Slopes;
  readonly #rules: Required<Omit<StepRules, 'firstStep'>> & { readonly firstStep: number | undefined };
  /** Seven slopes, one after the other. */
  readonly #slopes: readonly Float64Array[];
  readonly #next: Float64Array;

  /** @throws RangeError for a size that is no whole number from 1 on, and for rules that allow no error at all */
  constructor(size: number, of: Slopes, rules: StepRules = {}) {
    const { relativeError = 1e-10, absoluteError = 1e-12, mostSteps = 100_000, firstStep } = rules;
    if (!(Number.isInteger(size) && size > 0)) throw new RangeError(`a system of ${size} figures`);
    if (!(relativeError >= 0 && absoluteError >= 0 && relativeError + absoluteError > 0))
      throw new RangeError(`errors of ${relativeError} and ${absoluteError} cannot be held`);
    this.#size = size;
    this.#of = of;
    this.#rules = { relativeError, absoluteError, mostSteps, firstStep };
    this.#slopes = Array.from({ length: STAGES }, () => new Float64Array(size));
    this.#next = new Float64Array(size);
  }

  /**
   * Carries `y` from `from` on, until `to` or until the crossing comes to 0 or below.
   * @param y the state; it is overwritten by that at the end
   * @param span `from` < `to`; `to` may be infinite if there is a crossing
   * @throws RangeError for a NaN in slopes, state or crossing, and for more steps than the rules allow
   */
  run(
    y: Float64Array,
    span: { readonly from: number; readonly to: number },
    crossing: Crossing | null = null,
  ): Run {
    const { from, to } = span;
    if (!(from <= to) || (to === Number.POSITIVE_INFINITY && crossing === null))
      throw new RangeError(`no way from ${from} to ${to}`);
    let t = from;
    let [steps, refused] = [0, 0];
    if (crossing !== null && this.#isCrossed(crossing(t, y)))
      return { t, stoppedBy: 'crossing', steps, refused };
    this.#slope(t, y, 0);
    let length = Math.min(this.#rules.firstStep ?? this.#guess(y), to - t);
    while (t < to) {
      if (steps + refused >= this.#rules.mostSteps)
        throw new RangeError(`more than ${this.#rules.mostSteps} steps: the last was at ${t}`);
      const error = this.#try(t, y, length);
      if (error > 1) {
        refused += 1;
        length *= Math.max(0.2, 0.9 * pow(error, -0.2));
        if (t + length === t) throw new RangeError(`no step is short enough at ${t}`);
        continue;
      }
      steps += 1;
      const reached = length >= to - t ? to : t + length;
      if (crossing !== null && this.#isCrossed(crossing(reached, this.#next))) {
        const within = this.#crossingWithin(t, y, length, crossing);
        y.set(this.#next);
        return { t: t + within, stoppedBy: 'crossing', steps, refused };
      }
      t = reached;
      y.set(this.#next);
      // The last slope of a step is the first of the next.
      (this.#slopes[0] as Float64Array).set(this.#slopes[STAGES - 1] as Float64Array);
      length = Math.min(length * Math.min(5, 0.9 * pow(Math.max(error, 1e-10), -0.2)), to - t);
    }
    return { t, stoppedBy: 'end', steps, refused };
  }

  #isCrossed(value: number): boolean {
    if (Number.isNaN(value)) throw new RangeError('a crossing gave no number');
    return value <= 0;
  }

  #slope(t: number, y: Float64Array, stage: number): void {
    this.#of(t, y, this.#slopes[stage] as Float64Array);
  }

  /** One step into `#next`. Returns the greatest error in units of what is allowed. */
  #try(t: number, y: Float64Array, length: number): number {
    for (let stage = 1; stage < STAGES; stage++) {
      this.#point(y, length, stage);
      this.#slope(t + length * (NODES[stage] as number), this.#next, stage);
    }
    return this.#error(y, length);
  }

  /** y + length × (weighted slopes before this stage), into `#next`; the last row of weights makes the step itself. */
  #point(y: Float64Array, length: number, stage: number): void {
    const row = (stage - 1) * (STAGES - 1);
    for (let i = 0; i < this.#size; i++) {
      let sum = 0;
      for (let before = 0; before < stage; before++)
        sum += (WEIGHTS[row + before] as number) * ((this.#slopes[before] as Float64Array)[i] as number);
      this.#next[i] = (y[i] as number) + length * sum;
    }
  }

  #error(y: Float64Array, length: number): number {
    const { relativeError, absoluteError } = this.#rules;
    let greatest = 0;
    for (let i = 0; i < this.#size; i++) {
      let sum = 0;
      for (let stage = 0; stage < STAGES; stage++)
        sum += (ERROR_WEIGHTS[stage] as number) * ((this.#slopes[stage] as Float64Array)[i] as number);
      const size = Math.max(Math.abs(y[i] as number), Math.abs(this.#next[i] as number));
      const error = Math.abs(length * sum) / (absoluteError + relativeError * size);
      if (Number.isNaN(error)) throw new RangeError('a slope gave no number');
      greatest = Math.max(greatest, error);
    }
    return greatest;
  }

  /** A first step on which the state changes by about a hundredth, however small or large its slopes are. */
  #guess(y: Float64Array): number {
    const { relativeError, absoluteError } = this.#rules;
    let length = Number.POSITIVE_INFINITY;
    for (let i = 0; i < this.#size; i++) {
      const slope = Math.abs((this.#slopes[0] as Float64Array)[i] as number);
      if (Number.isNaN(slope)) throw new RangeError('a slope gave no number');
      const size = Math.max(Math.abs(y[i] as number), absoluteError / (relativeError + 1e-10));
      if (slope > 0) length = Math.min(length, (0.01 * size) / slope);
    }
    return Number.isFinite(length) && length > 0 ? length : 1e-6;
  }

  /** How far into the step the crossing lies; leaves the state there in `#next`. */
  #crossingWithin(t: number, y: Float64Array, length: number, crossing: Crossing): number {
    const at = (within: number): number => {
      if (within === 0) return crossing(t, y);
      this.#try(t, y, within);
      return crossing(t + within, this.#next);
    };
    const within = rootBetween(at, { low: 0, high: length });
    at(within);
    return within;
  }
}
