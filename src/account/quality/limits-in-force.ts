// The rows that this outpost's choice makes bear on its water: its own policy until an entry chooses otherwise.
import type { AnyEntry, Entry } from '../../book/index.ts';
import type { LimitRow, OutpostIndex } from '../../outpost/index.ts';
import { policyLimitSet, switchedOn, type TypedLimit } from '../../outpost/index.ts';

export interface ChosenSet {
  readonly set: string;
  readonly name: string;
  readonly rows: readonly LimitRow[];
}

export interface LimitsInForce {
  readonly sets: readonly ChosenSet[];
  readonly exposureDays: number;
  /** The entry that chose them; null: nobody has, and the outpost file counts. */
  readonly entry: string | null;
  readonly reason: string | null;
}

/** How long people drink the same water where nobody said: longer than any row is made for. Ours, no source. */
const FOR_LONG = Number.MAX_SAFE_INTEGER;

export function policyInForce({ outpost }: OutpostIndex): LimitsInForce {
  const { id, name, rows } = policyLimitSet(outpost);
  return { sets: [{ set: id, name, rows }], exposureDays: FOR_LONG, entry: null, reason: null };
}

export function chosenLimits(entry: Entry<'limits-chosen'>): LimitsInForce {
  const { sets, exposureDays, reason } = entry.body;
  return {
    // The schema of the kind is the shape of a row, with units and bases as any text: what cannot be told in them holds.
    sets: sets as readonly ChosenSet[],
    exposureDays,
    entry: entry.id,
    reason,
  };
}

/** A row that somebody typed from a copy comes into force where it was chosen; anything else stays as it is. */
export function withTyped(limits: LimitsInForce, entry: Entry<'limit-typed'>): LimitsInForce {
  const { set: name, row: id } = entry.body;
  const sets = limits.sets.map((set) => {
    if (set.set !== name) return set;
    return { ...set, rows: set.rows.map((row) => (row.id === id ? typedRow(row, entry) : row)) };
  });
  return { ...limits, sets };
}

/** The row in force, or as it was where the figure cannot be told in it. */
export function typedRow(row: LimitRow, entry: Entry<'limit-typed'>): LimitRow {
  const { set: _set, row: _row, ...figures } = entry.body;
  const typed: TypedLimit = { ...figures, by: whoOf(entry), atMs: entry.happenedAtMs };
  const outcome = switchedOn(row, typed);
  return outcome.ok ? outcome.row : row;
}

const whoOf = ({ by }: AnyEntry): string => by;

/** The rows that bear on water of a grade; none for water that nobody drinks. */
export function rowsOfGrade(
  limits: LimitsInForce,
  index: OutpostIndex,
  grade: string | null,
): readonly LimitRow[] {
  const uses = grade === null ? [] : (index.grades.get(grade)?.usableFor ?? []);
  if (uses.length === 0) return [];
  return limits.sets.flatMap(({ rows }) =>
    rows.filter(({ requiredFor }) => requiredFor.some((use) => uses.includes(use))),
  );
}
