// The biocide of a store as it prints where little is known: nothing is made up, and what to do stands there.
import { expect, test } from 'vitest';
import { type BiocideSheet, storeText } from '../../src/papers/index.ts';
import { fallingBiocide, unknownBiocide } from './sample-biocide.ts';
import { oneStore } from './sample-sheets.ts';

const printed = (biocide: BiocideSheet) =>
  storeText({ ...oneStore, biocide }, { style: 'screen', width: 100, units: 'L', colour: false }).replace(
    /\s+/g,
    ' ',
  );

test('what is not known says so, and why', () => {
  const text = printed(unknownBiocide);
  for (const part of [
    '<0.01 mg/L, drawn Day 16 15:00 UTC (skerry 60)',
    'below 0.01 mg/L as read last',
    'not known: all results lie below the limit of detection',
    'and that is over since Day 121',
    'no more: the silver is below the least. Hold it, dose it, sample it',
    'no flow since the book began; it stood too long, flush it',
  ])
    expect(text).toContain(part);
  expect(text).not.toContain('falls below the least');
});

test('without a rate and without an age nobody knows, and that is for a hold', () => {
  const age = { ...(unknownBiocide.age ?? { days: 1, since: '', by: 'fill' as const, isOver: false }) };
  const text = printed({
    ...unknownBiocide,
    ...{ results: [], noRate: 'no results', untilBy: 'not known', leastMgPerL: null, mostMgPerL: null },
    age: { ...age, mostDays: null, untilDay: null, isOver: false },
  });
  expect(text).toContain('nobody knows: neither a rate nor an age says it. That is for a hold');
  expect(text).toContain('no limit set: hold');
  expect(text).toContain('the outpost file names no age: hold');
});

test('a dose stands with what it makes, with the maximum and with its caution', () => {
  const text = printed(fallingBiocide);
  expect(text).toMatch(
    /4\.1 ± 1\.8 mL of concentrate, which makes 0\.200 ± 0\.012 mg\/L \(at most 0\.5 mg\/L\)/,
  );
  expect(text).toContain('CAUTION Biocide concentrate harms eyes and skin.');
  expect(text).toContain('by no day within a hundred years in 19 of 20');
});
