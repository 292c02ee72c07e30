// From a name in an entry to an end of a flow: a store, what stands on a port, or a pool.
import type { AnyEntry } from '../book/index.ts';
import { nearest } from '../ground/units/index.ts';
import type { End, Fold } from './fold.ts';
import { noteEntry } from './note.ts';
import type { StoreState } from './store-state.ts';

/** Pools have no walls; what is in them is only reckoned. */
export const pools = [
  'people',
  'cabin air',
  'electrolyser',
  'outside',
  'unaccounted',
  'unplaced',
  'lost',
] as const;

const poolNames: ReadonlySet<string> = new Set(pools);

export function isPool(name: string): boolean {
  return poolNames.has(name);
}

export function poolEnd(name: string): End {
  return { account: name, store: null };
}

/**
 * End of a flow by its name. A name that is nowhere goes to `unplaced`, with a finding: the fold never refuses.
 */
export function endOf(fold: Fold, entry: AnyEntry, name: string, field: string): End {
  const store = fold.stores.get(name);
  if (store?.aboard === true) return fold.endOfStore(store);
  if (isPool(name)) return poolEnd(name);
  if (fold.ports.has(name)) {
    const on = fold.storeOn(name);
    if (on !== null) return fold.endOfStore(on);
    noteEntry(fold, entry, { code: 'port-empty', severity: 'act-today', field, data: { port: name } });
    return poolEnd('unplaced');
  }
  noteUnknown(fold, entry, { name, field, others: [...fold.ports.keys(), ...pools] });
  return poolEnd('unplaced');
}

/** A store that is aboard, by its name, or null with a finding. */
export function storeOf(fold: Fold, entry: AnyEntry, name: string): StoreState | null {
  const state = fold.stores.get(name);
  if (state?.aboard === true) return state;
  noteUnknown(fold, entry, { name, field: 'store', others: [] });
  return null;
}

export function noteUnknown(
  fold: Fold,
  entry: AnyEntry,
  what: { name: string; field: string; others: readonly string[] },
): void {
  const { name, field, others } = what;
  const aboard = [...fold.stores.values()].filter((state) => state.aboard).map((state) => state.facts.id);
  const data = { name, nearest: nearest(name, [...aboard, ...others]) };
  noteEntry(fold, entry, { code: 'store-unknown', severity: 'act-today', field, data });
}
