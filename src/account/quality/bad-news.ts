// Bad news: results of a store's water that fail a row in force, and the hold that follows from them by itself.
import type { AnyEntry } from '../../book/index.ts';
import type { LimitRow } from '../../outpost/index.ts';
import type { Fold } from '../fold.ts';
import { putOnHold } from '../hold.ts';
import { isWaste } from '../rules.ts';
import type { HoldState, StoreState } from '../store-state.ts';
import { judgeResult } from '../verdict/judge-result.ts';
import { flowsThrough } from './flows-through.ts';
import type { KnownResult } from './known-results.ts';
import { rowsOfGrade } from './limits-in-force.ts';

/** So often a buffer is filled anew until the water of a sample is gone: e⁻⁵, less than 1 % of it, is left. Ours, no source. */
const TIMES_FILLED = 5;

/** Results that speak of the water that is in the store now. */
export function resultsOfWater(
  fold: Fold,
  state: StoreState,
  more: readonly KnownResult[] = [],
): readonly KnownResult[] {
  const { results, badNewsSinceMs, facts } = state;
  const own = [...results, ...more].filter(({ takenAtMs }) => takenAtMs >= badNewsSinceMs);
  if (!flowsThrough(fold.index, facts.id)) return own;
  const gone = TIMES_FILLED * facts.capacityMg;
  return own.filter(
    (old) => !own.some((one) => one.parameter === old.parameter && one.inflowMg - old.inflowMg >= gone),
  );
}

/** Parameters of a figure list that fail a row which bears on the grade; `nowMs` is when they are looked at. */
export function failedBy(
  rows: readonly LimitRow[],
  results: readonly KnownResult[],
  nowMs: number,
): readonly string[] {
  return parametersOf(failingIn(rows, results, nowMs));
}

export function failingIn(
  rows: readonly LimitRow[],
  results: readonly KnownResult[],
  nowMs: number,
): readonly KnownResult[] {
  return results.filter((result) => rows.some((row) => fails(row, result, nowMs)));
}

export function parametersOf(results: readonly KnownResult[]): readonly string[] {
  return [...new Set(results.map(({ parameter }) => parameter))].sort();
}

const ANY_WATER = {
  unchangedSinceMs: Number.NEGATIVE_INFINITY,
  badNewsCountsSinceMs: Number.NEGATIVE_INFINITY,
} as const;

function fails(row: LimitRow, result: KnownResult, nowMs: number): boolean {
  const { limit } = row;
  if (row.parameter !== result.parameter || limit === null) return false;
  return judgeResult(result, { row, limit }, { nowMs, water: ANY_WATER }).against.length > 0;
}

/** Puts a store on hold whose own water fails. Nobody has to say so, and nobody can forget it. */
export function holdWhatFails(
  fold: Fold,
  entry: AnyEntry,
  state: StoreState,
  found: Pick<HoldState, 'hold' | 'reason'> & { readonly results: readonly KnownResult[] },
): void {
  if (!state.aboard || state.emptied || isWaste(fold.index, state)) return;
  const { hold, reason, results } = found;
  const own = results.filter(({ takenAtMs }) => takenAtMs >= state.badNewsSinceMs);
  const rows = rowsOfGrade(fold.limits, fold.index, state.grade);
  const failed = failedBy(rows, own, entry.happenedAtMs);
  if (failed.length === 0) return;
  putOnHold(state, { hold, reason, sinceMs: entry.happenedAtMs, entry: entry.id, failed });
}
