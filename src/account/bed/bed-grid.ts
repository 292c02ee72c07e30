// A grid along the ridge of what fits: its axes turn with every round, so that few points see a narrow and slanting hill whole.
import { choleskyFactor, exp, log } from '../../ground/maths/index.ts';
import { AXES } from './bed-axes.ts';

/** Logarithm of the weight of a point, whatever its size. */
type LogWeight = (point: Float64Array) => number;

interface Weighed {
  readonly point: Float64Array;
  readonly weight: number;
}

/** Points along each axis: while the ridge is looked for, and when it is read. */
const SEEKING = 7;
const READING = 13;
/** Standard deviations to each side: a prior ends there, a posterior may have a long tail. */
const PRIOR_SPAN = 3.5;
const SPAN = 4;
/** Squared distance from the centre up to which points are looked at, in squared spans. */
const CORNERS = 1.3;

export class BedGrid {
  readonly #centre: Float64Array;
  /** Lower triangle by which steps of one standard deviation are turned along the ridge, row after row. */
  readonly #turn: Float64Array;
  readonly #span: number;

  private constructor(centre: Float64Array, turn: Float64Array, span: number) {
    this.#centre = centre;
    this.#turn = turn;
    this.#span = span;
  }

  /** Around nought, a standard deviation each way: what is standard normal before any reading. */
  static ofPrior(): BedGrid {
    const turn = new Float64Array(AXES * AXES);
    for (let axis = 0; axis < AXES; axis++) turn[axis * AXES + axis] = 1;
    return new BedGrid(new Float64Array(AXES), turn, PRIOR_SPAN);
  }

  /** The grid for the next round: where this one found the weight, and as wide as it found it. */
  along(logWeightOf: LogWeight): BedGrid {
    const found = this.#weigh(logWeightOf, SEEKING, 0);
    const centre = meanOf(found);
    const spread = spreadOf(found, centre);
    // A hill that is narrower than a step looks as wide as nothing: the step's own width keeps the next round from missing it.
    const step = this.#stepOf(SEEKING);
    for (let row = 0; row < AXES; row++)
      for (let column = 0; column <= row; column++)
        spread[row * AXES + column] =
          at(spread, row, column) + ((step * step) / 12) * this.#turned(row, column);
    return new BedGrid(centre, choleskyFactor({ order: AXES, values: spread }).values, SPAN);
  }

  /** Its points with their weights, which sum to 1; those below a part of the greatest are left out. */
  weighed(logWeightOf: LogWeight, leastPart: number): readonly Weighed[] {
    return this.#weigh(logWeightOf, READING, leastPart);
  }

  #weigh(logWeightOf: LogWeight, count: number, leastPart: number): readonly Weighed[] {
    const points = this.#points(count);
    const logs = points.map(logWeightOf);
    let greatest = Number.NEGATIVE_INFINITY;
    for (const each of logs) if (each > greatest) greatest = each;
    if (greatest === Number.NEGATIVE_INFINITY) throw new RangeError('no curve fits the readings of a bed');
    const least = leastPart === 0 ? Number.NEGATIVE_INFINITY : greatest + log(leastPart);
    const likely = points.flatMap((point, k) => {
      const logWeight = logs[k] as number;
      return logWeight > least ? [{ point, weight: exp(logWeight - greatest) }] : [];
    });
    const all = likely.reduce((sum, { weight }) => sum + weight, 0);
    return likely.map(({ point, weight }) => ({ point, weight: weight / all }));
  }

  /** Spread of a point of the last axis within its own cell, one standard deviation: what a lattice leaves out between its points. */
  get grain(): number {
    return (this.#stepOf(READING) * at(this.#turn, AXES - 1, AXES - 1)) / Math.sqrt(12);
  }

  #stepOf(count: number): number {
    return (2 * this.#span) / (count - 1);
  }

  #points(count: number): Float64Array[] {
    let all = 1;
    for (let axis = 0; axis < AXES; axis++) all *= count;
    const points: Float64Array[] = [];
    for (let k = 0; k < all; k++) if (this.#isNear(k, count)) points.push(this.#pointOf(k, count));
    return points;
  }

  /** Corners of the grid, which are most of it, lie further out than anything fits. */
  #isNear(k: number, count: number): boolean {
    let [rest, square] = [k, 0];
    for (let axis = 0; axis < AXES; axis++) {
      const along = (rest % count) * this.#stepOf(count) - this.#span;
      rest = Math.floor(rest / count);
      square += along * along;
    }
    return square <= this.#span * this.#span * CORNERS;
  }

  #pointOf(k: number, count: number): Float64Array {
    const step = this.#stepOf(count);
    const point = Float64Array.from(this.#centre);
    let rest = k;
    for (let axis = 0; axis < AXES; axis++) {
      const along = (rest % count) * step - this.#span;
      rest = Math.floor(rest / count);
      for (let row = axis; row < AXES; row++)
        point[row] = (point[row] as number) + at(this.#turn, row, axis) * along;
    }
    return point;
  }

  /** Of the product of the turn with itself. */
  #turned(row: number, column: number): number {
    let sum = 0;
    for (let axis = 0; axis < AXES; axis++) sum += at(this.#turn, row, axis) * at(this.#turn, column, axis);
    return sum;
  }
}

function at(values: Float64Array, row: number, column: number): number {
  return values[row * AXES + column] as number;
}

function meanOf(found: readonly Weighed[]): Float64Array {
  const mean = new Float64Array(AXES);
  for (const { point, weight } of found)
    for (let axis = 0; axis < AXES; axis++)
      mean[axis] = (mean[axis] as number) + weight * (point[axis] as number);
  return mean;
}

function spreadOf(found: readonly Weighed[], mean: Float64Array): Float64Array {
  const spread = new Float64Array(AXES * AXES);
  for (const { point, weight } of found)
    for (let row = 0; row < AXES; row++)
      for (let column = 0; column <= row; column++) {
        const product = offOf(point, mean, row) * offOf(point, mean, column);
        spread[row * AXES + column] = at(spread, row, column) + weight * product;
      }
  return spread;
}

function offOf(point: Float64Array, mean: Float64Array, axis: number): number {
  return (point[axis] as number) - (mean[axis] as number);
}
