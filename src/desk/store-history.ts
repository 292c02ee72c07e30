// The entries that name a store, in words, with what became of them.
import type { Position } from '../account/index.ts';
import { type AnyEntry, amendmentsOf, entryOf, type KeptEntry, type View } from '../book/index.ts';
import type { StoreEvent } from '../papers/index.ts';
import { bookLine, refsIn } from './book-line.ts';
import type { Desk } from './desk.ts';

export interface StoreHistory {
  readonly events: readonly StoreEvent[];
  /** Entries that name it and are older than those. */
  readonly older: number;
}

/** The youngest entries of a view that name a store. */
export async function historyOf(
  desk: Desk,
  position: Position,
  of: { readonly store: string; readonly view: View; readonly most: number },
): Promise<StoreHistory> {
  const { store, view, most } = of;
  let entries: AnyEntry[] = [];
  let found = 0;
  for await (const rows of desk.port.scan({ order: 'total' })) {
    for (const row of rows) {
      if (!names(row, store) || !isIn(view, row)) continue;
      found += 1;
      entries.push(entryOf(row));
    }
    entries = entries.slice(-most);
  }
  const amendments = await amendmentsOf(desk.port, view);
  const { dayRule, mgPerL } = position;
  const refs = await refsIn(desk.port, entries);
  const context = { dayRule, mgPerL, instruments: position.index.instruments, amendments, ...refs };
  return {
    events: entries.map((entry) => {
      const { ref, id, happened: stamp, kind, text, undoneBy, correctedBy, now } = bookLine(entry, context);
      return { ref, id, stamp, kind, text, undoneBy, correctedBy, now };
    }),
    older: found - entries.length,
  };
}

/** The id stands in quotes in the text of every entry that names the store. */
function names({ kind, text }: KeptEntry, store: string): boolean {
  return kind !== 'outpost' && text.includes(JSON.stringify(store));
}

function isIn(view: View, { enteredAtMs, happenedAtMs }: KeptEntry): boolean {
  if (view.knownAtMs !== undefined && enteredAtMs > view.knownAtMs) return false;
  return view.asOfMs === undefined || happenedAtMs <= view.asOfMs;
}
