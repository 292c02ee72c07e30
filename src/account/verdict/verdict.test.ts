// The verdict on single questions: ends, evidence, bounds, censored figures, several rows.
import { describe, expect, test } from 'vitest';
import { asked, limitRow, loadersCertificate, NOW_MS, sampleResult } from '../../../tests/verdict/asked.ts';
import type { SampleResult } from './sample-result.ts';
import { verdictOf } from './verdict.ts';

const codesOf = (change: Parameters<typeof asked>[0]) => {
  const verdict = verdictOf(asked(change));
  return verdict.released ? [verdict.by] : verdict.reasons.map(({ code }) => code);
};
const of = (change: Partial<SampleResult>) => codesOf({ results: [sampleResult(change)] });

test('released by a result, until it runs out', () => {
  expect(verdictOf(asked())).toEqual({
    released: true,
    by: 'results',
    untilMs: sampleResult().validUntilMs,
    evidence: ['r1'],
  });
});

test('where nothing is required nothing is released, not even by certificate', () => {
  expect(codesOf({ rows: [], certificate: loadersCertificate() })).toEqual(['nothing-required']);
});

test.each([
  [0.05, 'no', 'results'],
  [0.4, 'no', 'results'],
  [0.0499, 'no', 'below'],
  [0.4001, 'no', 'above'],
  [0.05, 'below', 'below'],
  [0.2, 'below', 'censored-across-limit'],
  [0.4, 'above', 'above'],
  [0.1, 'above', 'censored-across-limit'],
  [-0.1, 'no', 'no-figure'],
  [Number.POSITIVE_INFINITY, 'no', 'no-figure'],
] as const)('silver %s, censored %s: %s', (value, censored, told) => {
  expect(of({ value, censored })).toContain(told);
});

describe('a limit of nought', () => {
  const row = limitRow({
    id: 'E coli',
    parameter: 'E coli',
    unit: 'CFU/100 mL',
    limit: { atMost: 0 },
    noneIfBelow: 1,
  });
  const count = (change: Partial<SampleResult>) =>
    codesOf({
      rows: [row],
      results: [sampleResult({ parameter: 'E coli', unit: 'CFU/100 mL', value: 0, ...change })],
    });

  test('is met by none, and by less than the detection limit that it names', () => {
    expect(count({})).toEqual(['results']);
    expect(count({ value: 1, censored: 'below' })).toEqual(['results']);
  });
  test('is not met by one, nor by a coarser method, nor by a smaller volume', () => {
    expect(count({ value: 1 })).toContain('above');
    expect(count({ value: 10, censored: 'below' })).toContain('censored-across-limit');
    expect(count({ unit: 'CFU/mL' })).toContain('unit-or-basis');
  });
});

test('a limit with no figure in it is off', () => {
  expect(codesOf({ rows: [limitRow({ limit: {} })] })).toEqual(['row-off']);
  expect(codesOf({ rows: [limitRow({ limit: { atMost: Number.NaN } })] })).toEqual(['row-off']);
});

test('a basis that nobody said fits no limit', () => {
  expect(of({ basis: null })).toContain('unit-or-basis');
  expect(of({ basis: 'as something' })).toContain('unit-or-basis');
});

test('bad news stays until the store was emptied or treated, whatever came after it', () => {
  const bad = sampleResult({ id: 'r0', sample: 's0', value: 0.03, takenAtMs: NOW_MS - 8000 });
  const results = [sampleResult(), bad];
  expect(codesOf({ results })).toEqual(['below']);
  const water = { unchangedSinceMs: NOW_MS - 5000, badNewsCountsSinceMs: NOW_MS - 5000 };
  expect(codesOf({ results, water })).toEqual(['results']);
});

test('the longest valid result of a row counts, and of all rows the first to end', () => {
  const rows = [limitRow(), limitRow({ id: 'TOC most', parameter: 'TOC', limit: { atMost: 3 } })];
  const end = (days: number) => NOW_MS + days;
  const results = [
    sampleResult({ id: 'a', validUntilMs: end(5) }),
    sampleResult({ id: 'c', validUntilMs: end(9) }),
    sampleResult({ id: 'b', validUntilMs: end(9) }),
    sampleResult({ id: 't', parameter: 'TOC', value: 1, validUntilMs: end(7) }),
  ];
  expect(verdictOf(asked({ rows, results }))).toMatchObject({ untilMs: end(7), evidence: ['b', 't'] });
});

test('every reason is told, for every row, with its results', () => {
  const rows = [limitRow(), limitRow({ id: 'A nickel', parameter: 'nickel', limit: { atMost: 1 } })];
  const results = [sampleResult({ id: 'x', value: 0.5, verified: false, validUntilMs: 0 })];
  const verdict = verdictOf(asked({ rows, results, certificate: loadersCertificate() }));
  expect(verdict).toEqual({
    released: false,
    reasons: [
      { code: 'missing', row: 'A nickel', parameter: 'nickel', results: [] },
      { code: 'above', row: 'silver range', parameter: 'silver', results: ['x'] },
      { code: 'expired', row: 'silver range', parameter: 'silver', results: ['x'] },
      { code: 'unverified', row: 'silver range', parameter: 'silver', results: ['x'] },
    ],
  });
});

test('duplicates contradict where one passes and one fails, also without a share', () => {
  const results = [sampleResult(), sampleResult({ id: 'r2', value: 0.5 })];
  expect(codesOf({ results })).toEqual(['above', 'contradictory']);
});

test('duplicates within the share, censored ones that meet, and results of two samples do not contradict', () => {
  const rows = [limitRow({ duplicatesWithinShare: 0.2, limit: { atMost: 0.4 } })];
  const pair = (change: Partial<SampleResult>) =>
    codesOf({ rows, results: [sampleResult(), sampleResult({ id: 'r2', ...change })] });
  expect(pair({ value: 0.17 })).toEqual(['results']);
  expect(pair({ value: 0.3, censored: 'below' })).toEqual(['results']);
  expect(pair({ value: 0.05, sample: 's2' })).toEqual(['results']);
  expect(pair({ value: 0.05, censored: 'below' })).toEqual(['contradictory']);
  expect(pair({ unit: 'CFU/mL' })).toEqual(['unit-or-basis']);
});
