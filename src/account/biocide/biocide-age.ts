// How long a biocide has stood in a store or a line, against the age that the outpost's policy allows.
import { msPerDay } from '../../ground/units/index.ts';

export interface StandingAge {
  readonly sinceMs: number;
  readonly days: number;
  readonly mostDays: number | null;
  /** When the policy says that it is over; null where the policy names no age. */
  readonly untilMs: number | null;
  readonly isOver: boolean;
}

/**
 * @param stood since when, until when, and the age that policy allows (null: none is named, and that is no permission)
 * @example standingAge({ sinceMs: 0, atMs: 86_400_000 * 121, mostDays: 120 }).isOver // true
 */
export function standingAge(stood: {
  readonly sinceMs: number;
  readonly atMs: number;
  readonly mostDays: number | null;
}): StandingAge {
  const { sinceMs, atMs, mostDays } = stood;
  const days = Math.max(0, atMs - sinceMs) / msPerDay;
  const untilMs = mostDays === null ? null : sinceMs + mostDays * msPerDay;
  return { sinceMs, days, mostDays, untilMs, isOver: mostDays !== null && days > mostDays };
}
