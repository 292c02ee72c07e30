// Scans in bounded pages: each starts behind the last row of the one before, and between two pages nothing is locked.
import type { StatementSync } from 'node:sqlite';
import { compareOrder, type KeptEntry, type OrderKey, type ScanQuery } from '../../book/index.ts';

const DEFAULT_BATCH = 1000;
const SMALLEST_PAGE_OF_A_KIND = 16;

/** The statements of a scan, one for each order. */
export interface ScanStatements {
  readonly byTime: StatementSync;
  readonly byTimeOfSite: StatementSync;
  readonly byKind: StatementSync;
  readonly bySite: StatementSync;
  readonly ofSite: StatementSync;
}

/** One page: at most `limit` rows behind a place. */
type ReadPage = (after: OrderKey, limit: number) => KeptEntry[];

/** A row as SQLite gives it, in the order of the columns. */
export type Row = [string, string, string, number, number, number, number, string, string];

export function keptEntry(row: Row): KeptEntry {
  const [id, kind, site, number, happenedAtMs, enteredAtMs, keptAtMs, text, seal] = row;
  return { id, kind, site, number, happenedAtMs, enteredAtMs, keptAtMs, text, seal };
}

/** Before every place of either order. */
const START: OrderKey = { happenedAtMs: Number.MIN_SAFE_INTEGER, site: '', number: 0 };

/** Rows of a query, in batches that are never empty and never longer than asked for. */
export function* scanPages(statements: ScanStatements, query: ScanQuery): Generator<KeptEntry[]> {
  const batch = query.batch ?? DEFAULT_BATCH;
  const after = query.after ?? START;
  if (query.kinds !== undefined && query.order === 'total') {
    yield* batches(inTotalOrder(statements.byKind, query.kinds, { after, batch }), batch, query.site);
    return;
  }
  const kinds = query.kinds === undefined ? null : new Set(query.kinds);
  for (const rows of pages(readerOf(statements, query), after, batch)) {
    const chosen = kinds === null ? rows : rows.filter((row) => kinds.has(row.kind));
    if (chosen.length > 0) yield chosen;
  }
}

function readerOf(statements: ScanStatements, query: ScanQuery): ReadPage {
  const { site } = query;
  if (query.order === 'total') {
    if (site === undefined)
      return (after, limit) => read(statements.byTime, after.happenedAtMs, after.site, after.number, limit);
    return (after, limit) =>
      read(statements.byTimeOfSite, after.happenedAtMs, after.site, after.number, site, limit);
  }
  if (site === undefined) return (after, limit) => read(statements.bySite, after.site, after.number, limit);
  return (after, limit) => {
    // A place at another site lies before all of this site's numbers, or behind them.
    if (after.site > site) return [];
    return read(statements.ofSite, site, after.site === site ? after.number : 0, limit);
  };
}

/** A page is bounded by its limit, so it may be fetched at once: the book never is. */
function read(statement: StatementSync, ...values: (string | number)[]): KeptEntry[] {
  return (statement.all(...values) as unknown as Row[]).map(keptEntry);
}

function* pages(readPage: ReadPage, after: OrderKey, limit: number): Generator<KeptEntry[]> {
  let place = after;
  for (;;) {
    const rows = readPage(place, limit);
    const last = rows.at(-1);
    if (last === undefined) return;
    yield rows;
    if (rows.length < limit) return;
    place = last;
  }
}

/** A few kinds in the total order: each kind has its own sorted pages, and the earliest of their heads comes next. */
function* inTotalOrder(
  byKind: StatementSync,
  kinds: readonly string[],
  from: { readonly after: OrderKey; readonly batch: number },
): Generator<KeptEntry> {
  const limit = Math.max(SMALLEST_PAGE_OF_A_KIND, Math.ceil(from.batch / Math.max(1, kinds.length)));
  const streams = [...new Set(kinds)].map((kind) =>
    rowsOf(
      pages(
        (after, most) => read(byKind, kind, after.happenedAtMs, after.site, after.number, most),
        from.after,
        limit,
      ),
    ),
  );
  const heads = streams.map((stream) => stream.next().value ?? null);
  for (;;) {
    const first = earliest(heads);
    const row = first === -1 ? null : heads[first];
    if (row === null || row === undefined) return;
    yield row;
    heads[first] = streams[first]?.next().value ?? null;
  }
}

function* rowsOf(source: Iterable<KeptEntry[]>): Generator<KeptEntry, undefined> {
  for (const rows of source) yield* rows;
  return undefined;
}

function earliest(heads: readonly (KeptEntry | null)[]): number {
  let first = -1;
  let best: KeptEntry | null = null;
  for (const [at, head] of heads.entries()) {
    if (head === null || (best !== null && compareOrder(head, best) >= 0)) continue;
    best = head;
    first = at;
  }
  return first;
}

function* batches(
  rows: Iterable<KeptEntry>,
  batch: number,
  site: string | undefined,
): Generator<KeptEntry[]> {
  let held: KeptEntry[] = [];
  for (const row of rows) {
    if (site !== undefined && row.site !== site) continue;
    held.push(row);
    if (held.length < batch) continue;
    yield held;
    held = [];
  }
  if (held.length > 0) yield held;
}
