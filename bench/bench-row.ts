// One measured figure of a bench, with its goal.

export interface BenchRow {
  readonly name: string;
  readonly value: number;
  /** The unit of the value: `ms`, `entries/s`, `×` for a ratio. */
  readonly unit: string;
  /** What was promised, in the unit of the value; absent for a yardstick that carries no promise. */
  readonly goal?: { readonly most: number } | { readonly least: number };
  /** For a ratio: the name of the row, of the same run, that it is a ratio to. */
  readonly ratioOf?: string;
  readonly ok: boolean;
}

/** What a file `bench/NAME.bench.ts` exports under the name `bench`. */
export type Bench = () => Promise<readonly BenchRow[]>;

/** A figure held against its goal; a figure that is no number has missed it. */
export function row(figure: Omit<BenchRow, 'ok'>): BenchRow {
  return { ...figure, ok: isMet(figure) };
}

function isMet({ value, goal }: Omit<BenchRow, 'ok'>): boolean {
  if (!Number.isFinite(value)) return false;
  if (goal === undefined) return true;
  return 'most' in goal ? value <= goal.most : value >= goal.least;
}

/** The quantile of measured times by the nearest rank; `part` from 0 to 1. */
export function quantileOf(times: readonly number[], part: number): number {
  const sorted = [...times].sort((a, b) => a - b);
  return sorted[Math.min(sorted.length - 1, Math.max(0, Math.ceil(part * sorted.length) - 1))] ?? Number.NaN;
}
