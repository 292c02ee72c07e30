// What a store's water still lacks before results alone would release it.
import { type Fold, isForPeople, type StoreState, verdictOfStore } from '../../account/index.ts';

/** Each `parameter: code`, or a bare code that is about no parameter; empty: nothing is lacking. */
export function lacksOf(fold: Fold, state: StoreState, nowMs: number): readonly string[] {
  // Nobody drinks it: the medic's word alone sets it free.
  if (!isForPeople(fold.index, state.grade)) return [];
  const verdict = verdictOfStore(fold, state, { nowMs });
  if (verdict.released) return [];
  const said = verdict.reasons.map(({ code, parameter }) =>
    parameter === '' ? code : `${parameter}: ${code}`,
  );
  return [...new Set(said)];
}
