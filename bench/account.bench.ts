// What the account of a long book costs: a ledger rebuilt alone and with the estimator, and a new entry's way to a new position.
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { Account, applyEntry, Fold, positionOf } from '../src/account/index.ts';
import type { AnyEntry } from '../src/book/index.ts';
import { type AnyDraft, type Body, entryId, keepDrafts, readDraft } from '../src/book/index.ts';
import { createBook, nodeHash, openBook } from '../src/doors/disk/index.ts';
import { type BenchRow, quantileOf, row } from './bench-row.ts';
import { syntheticEntries, syntheticOutpost, syntheticOutpostText } from './estimator/synthetic-book.ts';

const LONG = 1_000_000;
const ALONE = 200_000;
const APPENDS = 300;
const COMMIT_EVERY = 5000;

export async function bench(): Promise<readonly BenchRow[]> {
  return [foldAlone(), ...(await longBook())];
}

/** The ledger alone from entries in memory: what the fold itself costs. */
function foldAlone(): BenchRow {
  const entries = syntheticEntries(ALONE, 2147);
  const outpost = syntheticOutpost();
  const rates = Array.from({ length: 3 }, () => {
    const fold = new Fold(outpost, { estimating: false });
    const started = performance.now();
    for (const entry of entries) applyEntry(fold, entry);
    const seconds = (performance.now() - started) / 1000;
    if (fold.ledger.closureMg() !== 0) throw new Error('the ledger does not close');
    return ALONE / seconds;
  });
  const name = `ledger alone, ${ALONE} entries in memory`;
  return row({ name, value: quantileOf(rates, 0.5), unit: 'entries/s', goal: { least: 200_000 } });
}

/** A million entries on disk: read and folded, then grown one by one. */
async function longBook(): Promise<BenchRow[]> {
  const folder = mkdtempSync(join(tmpdir(), 'waterwright-account-'));
  const path = join(folder, 'long.book');
  try {
    createBook(path, { bookId: 'bench', site: 'skerry', purpose: 'book', createdAtMs: 0 });
    using book = await openBook(path, { owner: 'bench' });
    await fill(book);
    const started = performance.now();
    const alone = await Account.open(book, { estimating: false });
    const aloneRate = LONG / ((performance.now() - started) / 1000);
    if (!alone.ok || alone.account.fold.ledger.closureMg() !== 0)
      throw new Error('the ledger does not close');
    const again = performance.now();
    const opened = await Account.open(book);
    const fullRate = LONG / ((performance.now() - again) / 1000);
    if (!opened.ok) throw new Error('the book cannot be read');
    const times = await grow(book, opened.account);
    const name = `append to new position at ${LONG} entries`;
    return [
      row({
        name: `ledger alone, ${LONG} entries from disk`,
        value: aloneRate,
        unit: 'entries/s',
        goal: { least: 200_000 },
      }),
      row({
        name: `with the estimator, ${LONG} entries from disk`,
        value: fullRate,
        unit: 'entries/s',
        goal: { least: 60_000 },
      }),
      row({ name: `${name}, p50`, value: quantileOf(times, 0.5), unit: 'ms', goal: { most: 5 } }),
      row({ name: `${name}, p99`, value: quantileOf(times, 0.99), unit: 'ms', goal: { most: 5 } }),
    ];
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

type Book = Awaited<ReturnType<typeof openBook>>;

async function fill(book: Book): Promise<void> {
  await keep(book, [fileDraft()]);
  const entries = syntheticEntries(LONG - 1, 2147);
  for (let start = 0; start < entries.length; start += COMMIT_EVERY) {
    await keep(book, entries.slice(start, start + COMMIT_EVERY).map(draftOf));
  }
}

function draftOf({ site: _site, number: _number, ...draft }: AnyEntry): AnyDraft {
  return draft as AnyDraft;
}

function fileDraft(): AnyDraft {
  const atMs = Date.UTC(2146, 0, 1);
  const body: Body<'outpost'> = { text: syntheticOutpostText() };
  const read = readDraft({
    id: entryId(atMs, new Uint8Array(10)),
    version: 1,
    kind: 'outpost',
    happenedAtMs: atMs,
    happenedOffsetMin: 0,
    enteredAtMs: atMs,
    enteredOffsetMin: 0,
    by: 'keeper',
    body,
  });
  if (!read.ok) throw new Error(JSON.stringify(read.findings));
  return read.draft;
}

async function keep(book: Book, drafts: readonly AnyDraft[]): Promise<readonly AnyEntry[]> {
  const outcome = await keepDrafts(book, drafts, { hash: nodeHash, keptAtMs: 0 });
  if (!outcome.ok) throw new Error(JSON.stringify(outcome.findings[0]));
  return outcome.kept;
}

/** One entry at a time: kept on disk, taken into the account, and the whole position worked out. */
async function grow(book: Book, account: Account): Promise<number[]> {
  const lastMs = account.fold.lastEntryMs ?? 0;
  const offsetMs = lastMs + 60_000 - (syntheticEntries(1, 9)[0]?.happenedAtMs ?? 0);
  const times: number[] = [];
  for (const [k, entry] of syntheticEntries(APPENDS + 1, 9)
    .slice(1)
    .entries()) {
    const happenedAtMs = entry.happenedAtMs + offsetMs;
    const id = entryId(
      happenedAtMs,
      Uint8Array.from({ length: 10 }, (_, at) => (at === 9 ? k & 255 : at === 8 ? k >> 8 : 77)),
    );
    const draft = { ...draftOf(entry), id, happenedAtMs, enteredAtMs: happenedAtMs } as AnyDraft;
    const started = performance.now();
    await account.take(await keep(book, [draft]));
    const position = positionOf(account.fold, happenedAtMs);
    times.push(performance.now() - started);
    if (position.closureMg !== 0) throw new Error('the position does not close');
  }
  return times;
}
