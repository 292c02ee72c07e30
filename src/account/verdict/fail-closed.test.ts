// Whatever is taken away, runs out or is not known never releases water; and the order and the unit of results mean nothing.
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { asked, limitRow, loadersCertificate, NOW_MS, sampleResult } from '../../../tests/verdict/asked.ts';
import { recordCounts } from '../../../tests/verification/record.ts';
import type { Certificate, SampleResult } from './sample-result.ts';
import { type VerdictAsked, verdictOf } from './verdict.ts';

const RUNS = 3000;
const SEED = 2147;
type Judge = (question: VerdictAsked) => { readonly released: boolean };

const ROWS = [
  limitRow(),
  limitRow({ id: 'TOC most', parameter: 'TOC', basis: 'as C', limit: { atMost: 3 } }),
  limitRow({ id: 'nickel most', parameter: 'nickel', unit: 'µg/L', limit: { atMost: 300 }, degassed: true }),
];

/** Figures in whole micrograms, so that both units are typed as a person would. */
const anyResult = fc
  .record({
    id: fc.integer({ min: 0, max: 99 }).map((no) => `r${no}`),
    sample: fc.constantFrom('s1', 's2'),
    row: fc.constantFrom(...ROWS),
    microgramsPerL: fc.constantFrom(20, 57, 113, 200, 200, 200, 399, 400, 401, 3001),
    censored: fc.constantFrom<SampleResult['censored']>('no', 'no', 'no', 'no', 'below', 'above'),
    takenAtMs: fc.constantFrom(NOW_MS - 1000, NOW_MS - 1000, NOW_MS - 1000, NOW_MS - 7000, NOW_MS + 1),
    verified: fc.constantFrom(true, true, true, false),
    validUntilMs: fc.constantFrom(NOW_MS + 10, NOW_MS + 20, NOW_MS + 30, NOW_MS),
    degassed: fc.constantFrom(true, true, true, false, null),
  })
  .map(({ row, microgramsPerL, ...rest }) =>
    sampleResult({
      ...rest,
      parameter: row.parameter,
      basis: row.basis,
      unit: 'mg/L',
      value: microgramsPerL / 1000,
    }),
  );

const anyQuestion = fc
  .record({
    results: fc.uniqueArray(anyResult, { maxLength: 7, selector: ({ id }) => id }),
    rows: fc.subarray(ROWS, { minLength: 1 }),
    forReserve: fc.boolean(),
    certificate: fc.constantFrom<Certificate | null>(null, null, loadersCertificate()),
  })
  .map(asked);

/** A question to which the answer is yes, by one result for each row. */
const releasedQuestion = fc.subarray(ROWS, { minLength: 1 }).map((rows) =>
  asked({
    rows,
    results: rows.map(({ id, parameter, basis }) =>
      sampleResult({ id, parameter, basis, value: 0.2, degassed: true }),
    ),
  }),
);

const UNKNOWN: readonly Partial<SampleResult>[] = [
  { verified: false },
  { verified: undefined as unknown as boolean },
  { validUntilMs: NOW_MS },
  { validUntilMs: Number.NaN },
  { takenAtMs: Number.NaN },
  { takenAtMs: NOW_MS + 1 },
  { value: Number.NaN },
  { unit: 'furlong' },
  { basis: null },
  { censored: 'perhaps' as 'no' },
];
/** Known, and no evidence: of water that was there before, or of something else. */
const BESIDE: readonly Partial<SampleResult>[] = [
  { takenAtMs: NOW_MS - 7000 },
  { parameter: 'something else' },
];

type Spoil = (question: VerdictAsked, at: number) => VerdictAsked;

const spoilResult =
  (change: Partial<SampleResult>): Spoil =>
  (question, at) => ({
    ...question,
    results: question.results.map((each, index) =>
      index === at % Math.max(1, question.results.length) ? { ...each, ...change } : each,
    ),
  });

const takeAway: Spoil = (question, at) => ({
  ...question,
  results: question.results.filter((_, index) => index !== at % Math.max(1, question.results.length)),
});

/** What runs out, is not known or is off: none of it ever speaks for water. */
const RUN_OUT_OR_UNKNOWN: readonly Spoil[] = [
  ...UNKNOWN.map(spoilResult),
  (question, at) => ({
    ...question,
    rows: question.rows.map((row, index) =>
      index === at % question.rows.length ? { ...row, limit: null } : row,
    ),
  }),
  (question) => ({ ...question, rows: [] }),
  (question) => ({ ...question, nowMs: Number.NaN }),
  (question) => ({ ...question, water: { ...question.water, unchangedSinceMs: Number.NaN } }),
];

const SPOILS: readonly Spoil[] = [...RUN_OUT_OR_UNKNOWN, ...BESIDE.map(spoilResult), takeAway];

/** Every spoiled question must be answered no. */
const released = (judge: Judge) =>
  fc.check(
    fc.property(releasedQuestion, fc.constantFrom(...SPOILS), fc.nat(9), (question, spoil, at) => {
      if (!judge(question).released) return false;
      return !judge(spoil(question, at)).released;
    }),
    { numRuns: RUNS, seed: SEED },
  );

test('water that is just released is held once anything is missing, over or unknown', () => {
  expect(released(verdictOf).failed).toBe(false);
});

const ofResults =
  (change: (each: SampleResult) => SampleResult): Judge =>
  (question) =>
    verdictOf({ ...question, results: question.results.map(change) });

const PLANTED: Readonly<Record<string, Judge>> = {
  'takes what nobody verified': ofResults((each) => ({ ...each, verified: true })),
  'looks at no end': ofResults((each) => ({ ...each, validUntilMs: Number.POSITIVE_INFINITY })),
  'takes any unit for that of the limit': ofResults((each) => ({ ...each, unit: 'mg/L' })),
  'takes any basis': ofResults((each) => ({
    ...each,
    basis: each.parameter === 'TOC' ? 'as C' : 'as itself',
  })),
  'takes what is no number for nought point one': ofResults((each) => ({
    ...each,
    value: Number.isNaN(each.value) ? 0.1 : each.value,
  })),
  'takes results of older water': (question) =>
    verdictOf({ ...question, water: { ...question.water, unchangedSinceMs: 0 } }),
  'passes over rows that are off': (question) =>
    verdictOf({ ...question, rows: question.rows.filter(({ limit }) => limit !== null) }),
  'lets pass where nothing is required': (question) =>
    question.rows.length === 0 ? { released: true } : verdictOf(question),
  'takes future samples': ofResults((each) => ({ ...each, takenAtMs: Math.min(each.takenAtMs, NOW_MS) })),
  'passes over a parameter without a result': (question) =>
    verdictOf({
      ...question,
      rows: question.rows.filter(
        (row, at) => at === 0 || question.results.some(({ parameter }) => parameter === row.parameter),
      ),
    }),
};

test.each(Object.entries(PLANTED))('control: a judge that %s is found', (_name, judge) => {
  expect(released(judge).failed).toBe(true);
});

test('held water is not released by anything that runs out or is not known', () => {
  let heldQuestions = 0;
  fc.assert(
    fc.property(anyQuestion, fc.constantFrom(...RUN_OUT_OR_UNKNOWN), fc.nat(9), (question, spoil, at) => {
      if (verdictOf(question).released) return;
      heldQuestions++;
      expect(verdictOf(spoil(question, at)).released).toBe(false);
    }),
    { numRuns: RUNS, seed: SEED },
  );
  expect(heldQuestions).toBeGreaterThan(RUNS / 2);
  recordCounts('fail-closed', import.meta.filename, {
    seed: SEED,
    counts: { 'held questions spoiled': heldQuestions, 'released questions spoiled': RUNS },
  });
});

test('taking a result away that does not speak against the water releases nothing', () => {
  fc.assert(
    fc.property(anyQuestion, (question) => {
      const verdict = verdictOf(question);
      if (verdict.released) return;
      const lacks = ['missing', 'unverified', 'expired', 'older-water', 'not-degassed', 'row-off'];
      const speaking = new Set(
        verdict.reasons.filter(({ code }) => !lacks.includes(code)).flatMap(({ results }) => results),
      );
      for (const { id } of question.results.filter((each) => !speaking.has(each.id))) {
        const fewer = { ...question, results: question.results.filter((each) => each.id !== id) };
        const { released: isReleased } = verdictOf({ ...fewer, certificate: null });
        expect(isReleased).toBe(false);
      }
    }),
    { numRuns: RUNS, seed: SEED },
  );
});

test('the order of results and of rows means nothing', () => {
  fc.assert(
    fc.property(
      anyQuestion.chain((question) =>
        fc.record({
          question: fc.constant(question),
          results: fc.shuffledSubarray([...question.results], { minLength: question.results.length }),
          rows: fc.shuffledSubarray([...question.rows], { minLength: question.rows.length }),
        }),
      ),
      ({ question, results, rows }) => {
        expect(verdictOf({ ...question, results, rows })).toEqual(verdictOf(question));
      },
    ),
    { numRuns: RUNS, seed: SEED },
  );
});

test('a milligram is a thousand micrograms', () => {
  fc.assert(
    fc.property(anyQuestion, (question) => {
      const inMicrograms = question.results.map((each) => ({
        ...each,
        unit: 'µg/L',
        value: Math.round(each.value * 1000),
      }));
      expect(verdictOf({ ...question, results: inMicrograms })).toEqual(verdictOf(question));
    }),
    { numRuns: RUNS, seed: SEED },
  );
});
