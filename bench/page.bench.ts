// What a person before the page waits for, on a book of ten thousand entries and a processor at a quarter of its speed.
import { randomBytes } from 'node:crypto';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { nodeHash, openBook } from '../src/doors/disk/index.ts';
import { serve } from '../src/doors/server/index.ts';
import { type BenchRow, quantileOf, row } from './bench-row.ts';
import { makeLongBook } from './long-practice-book.ts';
import { drive, type Measured } from './page/drive.ts';

const ROUNDS = 7;

export async function bench(): Promise<readonly BenchRow[]> {
  const folder = mkdtempSync(join(tmpdir(), 'waterwright-bench-'));
  const path = join(folder, 'ten-thousand.book');
  await makeLongBook(path);
  const serving = await serve({
    book: await openBook(path, { owner: 'bench', alone: true }),
    tools: { hash: nodeHash, chance: () => new Uint8Array(randomBytes(10)) },
    clock: { now: () => Date.now(), offsetMin: () => 0 },
    version: 'bench',
    build: 'bench',
    pageFolder: join(import.meta.dirname, '..', 'dist', 'web'),
    port: 0,
  });
  try {
    return rowsOf(await drive(serving, ROUNDS));
  } finally {
    await serving.close();
    rmSync(folder, { recursive: true, force: true });
  }
}

function rowsOf(told: Measured): readonly BenchRow[] {
  const base = 'empty page at 4 × slow-down, p50';
  const blankMs = quantileOf(told.blankMs, 0.5);
  const readyMs = quantileOf(told.readyMs, 0.5);
  return [
    row({ name: base, value: blankMs, unit: 'ms' }),
    row({ name: 'Today ready at 4 × slow-down, p50', value: readyMs, unit: 'ms', goal: { most: 1000 } }),
    row({ name: 'Today ready at 4 × slow-down, p50', value: readyMs / blankMs, unit: '×', ratioOf: base }),
    row({
      name: 'script before Today is ready, packed',
      value: told.scriptBytes / 1000,
      unit: 'kB',
      goal: { most: 150 },
    }),
    row({
      name: 'tap to saved at 4 × slow-down, p50',
      value: quantileOf(told.savedMs, 0.5),
      unit: 'ms',
      goal: { most: 200 },
    }),
    row({
      name: 'from Today to Stores at 4 × slow-down, p50',
      value: quantileOf(told.pageMs, 0.5),
      unit: 'ms',
      goal: { most: 300 },
    }),
  ];
}
