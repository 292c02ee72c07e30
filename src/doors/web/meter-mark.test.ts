// Marks of the day line: outside of what is expected, no number, no reading; and dashes of every length.
import { expect, test } from 'vitest';
import { markOf, readingsIn, tidyReading } from './meter-mark.ts';

const strokes = { low: 308.9, high: 648.1, resolution: 1 };

test.each([
  ['99999', 'above'],
  ['649', 'above'],
  ['648', 'fine'],
  ['309', 'fine'],
  ['308', 'below'],
  ['0', 'below'],
  ['abc', 'no number'],
  ['-', 'no reading'],
  ['–', 'no reading'],
  ['', 'fine'],
])('strokes of %s: %s', (typed, mark) => {
  expect(markOf(strokes, typed)).toBe(mark);
});

test('a meter of which too little is known marks nothing', () => {
  expect(markOf({ low: null, high: null, resolution: 0.1 }, '5000')).toBe('fine');
});

test('a counter that is about to roll over marks nothing', () => {
  expect(markOf({ low: 998, high: 4, resolution: 0.1 }, '2')).toBe('fine');
});

test('dashes as keyboards write them are one dash, a blank says nothing', () => {
  expect(['-', '–', '—', '\u2212'].map(tidyReading)).toEqual(['-', '-', '-', '-']);
  expect(readingsIn({ a: ' – ', b: '  ', c: '4.5' })).toEqual({ a: '-', c: '4.5' });
});
