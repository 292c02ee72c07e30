// Arithmetic of whole matrices, written for reading: the reference twin uses nothing faster.
import {
  choleskyFactor,
  choleskySolve,
  type Matrix,
  qrFactor,
  transposed,
} from '../../src/ground/maths/index.ts';

export function element({ columns, values }: Matrix, row: number, column: number): number {
  return values[row * columns + column]!;
}

/** A matrix from a rule for its elements. */
export function made(rows: number, columns: number, rule: (row: number, column: number) => number): Matrix {
  const values = new Float64Array(rows * columns);
  for (let row = 0; row < rows; row += 1) {
    for (let column = 0; column < columns; column += 1) values[row * columns + column] = rule(row, column);
  }
  return { rows, columns, values };
}

export function rowOf({ columns, values }: Matrix, row: number): Float64Array {
  return values.slice(row * columns, (row + 1) * columns);
}

export function columnOf(matrix: Matrix, column: number): Float64Array {
  return Float64Array.from({ length: matrix.rows }, (_, row) => element(matrix, row, column));
}

export function diagonal(values: ArrayLike<number>): Matrix {
  return made(values.length, values.length, (row, column) => (row === column ? values[row]! : 0));
}

export function diagonalOf(matrix: Matrix): Float64Array {
  return Float64Array.from({ length: matrix.rows }, (_, at) => element(matrix, at, at));
}

/** A B; rows of A with many zeros cost little. */
export function times(a: Matrix, b: Matrix): Matrix {
  if (a.columns !== b.rows) throw new RangeError(`${a.columns} columns do not meet ${b.rows} rows`);
  const product = made(a.rows, b.columns, () => 0);
  for (let row = 0; row < a.rows; row += 1) {
    for (let k = 0; k < a.columns; k += 1) {
      const factor = element(a, row, k);
      if (factor === 0) continue;
      for (let column = 0; column < b.columns; column += 1)
        product.values[row * b.columns + column]! += factor * element(b, k, column);
    }
  }
  return product;
}

export function timesVector(a: Matrix, x: ArrayLike<number>): Float64Array {
  if (a.columns !== x.length) throw new RangeError(`${a.columns} columns do not meet ${x.length} values`);
  return Float64Array.from({ length: a.rows }, (_, row) => dot(rowOf(a, row), x));
}

/** A S Aᵀ: the covariance of A x when x has the covariance S. */
export function spreadBy(a: Matrix, s: Matrix): Matrix {
  return times(times(a, s), transposed(a));
}

export function minus(a: Matrix, b: Matrix): Matrix {
  return made(a.rows, a.columns, (row, column) => element(a, row, column) - element(b, row, column));
}

export function dot(x: ArrayLike<number>, y: ArrayLike<number>): number {
  let sum = 0;
  for (let at = 0; at < x.length; at += 1) sum += x[at]! * y[at]!;
  return sum;
}

export function vectorMinus(x: Float64Array, y: ArrayLike<number>): Float64Array {
  return x.map((value, at) => value - y[at]!);
}

/** Rows of A, those of B below them. */
export function stacked(a: Matrix, b: Matrix): Matrix {
  return made(a.rows + b.rows, Math.max(a.columns, b.columns), (row, column) =>
    row < a.rows ? element(a, row, column) : element(b, row - a.rows, column),
  );
}

export function chosenRows(a: Matrix, rows: readonly number[]): Matrix {
  return made(rows.length, a.columns, (row, column) => element(a, rows[row]!, column));
}

export function chosenColumns(a: Matrix, columns: readonly number[]): Matrix {
  return made(a.rows, columns.length, (row, column) => element(a, row, columns[column]!));
}

/** V⁻¹ x for a symmetric positive definite V, as a function of x. */
export function solver({ rows, values }: Matrix): (x: Float64Array) => Float64Array {
  const factor = choleskyFactor({ order: rows, values });
  return (x) => choleskySolve(factor, x);
}

/** V⁻¹ B. */
export function solved(v: Matrix, b: Matrix): Matrix {
  const solve = solver(v);
  const columns = Array.from({ length: b.columns }, (_, column) => solve(columnOf(b, column)));
  return made(b.rows, b.columns, (row, column) => columns[column]![row]!);
}

/** Places of a largest set of rows that do not depend on each other, in their order. */
export function independentRows(a: Matrix): readonly number[] {
  const { order, rank } = qrFactor(transposed(a));
  return order.slice(0, rank).sort((first, second) => first - second);
}

export function largestOf(values: Iterable<number>): number {
  let largest = 0;
  for (const value of values) largest = Math.max(largest, Math.abs(value));
  return largest;
}
