// What a store is believed to hold at an instant: what was folded, and what flows into it by itself and no reading has told yet.
import { msPerDay } from '../../ground/units/index.ts';
import type { FlowEnd } from '../../outpost/index.ts';
import { contentOf } from '../flow.ts';
import type { Fold } from '../fold.ts';
import type { StoreState } from '../store-state.ts';

/** What is not read yet is known to this part, one standard deviation. Ours, no source: people come and go. */
const PENDING_RELATIVE_U = 0.3;

export function believedAt(fold: Fold, state: StoreState, atMs: number): { massMg: number; uMg: number } {
  const { massMg, uMg } = contentOf(fold, state);
  const pendingMg = pendingInto(fold, state, atMs);
  const pendingUMg = PENDING_RELATIVE_U * pendingMg;
  return { massMg: massMg + pendingMg, uMg: Math.sqrt(uMg * uMg + pendingUMg * pendingUMg) };
}

/** By the norms since they were posted last, and by the daily means of the counters since they were read last. */
function pendingInto(fold: Fold, state: StoreState, atMs: number): number {
  const isHere = (end: FlowEnd): boolean => {
    if ('pool' in end) return false;
    return 'store' in end ? end.store === state.facts.id : fold.storeOn(end.port) === state;
  };
  const { normsUntilMs, peopleAboard, mgPerL } = fold;
  let pendingMg = 0;
  for (const norm of fold.normFlows) {
    if (!isHere(norm.to) || normsUntilMs === null) continue;
    const days = Math.max(0, atMs - normsUntilMs) / msPerDay;
    pendingMg += norm.litresPerPersonDay * peopleAboard * days * mgPerL;
  }
  for (const { id, route } of fold.instrumentsInOrder) {
    const counter = fold.counters.get(id);
    if (route === undefined || !isHere(route.to) || counter?.meanMgPerDay == null) continue;
    const fromMs = Math.max(counter.sinceMs, counter.aheadUntilMs);
    pendingMg += (counter.meanMgPerDay * Math.max(0, atMs - fromMs)) / msPerDay;
  }
  return pendingMg;
}
