// Which offices confirm by a code of their own, and since when; never the code.

export interface CodesSheet {
  readonly offices: readonly CodeLine[];
}

export interface CodeLine {
  readonly office: string;
  /** `Day 46 10:15 UTC`; null where the office has no code. */
  readonly since: string | null;
  /** Milliseconds that it still waits after wrong codes; 0 where it does not. */
  readonly waitsMs: number;
}
