// Roots between two ends: known ones, steps, and what is refused.
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { exp } from './exponential.ts';
import { rootBetween } from './root-between.ts';

test('roots that are known', () => {
  expect(rootBetween((x) => x * x - 2, { low: 0, high: 2 }, 1e-15)).toBeCloseTo(Math.SQRT2, 14);
  expect(rootBetween((x) => exp(x) - 1e6, { low: -50, high: 50 }, 1e-8)).toBeCloseTo(13.815510557964274, 12);
  expect(rootBetween((x) => x, { low: -1, high: 0 }, 0)).toBe(0);
});

test('a step is found to the last digits, from the side on which it is passed', () => {
  fc.assert(
    fc.property(fc.double({ min: 0.001, max: 999, noNaN: true }), (at) => {
      const found = rootBetween((x) => (x >= at ? 1 : -1e-3), { low: 0, high: 1000 }, 0);
      expect(found).toBeGreaterThanOrEqual(at);
      expect(found).toBeLessThanOrEqual(at * (1 + 1e-14));
    }),
    { numRuns: 300, seed: 11 },
  );
});

test('a cube, flat at its root, is found as near as was asked', () => {
  fc.assert(
    fc.property(fc.double({ min: -0.9, max: 0.9, noNaN: true }), (at) => {
      const found = rootBetween((x) => (x - at) * (x - at) * (x - at), { low: -1, high: 1 }, 1e-15);
      expect(Math.abs(found - at)).toBeLessThanOrEqual(1.1e-5);
    }),
    { numRuns: 300, seed: 12 },
  );
});

test('a smooth function is asked some fifteen times, not fifty', () => {
  let asked = 0;
  rootBetween(
    (x) => {
      asked += 1;
      return x / Math.sqrt(1 + x * x) - 0.6;
    },
    { low: 0, high: 4 },
    1e-12,
  );
  expect(asked).toBeLessThanOrEqual(18);
});

test('ends on one side, turned round, or no number are refused', () => {
  const line = (x: number) => x;
  for (const ends of [
    { low: 1, high: 2 },
    { low: -2, high: -1 },
    { low: 1, high: -1 },
    { low: Number.NaN, high: 1 },
  ])
    expect(() => rootBetween(line, ends, 0)).toThrow(RangeError);
  expect(() => rootBetween((x) => (x > -1 && x < 1 ? Number.NaN : x), { low: -1, high: 1 }, 0)).toThrow(
    RangeError,
  );
});
