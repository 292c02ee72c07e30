// Rows and sets of limits as sheets have them.
import type { Position } from '../../account/index.ts';
import { formatIsoUtc } from '../../ground/units/index.ts';
import type { LimitRow, LimitSet } from '../../outpost/index.ts';
import type { LimitLine, LimitSetLine, LimitSetLines } from '../../papers/index.ts';
import type { KnownSet } from './known-sets.ts';

export function limitLine(row: LimitRow): LimitLine {
  const { noneIfBelow: _none, duplicatesWithinShare: _share, typed, ...line } = row;
  return {
    ...line,
    typed: typed === null ? null : { by: typed.by, copy: typed.copy, at: formatIsoUtc(typed.atMs) },
  };
}

export function setLines({ id, name, what, uses, rows }: LimitSet): LimitSetLines {
  return { id, name, what, uses, rows: rows.map(limitLine) };
}

export function setLine({ set, from }: KnownSet, { limits }: Pick<Position, 'limits'>): LimitSetLine {
  const on = set.rows.filter(({ limit }) => limit !== null).length;
  return {
    ...{ id: set.id, name: set.name, rows: set.rows.length, on, off: set.rows.length - on },
    required: limits.sets.find((one) => one.set === set.id)?.rows.length ?? 0,
    from: from === 'own file' ? 'book' : from,
  };
}

/** Null where it is longer than any row is made for. */
export function exposureOf(exposureDays: number): number | null {
  return exposureDays < LONG_DAYS ? exposureDays : null;
}

/** Longer than this nobody means a number of days. */
const LONG_DAYS = 1e6;
