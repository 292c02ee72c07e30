// The word for how surely a content is known: checked, only source, deduced, unknown.
import type { LastReading, StoreState } from './store-state.ts';

/**
 * `checked`: the last direct reading and the rest of the book agree, each about as sure as the other.
 * `only source`: nothing else in the book speaks of it: that reading, or what was told first, stands alone.
 * `deduced`: water was moved since, so the figure is that reading plus and less what was moved.
 * `unknown`: nobody told, or the doubt is so wide that the store may be nearly full or nearly empty.
 */
export type Standing = 'checked' | 'only source' | 'deduced' | 'unknown';

/** From this redundancy on the rest of the book counts as a check. Ours, no source. */
const CHECKED_FROM = 0.2;
/** A doubt of this part of the capacity says nothing: that of "anywhere between empty and full" is 0.29 of it. */
const UNKNOWN_FROM = 0.25;

export function standingOf({ lastReading, movedAtMs, facts }: StoreState, uMg: number): Standing {
  if (lastReading === null || uMg >= UNKNOWN_FROM * facts.capacityMg) return 'unknown';
  if (isMovedSince(lastReading, movedAtMs)) return 'deduced';
  return (lastReading.redundancy ?? 0) >= CHECKED_FROM ? 'checked' : 'only source';
}

/** Water went in or out after the content was last read. */
export function isMovedSince(lastReading: LastReading, movedAtMs: number | null): boolean {
  return movedAtMs !== null && movedAtMs > lastReading.atMs;
}
