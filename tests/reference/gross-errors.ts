// Tests for a gross error: all of it at once, one measured value, one balance, one hypothesis with a direction.
import { chiSquareUpper, type Matrix, normalQuantile, pow } from '../../src/ground/maths/index.ts';
import { columnOf, diagonalOf, dot, made, solved, solver, times } from './dense.ts';
import type { Reconciled } from './reconcile.ts';

/** The probability that chance alone gives so large a sum of squares. */
export function globalProbability({ chiSquare, degrees }: Pick<Reconciled, 'chiSquare' | 'degrees'>): number {
  return chiSquareUpper({ value: chiSquare, degrees });
}

/** z_i = a_i / √W_ii; 0 for a value that no balance checks. */
export function measurementTests({ adjustments, adjustmentCovariance }: Reconciled): Float64Array {
  return standardised(adjustments, adjustmentCovariance);
}

/**
 * d = S⁻¹ a, z_i = d_i / √(S⁻¹ W S⁻¹)_ii: of all tests of this form the one that sees an error in value i best.
 * @source tamhane-mah-1985
 */
export function strongestMeasurementTests(
  { adjustments, adjustmentCovariance }: Reconciled,
  covariance: Matrix,
): Float64Array {
  const half = solved(covariance, adjustmentCovariance);
  const whole = times(half, solved(covariance, diagonalOnes(covariance.rows)));
  return standardised(solver(covariance)(adjustments), whole);
}

/** z_k = r_k / √V_kk. */
export function nodalTests({ residuals, residualCovariance }: Reconciled): Float64Array {
  return standardised(residuals, residualCovariance);
}

/** (V⁻¹ r)_k / √(V⁻¹)_kk. @source crowe-1992 */
export function strongestNodalTests({ multipliers, residualCovariance }: Reconciled): Float64Array {
  return standardised(multipliers, solved(residualCovariance, diagonalOnes(residualCovariance.rows)));
}

function diagonalOnes(order: number): Matrix {
  return made(order, order, (row, column) => (row === column ? 1 : 0));
}

/** A variance this small beside the largest is rounding: that value cannot be tested. */
const NOTHING = 1e-12;

function standardised(values: Float64Array, covariance: Matrix): Float64Array {
  const variances = diagonalOf(covariance);
  const largest = variances.reduce((most, variance) => Math.max(most, variance), 0);
  return values.map((value, at) =>
    variances[at]! > NOTHING * largest ? value / Math.sqrt(variances[at]!) : 0,
  );
}

/** What a hypothesis explains: T, the size that it takes the error to have, and that size's standard deviation. */
export interface Explained {
  readonly statistic: number;
  readonly size: number;
  readonly sizeU: number;
}

/**
 * The likelihood ratio of r ~ N(q f, V) against N(0, V), the best q put in: T = (fᵀ V⁻¹ r)² / (fᵀ V⁻¹ f).
 * @source narasimhan-mah-1987
 */
export function explainedBy(
  { residuals, residualCovariance }: Reconciled,
  direction: Float64Array,
): Explained {
  const weighted = solver(residualCovariance)(direction);
  const power = dot(direction, weighted);
  const match = dot(weighted, residuals);
  return { statistic: (match * match) / power, size: match / power, sizeU: 1 / Math.sqrt(power) };
}

/** f of a value that was read too high: its column of the balances. */
export function biasDirection(balances: Matrix, value: number): Float64Array {
  return columnOf(balances, value);
}

/** f of water lost at a node: what comes in there exceeds what goes out. */
export function leakDirection(balances: Matrix, node: number): Float64Array {
  return Float64Array.from({ length: balances.rows }, (_, row) => (row === node ? 1 : 0));
}

/** Two-sided critical value of one of `count` tests such that all together have the level α. @source sidak-1967 */
export function sidakCritical({ level, count }: { readonly level: number; readonly count: number }): number {
  return normalQuantile(1 - (1 - pow(1 - level, 1 / count)) / 2);
}
