// What the account keeps of one counter: where it stood, and what single entries have taken out of its open interval.

export interface CounterState {
  /** Running totals: the last reading. Amounts since the line: what has been closed since the last line that had a reading. */
  last: number | null;
  /** When the open interval began. */
  sinceMs: number;
  /** The last reading was left out, so that the open interval is longer than a day. */
  missed: boolean;
  /** Whole milligrams that single entries have posted inside the open interval, by source account. */
  readonly split: Map<string, number>;
  /** Changes of source that were told inside the open interval: store and milligrams. */
  claims: readonly { readonly store: string; readonly massMg: number; readonly uMg: number; readonly entry: string }[];
}

export function openCounter(sinceMs: number): CounterState {
  return { last: null, sinceMs, missed: false, split: new Map(), claims: [] };
}

export function cloneCounter(state: CounterState): CounterState {
  return { ...state, split: new Map(state.split) };
}

/** Why an amount could not be read off a counter. */
export type CounterTrouble = { readonly kind: 'backwards'; readonly last: number } | { readonly kind: 'no baseline' };

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
export function closeCounter(state: CounterState, value: number, at: { readonly ms: number; readonly running: boolean; readonly dayLine: boolean }): void {
  state.last = !at.running && at.dayLine ? 0 : value;
  state.sinceMs = at.ms;
  state.missed = false;
  state.split.clear();
  state.claims = [];
}
