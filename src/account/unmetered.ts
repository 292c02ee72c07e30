// Stores that a unit feeds past every meter: what is taken out of them must have come in.
import type { AnyEntry } from '../book/index.ts';
import { flow } from './flow.ts';
import type { Fold } from './fold.ts';
import { storeAccount } from './ledger.ts';
import { noteEntry } from './note.ts';
import { resolve } from './route.ts';
import type { StoreState } from './store-state.ts';

/** Before water is taken out of such a store: the part that the account does not know of came in by the unit behind it. */
export function deduceInflow(
  fold: Fold,
  entry: AnyEntry,
  state: StoreState | null,
  taken: { readonly massMg: number; readonly uMg: number },
): void {
  if (state === null) return;
  const unit = unmeteredUnit(fold, state.facts.id);
  const source = unit?.takes[0];
  const from = source === undefined ? null : resolve(fold, source);
  const massMg = taken.massMg - fold.ledger.balanceMg(storeAccount(state.facts.id));
  if (unit === undefined || from === null || massMg <= 0) return;
  flow(fold, entry, {
    from,
    to: fold.endOfStore(state),
    massMg,
    uMg: taken.uMg,
    calibration: -1,
    plumbing: true,
    leftEarlier: true,
  });
  const data = { massMg, mgPerL: fold.mgPerL, unit: unit.id };
  noteEntry(fold, entry, { code: 'unmetered-inflow', severity: 'know', store: state.facts.id, data });
}

/** The unit that feeds a store which nothing gauges and no instrument meters. */
export function unmeteredUnit(fold: Fold, store: string) {
  if (fold.index.stores.get(store)?.gaugedBy !== 'nothing') return undefined;
  return fold.index.outpost.units.find(
    (unit) =>
      'store' in unit.feeds &&
      unit.feeds.store === store &&
      !fold.index.outpost.instruments.some(({ meters }) => meters === unit.id),
  );
}
