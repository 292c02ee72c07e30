// What a store's water still lacks before results alone would release it.
import { type Fold, type StoreState, verdictOfStore } from '../../account/index.ts';

/** Each `parameter: code`, or a bare code that is about no parameter; empty: nothing is lacking. */
export function lacksOf(fold: Fold, state: StoreState, nowMs: number): readonly string[] {
  const verdict = verdictOfStore(fold, state, { nowMs });
  if (verdict.released) return [];
  const said = verdict.reasons.map(({ code, parameter }) => (parameter === '' ? code : `${parameter}: ${code}`));
  return [...new Set(said)];
}
