// Cholesky factors and compensated sums.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { choleskyFactor, choleskySolve } from './cholesky.ts';
import { compensatedSum } from './sum.ts';

describe('compensated sum', () => {
  it('keeps what plain addition loses', () => {
    const values = [1, 1e100, 1, -1e100];
    expect(values.reduce((sum, x) => sum + x, 0)).toBe(0);
    expect(compensatedSum(values)).toBe(2);
    expect(compensatedSum(new Array<number>(10).fill(0.1))).toBe(1);
    expect(new Array<number>(10).fill(0.1).reduce((sum, x) => sum + x, 0)).not.toBe(1);
  });

  it('is near the exact sum of integers in any order, whatever their size', () => {
    fc.assert(
      fc.property(fc.array(fc.bigInt(-(2n ** 80n), 2n ** 80n), { maxLength: 200 }), (whole) => {
        const values = whole.map(Number);
        const exact = values.reduce((sum, x) => sum + BigInt(x), 0n);
        const size = values.reduce((sum, x) => sum + Math.abs(x), 0);
        // One rounding of the result, and the square of the unit times the count for the rest.
        const most = Math.abs(Number(exact)) * 1.2e-16 + size * values.length * values.length * 1.3e-32 * 4;
        return Math.abs(Number(BigInt(compensatedSum(values)) - exact)) <= most;
      }),
    );
  });

  it('of nothing is 0; infinities and NaN stay what they are', () => {
    expect(compensatedSum([])).toBe(0);
    expect(compensatedSum([1, Number.POSITIVE_INFINITY, 2])).toBe(Number.POSITIVE_INFINITY);
    expect(compensatedSum([Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY])).toBeNaN();
    expect(compensatedSum([1, Number.NaN])).toBeNaN();
  });
});

describe('Cholesky', () => {
  it('factors and solves a matrix with a known factor', () => {
    // L = [[2], [6, 1], [-8, 5, 3]], so A = L Lᵀ is whole and so is the solution.
    const matrix = { order: 3, values: new Float64Array([4, 12, -16, 12, 37, -43, -16, -43, 98]) };
    const factor = choleskyFactor(matrix);
    expect([...factor.values]).toEqual([2, 0, 0, 6, 1, 0, -8, 5, 3]);
    expect([...choleskySolve(factor, new Float64Array([-20, -43, 192]))]).toEqual([1, 2, 3]);
    expect([...matrix.values]).toEqual([4, 12, -16, 12, 37, -43, -16, -43, 98]);
  });

  it('solves what it factored, for any well-conditioned matrix', () => {
    const element = fc.double({ min: -1, max: 1, noNaN: true });
    let looked = 0;
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 8 }),
        fc.array(element, { minLength: 64, maxLength: 64 }),
        (order, raw) => {
          const values = new Float64Array(order * order);
          for (let row = 0; row < order; row += 1) {
            for (let column = 0; column < order; column += 1) {
              let sum = row === column ? 1 : 0;
              for (let k = 0; k < order; k += 1)
                sum += (raw[row * order + k] ?? 0) * (raw[column * order + k] ?? 0);
              values[row * order + column] = sum;
            }
          }
          const right = Float64Array.from(raw.slice(0, order));
          const solution = choleskySolve(choleskyFactor({ order, values }), right);
          for (let row = 0; row < order; row += 1) {
            const product = solution.reduce(
              (sum, x, column) => sum + x * (values[row * order + column] ?? 0),
              0,
            );
            expect(Math.abs(product - (right[row] ?? 0))).toBeLessThan(1e-12);
            looked += 1;
          }
        },
      ),
    );
    expect(looked).toBeGreaterThan(100);
  });

  it.each<[string, number, number[]]>([
    ['not positive definite', 2, [1, 2, 2, 1]],
    ['positive definite by rounding alone', 2, [2, 2, 2, 2]],
    ['zero', 1, [0]],
    ['NaN', 2, [1, 0, Number.NaN, 1]],
    ['infinite', 1, [Number.POSITIVE_INFINITY]],
    ['of another size', 2, [1, 0, 1]],
  ])('throws at a matrix that is %s', (_what, order, values) => {
    expect(() => choleskyFactor({ order, values: new Float64Array(values) })).toThrow(RangeError);
  });

  it('throws at a right side of another length', () => {
    expect(() => choleskySolve({ order: 1, values: new Float64Array([1]) }, new Float64Array(2))).toThrow(
      RangeError,
    );
  });
});
