// Counters that a day line left out: what they would have said stands in for a while, with a wide doubt.
import { msPerDay } from '../ground/units/index.ts';
import type { Fold } from './fold.ts';
import { postInterval } from './interval.ts';

/** Doubt of a day that nobody counted, relative to its learned mean, one standard deviation. Ours, no source. */
const UNCOUNTED_RELATIVE_U = 0.15;

/**
 * The fold as it is believed while counters wait for their next reading. Missing is not zero: the learned daily mean is
 * posted up to the line that left the counter out, on a copy; the fold itself waits for the reading.
 */
export function withGapsFilled(fold: Fold): Fold {
  const waiting = [...fold.counters].filter(([, state]) => state.missedBy !== null && state.meanMgPerDay !== null);
  if (waiting.length === 0) return fold;
  const copy = fold.clone();
  for (const [id, original] of waiting) {
    const instrument = copy.index.instruments.get(id);
    const state = copy.counters.get(id);
    const entry = original.missedBy;
    if (instrument?.route === undefined || state === undefined || entry === null || original.meanMgPerDay === null) continue;
    const days = (entry.happenedAtMs - original.sinceMs) / msPerDay;
    const massMg = Math.round(original.meanMgPerDay * Math.max(0, days));
    const moreUMg = Math.round(massMg * UNCOUNTED_RELATIVE_U);
    postInterval(copy, entry, { instrument, route: instrument.route, state, massMg, moreUMg });
  }
  return copy;
}
