// Counters that a day line left out: what they would have said stands in for a while, with a wide doubt.
import { msPerDay } from '../ground/units/index.ts';
import type { CounterState } from './counter-state.ts';
import type { Fold, Watcher } from './fold.ts';
import { postInterval } from './interval.ts';

/** Doubt of a day that nobody counted, relative to its learned mean, one standard deviation. Ours, no source. */
const UNCOUNTED_RELATIVE_U = 0.15;

/**
 * The fold as it is believed while counters wait for their next reading. Missing is not zero: the learned daily mean is
 * posted up to the line that left the counter out, on a copy; the fold itself waits for the reading.
 * @param watcher who hears what is posted so
 */
export function withGapsFilled(fold: Fold, watcher: Watcher | null = null): Fold {
  // Water is made first and then used.
  const waiting = fold.instrumentsInOrder.filter(({ id }) => isWaiting(fold.counters.get(id)));
  if (waiting.length === 0) return fold;
  const copy = fold.clone();
  copy.watcher = watcher;
  for (const instrument of waiting) {
    const state = copy.counters.get(instrument.id);
    if (instrument.route === undefined || state?.missedBy == null || state.meanMgPerDay === null) continue;
    const entry = state.missedBy;
    const days = (entry.happenedAtMs - state.sinceMs) / msPerDay;
    const massMg = Math.round(state.meanMgPerDay * Math.max(0, days));
    const moreUMg = Math.round(massMg * UNCOUNTED_RELATIVE_U);
    postInterval(copy, entry, { instrument, route: instrument.route, state, massMg, moreUMg });
  }
  return copy;
}

function isWaiting(state: CounterState | undefined): boolean {
  return state !== undefined && state.missedBy !== null && state.meanMgPerDay !== null;
}
