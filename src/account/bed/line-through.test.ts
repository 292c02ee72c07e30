// A line through readings over time.
import { expect, test } from 'vitest';
import { msPerDay } from '../../ground/units/index.ts';
import { lineThrough } from './line-through.ts';

const daily = (...values: readonly number[]) => values.map((value, k) => ({ atMs: k * msPerDay, value }));

test('points on a line give the line, and their own doubt gives its', () => {
  const line = lineThrough(daily(1, 2, 3, 4, 5), 0.1);
  expect(line.perDay).toBeCloseTo(1, 12);
  expect(line.begin).toBeCloseTo(1, 12);
  expect(line.end).toBeCloseTo(5, 12);
  // u / √Σ(t − t̄)² = 0.1 / √10.
  expect(line.perDayU).toBeCloseTo(0.1 / Math.sqrt(10), 12);
  expect(line.lastOff).toBeCloseTo(0, 9);
});

test('readings that scatter more than they should widen it, and those that scatter less do not narrow it', () => {
  const calm = lineThrough(daily(1, 1, 1, 1), 0.1).perDayU;
  expect(lineThrough(daily(1, 2, 0, 1), 0.1).perDayU).toBeGreaterThan(3 * calm);
  expect(calm).toBeCloseTo(0.1 / Math.sqrt(5), 12);
});

test('the last reading is held against the others alone', () => {
  expect(lineThrough(daily(1, 1, 1, 1, 3), 0.1).lastOff).toBeGreaterThan(8);
  expect(lineThrough(daily(1, 1, 3), 0.1).lastOff).toBeNull();
});

test('one instant makes no line', () => {
  expect(() =>
    lineThrough(
      [0, 0, 0].map((atMs) => ({ atMs, value: 1 })),
      0.1,
    ),
  ).toThrow(RangeError);
});
