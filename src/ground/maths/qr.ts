// QR factors of a matrix by Householder's reflections, with the columns put in the order of what each still adds.
import { type Matrix, mustBeMatrix } from './matrix.ts';

/** A P = Q R, with P the order of the columns, Q orthogonal and R an upper triangle. */
export interface QrFactor {
  readonly rows: number;
  readonly columns: number;
  /** R on and above the diagonal. */
  readonly values: Float64Array;
  /** Reflection k mirrors at the plane across this direction of length 1 (all rows; 0 above row k). */
  readonly directions: readonly Float64Array[];
  /** Column k of R belongs to this column of A. */
  readonly order: readonly number[];
  /** How many columns are independent to working precision. */
  readonly rank: number;
}

/** A column this small beside the first one, times the longer side of the matrix, is rounding. */
const epsilon = 2.220446049250313e-16;

/**
 * Factors a matrix of any shape. At each step the column with the longest remainder comes next, the first of equals;
 * so |R_kk| falls, and the rank is the count of those above rounding: |R_kk| > max(rows, columns) · 2⁻⁵² · |R_00|.
 * @throws RangeError if the matrix holds a value that is not finite, or its size does not fit.
 * @source golub-van-loan, sections 5.2 and 5.4
 * @example qrFactor(matrixOf([[3], [4]])).values // [-5, 0]
 */
export function qrFactor(matrix: Matrix): QrFactor {
  mustBeMatrix(matrix);
  const { rows, columns } = matrix;
  const values = Float64Array.from(matrix.values);
  const order = Array.from({ length: columns }, (_, column) => column);
  const directions: Float64Array[] = [];
  const steps = Math.min(rows, columns);
  let rank = 0;
  for (let step = 0; step < steps; step += 1) {
    const { column, length } = longestColumn({ rows, columns, values }, step);
    if (length === 0) break;
    swapColumns({ rows, columns, values }, step, column);
    [order[step], order[column]] = [order[column] as number, order[step] as number];
    directions.push(reflect({ rows, columns, values }, step, length));
    const first = Math.abs(values[0] as number);
    if (length > Math.max(rows, columns) * epsilon * first) rank = step + 1;
  }
  return { rows, columns, values, directions, order, rank };
}

/** The column from `step` on with the longest remainder below `step`. */
function longestColumn({ rows, columns, values }: Matrix, step: number): { column: number; length: number } {
  let found = { column: step, length: 0 };
  for (let column = step; column < columns; column += 1) {
    const length = lengthFrom(rows - step, (row) => values[(row + step) * columns + column] as number);
    if (length > found.length) found = { column, length };
  }
  return found;
}

/** Euclidean length, scaled by the largest so that no square vanishes or overflows. */
function lengthFrom(count: number, value: (at: number) => number): number {
  let largest = 0;
  for (let at = 0; at < count; at += 1) largest = Math.max(largest, Math.abs(value(at)));
  if (largest === 0) return 0;
  let sum = 0;
  for (let at = 0; at < count; at += 1) {
    const part = value(at) / largest;
    sum += part * part;
  }
  return largest * Math.sqrt(sum);
}

function swapColumns({ rows, columns, values }: Matrix, a: number, b: number): void {
  if (a === b) return;
  for (let row = 0; row < rows; row += 1) {
    const kept = values[row * columns + a] as number;
    values[row * columns + a] = values[row * columns + b] as number;
    values[row * columns + b] = kept;
  }
}

/** Mirrors column `step` onto its axis, and the columns after it with it. Returns the direction of the mirror. */
function reflect({ rows, columns, values }: Matrix, step: number, length: number): Float64Array {
  const direction = new Float64Array(rows);
  for (let row = step; row < rows; row += 1) direction[row] = values[row * columns + step] as number;
  const corner = direction[step] as number;
  // Away from the corner's own sign, so that nothing cancels.
  const mirrored = corner > 0 ? -length : length;
  direction[step] = corner - mirrored;
  const size = lengthFrom(rows - step, (at) => direction[at + step] as number);
  for (let row = step; row < rows; row += 1) direction[row] = (direction[row] as number) / size;
  for (let column = step + 1; column < columns; column += 1) {
    mirror(values, direction, { from: step, at: (row) => row * columns + column });
  }
  values[step * columns + step] = mirrored;
  for (let row = step + 1; row < rows; row += 1) values[row * columns + step] = 0;
  return direction;
}

/** x ← x − 2 d (dᵀ x), for the vector that stands at the given places. */
function mirror(
  values: Float64Array,
  direction: Float64Array,
  { from, at }: { readonly from: number; readonly at: (row: number) => number },
): void {
  let product = 0;
  for (let row = from; row < direction.length; row += 1)
    product += (direction[row] as number) * (values[at(row)] as number);
  for (let row = from; row < direction.length; row += 1)
    values[at(row)] = (values[at(row)] as number) - 2 * product * (direction[row] as number);
}

/**
 * Qᵀ x.
 * @throws RangeError if x has another length than the matrix has rows.
 */
export function turnedBack({ rows, directions }: QrFactor, vector: Float64Array): Float64Array {
  mustHaveLength(vector, rows);
  const turned = Float64Array.from(vector);
  directions.forEach((direction, from) => {
    mirror(turned, direction, { from, at: (row) => row });
  });
  return turned;
}

/**
 * Q x.
 * @throws RangeError if x has another length than the matrix has rows.
 */
export function turned({ rows, directions }: QrFactor, vector: Float64Array): Float64Array {
  mustHaveLength(vector, rows);
  const result = Float64Array.from(vector);
  for (let from = directions.length - 1; from >= 0; from -= 1) {
    mirror(result, directions[from] as Float64Array, { from, at: (row) => row });
  }
  return result;
}

function mustHaveLength(vector: Float64Array, rows: number): void {
  if (vector.length !== rows) throw new RangeError(`the vector has ${vector.length} values, not ${rows}`);
}
