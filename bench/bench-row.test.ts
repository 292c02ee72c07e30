// The figures of a bench: a goal is met or missed by the number alone, and no number has missed it.
import { expect, test } from 'vitest';
import { quantileOf, row } from './bench-row.ts';
import { benchTable } from './bench-table.ts';

test('a goal is met up to its bound and missed beyond it', () => {
  const figure = { name: 'help', unit: 'ms' };
  expect(row({ ...figure, value: 100, goal: { most: 100 } }).ok).toBe(true);
  expect(row({ ...figure, value: 100.1, goal: { most: 100 } }).ok).toBe(false);
  expect(row({ ...figure, value: 99, goal: { least: 100 } }).ok).toBe(false);
  expect(row({ ...figure, value: Number.NaN, goal: { most: 100 } }).ok).toBe(false);
  expect(row({ ...figure, value: 5 }).ok).toBe(true);
});

test('a quantile is one of the times, by the nearest rank', () => {
  const times = [5, 1, 4, 2, 3];
  expect(quantileOf(times, 0.5)).toBe(3);
  expect(quantileOf(times, 0.99)).toBe(5);
  expect(quantileOf(times, 0)).toBe(1);
  expect(quantileOf([], 0.5)).toBeNaN();
});

test('the table names yardstick, goal and miss', () => {
  const rows = [
    row({ name: 'raw append', value: 1234567, unit: 'entries/s' }),
    row({ name: 'append', value: 1.62, unit: '×', goal: { most: 1.5 }, ratioOf: 'raw append' }),
  ];
  expect(benchTable([{ bench: 'disk', seconds: 1, rows }]).split('\n')).toEqual([
    'bench  figure                            value  unit       goal   met',
    'disk   raw append                    1 230 000  entries/s',
    'disk   append (ratio to raw append)       1.62  ×          ≤ 1.5  NO',
  ]);
});
