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
    if (needsTreatment(hold) && !needsTreatment(same)) weighUp(state, hold);
    return;
  }
  if (needsTreatment(hold)) state.broughtBack = false;
  if (state.hold === null) state.hold = hold;
  else state.holdsBehind = [...state.holdsBehind, hold];
}

/** One act may break two rules under one name: the one that is harder to undo is told. */
function weighUp(state: StoreState, { hold: name, reason }: HoldState): void {
  state.broughtBack = false;
  const change = (one: HoldState) => (one.hold === name ? { ...one, reason } : one);
  setHolds(state, holdsOf(state).map(change));
}

const BY_TREATMENT_ALONE: ReadonlySet<string> = new Set([
  'biocides-meet',
  'grade-went-up',
  'grade-may-not-enter',
  'treatment-not-allowed',
]);

/** What such a hold stands for is not undone by a word: it takes two and a treatment. */
export function needsTreatment({ reason }: HoldState): boolean {
  return BY_TREATMENT_ALONE.has(reason);
}

/** May a release or a lower use end this hold of a store? */
export function mayEnd({ broughtBack }: StoreState, hold: HoldState): boolean {
  return broughtBack || !needsTreatment(hold);
}

export function conditionalsOf(state: StoreState): readonly HoldState[] {
  return state.conditional === null ? [] : [state.conditional, ...state.conditionalsBehind];
}

export function makeConditional(state: StoreState, why: HoldState): void {
  const all = conditionalsOf(state).filter(({ hold }) => hold !== why.hold);
  setConditionals(state, [...all, why]);
}

/** Ends one reason by its name; without a name every one. */
export function endConditional(state: StoreState, name: string | undefined): void {
  setConditionals(
    state,
    conditionalsOf(state).filter(({ hold }) => name !== undefined && hold !== name),
  );
}

function setConditionals(state: StoreState, [first, ...others]: readonly HoldState[]): void {
  state.conditional = first ?? null;
  state.conditionalsBehind = others;
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

/** Takes a hold off as it is, to be put aside or anew. */
export function takeHold(state: StoreState, name: string): void {
  setHolds(
    state,
    holdsOf(state).filter(({ hold }) => hold !== name),
  );
}

function setHolds(state: StoreState, [first, ...others]: readonly HoldState[]): void {
  state.hold = first ?? null;
  state.holdsBehind = others;
}

/** Ends a hold by its name; without a name every hold that may end so. */
export function endHold(state: StoreState, name: string | undefined): void {
  const left = holdsOf(state).filter(
    (one) => (name !== undefined && one.hold !== name) || !mayEnd(state, one),
  );
  setHolds(state, left);
}
