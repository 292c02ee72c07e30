// Every bad line gets its finding with place, expected, received and remedy, held as a golden record; no good line suffers from it.
import { expect, test } from 'vitest';
import { BAD_LINES } from '../../../tests/field-log/bad-lines.ts';
import { CORRIE_INDEX, corrieReader, lineWith } from '../../../tests/field-log/corrie-log.ts';
import { expectGolden } from '../../../tests/golden/record.ts';
import { recordCounts } from '../../../tests/verification/record.ts';
import { indexOutpost } from '../../outpost/index.ts';
import { type FieldLogFindingCode, wordFinding } from '../../papers/index.ts';
import { type FieldLogFinding, type FieldLogRead, readFieldLog } from './index.ts';

const readCorrie = corrieReader(readFieldLog);
const cases = Object.entries(BAD_LINES);

function printed(finding: FieldLogFinding): string {
  const { code, severity, where, text, expected, received, remedy } = wordFinding(finding);
  const place = [where.file, where.line].filter((part) => part !== undefined).join(':');
  const head = `  ${place}  ${where.field ?? '-'}  ${code}  ${severity}`;
  return `${head}\n    ${text}\n    expected  ${expected}\n    received  ${received}\n    remedy    ${remedy}\n`;
}

/** Of a great many findings of one sort the first and the last. */
function printedCase(name: string, read: FieldLogRead): string {
  const few = read.findings.length > 4 ? [read.findings[0], read.findings.at(-1)] : read.findings;
  const count = `${read.understood} understood, ${read.notUnderstood.length} not, ${read.findings.length} findings`;
  return `${name}\n  ${count}\n${few.flatMap((each) => (each === undefined ? [] : printed(each))).join('')}`;
}

test('the findings as they are read', () => {
  const record = cases.map(([name, lines]) => printedCase(name, readCorrie(lines)));
  expectGolden('field-log/bad-lines.txt', record.join('\n'));
});

/** Every code, and whether a bad line above has it; the others have tests of their own, below or with the whole log. */
const CODES: Readonly<Record<FieldLogFindingCode, boolean>> = {
  'log-line-too-long': true,
  'log-too-many-lines': false,
  'log-line-torn': true,
  'log-line-no-json': true,
  'log-line-no-object': true,
  'log-key-twice': true,
  'log-kind-unknown': true,
  'log-field-unknown': true,
  'log-field-missing': true,
  'log-type-wrong': true,
  'log-number-not-finite': true,
  'log-out-of-range': true,
  'log-not-in-list': true,
  'log-text-form': true,
  'log-list-length': true,
  'log-one-of': true,
  'log-run-or-status': true,
  'log-line-content-alone': true,
  'log-doubt-alone': true,
  'log-ends-same': true,
  'log-time-wrong': true,
  'log-date-wrong': true,
  'log-day-differs': true,
  'log-before-opening': true,
  'log-in-future': false,
  'log-time-order': true,
  'log-id-twice': true,
  'log-line-repeated': true,
  'log-opening-missing': true,
  'log-opening-twice': true,
  'log-opening-other': false,
  'log-format-other': true,
  'log-version-newer': true,
  'log-outpost-other': true,
  'log-name-unknown': true,
  'log-vehicle-unknown': true,
  'log-method-unknown': true,
  'log-named-twice': true,
  'log-instrument-missing': false,
  'log-counter-unclear': true,
  'log-store-differs': true,
  'log-findings-cut': true,
};

test('every code has a bad line that earns it', () => {
  expect(cases.length).toBeGreaterThan(80);
  const seen = new Set(cases.flatMap(([, lines]) => readCorrie(lines).findings.map(({ code }) => code)));
  const wanted = Object.entries(CODES).flatMap(([code, isSeen]) => (isSeen ? [code] : []));
  expect([...seen].sort()).toEqual(wanted.sort());
  recordCounts('bad-lines', import.meta.filename, {
    counts: { cases: cases.length, 'findings earned': seen.size },
  });
});

test.each(cases)('%s: a line is either understood or reported', (name, lines) => {
  const read = readCorrie(lines);
  const errors = read.findings.filter(({ severity }) => severity === 'error');
  const inPlace = new Set(read.notUnderstood.map(({ line }) => line));
  if (name !== 'nothing at all') {
    for (const { where } of errors) if (where.line !== undefined) expect(inPlace).toContain(where.line);
  }
  expect(read.understood + read.notUnderstood.length).toBe(lines.filter((line) => line !== '').length);
  expect(read.findings.length).toBeGreaterThan(0);
  const taken = new Set(read.drafts.map((draft) => read.lineOf.get(draft.id)));
  for (const line of inPlace) expect(taken).not.toContain(line);
});

test.each(cases)('%s: said calmly and in full', (_name, lines) => {
  for (const finding of readCorrie(lines).findings) {
    const { text, expected, received, remedy } = wordFinding(finding);
    for (const sentence of [text, expected, received, remedy]) {
      expect(sentence.trim()).toBe(sentence);
      expect(sentence).not.toMatch(/undefined|\[object|please|invalid|!|[\p{Cc}\p{Cs}]/iu);
      expect(sentence.length).toBeGreaterThan(0);
      expect(sentence.length).toBeLessThan(700);
    }
    expect(text).toMatch(/[.?]$/);
    expect(remedy).toMatch(/[.?]$/);
  }
});

test('a good line beside a bad one is taken', () => {
  const bad = lineWith('E0020', { litres: -1 });
  const read = readCorrie([lineWith('E0001'), bad, lineWith('E0002')]);
  expect(read.drafts.map((draft) => draft.origin?.ref)).toEqual(['E0001', 'E0002']);
  expect(read.notUnderstood).toEqual([{ line: 2, ref: 'E0020', kind: 'transfer' }]);
});

test('blank lines, a mark of byte order and carriage returns say nothing', () => {
  const plain = [lineWith('E0001'), lineWith('E0002')].map((line) => JSON.stringify(line));
  const dressed = [`\uFEFF${plain[0]}\r`, '', '  \t', '\r', `${plain[1]}\r`, ''];
  const read = readCorrie(dressed);
  expect(read.findings).toEqual([]);
  expect(read.drafts).toEqual(readCorrie(plain).drafts);
  expect(read.understood).toBe(2);
  expect([...read.lineOf.values()]).toEqual([1, 5]);
});

test('a reading without an instrument is a loss and is said; null without one is none', () => {
  const { outpost } = CORRIE_INDEX;
  const instruments = outpost.instruments.filter(({ logField }) => logField !== 'RH_percent');
  const request = { outpost: indexOutpost({ ...outpost, instruments }) };
  const read = (line: ReturnType<typeof lineWith>) => readCorrie([lineWith('E0001'), line], request);
  const [finding] = read(lineWith('E0002')).findings;
  expect(finding).toMatchObject({
    code: 'log-instrument-missing',
    where: { field: 'RH_percent', line: 2 },
    data: { value: 50.4 },
  });
  const none = read(lineWith('E0002', { RH_percent: null }));
  expect(none.findings).toEqual([]);
  expect(none.drafts[1]?.body).toMatchObject({ readings: { length: 7 } });
});

function* longLog(count: number, line: string): Generator<string> {
  yield JSON.stringify(lineWith('E0001'));
  for (let k = 0; k < count; k++) yield line;
  yield JSON.stringify(lineWith('E0002'));
}

test.each([
  ['bad', '{}', 199_999],
  ['blank', '', 0],
])('a log with many %s lines is read no further than 200,000', (_what, line, unread) => {
  const request = { outpost: CORRIE_INDEX, file: 'field-log.jsonl' };
  const tooLong = readFieldLog(longLog(199_999, line), request);
  expect(tooLong.findings[0]).toMatchObject({
    code: 'log-too-many-lines',
    where: { file: 'field-log.jsonl' },
  });
  expect(tooLong.drafts.map((draft) => draft.origin?.ref)).toEqual(['E0001']);
  expect(tooLong.notUnderstood.length).toBe(unread);
  const fits = readFieldLog(longLog(199_998, line), request);
  expect(fits.drafts.map((draft) => draft.origin?.ref)).toEqual(['E0001', 'E0002']);
});

const OPENED_MS = Date.UTC(2147, 1, 28, 21);

test.each([
  ['before it', { nowMs: Date.UTC(2147, 2, 1, 12) }, ['log-in-future']],
  ['a minute before it', { nowMs: Date.UTC(2147, 2, 1, 20, 59) }, []],
  ['of another calendar, in which the opening lies ahead', { nowMs: OPENED_MS - 1 }, []],
  ['of no clock', {}, []],
])('a line told at a time %s', (_name, now, codes) => {
  const read = readCorrie([lineWith('E0001'), lineWith('E0002')], now);
  expect(read.findings.map(({ code }) => code)).toEqual(codes);
  expect(read.drafts).toHaveLength(2 - codes.length);
});
