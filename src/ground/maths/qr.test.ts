// QR factors, null spaces and least squares: what defines them must hold, and what cannot be done is refused.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { leastSquares } from './least-squares.ts';
import { type Matrix, matrixOf } from './matrix.ts';
import { nullSpace, transposed } from './null-space.ts';
import { qrFactor, turned, turnedBack } from './qr.ts';

const at = ({ columns, values }: Matrix, row: number, column: number): number =>
  values[row * columns + column]!;

function times(a: Matrix, b: Matrix): Matrix {
  const values = new Float64Array(a.rows * b.columns);
  for (let i = 0; i < a.rows; i += 1) {
    for (let j = 0; j < b.columns; j += 1) {
      for (let k = 0; k < a.columns; k += 1) values[i * b.columns + j]! += at(a, i, k) * at(b, k, j);
    }
  }
  return { rows: a.rows, columns: b.columns, values };
}

const largest = (values: Iterable<number>): number =>
  [...values].reduce((most, value) => Math.max(most, Math.abs(value)), 0);

/** Matrices of any shape, small whole numbers among them, so that dependent columns come up. */
const matrices = fc
  .tuple(fc.integer({ min: 1, max: 7 }), fc.integer({ min: 1, max: 7 }), fc.boolean())
  .chain(([rows, columns, isWhole]) =>
    fc
      .array(isWhole ? fc.integer({ min: -1, max: 1 }) : fc.double({ min: -9, max: 9, noNaN: true }), {
        minLength: rows * columns,
        maxLength: rows * columns,
      })
      .map((values): Matrix => ({ rows, columns, values: Float64Array.from(values) })),
  );

describe('QR factors', () => {
  it('multiply back to the matrix, and Q keeps lengths', () => {
    fc.assert(
      fc.property(matrices, (matrix) => {
        const factor = qrFactor(matrix);
        const scale = Math.max(1, largest(matrix.values));
        factor.order.forEach((column, k) => {
          const ofR = Float64Array.from({ length: matrix.rows }, (_, row) => at(factor, row, k));
          turned(factor, ofR).forEach((value, row) => {
            expect(Math.abs(value - at(matrix, row, column))).toBeLessThan(1e-13 * scale);
          });
        });
        const vector = Float64Array.from({ length: matrix.rows }, (_, row) => row - 1.5);
        const back = turnedBack(factor, turned(factor, vector));
        expect(largest(back.map((value, row) => value - vector[row]!))).toBeLessThan(1e-13);
      }),
      { seed: 31 },
    );
  });

  it('have a triangle whose diagonal falls, and zeros below it', () => {
    fc.assert(
      fc.property(matrices, (matrix) => {
        const factor = qrFactor(matrix);
        for (let row = 0; row < matrix.rows; row += 1) {
          for (let column = 0; column < Math.min(row, matrix.columns); column += 1) {
            if (column < factor.directions.length) expect(at(factor, row, column)).toBe(0);
          }
        }
        for (let k = 1; k < factor.rank; k += 1)
          expect(Math.abs(at(factor, k, k))).toBeLessThanOrEqual(
            Math.abs(at(factor, k - 1, k - 1)) * (1 + 1e-14),
          );
      }),
      { seed: 32 },
    );
  });

  it('see how many columns are independent, also near rounding', () => {
    expect(
      qrFactor(
        matrixOf([
          [1, 2],
          [2, 4],
          [3, 6],
        ]),
      ).rank,
    ).toBe(1);
    expect(
      qrFactor(
        matrixOf([
          [1, 0],
          [0, 1e-10],
        ]),
      ).rank,
    ).toBe(2);
    expect(
      qrFactor(
        matrixOf([
          [1, 1],
          [1, 1 + 2.3e-16],
        ]),
      ).rank,
    ).toBe(1);
    expect(qrFactor(matrixOf([[0, 0]])).rank).toBe(0);
    expect(qrFactor({ rows: 0, columns: 3, values: new Float64Array(0) }).rank).toBe(0);
    // 0.1 + 0.2 is not 0.3 in doubles; the columns still depend on each other.
    expect(
      qrFactor(
        matrixOf([
          [0.1, 0.2, 0.3],
          [0.4, 0.5, 0.9],
        ]),
      ).rank,
    ).toBe(2);
    expect(qrFactor(matrixOf([[3e-200], [4e-200]])).values[0]).toBeCloseTo(-5e-200, 210);
  });
});

describe('null space', () => {
  it('is taken to nothing, is at right angles, and has what the rank leaves of the columns', () => {
    let found = 0;
    fc.assert(
      fc.property(matrices, (matrix) => {
        const basis = nullSpace(matrix);
        expect(basis.columns).toBe(matrix.columns - qrFactor(transposed(matrix)).rank);
        expect(largest(times(matrix, basis).values)).toBeLessThan(
          1e-13 * Math.max(1, largest(matrix.values)),
        );
        times(transposed(basis), basis).values.forEach((value, k) => {
          const isDiagonal = k % (basis.columns + 1) === 0;
          expect(Math.abs(value - (isDiagonal ? 1 : 0))).toBeLessThan(1e-14);
        });
        found += basis.columns;
      }),
      { seed: 33 },
    );
    expect(found).toBeGreaterThan(50);
  });

  it('of independent columns is empty, of zeros is everything', () => {
    expect(
      nullSpace(
        matrixOf([
          [2, 0],
          [0, 3],
          [1, 1],
        ]),
      ).columns,
    ).toBe(0);
    expect([...nullSpace(matrixOf([[0, 0]])).values]).toEqual([1, 0, 0, 1]);
  });
});

describe('least squares', () => {
  it('leaves residuals at right angles to every column', () => {
    let looked = 0;
    fc.assert(
      fc.property(matrices, (matrix) => {
        if (qrFactor(matrix).rank < matrix.columns) return;
        const right = Float64Array.from({ length: matrix.rows }, (_, row) => (row * row) % 5);
        const { residuals, solution, sumOfSquares } = leastSquares(matrix, right);
        const scale = largest(matrix.values) * 10;
        for (let column = 0; column < matrix.columns; column += 1) {
          const product = residuals.reduce((sum, value, row) => sum + value * at(matrix, row, column), 0);
          expect(Math.abs(product)).toBeLessThan(1e-12 * scale);
        }
        // A badly conditioned matrix has large solutions, and their products round in proportion.
        const room = 1e-12 * (10 + scale * largest(solution));
        residuals.forEach((value, row) => {
          const fitted = solution.reduce((sum, each, column) => sum + each * at(matrix, row, column), 0);
          expect(Math.abs(fitted + value - right[row]!)).toBeLessThan(room);
        });
        expect(sumOfSquares).toBeGreaterThanOrEqual(0);
        looked += 1;
      }),
      { seed: 34 },
    );
    expect(looked).toBeGreaterThan(20);
  });

  it('of a mean is the mean, and its variance is one over the count', () => {
    const fit = leastSquares(matrixOf([[1], [1], [1], [1]]), new Float64Array([1, 2, 4, 5]));
    expect(fit.solution[0]).toBeCloseTo(3, 14);
    expect(fit.covariance.values[0]).toBeCloseTo(0.25, 15);
    expect(fit.sumOfSquares).toBeCloseTo(10, 13);
  });

  it('does not mind the units of a column', () => {
    const rows = [
      [1, 2],
      [1, 3],
      [1, 5],
      [1, 7],
    ];
    const right = new Float64Array([1, 2, 2, 4]);
    const plain = leastSquares(matrixOf(rows), right);
    const scaled = leastSquares(matrixOf(rows.map(([one, x]) => [one!, x! * 2 ** 40])), right);
    expect(scaled.solution[0]).toBe(plain.solution[0]);
    expect(scaled.solution[1]).toBe(plain.solution[1]! / 2 ** 40);
    expect(scaled.covariance.values[3]).toBe(plain.covariance.values[3]! / 2 ** 80);
  });

  it.each<[string, number[][], number[]]>([
    [
      'columns depend on each other',
      [
        [1, 2],
        [2, 4],
      ],
      [1, 1],
    ],
    ['there are fewer rows than columns', [[1, 2]], [1]],
    ['the right side is too short', [[1], [2]], [1]],
    ['the right side holds a NaN', [[1], [2]], [1, Number.NaN]],
    ['the matrix holds a NaN', [[1], [Number.NaN]], [1, 1]],
    ['rows are ragged', [[1, 2], [1]], [1, 1]],
  ])('is refused where %s', (_why, rows, right) => {
    expect(() => leastSquares(matrixOf(rows), Float64Array.from(right))).toThrow(RangeError);
  });
});
