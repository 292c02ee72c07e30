// What the keeper waits for: Today, a drink and a completion on a book of ten thousand entries, beside Node with an empty program.
import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { type BenchRow, quantileOf, row } from './bench-row.ts';
import { makeLongBook } from './long-practice-book.ts';

const ROUNDS = 15;
const ROOT = join(import.meta.dirname, '..');
const LAUNCHER = join(ROOT, 'bin', 'waterwright');

export async function bench(): Promise<readonly BenchRow[]> {
  const folder = mkdtempSync(join(tmpdir(), 'waterwright-bench-'));
  try {
    const book = join(folder, 'ten-thousand.book');
    await makeLongBook(book);
    const run = (...words: readonly string[]) => timeOf(LAUNCHER, [...words, '--book', book], folder);
    run('log', 'drink', '8');
    run('today');
    const bare: number[] = [];
    const today: number[] = [];
    const drink: number[] = [];
    const complete: number[] = [];
    for (let round = 0; round < ROUNDS; round += 1) {
      bare.push(timeOf(process.execPath, ['-e', '0'], folder));
      today.push(run('today'));
      drink.push(run('log', 'drink', '8'));
      complete.push(timeOf(LAUNCHER, ['--complete', '--book', book, 'store', 'show', 'c'], folder));
    }
    return rowsOf({ bare, today, drink, complete });
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

function rowsOf(
  times: Readonly<Record<'bare' | 'today' | 'drink' | 'complete', readonly number[]>>,
): BenchRow[] {
  const base = 'empty program in Node, p50';
  const bareMs = quantileOf(times.bare, 0.5);
  const figures = [
    { name: 'today on 10 000 entries, p50', ms: quantileOf(times.today, 0.5), most: 300 },
    { name: 'log drink on 10 000 entries, p50', ms: quantileOf(times.drink, 0.5) },
    { name: 'completion of a store, p50', ms: quantileOf(times.complete, 0.5), most: 100 },
  ];
  return [
    row({ name: base, value: bareMs, unit: 'ms' }),
    ...figures.map(({ name, ms, most }) =>
      row({ name, value: ms, unit: 'ms', ...(most !== undefined && { goal: { most } }) }),
    ),
    ...figures.map(({ name, ms }) => row({ name, value: ms / bareMs, unit: '×', ratioOf: base })),
  ];
}

function timeOf(command: string, words: readonly string[], folder: string): number {
  const env = { ...process.env, XDG_CACHE_HOME: join(folder, 'cache') };
  const started = performance.now();
  const { status, stderr } = spawnSync(command, words, { encoding: 'utf8', env });
  if (status !== 0) throw new Error(`${command} ${words.join(' ')} ended with ${status}: ${stderr.trim()}`);
  return performance.now() - started;
}
