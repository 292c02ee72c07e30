// Caps on a file that somebody brings: what is over one of them is a finding that names the cap and the place.

export interface TableCaps {
  readonly bytes: number;
  readonly rows: number;
  readonly columns: number;
  /** Letters of one cell. */
  readonly cellLength: number;
  /** Milliseconds from the bytes to the rows. */
  readonly timeMs: number;
  /** Memory of the thread that reads, in megabytes. */
  readonly memoryMb: number;
}

/** A hundred years of a small outpost, a line a day and ten acts, fit well inside. */
export const TABLE_CAPS: TableCaps = Object.freeze({
  bytes: 20_000_000,
  rows: 200_000,
  columns: 200,
  cellLength: 4_000,
  timeMs: 2_000,
  memoryMb: 256,
});
