// A straight relation through observations of which some are only limits: the likeliest one, with its covariance.
import {
  type CensoredRow,
  type Likelihood,
  likelihoodAt,
  movedBy,
  mustBeRows,
  startOf,
} from './censored-likelihood.ts';
import { choleskyFactor, choleskySolve, type SquareMatrix } from './cholesky.ts';
import type { Matrix } from './matrix.ts';

/**
 * `settled`: at the greatest likelihood. `undetermined`: none is the greatest: limits alone, points that the relation meets
 * exactly where the scatter is to be found, or columns that say the same.
 */
export interface CensoredFit {
  readonly verdict: 'settled' | 'undetermined';
  /** One for each column. */
  readonly coefficients: Float64Array;
  /** Scatter about the relation: as it was told, or as it was found. */
  readonly scale: number;
  /** Of the coefficients and, where the scale was found, of its logarithm as the last one; null where undetermined. */
  readonly covariance: Matrix | null;
  readonly logLikelihood: number;
  readonly steps: number;
}

const MOST_STEPS = 60;
/** The standardised ends stand still to this part: in what no observation bounds they go on by a part of themselves. */
const STILL = 1e-9;
const MOST_HALVINGS = 40;

/**
 * The likeliest coefficients of y = x·β + σ ε, ε standard normal, where a y may be known only as at most, at least, or between.
 *
 * Newton's steps in β/σ and 1/σ, in which the logarithm of the likelihood has one summit and no other (Olsen); told back as β
 * and ln σ, with the inverse of the observed information at the summit as covariance. Limits are never replaced by figures.
 * @param asked `rows`: each an observation with its row of the design; `scale`: the scatter if it is known, above 0; without it
 *   it is found, for which values are needed that the relation does not meet exactly. Observations of unequal known doubts:
 *   divide observation and row by the doubt, and tell 1.
 * @returns coefficients, scale and covariance, and whether they are determined at all
 * @throws RangeError for rows of unequal length or none, numbers that are not finite, an interval that ends before it begins,
 *   and a scale not above 0
 * @source olsen-1978; tobin-1958
 * @example
 * censoredRegression({ scale: 1, rows: [{ design: [1], observed: { value: 2 } }, { design: [1], observed: { atMost: 2 } }] })
 *   .coefficients[0] // 1.4938…
 */
export function censoredRegression(asked: {
  readonly rows: readonly CensoredRow[];
  readonly scale?: number;
}): CensoredFit {
  const { rows, scale } = asked;
  const order = mustBeRows(rows, scale);
  const isFound = scale === undefined;
  let place = startOf(rows, { order, scale });
  let steps = 0;
  let here = place === null ? null : likelihoodAt(rows, place, isFound);
  while (place !== null && here !== null && steps < MOST_STEPS) {
    steps += 1;
    const step = stepOf(here);
    if (step === null) break;
    const next = climbed(rows, { place, here, step, isFound });
    if (next === null) break;
    const isStill = next.moved <= STILL;
    ({ place, here } = next);
    if (isStill) return settled({ order, place, here, isFound, steps });
  }
  return undetermined(order, { scale: scale ?? Number.NaN, steps });
}

/** The whole step of Newton's; null where the likelihood is flat in some direction. */
function stepOf({ bend, slope }: Likelihood): Float64Array | null {
  const factor = factorOf(bend);
  return factor === null ? null : choleskySolve(factor, slope);
}

function factorOf(bend: SquareMatrix): SquareMatrix | null {
  try {
    return choleskyFactor(bend);
  } catch (error) {
    if (error instanceof RangeError) return null;
    throw error;
  }
}

interface Standing {
  readonly place: Float64Array;
  readonly here: Likelihood;
}

/** The step, or the half of it, and so on, until the likelihood does not fall by more than rounding. */
function climbed(
  rows: readonly CensoredRow[],
  from: Standing & { readonly step: Float64Array; readonly isFound: boolean },
): (Standing & { readonly moved: number }) | null {
  const { place, here, step, isFound } = from;
  const rounding = 1e-14 * (1 + Math.abs(here.logLikelihood));
  let part = 1;
  for (let halving = 0; halving < MOST_HALVINGS; halving += 1, part /= 2) {
    // A scale that is told has no step.
    const there = place.map((value, at) => value + part * (step[at] ?? 0));
    const next = likelihoodAt(rows, there, isFound);
    if (next !== null && next.logLikelihood >= here.logLikelihood - rounding)
      return { place: there, here: next, moved: movedBy(here.ends, next.ends) };
  }
  return null;
}

function settled(
  at: Standing & { readonly order: number; readonly isFound: boolean; readonly steps: number },
): CensoredFit {
  const { order, place, here, isFound, steps } = at;
  const factor = factorOf(here.bend);
  if (factor === null) return undetermined(order, { scale: Number.NaN, steps });
  const inverseScale = place[order] as number;
  return {
    verdict: 'settled',
    coefficients: place.slice(0, order).map((value) => value / inverseScale),
    scale: 1 / inverseScale,
    covariance: covarianceOf(factor, { order, place, isFound }),
    logLikelihood: here.logLikelihood,
    steps,
  };
}

/** From β/σ and 1/σ to β and ln σ: J C Jᵀ with J the slopes of the latter in the former. */
function covarianceOf(
  factor: SquareMatrix,
  at: { readonly order: number; readonly place: Float64Array; readonly isFound: boolean },
): Matrix {
  const { order, place, isFound } = at;
  const size = factor.order;
  const slopes = slopesOfBack(place, { order, isFound });
  const values = new Float64Array(size * size);
  // Column k of C Jᵀ solves bend · column = row k of J.
  for (let column = 0; column < size; column += 1) {
    const solved = choleskySolve(factor, slopes.subarray(column * size, (column + 1) * size));
    for (let row = 0; row < size; row += 1) {
      let sum = 0;
      for (let k = 0; k < size; k += 1) sum += (slopes[row * size + k] as number) * (solved[k] as number);
      values[row * size + column] = sum;
    }
  }
  return { rows: size, columns: size, values };
}

/** β = (β/σ)/(1/σ) and ln σ = −ln(1/σ), by what they are worked out from: row after row. */
function slopesOfBack(
  place: Float64Array,
  { order, isFound }: { readonly order: number; readonly isFound: boolean },
): Float64Array {
  const size = isFound ? order + 1 : order;
  const inverse = place[order] as number;
  const slopes = new Float64Array(size * size);
  for (let at = 0; at < order; at += 1) {
    slopes[at * size + at] = 1 / inverse;
    if (isFound) slopes[at * size + order] = -(place[at] as number) / (inverse * inverse);
  }
  if (isFound) slopes[slopes.length - 1] = -1 / inverse;
  return slopes;
}

function undetermined(order: number, { scale, steps }: { scale: number; steps: number }): CensoredFit {
  return {
    verdict: 'undetermined',
    coefficients: new Float64Array(order).fill(Number.NaN),
    scale,
    covariance: null,
    logLikelihood: Number.NaN,
    steps,
  };
}

/** One standard deviation of a coefficient; NaN where the fit is undetermined. */
export function coefficientU({ covariance }: CensoredFit, at: number): number {
  return covariance === null
    ? Number.NaN
    : Math.sqrt(covariance.values[at * covariance.columns + at] as number);
}
