// Several processes at one book: a writer waits, then names who holds it; readers and the dead are in nobody's way.
import { type ChildProcess, spawn } from 'node:child_process';
import { existsSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { makeDrafts, sealedAs } from '../../../tests/contract/made-up-entries.ts';
import { createBook } from './create.ts';
import { openBook } from './open.ts';
import { BookBusy } from './problem.ts';

const INFO = { bookId: 'a-book', site: 'corrie', purpose: 'book', createdAtMs: 0 } as const;
const rows = sealedAs('corrie', makeDrafts(1, 40));
const DISK = new URL('./index.ts', import.meta.url).href;
let folder = '';
let path = '';
let children: ChildProcess[] = [];

beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'waterwright-busy-'));
  path = join(folder, 'corrie.book');
  createBook(path, INFO);
});
afterEach(() => {
  for (const child of children) child.kill('SIGKILL');
  children = [];
  rmSync(folder, { recursive: true, force: true });
});

/** A process that holds the book in the middle of a write, until it is told to go on or is killed. */
async function holder(sql: string): Promise<ChildProcess> {
  const script = `const { openBook } = await import(${JSON.stringify(DISK)});
    const book = await openBook(${JSON.stringify(path)}, { owner: 'log day --by second' });
    const row = ${JSON.stringify(rows[0])};
    await book.append([row], []);
    book.withDatabase((db) => db.exec(${JSON.stringify(sql)}));
    process.stdout.write('held');
    process.stdin.once('data', () => { book.withDatabase((db) => db.exec('ROLLBACK')); book.close(); process.exit(0); });`;
  const child = spawn(process.execPath, ['--input-type=module', '-e', script], {
    stdio: ['pipe', 'pipe', 'inherit'],
  });
  children.push(child);
  await new Promise((held, ended) => {
    child.stdout?.once('data', held);
    child.once('exit', ended);
  });
  return child;
}

test('a second writer waits, then says who holds the book, and nothing was written', async () => {
  const child = await holder('BEGIN IMMEDIATE');
  using book = await openBook(path, { owner: 'test', waitMs: 200 });
  const start = performance.now();
  const error = await book.append(rows.slice(1, 2), []).catch((problem: unknown) => problem);
  const waitedMs = performance.now() - start;
  expect(error).toBeInstanceOf(BookBusy);
  expect((error as BookBusy).owner).toEqual({
    pid: child.pid,
    command: 'log day --by second',
    sinceMs: expect.any(Number),
  });
  expect((error as BookBusy).finding.data).toMatchObject({ pid: child.pid, waitedMs: 200 });
  expect(waitedMs).toBeGreaterThanOrEqual(190);
  expect(waitedMs).toBeLessThan(3000);
  // A writer that is only waiting to write does not stop anybody from reading.
  expect(await book.count()).toBe(1);
});

test('a second writer that waits long enough gets its turn', async () => {
  const child = await holder('BEGIN IMMEDIATE');
  // The wait blocks this process, so the other one has to be told beforehand.
  const later = spawn('sh', ['-c', 'sleep 0.4; echo go'], {
    stdio: ['ignore', child.stdin as never, 'ignore'],
  });
  children.push(later);
  using book = await openBook(path, { owner: 'test', waitMs: 5000 });
  await book.append(rows.slice(1, 2), []);
  expect(await book.count()).toBe(2);
});

test('a holder that is no book of ours is named by the list of locks', async () => {
  const child = await holder('BEGIN IMMEDIATE');
  writeFileSync(`${path}.owner`, '{"pid":1,"command":"log drink","sinceMs":1}\n');
  using book = await openBook(path, { owner: 'test', waitMs: 50 });
  const error = (await book.append(rows.slice(1, 2), []).catch((problem: unknown) => problem)) as BookBusy;
  if (process.platform === 'linux') {
    expect(error.owner.pid).toBe(child.pid);
    expect(error.owner.command).toContain('--input-type=module');
    expect(error.owner.sinceMs).toBeNull();
  } else expect(error.owner.pid).toBe(1);
});

test('a file that is locked whole is busy for a reader too, who says so', async () => {
  const child = await holder('BEGIN EXCLUSIVE');
  const error = await openBook(path, { owner: 'test', readOnly: true, waitMs: 50 }).catch(
    (problem: unknown) => problem,
  );
  expect(error).toBeInstanceOf(BookBusy);
  expect((error as BookBusy).owner.pid).toBe(child.pid);
});

test("what a killed process left is in nobody's way, whoever has its number now", async () => {
  const child = await holder('BEGIN IMMEDIATE');
  child.kill('SIGKILL');
  await new Promise((ended) => child.once('exit', ended));
  expect(existsSync(`${path}.owner`)).toBe(true);
  // The same note with the number of a living process: the system gave it to somebody else.
  writeFileSync(`${path}.owner`, JSON.stringify({ pid: process.ppid, command: 'log day', sinceMs: 1 }));
  const book = await openBook(path, { owner: 'test', waitMs: 50 });
  await book.append(rows.slice(1, 3), []);
  expect(await book.count()).toBe(3);
  book.close();
  expect(existsSync(`${path}.owner`)).toBe(false);
});

test('a reader in the middle of a long read makes a writer wait for its commit only', async () => {
  await holder('BEGIN; SELECT count(*) FROM entry');
  const child = children[0] as ChildProcess;
  using book = await openBook(path, { owner: 'test', waitMs: 100 });
  const error = await book.append(rows.slice(1, 2), []).catch((problem: unknown) => problem);
  expect(error).toBeInstanceOf(BookBusy);
  expect((error as BookBusy).owner.pid).toBe(child.pid);
  expect(await book.count()).toBe(1);
  child.stdin?.write('go');
  await new Promise((ended) => child.once('exit', ended));
  await book.append(rows.slice(1, 2), []);
  expect(await book.count()).toBe(2);
});
