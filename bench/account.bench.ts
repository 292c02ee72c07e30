// What the account of a long book costs: a ledger rebuilt alone and with the estimator, its memory, and one more entry's way to a position.
import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { Account, applyEntry, Fold } from '../src/account/index.ts';
import { type AnyDraft, type BookInfo, type BookPort, keepDrafts, MemoryStore } from '../src/book/index.ts';
import { createBook, nodeHash, openBook } from '../src/doors/disk/index.ts';
import { longBook } from './account/long-book.ts';
import { type BenchRow, quantileOf, row } from './bench-row.ts';
import { syntheticEntries, syntheticOutpost } from './estimator/synthetic-book.ts';

const LONG = 1_000_000;
const SHORT = 10_000;
const IN_MEMORY = 200_000;
const COMMIT_EVERY = 5000;
const ROUNDS = 3;
const SEED = 2147;

const INFO: BookInfo = { bookId: 'bench', site: 'holm', purpose: 'practice', createdAtMs: 0 };

export async function bench(): Promise<readonly BenchRow[]> {
  const folder = mkdtempSync(join(tmpdir(), 'waterwright-account-'));
  try {
    return [foldAlone(), await fromMemory(), await shortBook(folder), ...(await longBookOnDisk(folder))];
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

/** The ledger alone from entries that are there already: what the fold itself costs. */
function foldAlone(): BenchRow {
  const entries = syntheticEntries(IN_MEMORY, SEED);
  const outpost = syntheticOutpost();
  const rates = Array.from({ length: ROUNDS }, () => {
    const fold = new Fold(outpost, { estimating: false });
    const started = performance.now();
    for (const entry of entries) applyEntry(fold, entry);
    const seconds = (performance.now() - started) / 1000;
    if (fold.ledger.closureMg() !== 0) throw new Error('the ledger does not close');
    return IN_MEMORY / seconds;
  });
  return row({
    name: `ledger alone, ${IN_MEMORY} entries at hand`,
    value: quantileOf(rates, 0.5),
    unit: 'entries/s',
    goal: { least: 200_000 },
  });
}

/** Sorted, parsed and folded out of a book in memory. */
async function fromMemory(): Promise<BenchRow> {
  const port = new MemoryStore(INFO);
  await fill(port, IN_MEMORY);
  const rates: number[] = [];
  for (let round = 0; round < ROUNDS; round += 1)
    rates.push(IN_MEMORY / ((await openMs(port, false)) / 1000));
  return row({
    name: `ledger alone, ${IN_MEMORY} entries from a book in memory`,
    value: quantileOf(rates, 0.5),
    unit: 'entries/s',
    goal: { least: 200_000 },
  });
}

async function shortBook(folder: string): Promise<BenchRow> {
  const path = join(folder, 'short.book');
  createBook(path, INFO);
  using book = await openBook(path, { owner: 'bench' });
  await fill(book, SHORT);
  const times: number[] = [];
  for (let round = 0; round < 5 * ROUNDS; round += 1) times.push(await openMs(book, true));
  return row({ name: `account of ${SHORT} entries opened, p50`, value: quantileOf(times, 0.5), unit: 'ms' });
}

interface Look {
  readonly rate: number;
  readonly megabytes: number;
  readonly appendMs: readonly number[];
  readonly lateMs: readonly number[];
}

async function longBookOnDisk(folder: string): Promise<BenchRow[]> {
  const path = join(folder, 'long.book');
  createBook(path, INFO);
  {
    using book = await openBook(path, { owner: 'bench' });
    await fill(book, LONG);
  }
  const ledger = Array.from({ length: ROUNDS }, () => lookedAtBySelf(path, 'ledger'));
  const full = Array.from({ length: ROUNDS }, () => lookedAtBySelf(path, 'full'));
  const grown = lookedAtBySelf(path, 'grow');
  const ratesOf = (looks: readonly Look[]): number[] => looks.map(({ rate }) => rate);
  const megabytes = Math.max(...[...ledger, ...full].map((look) => look.megabytes));
  const inTime = { goal: { most: 5 }, unit: 'ms' } as const;
  return [
    row({
      name: `ledger alone, ${LONG} entries from disk, median of ${ROUNDS}`,
      value: quantileOf(ratesOf(ledger), 0.5),
      unit: 'entries/s',
      goal: { least: 200_000 },
    }),
    row({ name: 'ledger alone, least', value: Math.min(...ratesOf(ledger)), unit: 'entries/s' }),
    row({
      name: `with the estimator, ${LONG} entries from disk, median of ${ROUNDS}`,
      value: quantileOf(ratesOf(full), 0.5),
      unit: 'entries/s',
      goal: { least: 60_000 },
    }),
    row({
      name: 'memory while a million entries are reckoned, most',
      value: megabytes,
      unit: 'MB',
      goal: { most: 250 },
    }),
    row({
      name: 'memory with some thousand more taken one by one',
      value: grown.megabytes,
      unit: 'MB',
      goal: { most: 250 },
    }),
    row({
      name: `append to new position at ${LONG} entries, p50`,
      value: quantileOf(grown.appendMs, 0.5),
      ...inTime,
    }),
    row({
      name: `append to new position at ${LONG} entries, p99`,
      value: quantileOf(grown.appendMs, 0.99),
      ...inTime,
    }),
    row({ name: 'the same of an entry a day late, p50', value: quantileOf(grown.lateMs, 0.5), unit: 'ms' }),
  ];
}

/** As the launcher starts the program: see bin/waterwright. */
const NODE_OPTIONS = ['--max-semi-space-size=16'];

/** In a process of its own, so that its memory is its own. */
function lookedAtBySelf(path: string, what: 'ledger' | 'full' | 'grow'): Look {
  const script = join(import.meta.dirname, 'account', 'look.ts');
  const { status, stdout, stderr } = spawnSync(process.execPath, [...NODE_OPTIONS, script, path, what], {
    encoding: 'utf8',
  });
  if (status !== 0) throw new Error(`look ended with ${status}: ${stderr}`);
  return JSON.parse(stdout) as Look;
}

async function openMs(port: BookPort, estimating: boolean): Promise<number> {
  const started = performance.now();
  const opened = await Account.open(port, { estimating });
  const spent = performance.now() - started;
  if (!opened.ok || opened.account.fold.ledger.closureMg() !== 0)
    throw new Error('the book cannot be reckoned');
  return spent;
}

async function fill(port: BookPort, count: number): Promise<void> {
  let drafts: AnyDraft[] = [];
  for (const draft of longBook(count, SEED)) {
    drafts.push(draft);
    if (drafts.length < COMMIT_EVERY) continue;
    await keepAll(port, drafts);
    drafts = [];
  }
  await keepAll(port, drafts);
}

async function keepAll(port: BookPort, drafts: readonly AnyDraft[]): Promise<void> {
  const outcome = await keepDrafts(port, drafts, { hash: nodeHash, keptAtMs: 0 });
  if (!outcome.ok || outcome.kept.length !== drafts.length) throw new Error('an entry was not kept');
}
