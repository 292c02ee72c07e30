// The account as it would be with one more entry: the book read with that entry laid over it, and nothing kept.
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
  const head = (await desk.port.heads()).find((one) => one.site === desk.info.site);
  return { ...draft, site: desk.info.site, number: (head?.number ?? 0) + 1 } as AnyEntry;
}

/** The fold as it would be: in order the entry is simply applied; else the book is read with it laid over. */
export async function foldWith(
  { fold, desk }: { readonly fold: Fold; readonly desk: Desk },
  entry: AnyEntry,
): Promise<Fold> {
  if (!isAmendmentKind(entry.kind) && (fold.lastEntryMs === null || entry.happenedAtMs > fold.lastEntryMs)) {
    const copy = fold.clone();
    applyEntry(copy, entry);
    return copy;
  }
  return (await overlayAccount(desk, entry)).fold;
}

async function overlayAccount(desk: Desk, entry: AnyEntry): Promise<Account> {
  const text = canonicalJson(entry as unknown as Json);
  const row = rowOf(entry, { text, seal: FIRST_SEAL, keptAtMs: entry.enteredAtMs });
  const opened = await Account.open(overlay(desk.port, row));
  if (!opened.ok) throw new Error('a book that could be read cannot be read with one entry more');
  return opened.account;
}

/** A book that has one row more, and takes none. */
function overlay(port: BookPort, row: KeptEntry): BookPort {
  return {
    info: () => port.info(),
    heads: () => port.heads(),
    count: async () => (await port.count()) + 1,
    find: async (id) => (id === row.id ? row : port.find(id)),
    findNumber: (site, number) => port.findNumber(site, number),
    scan: (query) => scanWith(port, row, query),
    append: () => Promise.reject(new Error('an overlay keeps nothing')),
  };
}

async function* scanWith(
  port: BookPort,
  row: KeptEntry,
  query: ScanQuery,
): AsyncIterable<readonly KeptEntry[]> {
  let waiting = belongs(row, query);
  for await (const rows of port.scan(query)) {
    const at = waiting ? rows.findIndex((other) => compareOrder(row, other) < 0) : -1;
    if (at < 0) yield rows;
    else {
      waiting = false;
      yield [...rows.slice(0, at), row, ...rows.slice(at)];
    }
  }
  if (waiting) yield [row];
}

function belongs(row: KeptEntry, query: ScanQuery): boolean {
  if (query.order !== 'total') throw new Error('an overlay is read in the total order');
  if (query.kinds !== undefined && !query.kinds.includes(row.kind)) return false;
  return query.after === undefined || compareOrder(row, query.after) > 0;
}
