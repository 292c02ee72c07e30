// Room in the store that water went into: a store that is full by the book, or was said to be empty and is not.
import type { AnyEntry } from '../../book/index.ts';
import type { Fold } from '../fold.ts';
import type { StoreState } from '../store-state.ts';
import { believedAt } from './believed.ts';
import { askStore, storesThat } from './stores.ts';

/** Litres above the rest with which a store counts as used. Ours, no source. */
const USED_L = 2;

/** The amount fits, so it is the store that is asked about, with those that have the room. */
export function askRoom(
  fold: Fold,
  entry: AnyEntry,
  state: StoreState,
  flow: { readonly massMg: number; readonly receiverWasEmptied: boolean | undefined },
): void {
  if (!state.aboard) return;
  const atMs = entry.happenedAtMs;
  const { massMg, uMg } = believedAt(fold, state, atMs);
  const isFull = massMg + flow.massMg > state.facts.capacityMg + 2 * uMg;
  const isUsed =
    flow.receiverWasEmptied === true && massMg - 2 * uMg > state.facts.remainderMg + USED_L * fold.mgPerL;
  if (!isFull && !isUsed) return;
  const candidates = storesThat(fold, state, (other) => {
    const content = believedAt(fold, other, atMs);
    const hasRoom = content.massMg + flow.massMg <= other.facts.capacityMg;
    return hasRoom && (other.emptied || other.grade === state.grade);
  });
  if (candidates.length > 0)
    askStore(fold, entry, { why: 'full', store: state.facts.id, massMg, candidates });
}
