// A band lies between empty and full, and always holds its best value.
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { bandWithin } from './band.ts';

test('a doubt beyond empty or full is cut there', () => {
  expect(bandWithin({ value: 11, u95: 14 }, 22)).toEqual({ low: 0, high: 22 });
  expect(bandWithin({ value: 180, u95: 12 }, 180)).toEqual({ low: 168, high: 180 });
});

test('within the walls it is the whole ±, and without a ± the best value alone', () => {
  expect(bandWithin({ value: 12, u95: 0.5 }, 22)).toEqual({ low: 11.5, high: 12.5 });
  expect(bandWithin({ value: 12, u95: null }, 22)).toEqual({ low: 12, high: 12 });
});

test('a best value beyond a wall keeps its side of the band', () => {
  expect(bandWithin({ value: 23, u95: 2 }, 22)).toEqual({ low: 21, high: 23 });
  expect(bandWithin({ value: -1, u95: 2 }, 22)).toEqual({ low: -1, high: 1 });
});

test('for any figure it holds the best value, is no wider than the ±, and stays within the walls where the value does', () => {
  const litres = (min: number, max: number) => fc.double({ min, max, noNaN: true });
  fc.assert(
    fc.property(litres(-5, 30), litres(0, 60), litres(0, 25), (value, u95, capacity) => {
      const { low, high } = bandWithin({ value, u95 }, capacity);
      expect(low).toBeLessThanOrEqual(value);
      expect(high).toBeGreaterThanOrEqual(value);
      expect(low).toBeGreaterThanOrEqual(value - u95);
      expect(high).toBeLessThanOrEqual(value + u95);
      if (value >= 0 && value <= capacity) expect([low >= 0, high <= capacity]).toEqual([true, true]);
    }),
  );
});
