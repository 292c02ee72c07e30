// The word for how surely a content is known: checked, only source, deduced, unknown.
import type { StoreState } from './store-state.ts';

/**
 * `checked`: the last direct reading and the rest of the book agree, each about as sure as the other.
 * `only source`: nothing else in the book speaks of it: that reading, or what was told first, stands alone.
 * `deduced`: since then so much was moved that the figure rests on what was moved more than on the reading.
 * `unknown`: nobody told, or the doubt is so wide that the store may be nearly full or nearly empty.
 */
export type Standing = 'checked' | 'only source' | 'deduced' | 'unknown';

/** From this redundancy on the rest of the book counts as a check. Ours, no source. */
const CHECKED_FROM = 0.2;
/** A doubt of this part of the capacity says nothing: that of "anywhere between empty and full" is 0.29 of it. */
const UNKNOWN_FROM = 0.25;

export function standingOf({ lastReading, facts }: StoreState, uMg: number): Standing {
  if (lastReading === null || uMg >= UNKNOWN_FROM * facts.capacityMg) return 'unknown';
  const readUMg = lastReading.uMg ?? 0;
  // More than half of the variance came with what was moved since.
  if (uMg * uMg > 2 * readUMg * readUMg) return 'deduced';
  return (lastReading.redundancy ?? 0) >= CHECKED_FROM ? 'checked' : 'only source';
}
