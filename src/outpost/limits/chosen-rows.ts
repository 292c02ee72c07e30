// The rows of a set that bear on the release of water for one use: those the outpost's choice requires, and no others.
import { nearest } from '../../ground/units/index.ts';
import { type LimitFinding, limitFinding } from './limit-finding.ts';
import type { LimitRow, LimitSet } from './limit-set.ts';

export interface LimitChoice {
  readonly use: string;
  /** For how many days people will drink this water. */
  readonly exposureDays: number;
  /** Ids of the rows that the outpost requires; all that the set requires for the use unless given. */
  readonly rows?: readonly string[];
}

export type ChosenRows =
  | { readonly ok: true; readonly rows: readonly LimitRow[] }
  | { readonly ok: false; readonly findings: readonly LimitFinding[] };

const DAYS: ReadonlyMap<string, number> = new Map([
  ['1 d', 1],
  ['10 d', 10],
  ['100 d', 100],
  ['1000 d', 1000],
]);

/**
 * A row for a shorter exposure than the water will have never counts; of those for a longer one the nearest does.
 * @example chosenRows(set, { use: 'drink', exposureDays: 60 })
 */
export function chosenRows(set: LimitSet, choice: LimitChoice): ChosenRows {
  const { use, exposureDays, rows: wanted } = choice;
  const findings = [...unknownUse(set, use), ...unknownRows(set, wanted ?? [])];
  if (findings.length > 0) return { ok: false, findings };
  const asked = set.rows.filter(({ id, requiredFor }) => wanted?.includes(id) ?? requiredFor.includes(use));
  const uncovered = uncoveredBy(asked, exposureDays);
  if (uncovered.length > 0) return { ok: false, findings: uncovered };
  return { ok: true, rows: asked.filter((row) => isNearest(row, asked, exposureDays)) };
}

function unknownUse({ uses }: LimitSet, use: string): readonly LimitFinding[] {
  return uses.includes(use) ? [] : [limitFinding('limit-use-unknown', use, { use, known: uses })];
}

function unknownRows({ rows }: LimitSet, wanted: readonly string[]): readonly LimitFinding[] {
  const known = rows.map(({ id }) => id);
  return wanted
    .filter((id) => !known.includes(id))
    .map((id) => limitFinding('limit-row-unknown', id, { row: id, near: nearest(id, known) }));
}

/** Rows of one parameter told on one basis: they differ in nothing but how long the water is drunk. */
const sameFigure = (one: LimitRow, other: LimitRow): boolean =>
  one.parameter === other.parameter && one.basis === other.basis;

const daysOf = ({ exposure }: LimitRow): number => DAYS.get(exposure) ?? Number.POSITIVE_INFINITY;

/** `!(a >= b)`, so that a number of days that is none is covered by nothing. */
function uncoveredBy(rows: readonly LimitRow[], exposureDays: number): readonly LimitFinding[] {
  return rows
    .filter((row) => !rows.some((other) => sameFigure(row, other) && daysOf(other) >= exposureDays))
    .map((row) =>
      limitFinding('limit-exposure-uncovered', row.id, {
        row: row.id,
        exposureDays,
        coveredDays: daysOf(row),
      }),
    );
}

function isNearest(row: LimitRow, rows: readonly LimitRow[], exposureDays: number): boolean {
  const own = daysOf(row);
  if (own === Number.POSITIVE_INFINITY) return true;
  if (own < exposureDays) return false;
  return !rows.some(
    (other) => sameFigure(row, other) && daysOf(other) < own && daysOf(other) >= exposureDays,
  );
}
