// Asking whether another store was meant, and which ones it could be.
import type { AnyEntry } from '../../book/index.ts';
import type { Fold } from '../fold.ts';
import { noteEntry } from '../note.ts';
import type { StoreState } from '../store-state.ts';

/** More candidates than this are no help. */
const MOST_CANDIDATES = 4;

export type StoreDoubt =
  | 'fits other'
  | 'not on port'
  | 'empty on feed'
  | 'full on sink'
  | 'other grade'
  | 'held'
  | 'full'
  | 'emptied already'
  | 'sample of other'
  | 'other label'
  | 'not held';

/** The entry counts for the store that it names; the finding says which other ones would fit. */
export function askStore(
  fold: Fold,
  entry: AnyEntry,
  doubt: {
    readonly why: StoreDoubt;
    readonly store: string;
    readonly candidates: readonly string[];
    readonly port?: string;
    readonly massMg?: number;
    readonly other?: string | null;
    readonly entries?: readonly string[];
  },
): void {
  const { why, store, candidates, port = null, massMg = null, other = null, entries = [] } = doubt;
  const data = {
    why,
    candidates: candidates.slice(0, MOST_CANDIDATES),
    port,
    massMg,
    other,
    grade: fold.stores.get(store)?.grade ?? null,
    mgPerL: fold.mgPerL,
  };
  noteEntry(fold, entry, { code: 'store-doubtful', severity: 'act-today', store, data, entries });
}

/** Stores of the same kind, aboard, that a condition holds for; the named one is none of them. */
export function storesThat(fold: Fold, like: StoreState, fits: (other: StoreState) => boolean): string[] {
  const found: string[] = [];
  for (const other of fold.stores.values()) {
    if (other.facts.id === like.facts.id || !other.aboard || other.facts.kind !== like.facts.kind) continue;
    if (fits(other)) found.push(other.facts.id);
  }
  return found;
}
