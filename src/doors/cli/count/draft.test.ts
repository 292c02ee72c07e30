// What was typed of a stock count: it survives a kill at any moment, two who type at once, and a half-written file beside it.
import { type ChildProcess, spawn } from 'node:child_process';
import { mkdtempSync, rmSync, utimesSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { DiskProblem } from '../../disk/index.ts';
import { CliProblem } from '../problem.ts';
import { addToCountDraft, beginCountDraft, draftPath, readCountDraft, settleCountDraft } from './draft.ts';

let folder = '';
let book = '';
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'waterwright-count-'));
  book = join(folder, 'a.book');
});
afterEach(() => rmSync(folder, { recursive: true, force: true }));

const empty = { id: 'count-1', begunMs: 5, by: 'keeper', places: null, typed: new Map<string, string>() };

function add(id: string, text: string) {
  return addToCountDraft(book, (count) => {
    if (count === null) throw new Error('no count');
    return { ...count, typed: new Map([...count.typed, [id, text]]) };
  });
}

test('what is typed is read back as it was, in the order in which it was typed', () => {
  expect(readCountDraft(book)).toBeNull();
  beginCountDraft(book, { ...empty, places: ['Weir'] });
  add('12', '-');
  add('C-01', '20.3 L+-0.4');
  add('__proto__', '1');
  expect(readCountDraft(book)).toEqual({
    ...empty,
    places: ['Weir'],
    typed: new Map([
      ['12', '-'],
      ['C-01', '20.3 L+-0.4'],
      ['__proto__', '1'],
    ]),
  });
});

test.each(['', '{}', '{"format":"waterwright stock count","version":2}', 'C-01 20.3'])(
  'a file that cannot be read is told and left alone: %j',
  (text) => {
    writeFileSync(draftPath(book), text);
    expect(() => readCountDraft(book)).toThrow(CliProblem);
    expect(() => add('C-01', '1 L')).toThrow(CliProblem);
    beginCountDraft(book, empty);
    expect(readCountDraft(book)).toEqual(empty);
  },
);

test('an adding that fails changes nothing, and the next one is not kept waiting', () => {
  expect(() => add('C-01', '1 L')).toThrow('no count');
  beginCountDraft(book, empty);
  expect(add('C-01', '1 L').typed.size).toBe(1);
});

test('what was entered goes, and what somebody typed meanwhile stays as another count', () => {
  beginCountDraft(book, empty);
  const entered = add('C-01', '1 L');
  add('C-02', '2 L');
  add('C-01', '1.1 L');
  settleCountDraft(book, entered, 'count-2');
  const rest = new Map([
    ['C-01', '1.1 L'],
    ['C-02', '2 L'],
  ]);
  expect(readCountDraft(book)).toEqual({ ...empty, id: 'count-2', typed: rest });
  settleCountDraft(book, { ...empty, id: 'count-2', typed: rest }, 'count-3');
  expect(readCountDraft(book)).toBeNull();
});

test('while another process changes it nobody writes; what a dead one left half-written is passed over', () => {
  beginCountDraft(book, empty);
  writeFileSync(`${draftPath(book)}.new`, '{"format":"water');
  expect(() => add('C-01', '1 L')).toThrow(DiskProblem);
  expect(readCountDraft(book)).toEqual(empty);
  const longAgo = Date.now() / 1000 - 60;
  utimesSync(`${draftPath(book)}.new`, longAgo, longAgo);
  expect(add('C-01', '1 L').typed.size).toBe(1);
});

/** Adds readings one after the other, and says each one when it is safe. */
const WRITER = `
import { addToCountDraft } from ${JSON.stringify(join(import.meta.dirname, 'draft.ts'))};
const [book, name] = process.argv.slice(1);
for (let k = 0; k < 100000; k++) {
  addToCountDraft(book, (count) => ({ ...count, typed: new Map([...count.typed, [name + k, String(k)]]) }));
  process.stdout.write(name + k + '\\n');
  await new Promise((done) => setTimeout(done, 5));
}`;

interface Writer {
  readonly child: ChildProcess;
  readonly said: () => readonly string[];
  readonly ended: Promise<unknown>;
}

function writer(name: string): Writer {
  const child = spawn(process.execPath, ['--input-type=module', '-e', WRITER, book, name], {
    stdio: ['ignore', 'pipe', 'inherit'],
  });
  let out = '';
  child.stdout?.on('data', (text) => {
    out += text;
  });
  const ended = new Promise((done) => child.once('close', done));
  // A name without its line end was not said.
  return { child, said: () => out.split('\n').slice(0, -1), ended };
}

async function until(isSo: () => boolean): Promise<void> {
  while (!isSo()) await new Promise((done) => setTimeout(done, 5));
}

test('two writers at once, killed at a moment of chance: each reading that was said is there', async () => {
  let said = 0;
  for (let round = 0; round < 3; round++) {
    beginCountDraft(book, empty);
    const writers = [writer('a'), writer('b')];
    await until(() => writers.every((each) => each.said().length > 3 + 2 * round));
    for (const { child } of writers) child.kill('SIGKILL');
    await Promise.all(writers.map(({ ended }) => ended));
    const kept = readCountDraft(book)?.typed ?? new Map();
    const names = writers.flatMap((each) => each.said());
    said += names.length;
    expect(names.filter((name) => !kept.has(name))).toEqual([]);
    // Whoever was killed in the middle left its new file; the next round is not to wait for it.
    rmSync(`${draftPath(book)}.new`, { force: true });
  }
  expect(said).toBeGreaterThan(24);
}, 30_000);

test('control: a writer that reads first and writes later loses what the other one wrote', () => {
  beginCountDraft(book, empty);
  const stale = readCountDraft(book);
  add('C-01', '1 L');
  if (stale !== null) beginCountDraft(book, { ...stale, typed: new Map([['C-02', '2 L']]) });
  expect(readCountDraft(book)?.typed.has('C-01')).toBe(false);
});
