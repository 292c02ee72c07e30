// Controls of the recorder: what was counted comes back, what was not counted is refused, and taking over keeps the rest.
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { readRecords, recordCounts, takeOverRecords } from './record.ts';

let folder = '';
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'waterwright-verification-'));
});
afterEach(() => rmSync(folder, { recursive: true, force: true }));

const record = (name: string, count: number, to = 'last') =>
  recordCounts(name, import.meta.filename, { seed: 7, counts: { cases: count } }, join(folder, to));

test('a record says what was counted, by which test, with which seed, on what', () => {
  record('kills', 60);
  expect([...readRecords(join(folder, 'last')).values()]).toEqual([
    {
      name: 'kills',
      test: 'tests/verification/record.test.ts',
      seed: 7,
      counts: { cases: 60 },
      node: process.version,
      platform: `${process.platform} ${process.arch}`,
    },
  ]);
});

test('taking over renews what was counted again, and keeps what was not', () => {
  record('kills', 60);
  record('cuts', 5000, 'taken');
  record('kills', 50, 'taken');
  expect(takeOverRecords(join(folder, 'last'), join(folder, 'taken'))).toBe(1);
  const counts = [...readRecords(join(folder, 'taken'))].map(([name, each]) => [name, each.counts['cases']]);
  expect(counts).toEqual([
    ['cuts', 5000],
    ['kills', 60],
  ]);
});

test('nothing counted, no figure, or no name is no record', () => {
  expect(() => recordCounts('a', import.meta.filename, { counts: {} }, folder)).toThrow(/counted nothing/);
  expect(() => record('b', Number.NaN)).toThrow(/counted nothing/);
  expect(() => record('../c', 1)).toThrow(/no name/);
  expect(readRecords(join(folder, 'none')).size).toBe(0);
});
