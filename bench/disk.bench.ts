// What safekeeping costs: single and batched appends beside plain SQLite, and a book of a million entries checked and searched.
import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { DatabaseSync } from 'node:sqlite';
import { type AnyDraft, type BookInfo, type KeptEntry, keepDrafts, readDraft } from '../src/book/index.ts';
import { backupBook, createBook, type DiskBook, nodeHash, openBook } from '../src/doors/disk/index.ts';
import { chanceFrom, makeDraft, sealedAs } from '../tests/contract/made-up-entries.ts';
import { type BenchRow, quantileOf, row } from './bench-row.ts';

const SINGLES = 600;
const ENTRIES = 1_000_000;
/** An import is one commit, whatever its length; this is a field log of some weeks. */
const BATCH = 5000;
const ROUNDS = 5;

const INFO: BookInfo = { bookId: 'bench', site: 'corrie', purpose: 'practice', createdAtMs: 0 };

export async function bench(): Promise<readonly BenchRow[]> {
  const folder = mkdtempSync(join(tmpdir(), 'waterwright-bench-'));
  try {
    return [...(await singleAppends(folder)), ...(await largeBook(folder))];
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

/** One entry, one commit, in turn with one plain insert, so that the disk's moods fall on both alike. */
async function singleAppends(folder: string): Promise<BenchRow[]> {
  const path = join(folder, 'single.book');
  createBook(path, INFO);
  using book = await openBook(path, { owner: 'bench' });
  const plain = plainTable(join(folder, 'plain.db'));
  const rows = sealedAs('corrie', draftsFrom(chanceFrom(1), SINGLES));
  const plainMs: number[] = [];
  const appendMs: number[] = [];
  let head = { site: 'corrie', number: 0, seal: '0'.repeat(64) };
  for (const entry of rows) {
    plainMs.push(await timed(() => plain.insert(entry)));
    const expected = head;
    appendMs.push(await timed(() => book.append([entry], [expected])));
    head = { site: entry.site, number: entry.number, seal: entry.seal };
  }
  plain.close();
  const base = 'plain insert, one a commit, p50';
  return [
    row({ name: base, value: quantileOf(plainMs, 0.5), unit: 'ms' }),
    row({ name: 'append, one a commit, p50', value: quantileOf(appendMs, 0.5), unit: 'ms' }),
    row({ name: 'append, one a commit, p99', value: quantileOf(appendMs, 0.99), unit: 'ms' }),
    row({
      name: 'append, one a commit, p50',
      value: quantileOf(appendMs, 0.5) / quantileOf(plainMs, 0.5),
      unit: '×',
      ratioOf: base,
      goal: { most: 1.5 },
    }),
    row({
      name: 'append, one a commit, sum',
      value: sum(appendMs) / sum(plainMs),
      unit: '×',
      ratioOf: base,
    }),
  ];
}

/** The same columns and settings without anything that makes them a book. */
function plainTable(path: string): { insert: (entry: KeptEntry) => Promise<void>; close: () => void } {
  const db = new DatabaseSync(path);
  db.exec('PRAGMA journal_mode = TRUNCATE; PRAGMA synchronous = EXTRA; PRAGMA fullfsync = ON;');
  db.exec(`CREATE TABLE entry (id TEXT, kind TEXT, site TEXT, number INTEGER, happened_ms INTEGER,
    entered_ms INTEGER, kept_ms INTEGER, text TEXT, seal TEXT) STRICT`);
  const insert = db.prepare('INSERT INTO entry VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?)');
  return {
    insert: (entry) =>
      Promise.try(() => {
        const { id, kind, site, number, happenedAtMs, enteredAtMs, keptAtMs, text, seal } = entry;
        insert.run(id, kind, site, number, happenedAtMs, enteredAtMs, keptAtMs, text, seal);
      }),
    close: () => db.close(),
  };
}

async function largeBook(folder: string): Promise<BenchRow[]> {
  const path = join(folder, 'large.book');
  createBook(path, INFO);
  const { rates, ids } = await fill(path);
  const looks = Array.from({ length: ROUNDS }, () => lookedAtBySelf(path));
  using book = await openBook(path, { owner: 'bench', readOnly: true });
  const finds = await findTimes(book, ids);
  const backupMs = await timed(() => backupBook(path, join(folder, 'copy.book')));
  const checked = looks.map((look) => look.entries / look.checkSeconds);
  const walked = looks.map((look) => look.entries / look.chainSeconds);
  const scanned = looks.map((look) => look.entries / look.scanSeconds);
  const atLeast = (name: string, values: readonly number[], least?: number): BenchRow[] => [
    row({
      name: `${name}, median of ${values.length}`,
      value: quantileOf(values, 0.5),
      unit: 'entries/s',
      ...(least === undefined ? {} : { goal: { least } }),
    }),
    row({ name: `${name}, least`, value: Math.min(...values), unit: 'entries/s' }),
    row({ name: `${name}, most`, value: Math.max(...values), unit: 'entries/s' }),
  ];
  const { size } = looks[0] ?? { size: Number.NaN };
  return [
    ...atLeast(`read, seal and append, ${BATCH} a commit, tenths of a million`, rates, 50_000),
    ...atLeast('chains of a million entries checked', walked, 150_000),
    ...atLeast('the same with every page and index', checked, 150_000),
    ...atLeast('a million entries in the total order', scanned),
    row({
      name: 'memory while a million entries are checked',
      value: Math.max(...looks.map((look) => look.megabytes)),
      unit: 'MB',
      goal: { most: 250 },
    }),
    row({ name: 'size of a million entries', value: size / ENTRIES, unit: 'B/entry' }),
    row({ name: 'entry found by its id, p50', value: quantileOf(finds, 0.5) * 1000, unit: 'µs' }),
    row({ name: 'entry found by its id, p99', value: quantileOf(finds, 0.99) * 1000, unit: 'µs' }),
    row({ name: 'copy of a million entries, read back', value: backupMs / 1000, unit: 's' }),
  ];
}

/** What an import does with each draft, save reading its text: shape, duplicate, canonical form, seal, append. */
async function fill(path: string): Promise<{ rates: number[]; ids: string[] }> {
  using book = await openBook(path, { owner: 'bench' });
  const chance = chanceFrom(2147);
  const rates: number[] = [];
  const ids: string[] = [];
  let spentMs = 0;
  for (let at = 0; at < ENTRIES; at += BATCH) {
    const drafts = draftsFrom(chance, BATCH, at);
    ids.push(...drafts.filter((_, place) => place % 500 === 0).map(({ id }) => id));
    spentMs += await timed(async () => {
      const read = drafts.map((draft) => readDraft(draft)).filter((each) => each.ok);
      const kept = await keepDrafts(
        book,
        read.map((each) => each.draft),
        { hash: nodeHash, keptAtMs: at },
      );
      if (!kept.ok || kept.kept.length !== BATCH) throw new Error('an entry was not kept');
    });
    if ((at + BATCH) % (ENTRIES / 10) !== 0) continue;
    rates.push(ENTRIES / 10 / (spentMs / 1000));
    spentMs = 0;
  }
  return { rates, ids };
}

function draftsFrom(chance: () => number, count: number, from = 0): AnyDraft[] {
  return Array.from({ length: count }, (_, at) => makeDraft(chance, from + at));
}

interface Look {
  readonly entries: number;
  readonly chainSeconds: number;
  readonly checkSeconds: number;
  readonly scanSeconds: number;
  readonly megabytes: number;
  readonly size: number;
}

/** In a process of its own, so that its memory is its own. */
function lookedAtBySelf(path: string): Look {
  const script = join(import.meta.dirname, 'disk', 'look.ts');
  const { status, stdout, stderr } = spawnSync(process.execPath, [script, path], { encoding: 'utf8' });
  if (status !== 0) throw new Error(`look ended with ${status}: ${stderr}`);
  return JSON.parse(stdout) as Look;
}

async function findTimes(book: DiskBook, ids: readonly string[]): Promise<number[]> {
  const times: number[] = [];
  for (const id of ids) {
    times.push(
      await timed(async () => {
        if ((await book.find(id)) === null) throw new Error(`${id} is not in the book`);
      }),
    );
  }
  return times;
}

async function timed(work: () => Promise<unknown>): Promise<number> {
  const started = performance.now();
  await work();
  return performance.now() - started;
}

function sum(values: readonly number[]): number {
  return values.reduce((total, value) => total + value, 0);
}
