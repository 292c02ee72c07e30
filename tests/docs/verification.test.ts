// The page of promises is what its table and the counts say; every test and record that it names is there.
import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { PROMISES, type PromiseRow } from '../../scripts/docs/promises.ts';
import { verificationPage } from '../../scripts/docs/verification-page.ts';
import { expectGolden } from '../golden/record.ts';
import { readRecords, takeOverRecords } from '../verification/record.ts';

const ROOT = join(import.meta.dirname, '../..');

// With `npm run golden` the counts of the last run come in with the page, and are read as one difference.
if (process.env['WATERWRIGHT_GOLDEN'] === 'write') takeOverRecords();
const records = readRecords();

/** What a table names and the tree does not have. */
function faultsOf(promises: readonly PromiseRow[]): readonly string[] {
  const tests = promises.flatMap(({ id, tests: each }) => each.map((test) => ({ id, ...test })));
  const missing = tests.flatMap(({ id, file }) =>
    isTestFile(file) ? [] : [`${id}: there is no test ${file}`],
  );
  const uncounted = tests.flatMap(({ id, file, records: names = [] }) =>
    names.flatMap((name) => (records.get(name)?.test === file ? [] : [`${id}: ${file} recorded no ${name}`])),
  );
  const named = new Set(tests.flatMap(({ records: names = [] }) => names));
  const unnamed = [...records.keys()].filter((name) => !named.has(name));
  return [...missing, ...uncounted, ...unnamed.map((name) => `no promise names the record ${name}`)];
}

function isTestFile(file: string): boolean {
  return file.endsWith('.test.ts') && existsSync(join(ROOT, file));
}

test('every test that a promise names is there, and has recorded what the promise counts on', () => {
  expect(PROMISES.length).toBeGreaterThanOrEqual(24);
  expect(new Set(PROMISES.map(({ id }) => id)).size).toBe(PROMISES.length);
  expect(faultsOf(PROMISES)).toEqual([]);
});

test('control: a test that is not there, or that recorded nothing of that name, is seen', () => {
  const row = { id: 'P0', promise: 'The moon is water.' };
  const kill = 'tests/faults/kill.test.ts';
  const faults = (file: string, name: string) =>
    faultsOf([{ ...row, tests: [{ file, holds: '', records: [name] }] }]).filter((fault) =>
      fault.startsWith('P0'),
    );
  expect(faults('tests/faults/moon.test.ts', 'kills')).toEqual([
    'P0: there is no test tests/faults/moon.test.ts',
    'P0: tests/faults/moon.test.ts recorded no kills',
  ]);
  expect(faults(kill, 'moons')).toEqual([`P0: ${kill} recorded no moons`]);
  expect(faults(kill, 'kills')).toEqual([]);
});

test('a promise without a test claims nothing', () => {
  const page = verificationPage(PROMISES, records);
  for (const { id, tests, promise } of PROMISES) {
    expect(page).toContain(`| [${id}](#${id.toLowerCase()}) | ${promise} | `);
    expect(page.includes(`\n## ${id}\n`)).toBe(tests.length > 0);
  }
});

test('the page is what the table and the counts say today', () => {
  expectGolden('verification.md', verificationPage(PROMISES, records), join(ROOT, 'docs'));
});
