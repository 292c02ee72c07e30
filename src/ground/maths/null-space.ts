// What a matrix takes to nothing: an orthonormal basis of its null space.
import type { Matrix } from './matrix.ts';
import { qrFactor, turned } from './qr.ts';

/**
 * The columns N that span { x : A x = 0 }, at right angles and of length 1 each: A N = 0, Nᵀ N = 1.
 *
 * They are the last columns of Q in Aᵀ P = Q R, from the rank on; a matrix of full column rank gives none.
 * @throws RangeError if the matrix holds a value that is not finite, or its size does not fit.
 * @source golub-van-loan, section 5.4
 * @example nullSpace(matrixOf([[1, 1]])).values // [-0.7071067811865475, 0.7071067811865475], up to its sign
 */
export function nullSpace(matrix: Matrix): Matrix {
  const factor = qrFactor(transposed(matrix));
  const rows = matrix.columns;
  const columns = rows - factor.rank;
  const values = new Float64Array(rows * columns);
  for (let column = 0; column < columns; column += 1) {
    const axis = new Float64Array(rows);
    axis[factor.rank + column] = 1;
    turned(factor, axis).forEach((value, row) => {
      values[row * columns + column] = value;
    });
  }
  return { rows, columns, values };
}

/**
 * Rows become columns.
 * @example transposed(matrixOf([[1, 2]])) // rows 2, columns 1, values [1, 2]
 */
export function transposed({ rows, columns, values }: Matrix): Matrix {
  const turnedOver = new Float64Array(values.length);
  for (let row = 0; row < rows; row += 1) {
    for (let column = 0; column < columns; column += 1)
      turnedOver[column * rows + row] = values[row * columns + column] as number;
  }
  return { rows: columns, columns: rows, values: turnedOver };
}
