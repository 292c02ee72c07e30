// Roots between two ends: known ones, steps, hard ones, and what is refused.
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { exp } from './exponential.ts';
import { rootBetween } from './root-between.ts';

test('roots that are known', () => {
  expect(rootBetween((x) => x * x - 2, { low: 0, high: 2 }, 1e-15)).toBeCloseTo(Math.SQRT2, 14);
  expect(rootBetween((x) => exp(x) - 1e6, { low: -50, high: 50 }, 1e-8)).toBeCloseTo(13.815510557964274, 12);
  expect(rootBetween((x) => x, { low: -1, high: 0 }, 0)).toBe(0);
  expect(rootBetween((x) => x, { low: 0, high: 1 })).toBe(0);
  expect(rootBetween((x) => 2 - x * x, { low: 0, high: 2 })).toBeCloseTo(Math.SQRT2, 14);
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

test('a falling function has the same root, and is left on the side of its high end', () => {
  fc.assert(
    fc.property(fc.double({ min: 0.001, max: 999, noNaN: true }), (at) => {
      const found = rootBetween((x) => (x >= at ? -1e-3 : 1), { low: 0, high: 1000 });
      expect(found).toBeGreaterThanOrEqual(at);
      expect(found).toBeLessThanOrEqual(at * (1 + 1e-14));
    }),
    { numRuns: 300, seed: 13 },
  );
});

test('hard functions are not asked without end: poles of a tangent, high powers, a wall of an exponential', () => {
  const hard: readonly [(x: number) => number, number, number][] = [
    [(x) => exp(x) - 1e-5, -700, 700],
    [(x) => x ** 19, -1, 4],
    [(x) => x * exp(-x * x) + 1e-9, -4, 0],
    [(x) => 1 / (x - 1 / 3) + 3e5, 0, 1 / 3 - 1e-9],
    [(x) => (x - 1e-8) * (1 + x * x), -1e9, 1e9],
  ];
  for (const [of, low, high] of hard) {
    let asked = 0;
    const found = rootBetween(
      (x) => {
        asked += 1;
        return of(x);
      },
      { low, high },
    );
    expect(asked).toBeLessThanOrEqual(220);
    const [below, above] = [
      of(found - 1e-15 * Math.abs(found) - 1e-320),
      of(found + 1e-15 * Math.abs(found)),
    ];
    expect(below * above, `${found}`).toBeLessThanOrEqual(0);
  }
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
  expect(asked).toBeLessThanOrEqual(12);
});

test('ends on one side, turned round, or no number are refused', () => {
  const line = (x: number) => x;
  for (const ends of [
    { low: 1, high: 2 },
    { low: 0.5, high: 0.5 },
    { low: -2, high: -1 },
    { low: 1, high: -1 },
    { low: Number.NaN, high: 1 },
    { low: -1, high: Number.NaN },
  ])
    expect(() => rootBetween(line, ends, 0)).toThrow(RangeError);
  expect(() => rootBetween((x) => (x > -1 && x < 1 ? Number.NaN : x), { low: -1, high: 1 }, 0)).toThrow(
    RangeError,
  );
});
