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
  const { id, name, rows: all } = policyLimitSet(outpost);
  // What the file itself has off is shown, and nobody required it.
  const required = new Set(outpost.limits.flatMap((limit) => (limit.status === 'policy' ? limit.id : [])));
  const rows = all.filter((row) => required.has(row.id));
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

/** What water of a grade is used for; the best grade may leave it unsaid, and is drunk. */
export function usesOfGrade(index: OutpostIndex, grade: string | null): readonly string[] {
  const known = grade === null ? undefined : index.grades.get(grade);
  if (known === undefined) return [];
  return known.usableFor.length === 0 && known.rank === 1 ? ['drink'] : known.usableFor;
}

const FOR_PEOPLE: ReadonlySet<string> = new Set(['drink', 'food', 'hygiene', 'medical']);

/** Water that comes into or onto people; other water is released by the medic's word alone. */
export function isForPeople(index: OutpostIndex, grade: string | null): boolean {
  return usesOfGrade(index, grade).some((use) => FOR_PEOPLE.has(use));
}

/** The rows that bear on water of a grade; none for water that nobody drinks. */
export function rowsOfGrade(
  limits: LimitsInForce,
  index: OutpostIndex,
  grade: string | null,
): readonly LimitRow[] {
  const uses = usesOfGrade(index, grade);
  if (uses.length === 0) return [];
  return limits.sets.flatMap(({ rows }) =>
    rows.filter(({ requiredFor }) => requiredFor.some((use) => uses.includes(use))),
  );
}
