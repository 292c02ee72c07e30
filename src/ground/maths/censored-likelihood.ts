// The logarithm of the likelihood of observations of which some are only limits, with its slope and bend.
import {
  NARROW,
  type Observed,
  type RowShare,
  shareOfAtLeast,
  shareOfAtMost,
  shareOfBetween,
  shareOfValue,
} from './censored-row.ts';
import { choleskyFactor, choleskySolve, type SquareMatrix } from './cholesky.ts';
import { log } from './logarithm.ts';

export interface CensoredRow {
  /** The row of the design: 1 for a constant, the figure of each cause. */
  readonly design: readonly number[];
  readonly observed: Observed;
}

export interface Likelihood {
  readonly logLikelihood: number;
  /** In β/σ, and in 1/σ where that is to be found. */
  readonly slope: Float64Array;
  /** The negative of the matrix of second slopes: positive definite where one summit is determined. */
  readonly bend: SquareMatrix;
  /** Standardised ends of the rows and 1/σ, by which it is seen whether a step still moved anything. */
  readonly ends: Float64Array;
}

/** @returns the number of columns */
export function mustBeRows(rows: readonly CensoredRow[], scale: number | undefined): number {
  const order = rows[0]?.design.length ?? 0;
  if (order === 0) throw new RangeError('a fit needs rows, each with its design');
  if (scale !== undefined && !(scale > 0 && scale < Number.POSITIVE_INFINITY))
    throw new RangeError(`a scale is above 0, not ${scale}`);
  for (const { design, observed } of rows) {
    if (design.length !== order) throw new RangeError(`a row has ${design.length} figures, not ${order}`);
    const { low, high } = endsOf(observed);
    for (const figure of [...design, low, high])
      if (!Number.isFinite(figure)) throw new RangeError(`a row of finite figures holds ${figure}`);
    if (low > high) throw new RangeError(`an interval from ${low} to ${high} ends before it begins`);
  }
  return order;
}

function endsOf(observed: Observed): { readonly low: number; readonly high: number } {
  if ('from' in observed) return { low: observed.from, high: observed.to };
  const end =
    'value' in observed ? observed.value : 'atMost' in observed ? observed.atMost : observed.atLeast;
  return { low: end, high: end };
}

/** Least squares through values and limits alike: a place to begin, and no more. Null where columns say the same. */
export function startOf(
  rows: readonly CensoredRow[],
  { order, scale }: { readonly order: number; readonly scale: number | undefined },
): Float64Array | null {
  const normal = new Float64Array(order * order);
  const right = new Float64Array(order);
  const middles = rows.map(({ observed }) => (endsOf(observed).low + endsOf(observed).high) / 2);
  rows.forEach(({ design }, at) => {
    design.forEach((figure, i) => {
      right[i] = (right[i] as number) + figure * (middles[at] as number);
      design.forEach((other, j) => {
        normal[i * order + j] = (normal[i * order + j] as number) + figure * other;
      });
    });
  });
  const factor = wellFactored(normal, order);
  if (factor === null) return null;
  const coefficients = choleskySolve(factor, right);
  const squares = rows.reduce((sum, { design }, at) => {
    const left = (middles[at] as number) - dot(design, coefficients);
    return sum + left * left;
  }, 0);
  const spread = Math.sqrt(squares / rows.length);
  const inverse = scale === undefined ? 1 / (spread > 0 ? spread : 1) : 1 / scale;
  return Float64Array.from([...coefficients, 1], (value) => value * inverse);
}

/** Columns that differ by less than this part of themselves are taken to say the same. */
const SAME = 1e-12;

function wellFactored(values: Float64Array, order: number): SquareMatrix | null {
  try {
    const factor = choleskyFactor({ order, values });
    for (let at = 0; at < order; at += 1) {
      const pivot = factor.values[at * order + at] as number;
      if (!(pivot * pivot > SAME * (values[at * order + at] as number))) return null;
    }
    return factor;
  } catch (error) {
    if (error instanceof RangeError) return null;
    throw error;
  }
}

function dot(design: readonly number[], coefficients: Float64Array): number {
  return design.reduce((sum, figure, at) => sum + figure * (coefficients[at] as number), 0);
}

/** Null where the place has no likelihood: a scale that is not above 0, or an end so far out that nothing is left. */
export function likelihoodAt(
  rows: readonly CensoredRow[],
  place: Float64Array,
  isFound: boolean,
): Likelihood | null {
  const order = place.length - 1;
  const inverseScale = place[order] as number;
  if (!(inverseScale > 0)) return null;
  const sums = new Sums(isFound ? order + 1 : order, inverseScale);
  const ends = new Float64Array(2 * rows.length + 1);
  // The scale is among them: where a relation meets its points exactly the ends stand still while it runs away.
  ends[2 * rows.length] = inverseScale;
  rows.forEach(({ design, observed }, at) => {
    const fitted = dot(design, place);
    const { low, high } = endsOf(observed);
    const standard = { low: inverseScale * low - fitted, high: inverseScale * high - fitted };
    ends.set([standard.low, standard.high], 2 * at);
    addRow(sums, { design, observed }, standard);
  });
  const { logLikelihood, slope } = sums;
  return sums.isFinite() ? { logLikelihood, slope, bend: sums.bend(), ends } : null;
}

function addRow(
  sums: Sums,
  { design, observed }: CensoredRow,
  standard: { low: number; high: number },
): void {
  const { low, high } = endsOf(observed);
  if ('atMost' in observed) sums.add(design, { low, high }, shareOfAtMost(standard.high));
  else if ('atLeast' in observed) sums.add(design, { low, high }, shareOfAtLeast(standard.high));
  else if ('value' in observed || standard.high - standard.low < NARROW) {
    const middle = (low + high) / 2;
    sums.add(design, { low: middle, high: middle }, shareOfValue((standard.low + standard.high) / 2));
    sums.addScale(design.length);
  } else sums.add(design, { low, high }, shareOfBetween(standard));
}

/** Sums over the rows. An end is z = (1/σ) y − x·(β/σ), so that its slopes are −x and y. */
class Sums {
  logLikelihood = 0;
  readonly slope: Float64Array;
  readonly #bend: Float64Array;
  readonly #size: number;
  readonly #inverseScale: number;

  constructor(size: number, inverseScale: number) {
    this.#size = size;
    this.#inverseScale = inverseScale;
    this.slope = new Float64Array(size);
    this.#bend = new Float64Array(size * size);
  }

  add(
    design: readonly number[],
    ends: { readonly low: number; readonly high: number },
    share: RowShare,
  ): void {
    const high = (at: number) => (at < design.length ? -(design[at] as number) : ends.high);
    const low = (at: number) => (at < design.length ? -(design[at] as number) : ends.low);
    this.logLikelihood += share.logLikelihood;
    for (let i = 0; i < this.#size; i += 1) {
      this.slope[i] = (this.slope[i] as number) + share.slopeHigh * high(i) + share.slopeLow * low(i);
      for (let j = 0; j < this.#size; j += 1) {
        const both = share.bendBoth * (high(i) * low(j) + low(i) * high(j));
        const bent = share.bendHigh * high(i) * high(j) + share.bendLow * low(i) * low(j) + both;
        this.#bend[i * this.#size + j] = (this.#bend[i * this.#size + j] as number) - bent;
      }
    }
  }

  /** What a value has beside its distance: ln(1/σ), with slope σ and bend −σ². */
  addScale(order: number): void {
    this.logLikelihood += log(this.#inverseScale);
    if (this.#size === order) return;
    const scale = 1 / this.#inverseScale;
    this.slope[order] = (this.slope[order] as number) + scale;
    const last = this.#bend.length - 1;
    this.#bend[last] = (this.#bend[last] as number) + scale * scale;
  }

  bend(): SquareMatrix {
    return { order: this.#size, values: this.#bend };
  }

  isFinite(): boolean {
    return [this.logLikelihood, ...this.slope, ...this.#bend].every((sum) => Number.isFinite(sum));
  }
}

/** How far the standardised ends moved, as a part of themselves where they are large. */
export function movedBy(before: Float64Array, after: Float64Array): number {
  return before.reduce((most, end, at) => {
    const there = after[at] as number;
    return Math.max(most, Math.abs(there - end) / (1 + Math.abs(there)));
  }, 0);
}
