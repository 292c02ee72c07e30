// Small pieces of a page: series of names, ages, commands of a remedy, first thoughts.
import { describe, expect, it, test } from 'vitest';
import { saidAge, saidAgeRange } from './age.ts';
import { commandsIn, firstThought, saidWays } from './commands.ts';
import { seriesOf } from './ids.ts';

test.each([
  [
    ['C-05', 'C-06', 'C-07', 'C-11'],
    ['C-05\u00A0to\u00A0C-07', 'C-11'],
  ],
  [
    ['C-05', 'C-06'],
    ['C-05', 'C-06'],
  ],
  [
    ['C-08', 'C-09', 'C-10', 'W-11'],
    ['C-08\u00A0to\u00A0C-10', 'W-11'],
  ],
  [
    ['FA', 'FB', 'C-1', 'C-02', 'C-3'],
    ['FA', 'FB', 'C-1', 'C-02', 'C-3'],
  ],
  [[], []],
])('names %j are told as %j', (ids, told) => {
  expect(seriesOf(ids)).toEqual(told);
});

describe('ages', () => {
  test.each([
    [0, '0\u00A0min'],
    [0.99, '59\u00A0min'],
    [47.9, '47\u00A0h'],
    [48, '2\u00A0d'],
    [1104, '46\u00A0d'],
  ])('%d hours is %s', (hours, age) => {
    expect(saidAge(hours)).toBe(age);
  });

  it('of several are a range with one unit where they have one', () => {
    expect(saidAgeRange(50, 1104)).toBe('2 to 46\u00A0d');
    expect(saidAgeRange(11, 100)).toBe('11\u00A0h to 4\u00A0d');
    expect(saidAgeRange(48, 49)).toBe('2\u00A0d');
  });
});

describe('commands in a remedy', () => {
  test.each([
    ['Look: waterwright store show C-07.', ['waterwright store show C-07']],
    [
      'If one: waterwright log decide a:35 a:36 merge. If both: waterwright log decide a:35 a:36 both.',
      ['waterwright log decide a:35 a:36 merge', 'waterwright log decide a:35 a:36 both'],
    ],
    ['waterwright log undo 7, and enter it again.', ['waterwright log undo 7']],
    [
      'waterwright log hookup "a b. c" "dispenser feed" --at TIME.',
      ['waterwright log hookup "a b. c" "dispenser feed" --at TIME'],
    ],
    ['Nothing is to be done.', []],
  ])('%s', (remedy, commands) => {
    expect(commandsIn(remedy)).toEqual(commands);
  });

  it('that differ in the last word share a line', () => {
    expect(saidWays(['w log decide 1 2 merge', 'w log decide 1 2 both'])).toEqual([
      'w log decide 1 2 merge | both',
    ]);
    expect(saidWays(['w log sample', 'w store show C-05'])).toEqual(['w log sample', 'w store show C-05']);
    expect(saidWays([])).toEqual([]);
  });
});

test.each([
  ['C-05 holds 20.5 L. It is on HOLD.', 'C-05 holds 20.5 L.'],
  [
    'HOLD Q-01 on 8 stores, 164 L, since Day 14 (count): C-05 and more.',
    'HOLD Q-01 on 8 stores, 164 L, since Day 14 (count).',
  ],
  [
    'Entry E0048: the stores that gave say 78.8 L. What was given counts.',
    'Entry E0048: the stores that gave say 78.8 L.',
  ],
  ['The note "load 430. ask" has no unit', 'The note "load 430. ask" has no unit'],
])('the first thought of %s', (text, thought) => {
  expect(firstThought(text)).toBe(thought);
});
