// Whatever stands in a file: the reader never throws, counts every line, and hands on only what the book takes.
import * as fc from 'fast-check';
import { expect, test } from 'vitest';
import {
  asLines,
  corrieReader,
  LOG_OBJECTS,
  type LogObject,
  lineWith,
} from '../../../tests/field-log/corrie-log.ts';
import { recordCounts } from '../../../tests/verification/record.ts';
import { canonicalJson, type Json, readDraft } from '../../book/index.ts';
import { wordFinding } from '../../papers/index.ts';
import { readFieldLog } from './index.ts';

const readCorrie = corrieReader(readFieldLog);
const opening = lineWith('E0001');

let judged = 0;

function holds(lines: readonly (string | LogObject)[]): number {
  judged += 1;
  const read = readCorrie(lines);
  for (const draft of read.drafts) {
    const judged = readDraft(JSON.parse(canonicalJson(draft as unknown as Json)));
    if (!judged.ok) throw new Error(`the book refuses: ${JSON.stringify(judged.findings)}`);
  }
  for (const finding of read.findings) wordFinding(finding);
  const told = asLines(lines).filter((line) => line.trim() !== '').length;
  expect(read.understood + read.notUnderstood.length).toBe(told);
  expect(read.drafts.length).toBeLessThanOrEqual(read.understood);
  return read.drafts.length;
}

const edges = [
  0,
  -0,
  0.1,
  -1,
  1,
  55,
  80,
  100,
  999.9,
  10_000,
  90_000,
  90_001,
  1e5,
  1e6,
  1e9,
  1e15,
  2 ** 53,
  1e308,
  5e-324,
];
const texts = [1, 24, 55, 80, 81, 200, 201, 400, 1000, 1001, 4000, 4001].map((length) => 'x'.repeat(length));
const value = fc.oneof(
  fc.constantFrom<unknown>(
    ...edges,
    ...texts,
    null,
    true,
    false,
    '',
    ' ',
    '-',
    'D',
    'D0',
    'FA',
    'drinking',
    '\u0000',
    '\ud800',
  ),
  fc.constantFrom(
    '2147-03-07T10:00Z',
    '2999-12-31T23:59Z',
    '1900-01-01T00:00Z',
    '2147-03-07',
    '2147-03-07T10:00-14:00',
  ),
  fc.jsonValue({ maxDepth: 3 }),
);

/** A way to some value inside a line, and what is put there. */
const change = fc.record({
  line: fc.nat({ max: LOG_OBJECTS.length - 1 }),
  way: fc.array(fc.nat({ max: 30 }), { minLength: 1, maxLength: 4 }),
  value,
  how: fc.constantFrom('put', 'take out', 'add'),
});
type Change = typeof change extends fc.Arbitrary<infer T> ? T : never;

function bent(node: unknown, way: readonly number[], by: Change): unknown {
  if (typeof node !== 'object' || node === null) return by.value;
  const keys = Object.keys(node);
  const [step, ...rest] = way;
  if (step === undefined || keys.length === 0) return by.value;
  const key = keys[step % keys.length] ?? '';
  const copy = (Array.isArray(node) ? [...node] : { ...node }) as Record<string, unknown>;
  if (rest.length > 0) copy[key] = bent(copy[key], rest, by);
  else if (by.how === 'put') copy[key] = by.value;
  else if (by.how === 'add') copy[`${key}x`] = by.value;
  else delete copy[key];
  return copy;
}

test('lines with bent values', () => {
  let taken = 0;
  const property = fc.property(fc.array(change, { minLength: 1, maxLength: 4 }), (changes) => {
    const lines = changes.map((one) => bent(LOG_OBJECTS[one.line], one.way, one) as LogObject);
    taken += holds([opening, ...lines]);
  });
  fc.assert(property, { numRuns: 1500 });
  expect(taken).toBeGreaterThan(1500);
});

test('bent opening lines', () => {
  const property = fc.property(change, (one) => {
    holds([
      bent(opening, one.way, one) as LogObject,
      lineWith('E0002'),
      lineWith('E0016'),
      lineWith('E0020'),
    ]);
  });
  fc.assert(property, { numRuns: 500 });
});

test('texts with bent signs', () => {
  const text = asLines([opening, lineWith('E0002'), lineWith('E0010'), lineWith('E0016')]).join('\n');
  const slip = fc.record({
    at: fc.nat({ max: text.length }),
    cut: fc.nat({ max: 3 }),
    put: fc.string({ maxLength: 3 }),
  });
  const property = fc.property(fc.array(slip, { minLength: 1, maxLength: 3 }), (slips) => {
    const slipped = slips.reduce(
      (one, { at, cut, put }) => one.slice(0, at) + put + one.slice(at + cut),
      text,
    );
    holds(slipped.split('\n'));
  });
  fc.assert(property, { numRuns: 1000 });
});

test('any lines at all', () => {
  const line = fc.oneof(
    fc.string(),
    fc.json(),
    fc.constantFrom('{"kind":"daily"}', '{}', '[', '{"id":"E1","t":1}'),
  );
  fc.assert(
    fc.property(fc.array(line, { maxLength: 5 }), (lines) => {
      holds(lines);
      holds([opening, ...lines]);
    }),
    { numRuns: 500 },
  );
});

test('nesting without end is no line', () => {
  const deep = `${'{"a":'.repeat(100_000)}1${'}'.repeat(100_000)}`;
  expect(holds([opening, deep, `{"id":"E2","note":${'['.repeat(100_000)}${']'.repeat(100_000)}}`])).toBe(1);
  recordCounts('field-logs-with-slips', import.meta.filename, { counts: { logs: judged } });
});
