// How often a wrong code was typed in a row, and how long the office waits for it.

export interface Tries {
  readonly wrong: number;
  readonly lastMs: number;
}

export interface Terms {
  readonly nowMs: number;
  readonly tries: number;
  readonly waitMs: number;
}

/** Milliseconds that an office still waits; 0 where it does not. */
export function waitLeftMs(known: Tries | null, { nowMs, tries, waitMs }: Terms): number {
  if (known === null || known.wrong < tries) return 0;
  // A clock that was set back makes nobody wait longer than the whole time.
  const sinceMs = Math.max(0, nowMs - known.lastMs);
  return Math.max(0, waitMs - sinceMs);
}

/** The count with one more try, which is begun anew after a wait. */
export function withOneMore(known: Tries | null, { nowMs, tries }: Terms): Tries {
  const before = known === null || known.wrong >= tries ? 0 : known.wrong;
  return { wrong: before + 1, lastMs: nowMs };
}
