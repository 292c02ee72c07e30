// Results against limits in a few lines of their own: for the naive model of fitness, and from nothing of the account's.
import type { Body } from '../../../src/book/index.ts';

const DAY_MS = 86_400_000;
/** How long a sample counts by Holm's policy. */
const VALID_MS = 90 * DAY_MS;

export interface NaiveRow {
  readonly parameter: string;
  readonly unit: string;
  /** Null: nobody has typed it. */
  readonly limit: { readonly atLeast?: number; readonly atMost?: number } | null;
}

export interface NaiveResult {
  readonly parameter: string;
  readonly value: number;
  readonly unit: string;
  readonly below: boolean;
  readonly sample: string;
  readonly takenAtMs: number;
  readonly isProven: boolean;
  /** What had come into the store until then. */
  readonly inflowMg: number;
  readonly entry: string;
}

export const POLICY_ROWS: readonly NaiveRow[] = [
  { parameter: 'silver', unit: 'mg/L', limit: { atLeast: 0.05 } },
  { parameter: 'silver', unit: 'mg/L', limit: { atMost: 0.4 } },
  { parameter: 'plate count', unit: 'CFU/mL', limit: { atMost: 50 } },
];

export function resultsIn(
  values: Body<'result'>['values'],
  told: Omit<NaiveResult, 'parameter' | 'value' | 'unit' | 'below'>,
): NaiveResult[] {
  return values.map(({ parameter, value, unit, below }) => ({
    ...{ parameter, value, unit, below: below === true },
    ...told,
  }));
}

/** All that the figure can be must lie in the limit; what cannot be compared does not. */
export function isBad(result: NaiveResult, row: NaiveRow): boolean {
  if (row.parameter !== result.parameter || row.limit === null) return false;
  const times = result.unit === row.unit ? 1 : result.unit === 'µg/L' && row.unit === 'mg/L' ? 1000 : null;
  if (times === null) return true;
  const high = result.value / times;
  const low = result.below ? 0 : high;
  const { atLeast = 0, atMost = Number.POSITIVE_INFINITY } = row.limit;
  return low < atLeast || high > atMost;
}

export const failing = (rows: readonly NaiveRow[], results: readonly NaiveResult[]): NaiveResult[] =>
  results.filter((result) => rows.some((row) => isBad(result, row)));

/** Until when these results prove water that is the same since a moment; null where they do not. */
export function provenUntilMs(
  rows: readonly NaiveRow[],
  results: readonly NaiveResult[],
  { sinceMs, nowMs }: { readonly sinceMs: number; readonly nowMs: number },
): number | null {
  if (rows.length === 0 || failing(rows, results).length > 0) return null;
  const ends = rows.map(({ parameter, limit }) => {
    const good = results.filter(
      (one) => one.parameter === parameter && one.isProven && one.takenAtMs >= sinceMs,
    );
    return limit === null ? -1 : Math.max(-1, ...good.map(({ takenAtMs }) => takenAtMs + VALID_MS));
  });
  const untilMs = Math.min(...ends);
  return untilMs > nowMs ? untilMs : null;
}

/** The loader's word is over where an own result was back and has run out. */
export function hasRunOut(
  rows: readonly NaiveRow[],
  results: readonly NaiveResult[],
  nowMs: number,
): boolean {
  return rows.some(({ parameter }) => {
    const own = results.filter((one) => one.parameter === parameter);
    return own.length > 0 && own.every(({ takenAtMs }) => takenAtMs + VALID_MS <= nowMs);
  });
}
