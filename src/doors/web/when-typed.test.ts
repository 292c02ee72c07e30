// Times as people type them: read like the desk reads them, and refused where the desk would refuse them.
import { expect, test } from 'vitest';
import { clockBefore, judgeWhen, tidyWhen } from './when-typed.ts';

/** Day 60, 2147-04-29, 21:20 UTC. */
const NOW = { utcMs: 5_595_859_200_000, day: 60 };

test.each([
  ['D60 14:05', 'D60T14:05'],
  ['day 60, 9:05', 'D60T09:05'],
  ['d60t14:05', 'D60T14:05'],
  ['Day 46', 'D46'],
  ['yesterday 14:00', '2147-04-28T14:00Z'],
  ['today 9:30 UTC', '2147-04-29T09:30Z'],
  ['9:05', '09:05'],
  ['20 min ago', '-20m'],
  ['2 hours earlier', '-2h'],
  ['-15m', '-15m'],
  ['2147-04-15T14:00Z', '2147-04-15T14:00Z'],
  ['Now', 'now'],
])('%s is read as %s', (typed, tidy) => {
  expect(tidyWhen(typed, NOW)).toBe(tidy);
  expect(judgeWhen(tidy, NOW)).toBe('fine');
});

test.each(['abc', 'D60T25:99', '2147/13/45', 'soon', '14.05'])('%s cannot be read', (typed) => {
  expect(judgeWhen(tidyWhen(typed, NOW), NOW)).toBe('unreadable');
});

test.each(['D99', 'D61', '2147-05-01T00:00Z'])('%s is still to come', (typed) => {
  expect(judgeWhen(tidyWhen(typed, NOW), NOW)).toBe('to come');
});

test('minutes earlier come to a clock, and to a date where it is another one', () => {
  expect(clockBefore(75, NOW)).toBe('20:05\u00A0UTC');
  expect(clockBefore(22 * 60, NOW)).toBe('2147-04-28 23:20\u00A0UTC');
});
