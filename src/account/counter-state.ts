// What the account keeps of one counter: where it stood, and what single entries have taken out of its open interval.
import type { AnyEntry } from '../book/index.ts';
import { msPerDay } from '../ground/units/index.ts';

export interface CounterState {
  /** Running totals: the last reading. Amounts since the line: what has been closed since the last line that had a reading. */
  last: number | null;
  /** When the open interval began. */
  sinceMs: number;
  /** The entry that left the last reading out, so that the open interval is longer than a day. */
  missedBy: AnyEntry | null;
  /** Counted since the last day line that had a reading, in milligrams, and when that was. */
  sinceLineMg: number;
  lineMs: number;
  /** Milligrams a day in the last intervals that day lines closed; null before the first one. */
  meanMgPerDay: number | null;
  /** Intervals behind that mean, at most {@link MEAN_DAYS}. */
  meanDays: number;
  /** Whole milligrams that single entries have posted inside the open interval, by source account. */
  split: ReadonlyMap<string, number>;
  /** Milligrams posted ahead of the close into a store that has left its port since, and until when such postings reach. */
  aheadMg: number;
  aheadUntilMs: number;
  /** Changes of source that were told inside the open interval: store and milligrams. */
  claims: readonly {
    readonly store: string;
    readonly massMg: number;
    readonly uMg: number;
    readonly entry: string;
  }[];
}

const NOTHING: ReadonlyMap<string, number> = new Map();

export function openCounter(sinceMs: number): CounterState {
  return {
    last: null,
    sinceMs,
    missedBy: null,
    sinceLineMg: 0,
    lineMs: sinceMs,
    meanMgPerDay: null,
    meanDays: 0,
    split: NOTHING,
    aheadMg: 0,
    aheadUntilMs: sinceMs,
    claims: [],
  };
}

export function cloneCounter(state: CounterState): CounterState {
  return { ...state };
}

/** Why an amount could not be read off a counter. */
export type CounterTrouble =
  | { readonly kind: 'backwards'; readonly last: number }
  | { readonly kind: 'no baseline' };

/**
 * Amount between the last reading and this one, in the counter's own unit.
 * A running total that is lower than before has rolled over if it has a modulus; else it went backwards.
 */
export function countedSince(
  state: CounterState,
  value: number,
  how: { readonly running: boolean; readonly rollsOverAt: number | null },
): number | CounterTrouble {
  if (!how.running) {
    const closed = state.last ?? 0;
    return value >= closed ? value - closed : { kind: 'backwards', last: closed };
  }
  if (state.last === null) return { kind: 'no baseline' };
  if (value >= state.last) return value - state.last;
  if (how.rollsOverAt === null) return { kind: 'backwards', last: state.last };
  return value + how.rollsOverAt - state.last;
}

/** Closes the interval at a reading; the day line sets amounts since the line back to nothing. */
export function closeCounter(
  state: CounterState,
  value: number,
  at: { readonly ms: number; readonly running: boolean; readonly dayLine: boolean },
): void {
  state.last = !at.running && at.dayLine ? 0 : value;
  state.sinceMs = at.ms;
  state.missedBy = null;
  state.split = NOTHING;
  state.aheadMg = 0;
  state.aheadUntilMs = at.ms;
  state.claims = [];
}

/** The mean follows the last two weeks. */
export const MEAN_DAYS = 14;

/** Adds a closed interval; at a day line the daily mean learns from all that was counted since the line before. */
export function learnDaily(
  state: CounterState,
  massMg: number,
  at: { readonly ms: number; readonly dayLine: boolean },
): void {
  state.sinceLineMg += massMg;
  if (!at.dayLine) return;
  const days = (at.ms - state.lineMs) / msPerDay;
  if (days > 0) {
    state.meanDays = Math.min(MEAN_DAYS, state.meanDays + 1);
    const perDay = state.sinceLineMg / days;
    const mean = state.meanMgPerDay ?? perDay;
    state.meanMgPerDay = mean + (perDay - mean) / state.meanDays;
  }
  state.sinceLineMg = 0;
  state.lineMs = at.ms;
}

/** An amount was lost in between: the daily mean begins anew from here. */
export function forgetDay(state: CounterState, ms: number): void {
  state.sinceLineMg = 0;
  state.lineMs = ms;
}
