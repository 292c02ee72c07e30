// Newton's steps between two ends: known roots, flat and steep functions, and what is refused.
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { exp } from './exponential.ts';
import { type NewtonSearch, newtonBetween } from './newton-between.ts';

type Curve = (x: number) => readonly [value: number, slope: number];

function rootOf(curve: Curve, search: NewtonSearch): { found: number; asked: number } {
  let asked = 0;
  const found = newtonBetween((x, at) => {
    asked += 1;
    [at[0], at[1]] = curve(x);
  }, search);
  return { found, asked };
}

test('roots that are known, in few steps', () => {
  const square = rootOf((x) => [x * x - 2, 2 * x], { low: 0, high: 2, start: 1 });
  expect(square.found).toBeCloseTo(Math.SQRT2, 15);
  expect(square.asked).toBeLessThanOrEqual(6);
  const wall = rootOf((x) => [exp(x) - 1e6, exp(x)], { low: -50, high: 50, start: 10 });
  expect(wall.found).toBeCloseTo(13.815510557964274, 13);
  expect(rootOf((x) => [x, 1], { low: 0, high: 1, start: 0.5 }).found).toBe(0);
});

test('a step that would leave the bracket is a bisection: an arc that throws Newton out', () => {
  // From 3 the plain method runs away from the root of x / √(1 + x²).
  const { found } = rootOf((x) => [x / Math.sqrt(1 + x * x), 1 / Math.sqrt(1 + x * x) ** 3], {
    low: -40,
    high: 90,
    start: 3,
  });
  expect(Math.abs(found)).toBeLessThan(1e-12);
});

test('any cubic that rises is solved from anywhere, also with the noise of rounding', () => {
  fc.assert(
    fc.property(
      fc.double({ min: -9, max: 9, noNaN: true }),
      fc.double({ min: 0, max: 5, noNaN: true }),
      fc.double({ min: -10, max: 10, noNaN: true }),
      (root, bend, start) => {
        const { found } = rootOf(
          (x) => {
            const d = x - root;
            return [d * (1 + bend * d * d), 1 + 3 * bend * d * d];
          },
          { low: -10, high: 10, start },
        );
        expect(Math.abs(found - root)).toBeLessThanOrEqual(1e-14 * Math.max(1, Math.abs(root)));
      },
    ),
    { numRuns: 500, seed: 21 },
  );
});

test('rounding that never shrinks ends the search', () => {
  // Summed so that its last digits are lost: about 1e-12 of noise around the root.
  const noisy: Curve = (x) => [x * x + 1e4 - 1e4 - 2, 2 * x];
  const { found, asked } = rootOf(noisy, { low: 0, high: 100, start: 50 });
  expect(found).toBeCloseTo(Math.SQRT2, 10);
  expect(asked).toBeLessThanOrEqual(20);
});

test('no root, no bracket, no number, no slope: refused', () => {
  const line: Curve = (x) => [x, 1];
  expect(() => rootOf(line, { low: 1, high: 2, start: 1.5 })).toThrow(RangeError);
  expect(() => rootOf(line, { low: -2, high: -1, start: -1.5 })).toThrow(RangeError);
  expect(() => rootOf(line, { low: 1, high: -1, start: 0 })).toThrow(RangeError);
  expect(() => rootOf(line, { low: -1, high: 1, start: 2 })).toThrow(RangeError);
  expect(() => rootOf(line, { low: -1, high: 1, start: Number.NaN })).toThrow(RangeError);
  expect(() => rootOf(() => [Number.NaN, 1], { low: -1, high: 1, start: 0 })).toThrow(RangeError);
  expect(() => rootOf(() => [1, Number.NaN], { low: -1, high: 1, start: 0 })).toThrow(RangeError);
});

test('a slope of 0 is no obstacle', () => {
  const { found } = rootOf((x) => [x < 0.3 ? -1 : 1, 0], { low: 0, high: 1, start: 0.5 });
  expect(found).toBeCloseTo(0.3, 14);
});
