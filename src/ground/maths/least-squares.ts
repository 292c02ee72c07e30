// Least squares by QR factors: the fit that normal equations lose digits of.
import type { Matrix } from './matrix.ts';
import { type QrFactor, qrFactor, turned, turnedBack } from './qr.ts';

export interface LeastSquares {
  readonly solution: Float64Array;
  /** b − A x. */
  readonly residuals: Float64Array;
  readonly sumOfSquares: number;
  /** (Aᵀ A)⁻¹; times the variance of one value of b it is the covariance of the solution. */
  readonly covariance: Matrix;
}

/**
 * The x that makes |A x − b|² least.
 *
 * Columns are brought to like size by powers of two, which rounds nothing, then factored; the error grows with the
 * condition of A and not with its square.
 * @param matrix A, at least as many rows as columns
 * @param right b, one value a row
 * @throws RangeError if the columns are not independent to working precision, sizes do not fit, or a value is not finite.
 * @source golub-van-loan, section 5.3
 * @example leastSquares(matrixOf([[1], [1]]), new Float64Array([1, 3])).solution // [2]
 */
export function leastSquares(matrix: Matrix, right: Float64Array): LeastSquares {
  const { rows, columns, values } = matrix;
  const scales = Array.from({ length: columns }, (_, column) => scaleOf(matrix, column));
  const factor = qrFactor({
    rows,
    columns,
    values: values.map((value, at) => value * (scales[at % columns] as number)),
  });
  if (factor.rank < columns) {
    throw new RangeError(`only ${factor.rank} of ${columns} columns are independent: no one fit is the best`);
  }
  if (right.some((value) => !Number.isFinite(value))) throw new RangeError('the right side is not finite');
  const turnedRight = turnedBack(factor, right);
  const inner = solvedBack(factor, turnedRight);
  const solution = new Float64Array(columns);
  factor.order.forEach((column, at) => {
    solution[column] = (inner[at] as number) * (scales[column] as number);
  });
  // What no column reaches, turned back: made from A x, it would be a small difference of large sums.
  const residuals = turned(factor, turnedRight.fill(0, 0, columns));
  const sumOfSquares = residuals.reduce((sum, value) => sum + value * value, 0);
  return { solution, residuals, sumOfSquares, covariance: covarianceOf(factor, scales) };
}

/** The power of two that brings the largest value of a column into the half-open range from 1 to 2; 1 for a column of zeros. */
function scaleOf({ rows, columns, values }: Matrix, column: number): number {
  let largest = 0;
  for (let row = 0; row < rows; row += 1)
    largest = Math.max(largest, Math.abs(values[row * columns + column] as number));
  let scale = 1;
  if (!(largest > 1e-290 && largest < 1e290)) return scale;
  while (largest * scale >= 2) scale /= 2;
  while (largest * scale < 1) scale *= 2;
  return scale;
}

/** Solves R z = c for the upper part of c. */
function solvedBack({ columns, values }: QrFactor, right: Float64Array): Float64Array {
  const solution = right.slice(0, columns);
  for (let row = columns - 1; row >= 0; row -= 1) {
    let left = solution[row] as number;
    for (let column = row + 1; column < columns; column += 1)
      left -= (values[row * columns + column] as number) * (solution[column] as number);
    solution[row] = left / (values[row * columns + row] as number);
  }
  return solution;
}

/** R⁻¹ R⁻ᵀ in the order and the size of the columns of A. */
function covarianceOf(factor: QrFactor, scales: readonly number[]): Matrix {
  const { columns, order } = factor;
  // Row k holds column k of R⁻¹.
  const inverse = Array.from({ length: columns }, (_, axis) => {
    const unit = new Float64Array(factor.rows);
    unit[axis] = 1;
    return solvedBack(factor, unit);
  });
  const values = new Float64Array(columns * columns);
  order.forEach((a, i) => {
    order.forEach((b, j) => {
      let sum = 0;
      for (const column of inverse) sum += (column[i] as number) * (column[j] as number);
      values[a * columns + b] = sum * (scales[a] as number) * (scales[b] as number);
    });
  });
  return { rows: columns, columns, values };
}
