// Controls for the golden records: a record that differs or is missing fails, and is written only on request.
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { expectGolden } from './record.ts';

let folder = '';
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'waterwright-golden-'));
});
afterEach(() => {
  vi.unstubAllEnvs();
  rmSync(folder, { recursive: true, force: true });
});

test('a record is written on request; the same text then passes and another fails', () => {
  vi.stubEnv('WATERWRIGHT_GOLDEN', 'write');
  expectGolden('help/all.txt', 'one\ntwo\n', folder);
  vi.stubEnv('WATERWRIGHT_GOLDEN', undefined);
  expectGolden('help/all.txt', 'one\ntwo\n', folder);
  expect(readFileSync(join(folder, 'help/all.txt'), 'utf8')).toBe('one\ntwo\n');
  expect(() => expectGolden('help/all.txt', 'one\ntwo', folder)).toThrow(/differs from the golden record/);
});

test('a missing record fails and names the command', () => {
  vi.stubEnv('WATERWRIGHT_GOLDEN', undefined);
  expect(() => expectGolden('none.txt', 'a', folder)).toThrow(/npm run golden/);
});
