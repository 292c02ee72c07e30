// Scales and their round numbers.
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { pixelOf, ticks } from './scale.ts';

test.each([
  [{ from: 0, to: 22, most: 6 }, [0, 5, 10, 15, 20]],
  [{ from: 0, to: 0.7, most: 6 }, [0, 0.2, 0.4, 0.6]],
  [{ from: -7, to: 12, most: 7 }, [-5, 0, 5, 10]],
  [{ from: 58.2, to: 60.9, most: 10, whole: true }, [59, 60]],
  [{ from: 0, to: 3650, most: 10, whole: true }, [0, 500, 1000, 1500, 2000, 2500, 3000, 3500]],
])('%j has %j', (range, expected) => {
  expect(ticks(range)).toEqual(expected);
});

test('there are never more than were asked for, and all lie in the range', () => {
  const from = fc.double({ min: -1e5, max: 1e5, noNaN: true });
  const length = fc.double({ min: 1e-3, max: 1e5, noNaN: true });
  fc.assert(
    fc.property(from, length, fc.integer({ min: 2, max: 12 }), (start, long, most) => {
      const found = ticks({ from: start, to: start + long, most });
      expect(found.length).toBeLessThanOrEqual(most);
      for (const value of found) {
        expect(value).toBeGreaterThanOrEqual(start - 1e-6);
        expect(value).toBeLessThanOrEqual(start + long + 1e-6);
      }
    }),
    { seed: 21470418, numRuns: 300 },
  );
});

test('an empty range has none', () => {
  expect(() => ticks({ from: 1, to: 1, most: 5 })).toThrow(RangeError);
  expect(() => ticks({ from: 0, to: Number.NaN, most: 5 })).toThrow(RangeError);
});

test('numbers become pixels, and those outside lie at the end', () => {
  const scale = { from: 0, to: 10, pixelFrom: 300, pixelTo: 100 };
  expect([0, 5, 10, 12, -3].map((value) => pixelOf(scale, value))).toEqual([300, 200, 100, 100, 300]);
  expect(pixelOf({ ...scale, to: 0 }, 5)).toBe(300);
});
