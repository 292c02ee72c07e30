// Holds of a store: several may stand at once, and each ends only by its own name.
import type { HoldState, StoreState } from './store-state.ts';

/** Every hold that is open on a store, the oldest first. */
export function holdsOf(state: StoreState): readonly HoldState[] {
  return state.hold === null ? [] : [state.hold, ...state.holdsBehind];
}

/** A hold stands beside those that are there: a release of one leaves the water waiting for the others. */
export function putOnHold(state: StoreState, hold: HoldState): void {
  const same = holdsOf(state).find((one) => one.hold === hold.hold);
  if (same !== undefined) {
    addResults(state, same, hold);
    return;
  }
  if (state.hold === null) state.hold = hold;
  else state.holdsBehind = [...state.holdsBehind, hold];
}

/** Water that is held for one thing twice brings what speaks against it along. */
function addResults(state: StoreState, same: HoldState, { results: more = [] }: HoldState): void {
  const known = same.results ?? [];
  const fresh = more.filter(({ id }) => !known.some((one) => one.id === id));
  if (fresh.length === 0) return;
  const results = [...known, ...fresh];
  const failed = [...new Set(results.map(({ parameter }) => parameter))].sort();
  const change = (one: HoldState) => (one === same ? { ...one, failed, results } : one);
  state.hold = state.hold === null ? null : change(state.hold);
  state.holdsBehind = state.holdsBehind.map(change);
}

/** Ends a hold by its name; without a name every hold. */
export function endHold(state: StoreState, name: string | undefined): void {
  const left = name === undefined ? [] : holdsOf(state).filter((one) => one.hold !== name);
  state.hold = left[0] ?? null;
  state.holdsBehind = left.slice(1);
}
