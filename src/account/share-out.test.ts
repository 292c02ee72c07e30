// Sharing out: the parts are whole, add up, and none is a whole milligram off its exact part.
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { shareOut } from './share-out.ts';

test('gives what lacks to the largest remainders, the first of equals first', () => {
  expect(shareOut(100, [1, 1, 1])).toEqual([34, 33, 33]);
  expect(shareOut(10, [0.26, 0.26, 0.48])).toEqual([3, 2, 5]);
  expect(shareOut(7, [0, 1])).toEqual([0, 7]);
  expect(shareOut(0, [])).toEqual([]);
});

test('adds up for any weights, and every part is less than a milligram off', () => {
  const weight = fc.double({ min: 0, max: 1e6, noNaN: true });
  const weights = fc.array(weight, { minLength: 1, maxLength: 40 });
  fc.assert(
    fc.property(fc.nat({ max: 2_000_000_000 }), weights, (totalMg, all) => {
      const sum = all.reduce((total, one) => total + one, 0);
      fc.pre(sum > 1e-300);
      const parts = shareOut(totalMg, all);
      expect(parts.reduce((total, one) => total + one, 0)).toBe(totalMg);
      parts.forEach((part, k) => {
        expect(part).toBeGreaterThanOrEqual(0);
        expect(Math.abs(part - (totalMg * (all[k] ?? 0)) / sum)).toBeLessThan(1.01);
      });
    }),
    { seed: 21470412, numRuns: 300 },
  );
});

test('refuses what cannot be shared', () => {
  expect(() => shareOut(1, [])).toThrow(RangeError);
  expect(() => shareOut(1, [0, 0])).toThrow(RangeError);
  expect(() => shareOut(-1, [1])).toThrow(RangeError);
  expect(() => shareOut(0.5, [1])).toThrow(RangeError);
  expect(() => shareOut(1, [1, Number.NaN])).toThrow(RangeError);
  expect(() => shareOut(1, [2, -1])).toThrow(RangeError);
});
