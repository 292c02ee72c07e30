// Every kind of entry has its line of words; the lines are a golden record, for reading.
import { expect, test } from 'vitest';
import { type AnyDraft, kindNames, readDraft } from '../../src/book/index.ts';
import { entryInWords } from '../../src/papers/index.ts';
import { expectGolden } from '../golden/record.ts';
import { HIDDEN_PERSON, sampleDrafts } from './sample-entries.ts';

const context = {
  mgPerL: 997_800,
  dayRule: { dayOneUtcMs: Date.UTC(2147, 2, 1), lineMinuteOfDay: 1260 },
  instruments: new Map([
    ['condensate', { unit: 'L' }],
    ['strokes', { unit: 'strokes' }],
    ['product', { unit: 'L' }],
    ['balance', { unit: 'L' }],
  ]),
};

/** As the book would keep it: a sample that the book refuses is no sample. */
function read(draft: unknown): AnyDraft {
  const outcome = readDraft(draft);
  if (!outcome.ok) throw new Error(JSON.stringify(outcome.findings));
  return outcome.draft;
}

const lines = sampleDrafts().map(({ kind, draft }) => ({ kind, line: entryInWords(read(draft), context) }));

test('every kind is told', () => {
  expect(new Set(lines.map(({ kind }) => kind))).toEqual(new Set(kindNames));
  expectGolden(
    'papers/entries.txt',
    lines.map(({ kind, line }) => `${kind}\t${line.replaceAll('\u00A0', ' ')}\n`).join(''),
  );
});

test.each(lines.map(({ kind, line }) => [kind, line]))('%s: %s', (_kind, line) => {
  expect(line).not.toMatch(/undefined|NaN|null|\[object|Infinity|!|,\s*,|: $|, $|\s{2}/);
  expect(line.trim()).toBe(line);
});

test('who drank what is never shown', () => {
  expect(lines.some(({ line }) => line.includes('drink 200'))).toBe(true);
  expect(lines.filter(({ line }) => line.includes(HIDDEN_PERSON))).toEqual([]);
});

test('a second person and a fact against a rule are told; a declared second person stays a declared one', () => {
  const [sample] = sampleDrafts().filter(({ kind }) => kind === 'relabel');
  const draft = {
    ...(sample?.draft as object),
    second: { office: 'medic', confirmation: 'declared, not verified' },
    happened: 'the label fell off',
  };
  expect(entryInWords(read(draft), context)).toBe(
    'relabel FA from drinking to waste, by two persons, photo P-1; second person medic, declared, not verified; kept because it had happened: the label fell off',
  );
});

test('before the days are counted, times are told in ISO 8601', () => {
  const [sample] = sampleDrafts().filter(({ kind }) => kind === 'cabin-window');
  expect(entryInWords(read(sample?.draft), { ...context, dayRule: null })).toContain(
    'until 2147-04-01T05:30:00Z',
  );
});

test('grades may have names', () => {
  const [sample] = sampleDrafts().filter(({ kind }) => kind === 'downgrade');
  const gradeNames = new Map([['drinking', 'drinking water, silver and minerals']]);
  expect(entryInWords(read(sample?.draft), { ...context, gradeNames })).toContain(
    'from drinking water, silver and minerals to technical',
  );
});
