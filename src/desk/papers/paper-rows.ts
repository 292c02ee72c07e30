// The rows that bear on a store's water as papers show them: with their set, their source and where it says so.
import { type Fold, flowsThrough } from '../../account/index.ts';
import type { LimitRow } from '../../outpost/index.ts';
import type { PaperRow } from '../../papers/index.ts';

/** Of some rows those that a release of the stores needs, and those of parameters that were measured. */
export function paperRows(
  fold: Fold,
  rows: readonly LimitRow[],
  of: { readonly stores: readonly string[]; readonly measured: readonly string[] },
): readonly PaperRow[] {
  const { stores, measured } = of;
  const isThrough = stores.some((store) => flowsThrough(fold.index, store));
  return rows
    .filter((row) => row.neededOf === 'every store' || isThrough || measured.includes(row.parameter))
    .map((row) => paperRow(fold, row));
}

function paperRow({ limits }: Fold, row: LimitRow): PaperRow {
  const set = limits.sets.find(({ rows }) => rows.includes(row));
  const { id, parameter, basis, unit, limit, source, locator, evidence } = row;
  return {
    ...{ set: set?.name ?? '', row: id, parameter, basis, unit, source, locator, evidence },
    atLeast: limit?.atLeast ?? null,
    atMost: limit?.atMost ?? null,
  };
}
