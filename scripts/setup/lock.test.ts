// Set-ups that start at once must run one after another, and a lock left by a killed one must not block for ever.

import { spawn } from 'node:child_process';
import {
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  utimesSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { withLock } from './lock.mjs';

let folder = '';
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'waterwright-lock-'));
});
afterEach(() => rmSync(folder, { recursive: true, force: true }));

/** Another process that holds the lock, leaves a trace at start and end, and stays in between. */
function holder(lock: string, traces: string): Promise<number | null> {
  const script = `
    import { withLock } from ${JSON.stringify(join(import.meta.dirname, 'lock.mjs'))};
    import { appendFileSync } from 'node:fs';
    await withLock(${JSON.stringify(lock)}, () => {}, async () => {
      appendFileSync(${JSON.stringify(traces)}, 'in ');
      await new Promise((done) => setTimeout(done, 60));
      appendFileSync(${JSON.stringify(traces)}, 'out ');
    });`;
  const child = spawn(process.execPath, ['--input-type=module', '-e', script], { stdio: 'inherit' });
  return new Promise((done) => child.on('close', done));
}

test('processes that want the lock at once hold it one after another', async () => {
  const traces = join(folder, 'traces');
  const ends = await Promise.all(Array.from({ length: 6 }, () => holder(join(folder, 'lock'), traces)));
  expect(ends).toEqual([0, 0, 0, 0, 0, 0]);
  expect(readFileSync(traces, 'utf8')).toBe('in out '.repeat(6));
  expect(readdirSync(folder)).toEqual(['traces']);
});

test('a lock whose owner has been silent for long is taken over', async () => {
  const lock = join(folder, 'lock');
  mkdirSync(lock);
  writeFileSync(join(lock, 'owner'), '1 long gone');
  const longAgo = Date.now() / 1000 - 60;
  utimesSync(join(lock, 'owner'), longAgo, longAgo);
  const waitedFor: string[] = [];
  const result = await withLock(
    lock,
    (owner) => waitedFor.push(owner),
    () => Promise.resolve('done'),
  );
  expect(result).toBe('done');
  expect(waitedFor).toEqual(['1 long gone']);
  expect(readdirSync(folder)).toEqual([]);
});

test('the lock is given back when the work fails', async () => {
  const lock = join(folder, 'lock');
  await expect(
    withLock(
      lock,
      () => {},
      () => Promise.reject(new Error('full')),
    ),
  ).rejects.toThrow('full');
  expect(readdirSync(folder)).toEqual([]);
});
