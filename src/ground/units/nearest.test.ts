// Near names for a mistyped one.
import { expect, it } from 'vitest';
import { editDistance, nearest } from './nearest.ts';

it.each([
  ['', '', 0],
  ['abc', '', 3],
  ['abc', 'abc', 0],
  ['abc', 'acb', 1],
  ['kitten', 'sitting', 3],
  ['ca', 'abc', 3],
])('from %j to %j it is %d steps, and as many back', (first, second, steps) => {
  expect(editDistance(first, second)).toBe(steps);
  expect(editDistance(second, first)).toBe(steps);
});

it('puts the nearest first, keeps the order of ties, and leaves out what is far', () => {
  expect(nearest('c07', ['KB', 'C-08', 'C-07', 'C-17'])).toEqual(['C-07', 'C-08', 'C-17']);
  expect(nearest('ballance', ['balance', 'book', 'bed'])).toEqual(['balance']);
  expect(nearest('zzz', ['balance', 'book'])).toEqual([]);
  expect(nearest('C-07', ['C-01', 'C-02', 'C-03', 'C-04'], 2)).toEqual(['C-01', 'C-02']);
});

it('folds only the letters A to Z', () => {
  expect(nearest('\u212A', ['k'])).toEqual(['k']);
  expect(editDistance('\u212A', 'k')).toBe(1);
});

it('gives none for a name of great length', () => {
  expect(nearest('x'.repeat(100_000), ['x'.repeat(64)])).toEqual([]);
});
