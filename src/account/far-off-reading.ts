// A reading that was far off, as it is remembered.

/** A reading that was far off: what it said, what was expected, and how surely (one standard deviation of the difference). */
export interface FarOffReading {
  readonly store: string;
  readonly atMs: number;
  readonly entry: string;
  readonly ref: string;
  readonly entryNo: string;
  readonly readMg: number;
  readonly expectedMg: number;
  readonly uMg: number;
}
