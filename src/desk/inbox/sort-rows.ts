// Tells the lines of a table apart: new and good, known to the book, waiting, or saying nothing.
import type { AnyDraft, Hash } from '../../book/index.ts';
import type { Desk } from '../desk.ts';
import type { Context } from '../log/context.ts';
import { contentKey } from './content-key.ts';
import { checkCounters, checkDays, keptDays } from './cross-check.ts';
import { type KnownActs, knownActs, provenShiftMin, toldBefore } from './known-acts.ts';
import { readRow, type SheetRead } from './read-table.ts';
import { type DraftingOf, entryIdOf, rowDrafts, waitingIdOf } from './row-drafts.ts';
import type { RowReading } from './row-reading.ts';
import type { Sheet } from './sheet.ts';
import { waitingLines } from './waiting.ts';

export interface SortedRow {
  readonly reading: RowReading;
  readonly key: string;
  /** Of the line that waits, or waited; empty where there is none. */
  readonly waitingId: string;
  readonly what: 'entry' | 'known' | 'waits' | 'says nothing';
  /** How people name what is there already; `line 12` for a line that stands twice in this table. */
  readonly knownAs: string | null;
  readonly drafts: readonly AnyDraft[];
  /** It waits in the inbox since an earlier import, and is good now. */
  readonly waited: boolean;
}

interface Sorting {
  readonly hash: Hash;
  readonly late?: string;
}

interface Keyed {
  readonly reading: RowReading;
  readonly key: string;
  readonly entryId: string;
}

export async function sortRows(
  context: Context,
  read: Extract<SheetRead, { ok: true }>,
  how: Sorting,
): Promise<{ readonly sheet: Sheet; readonly rows: readonly SortedRow[] }> {
  const first = await sortOnce(context, read, how);
  if (read.sheet.shape !== 'acts' || read.sheet.zoneBy !== 'outpost clock') return first;
  const drafts = first.rows.flatMap((row) => row.drafts);
  const shiftMin = provenShiftMin(drafts, first.acts);
  if (shiftMin === null) return first;
  const sheet: Sheet = { ...read.sheet, zoneMin: read.sheet.zoneMin + shiftMin, zoneBy: 'known entries' };
  return await sortOnce(context, { ...read, sheet }, how);
}

async function sortOnce(context: Context, { sheet, body }: Extract<SheetRead, { ok: true }>, how: Sorting) {
  const drafting: DraftingOf = { context, ...how };
  const headings = sheet.columns.map(({ heading }) => heading);
  const keyed = eachOnce(
    body.map((row) => keyedRow(readRow(sheet, row), headings, drafting)),
    drafting,
  );
  const book = await inBook(context.desk, keyed);
  const once = onlyOnce(keyed);
  const fresh = keyed.filter((row) => once.get(row.key) === row.reading && !isKnown(row, book, drafting));
  const readings = fresh.map(({ reading }) => reading);
  if (sheet.shape === 'days') {
    checkDays(readings, await keptDays(context.desk, context.fold));
    checkCounters(readings, context.fold);
  }
  const made = new Map(fresh.map((row) => [row.reading, rowDrafts(row.reading, row.key, drafting)]));
  const acts: KnownActs =
    sheet.shape === 'acts' ? await knownActs(context.desk, [...made.values()].flat()) : new Map();
  const rows = keyed.map((row) =>
    sortedRow(row, { once, book, acts, drafting, drafts: made.get(row.reading) }),
  );
  return { sheet, rows, acts };
}

interface Around {
  readonly once: ReadonlyMap<string, RowReading>;
  readonly book: InBook;
  readonly acts: KnownActs;
  readonly drafting: DraftingOf;
  /** Undefined for a line that is known. */
  readonly drafts: readonly AnyDraft[] | undefined;
}

const NO_DRAFTS: readonly AnyDraft[] = [];

function sortedRow(row: Keyed, { once, book, acts, drafting, drafts }: Around): SortedRow {
  const { reading, key } = row;
  const mayWait = book.waiting.size > 0 || reading.faults.length > 0;
  const waitingId = mayWait ? waitingIdOf(reading, key, drafting) : '';
  const waited = mayWait && book.waiting.has(waitingId);
  const as = (what: SortedRow['what'], knownAs: string | null = null): SortedRow => ({
    reading,
    key,
    waitingId,
    what,
    knownAs,
    drafts: drafts ?? NO_DRAFTS,
    waited,
  });
  const other = once.get(key);
  if (other !== reading) return as('known', `line ${other?.row.line ?? 0}`);
  if (drafts === undefined) return as('known', book.refs.get(row.entryId) ?? 'inbox');
  if (reading.faults.length > 0) return waited ? as('known', 'inbox') : as('waits');
  const told =
    acts.size === 0 ? undefined : drafts.map((draft) => toldBefore(draft, acts)).find((ref) => ref !== null);
  if (told != null) return as('known', told);
  return as(drafts.length === 0 ? 'says nothing' : 'entry');
}

function keyedRow(reading: RowReading, headings: readonly string[], drafting: DraftingOf): Keyed {
  const { context, hash } = drafting;
  const { row, writtenDays } = reading;
  const outpost = context.fold.index.outpost.outpost.name;
  const key = contentKey(hash, { outpost, headings, cells: row.cells, writtenDays });
  return { reading, key, entryId: entryIdOf(reading, key, 0, drafting) };
}

/**
 * Of acts, two lines that say the same may be one act written twice or two acts: the second one waits for somebody who
 * knows, as a line of its own. Two lines of one day are one.
 */
function eachOnce(rows: readonly Keyed[], drafting: DraftingOf): readonly Keyed[] {
  const first = new Map<string, { readonly line: number; count: number }>();
  return rows.map((row) => {
    const { reading, key } = row;
    if (reading.sheet.shape !== 'acts' || reading.requests.length + reading.faults.length === 0) return row;
    const before = first.get(key);
    if (before === undefined) {
      first.set(key, { line: reading.row.line, count: 1 });
      return row;
    }
    before.count += 1;
    reading.say('row-twice', -1, { line: before.line });
    const again = drafting.hash(`${key}\nagain ${before.count}`);
    return { reading, key: again, entryId: entryIdOf(reading, again, 0, drafting) };
  });
}

/** The first of lines that say the same. */
function onlyOnce(rows: readonly Keyed[]): ReadonlyMap<string, RowReading> {
  const first = new Map<string, RowReading>();
  for (const { key, reading } of rows) if (!first.has(key)) first.set(key, reading);
  return first;
}

interface InBook {
  /** How people name entries, by the ids that were looked for. */
  readonly refs: ReadonlyMap<string, string>;
  /** Ids of lines that wait, and are not settled. */
  readonly waiting: ReadonlySet<string>;
  readonly settled: ReadonlySet<string>;
}

/** It has become an entry, or what waited of it was settled. */
function isKnown({ entryId, key, reading }: Keyed, book: InBook, drafting: DraftingOf): boolean {
  if (book.refs.has(entryId)) return true;
  return book.settled.size > 0 && book.settled.has(waitingIdOf(reading, key, drafting));
}

/** Looking up each id costs a little; reading a small book whole costs less than many of them. */
const FEW = 500;
const ROWS_PER_LOOK = 10;

async function inBook(desk: Desk, rows: readonly Keyed[]): Promise<InBook> {
  const { lines, settled } = await waitingLines(desk);
  const wanted = new Set(rows.map(({ entryId }) => entryId));
  const refs = new Map<string, string>();
  if (wanted.size > FEW && (await desk.port.count()) < ROWS_PER_LOOK * wanted.size) {
    for await (const batch of desk.port.scan({ order: 'site' }))
      for (const row of batch) if (wanted.has(row.id)) refs.set(row.id, `${row.site} ${row.number}`);
  } else {
    for (const id of wanted) {
      const row = await desk.port.find(id);
      if (row !== null) refs.set(id, `${row.site} ${row.number}`);
    }
  }
  const ids = lines.map(({ id }) => id);
  return {
    refs,
    waiting: new Set(ids.filter((id) => !settled.has(id))),
    settled: new Set(ids.filter((id) => settled.has(id))),
  };
}
