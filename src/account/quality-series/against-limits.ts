// A single figure held against the rows of its parameter: where it lies, and nothing of what follows from that.
import type { LimitRow } from '../../outpost/index.ts';
import { judgeResult } from '../verdict/judge-result.ts';
import type { MeasuredPoint } from './measured-point.ts';

/** `unclear`: what it can be lies on both sides, or it cannot be told in the row's unit. */
export type AgainstLimits = 'within' | 'above' | 'below' | 'unclear' | 'no limit';

const ANY_WATER = {
  unchangedSinceMs: Number.NEGATIVE_INFINITY,
  badNewsCountsSinceMs: Number.NEGATIVE_INFINITY,
} as const;

/** The worst of all rows that are in force; a row that is off judges nothing. */
export function againstLimits(point: MeasuredPoint, rows: readonly LimitRow[]): AgainstLimits {
  const found = rows.flatMap((row) => {
    const { limit } = row;
    return row.parameter === point.parameter && limit !== null ? [againstRow(point, row, limit)] : [];
  });
  if (found.length === 0) return 'no limit';
  return (['above', 'below', 'unclear'] as const).find((word) => found.includes(word)) ?? 'within';
}

function againstRow(
  point: MeasuredPoint,
  row: LimitRow,
  limit: NonNullable<LimitRow['limit']>,
): AgainstLimits {
  const { told, censored, parameter, sample, entry, atMs } = point;
  const result = {
    ...{ id: entry, sample, parameter, censored, takenAtMs: atMs, verified: true, degassed: null },
    ...told,
    ...{ method: point.method, madeAt: point.madeAt ?? ('aboard' as const) },
    validUntilMs: Number.POSITIVE_INFINITY,
  };
  const { against } = judgeResult(result, { row, limit }, { nowMs: atMs, water: ANY_WATER });
  if (against.includes('above')) return 'above';
  if (against.includes('below')) return 'below';
  return against.length > 0 ? 'unclear' : 'within';
}
