// Batch reconciliation when everything is measured: the measured values that close the balances with the least change.
import { type Matrix, nullSpace, transposed } from '../../src/ground/maths/index.ts';
import {
  diagonalOf,
  dot,
  minus,
  solved,
  solver,
  spreadBy,
  times,
  timesVector,
  vectorMinus,
} from './dense.ts';

/** min (y − x)ᵀ S⁻¹ (y − x) with A x = c. */
export interface Problem {
  /** y. */
  readonly measured: Float64Array;
  /** S. */
  readonly covariance: Matrix;
  /** A, one row a balance, its rows independent. */
  readonly balances: Matrix;
  /** c; zeros where it is left out. */
  readonly totals?: Float64Array;
}

export interface Reconciled {
  /** x̂ = y − S Aᵀ V⁻¹ r. */
  readonly values: Float64Array;
  /** Ŝ = S − S Aᵀ V⁻¹ A S. */
  readonly covariance: Matrix;
  /** a = y − x̂, and its covariance W = S Aᵀ V⁻¹ A S. */
  readonly adjustments: Float64Array;
  readonly adjustmentCovariance: Matrix;
  /** r = A y − c, and its covariance V = A S Aᵀ. */
  readonly residuals: Float64Array;
  readonly residualCovariance: Matrix;
  /** λ = V⁻¹ r. */
  readonly multipliers: Float64Array;
  /** rᵀ V⁻¹ r, and the degrees of freedom that it has when nothing is wrong. */
  readonly chiSquare: number;
  readonly degrees: number;
}

/**
 * By a Cholesky factor of V; S itself may be singular, V may not.
 * @source narasimhan-jordache-2000, chapter 3
 */
export function reconcile({ measured, covariance, balances, totals }: Problem): Reconciled {
  const sums = timesVector(balances, measured);
  const residuals = totals === undefined ? sums : vectorMinus(sums, totals);
  const shared = times(balances, covariance);
  const residualCovariance = times(shared, transposed(balances));
  const multipliers = solver(residualCovariance)(residuals);
  const adjustments = timesVector(transposed(shared), multipliers);
  const adjustmentCovariance = times(transposed(shared), solved(residualCovariance, shared));
  return {
    values: vectorMinus(measured, adjustments),
    covariance: minus(covariance, adjustmentCovariance),
    adjustments,
    adjustmentCovariance,
    residuals,
    residualCovariance,
    multipliers,
    chiSquare: dot(residuals, multipliers),
    degrees: balances.rows,
  };
}

/**
 * The same by what the balances leave free: x = p + N t, t = (Nᵀ S⁻¹ N)⁻¹ Nᵀ S⁻¹ (y − p), with A p = c. S is regular.
 * @source mitsas-2010
 */
export function reconcileInNullSpace({ measured, covariance, balances, totals }: Problem): {
  readonly values: Float64Array;
  readonly covariance: Matrix;
} {
  const free = nullSpace(balances);
  const particular = particularSolution(balances, totals);
  const weighted = solved(covariance, free);
  const information = times(transposed(free), weighted);
  const t = solver(information)(timesVector(transposed(weighted), vectorMinus(measured, particular)));
  const moved = timesVector(free, t);
  return {
    values: moved.map((value, at) => value + particular[at]!),
    covariance: times(free, solved(information, transposed(free))),
  };
}

/** The shortest p with A p = c. */
function particularSolution(balances: Matrix, totals: Float64Array | undefined): Float64Array {
  if (totals === undefined) return new Float64Array(balances.columns);
  const across = times(balances, transposed(balances));
  return timesVector(transposed(balances), solver(across)(totals));
}

/** One standard deviation of each reconciled value; rounding can leave a hair below zero. */
export function doubtsOf(covariance: Matrix): Float64Array {
  return diagonalOf(covariance).map((variance) => Math.sqrt(Math.max(0, variance)));
}

/** How far the balances of a solution are from closing, the largest. */
export function openOf({ balances, totals }: Problem, values: Float64Array): number {
  const sums = timesVector(balances, values);
  return sums.reduce((most, sum, row) => Math.max(most, Math.abs(sum - (totals?.[row] ?? 0))), 0);
}

/** Covariance of a linear view of the solution: C Ŝ Cᵀ. */
export function seenThrough(view: Matrix, covariance: Matrix): Matrix {
  return spreadBy(view, covariance);
}
