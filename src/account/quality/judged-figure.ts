// One figure of a result held against the rows that bear on its water: what a list of results says of it.
import type { LimitRow } from '../../outpost/index.ts';
import { judgeResult } from '../verdict/judge-result.ts';
import type { Blocker, SampleResult } from '../verdict/sample-result.ts';

export interface JudgedFigure {
  /** The rows of its parameter; none: nothing bears on it. */
  readonly rows: readonly LimitRow[];
  /** What speaks against the water, each once; empty: it is within. */
  readonly against: readonly Blocker[];
}

const ANY_WATER = {
  unchangedSinceMs: Number.NEGATIVE_INFINITY,
  badNewsCountsSinceMs: Number.NEGATIVE_INFINITY,
} as const;

/**
 * What the figure itself says, whatever became of the water since.
 * @param nowMs when it is looked at
 */
export function judgedFigure(rows: readonly LimitRow[], figure: SampleResult, nowMs: number): JudgedFigure {
  const own = rows.filter(({ parameter }) => parameter === figure.parameter);
  const against = own.flatMap((row): readonly Blocker[] => {
    const { limit } = row;
    if (limit === null) return ['row-off'];
    return judgeResult(figure, { row, limit }, { nowMs, water: ANY_WATER }).against;
  });
  return { rows: own, against: [...new Set(against)] };
}
