// Remembering an outpost: the same value comes back, for the same text and the same program only, and damage is noticed.
import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { readOutpost } from '../../desk/index.ts';
import { rememberingReader } from './remembered-outpost.ts';
import type { Terminal } from './terminal.ts';

let folder = '';
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'waterwright-cache-'));
});
afterEach(() => rmSync(folder, { recursive: true, force: true }));

const reader = (build: string | null) =>
  rememberingReader({ env: { XDG_CACHE_HOME: folder }, build } as unknown as Terminal);
const example = (name: string) =>
  readFileSync(join(import.meta.dirname, '../../../examples', name, 'outpost.yaml'), 'utf8');
const kept = () => {
  try {
    return readdirSync(join(folder, 'waterwright'));
  } catch {
    return [];
  }
};

test.each(['corrie', 'polar', 'lunar'])('%s comes back as it was read, and frozen', (name) => {
  const text = example(name);
  const first = reader('a')(text);
  expect(kept()).toHaveLength(1);
  const second = reader('a')(text);
  expect(second).toEqual(readOutpost(text, { file: 'x' }));
  expect(second).toEqual(first);
  if (!second.ok) throw new Error('not read');
  expect([Object.isFrozen(second.outpost), Object.isFrozen(second.outpost.stores[0])]).toEqual([true, true]);
});

test('another text, another program, and a program that runs from its sources remember nothing of it', () => {
  const text = example('polar');
  const head = () => readFileSync(join(folder, 'waterwright', kept()[0] ?? ''), 'utf8').slice(0, 2);
  reader('a')(text);
  expect(head()).toBe('a ');
  reader('b')(text);
  expect([head(), kept().length]).toEqual(['b ', 1]);
  reader('b')(`${text}\n`);
  expect(kept()).toHaveLength(2);
  reader(null)(example('lunar'));
  expect(kept()).toHaveLength(2);
});

test('a file with a fault is not remembered, and a damaged memory is read anew', () => {
  expect(reader('a')('outpost: 5').ok).toBe(false);
  expect(kept()).toEqual([]);
  const text = example('lunar');
  const first = reader('a')(text);
  const [name = ''] = kept();
  const path = join(folder, 'waterwright', name);
  writeFileSync(path, readFileSync(path, 'utf8').replace('"people":', '"people":1'));
  expect(reader('a')(text)).toEqual(first);
});
