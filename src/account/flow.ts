// One flow: whole milligrams in the ledger, kilograms and doubt in the estimator, identity in the stores.
import type { AnyEntry } from '../book/index.ts';
import { type Flow, type Fold, MG_PER_KG } from './fold.ts';
import { passIdentity } from './identity.ts';
import { noteEntry } from './note.ts';
import { rememberEntry, rememberReading, type StoreState } from './store-state.ts';

/** Moves water. */
export function flow(fold: Fold, entry: AnyEntry, what: Flow): void {
  const onPosted = fold.watcher?.onFlow?.(fold, entry, what);
  fold.ledger.post(what.from.account, what.to.account, what.massMg);
  if (fold.estimating) {
    fold.estimator.move({
      from: what.leftEarlier === true ? -1 : fold.placeOf(what.from),
      to: fold.placeOf(what.to),
      calibration: what.calibration,
      massKg: what.massMg / MG_PER_KG,
      uKg: what.uMg / MG_PER_KG,
    });
  }
  onPosted?.();
  follow(fold, entry, what);
}

/** What follows from a flow beside its amount: identity, memory, room. */
export function follow(fold: Fold, entry: AnyEntry, what: Flow): void {
  if (what.massMg === 0) return;
  const fillsEmpty = what.plumbing !== true && what.to.store?.emptied === true && what.from.store !== null;
  passIdentity(fold, entry, what);
  for (const end of [what.from, what.to]) touch(end.store, entry);
  // A measured fill of an empty store is one of the few moments at which its content is known.
  if (fillsEmpty && what.to.store !== null)
    rememberReading(what.to.store, { atMs: entry.happenedAtMs, how: 'filled', entry: entry.id });
  // Counted water passes through a buffer between two readings: only what a person moved is held against the room.
  if (what.plumbing !== true) checkRoom(fold, entry, what.to.store);
}

function touch(state: StoreState | null, entry: AnyEntry): void {
  if (state === null) return;
  state.movedAtMs = entry.happenedAtMs;
  rememberEntry(state, entry.id);
}

/** More in a store than it can hold is no water but a slip; it is kept and said. */
function checkRoom(fold: Fold, entry: AnyEntry, state: StoreState | null): void {
  if (state === null) return;
  const { massMg, uMg } = contentOf(fold, state);
  if (massMg > state.facts.capacityMg + 2 * uMg) {
    const data = { massMg, u95Mg: 2 * uMg, capacityMg: state.facts.capacityMg, mgPerL: fold.mgPerL };
    noteEntry(fold, entry, { code: 'over-capacity', severity: 'act-today', store: state.facts.id, data });
  }
}

/** Best value and doubt of a store, in whole milligrams. */
export function contentOf(fold: Fold, state: StoreState): { massMg: number; uMg: number } {
  if (!fold.estimating) return { massMg: fold.ledger.balanceMg(state.account), uMg: 0 };
  const massMg = Math.round(fold.estimator.mean(state.content) * MG_PER_KG);
  const uMg = Math.round(Math.sqrt(Math.max(0, fold.estimator.variance(state.content))) * MG_PER_KG);
  return { massMg: massMg === 0 ? 0 : massMg, uMg };
}
