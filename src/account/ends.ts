// From a name in an entry to an end of a flow: a store, what stands on a port, or a pool.
import type { AnyEntry } from '../book/index.ts';
import { nearest } from '../ground/units/index.ts';
import type { End, Fold } from './fold.ts';
import { noteEntry } from './note.ts';

/** Pools have no walls; what is in them is only reckoned. */
export const pools = ['people', 'cabin air', 'electrolyser', 'outside', 'unaccounted', 'unplaced', 'lost'] as const;

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
  if (store !== undefined) return fold.endOfStore(store);
  if (isPool(name)) return poolEnd(name);
  if (fold.ports.has(name)) {
    const on = fold.storeOn(name);
    if (on !== null) return fold.endOfStore(on);
    noteEntry(fold, entry, { code: 'port-empty', severity: 'act-today', field, data: { port: name } });
    return poolEnd('unplaced');
  }
  const names = [...fold.stores.keys(), ...fold.ports.keys(), ...pools];
  noteEntry(fold, entry, { code: 'store-unknown', severity: 'act-today', field, data: { name, nearest: nearest(name, names) } });
  return poolEnd('unplaced');
}
