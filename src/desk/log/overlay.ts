// The account as it would be with some entries more: the book read with them laid over it, and nothing kept.
import { Account, applyEntry, type Fold } from '../../account/index.ts';
import {
  type AnyDraft,
  type AnyEntry,
  type BookPort,
  canonicalJson,
  compareOrder,
  FIRST_SEAL,
  isAmendmentKind,
  type Json,
  type KeptEntry,
  rowOf,
  type ScanQuery,
} from '../../book/index.ts';
import type { Desk } from '../desk.ts';

/** The entry that a draft would become. */
export async function entryToBe(desk: Desk, draft: AnyDraft): Promise<AnyEntry> {
  const [entry] = await entriesToBe(desk, [draft]);
  return entry as AnyEntry;
}

/** The entries that drafts would become, one after the other. */
export async function entriesToBe(desk: Desk, drafts: readonly AnyDraft[]): Promise<readonly AnyEntry[]> {
  const head = (await desk.port.heads()).find((one) => one.site === desk.info.site);
  const next = (head?.number ?? 0) + 1;
  return drafts.map((draft, k) => ({ ...draft, site: desk.info.site, number: next + k }) as AnyEntry);
}

type Book = { readonly fold: Fold; readonly desk: Desk };

/** The fold as it would be: in order the entry is simply applied; else the book is read with it laid over. */
export function foldWith(book: Book, entry: AnyEntry): Promise<Fold> {
  return foldWithAll(book, [entry]);
}

/** The same with several entries. */
export async function foldWithAll({ fold, desk }: Book, entries: readonly AnyEntry[]): Promise<Fold> {
  const sorted = [...entries].sort(compareOrder);
  const isInOrder = sorted.every(
    ({ kind, happenedAtMs }) =>
      !isAmendmentKind(kind) && (fold.lastEntryMs === null || happenedAtMs > fold.lastEntryMs),
  );
  if (!isInOrder) return (await overlayAccount(desk, sorted)).fold;
  const copy = fold.clone();
  for (const entry of sorted) applyEntry(copy, entry);
  return copy;
}

async function overlayAccount(desk: Desk, entries: readonly AnyEntry[]): Promise<Account> {
  const rows = entries.map((entry) => {
    const text = canonicalJson(entry as unknown as Json);
    return rowOf(entry, { text, seal: FIRST_SEAL, keptAtMs: entry.enteredAtMs });
  });
  const opened = await Account.open(overlay(desk.port, rows));
  if (!opened.ok) throw new Error('a book that could be read cannot be read with entries more');
  return opened.account;
}

/** A book that has some rows more, and takes none. */
function overlay(port: BookPort, rows: readonly KeptEntry[]): BookPort {
  return {
    info: () => port.info(),
    heads: () => port.heads(),
    count: async () => (await port.count()) + rows.length,
    find: async (id) => rows.find((row) => row.id === id) ?? port.find(id),
    findNumber: (site, number) => port.findNumber(site, number),
    scan: (query) => scanWith(port, rows, query),
    append: () => Promise.reject(new Error('an overlay keeps nothing')),
  };
}

async function* scanWith(
  port: BookPort,
  rows: readonly KeptEntry[],
  query: ScanQuery,
): AsyncIterable<readonly KeptEntry[]> {
  let waiting = rows.filter((row) => belongs(row, query));
  for await (const batch of port.scan(query)) {
    const last = batch.at(-1);
    const here = waiting.filter((row) => last !== undefined && compareOrder(row, last) < 0);
    waiting = waiting.slice(here.length);
    yield here.length === 0 ? batch : [...batch, ...here].sort(compareOrder);
  }
  if (waiting.length > 0) yield waiting;
}

function belongs(row: KeptEntry, query: ScanQuery): boolean {
  if (query.order !== 'total') throw new Error('an overlay is read in the total order');
  if (query.kinds !== undefined && !query.kinds.includes(row.kind)) return false;
  return query.after === undefined || compareOrder(row, query.after) > 0;
}
