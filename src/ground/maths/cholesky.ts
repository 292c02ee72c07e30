// Cholesky factor of a small symmetric positive definite matrix, and solving with it.

/** A square matrix, row after row. */
export interface SquareMatrix {
  readonly order: number;
  readonly values: Float64Array;
}

const epsilon = 2.220446049250313e-16;

/**
 * The lower triangle L with L Lᵀ = A; the part above the diagonal is 0. Only the lower triangle of A is read.
 * @throws RangeError if A is not positive definite to working precision, or holds a NaN, or its size is not order².
 * @example choleskyFactor({ order: 1, values: new Float64Array([9]) }) // values [3]
 */
export function choleskyFactor(matrix: SquareMatrix): SquareMatrix {
  const { order, values } = matrix;
  if (values.length !== order * order)
    throw new RangeError(`a matrix of order ${order} has ${order * order} values, not ${values.length}`);
  const factor = new Float64Array(order * order);
  for (let row = 0; row < order; row += 1) {
    for (let column = 0; column <= row; column += 1) {
      const left = at(values, row * order + column) - dotOfRows(factor, order, row, column);
      if (column < row) {
        factor[row * order + column] = left / at(factor, column * order + column);
        continue;
      }
      // What rounding leaves of a difference is no pivot. Not (left > least) also catches NaN.
      const least = order * epsilon * at(values, row * order + row);
      if (!(left > least) || left === Number.POSITIVE_INFINITY)
        throw new RangeError(`the matrix is not positive definite (row ${row})`);
      factor[row * order + row] = Math.sqrt(left);
    }
  }
  return { order, values: factor };
}

/** The product of two rows of the factor, over the columns before `column`. */
function dotOfRows(factor: Float64Array, order: number, row: number, column: number): number {
  let sum = 0;
  for (let index = 0; index < column; index += 1)
    sum += at(factor, row * order + index) * at(factor, column * order + index);
  return sum;
}

function at(values: Float64Array, index: number): number {
  return values[index] as number;
}

/**
 * Solves A x = b, given the factor of A. The right side is left as it is.
 * @throws RangeError if the right side has another length.
 */
export function choleskySolve({ order, values }: SquareMatrix, right: Float64Array): Float64Array {
  if (right.length !== order) throw new RangeError(`the right side has ${right.length} values, not ${order}`);
  const solution = Float64Array.from(right);
  for (let row = 0; row < order; row += 1) {
    let left = at(solution, row);
    for (let column = 0; column < row; column += 1)
      left -= at(values, row * order + column) * at(solution, column);
    solution[row] = left / at(values, row * order + row);
  }
  for (let row = order - 1; row >= 0; row -= 1) {
    let left = at(solution, row);
    for (let below = row + 1; below < order; below += 1)
      left -= at(values, below * order + row) * at(solution, below);
    solution[row] = left / at(values, row * order + row);
  }
  return solution;
}
