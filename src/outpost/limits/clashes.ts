// Where a set of limits and the way an outpost keeps its water cannot both be met: silver that is dosed on purpose, above all.
import type { Grade } from '../outpost.ts';
import type { LimitFigures, LimitRow, LimitSet } from './limit-set.ts';
import { toldIn } from './told-in.ts';

/**
 * `dose-above` and `dose-below`: water dosed as the grade says fails the row.
 * `no-water-meets-both`: what the outpost's own policy asks for lies wholly outside the row.
 * `part-of-policy-fails`: some of what the policy allows fails the row.
 */
export type ClashKind = 'dose-above' | 'dose-below' | 'no-water-meets-both' | 'part-of-policy-fails';

export interface Clash {
  readonly kind: ClashKind;
  readonly grade: string;
  readonly biocide: string;
  /** What the grade is dosed to; null where the outpost file names no dose. */
  readonly doseMgPerL: number | null;
  readonly rowMgPerL: LimitFigures;
  readonly policyMgPerL: LimitFigures | null;
  readonly row: LimitRow;
}

const MG_PER_L = { unit: 'mg/L', basis: 'as itself' } as const;

/**
 * Only rows in force clash; one that is off judges nothing. Without a clash the choice is free of this trouble, no more.
 * @param set the set that is to be chosen; @param grade water with a biocide
 * @param policy the outpost's own limits, as `policyLimitSet` gives them
 * @example clashesOf(national, drinking, policy)[0]?.kind // 'dose-above'
 */
export function clashesOf(set: LimitSet, grade: Grade, policy?: LimitSet): readonly Clash[] {
  const own = together(policy?.rows ?? [], grade.biocide);
  return set.rows.flatMap((row) => {
    const rowMgPerL = row.parameter === grade.biocide ? inMgPerL(row) : null;
    if (rowMgPerL === null) return [];
    const doseMgPerL = grade.biocideMgPerL ?? null;
    const kinds = [...byDose(doseMgPerL, rowMgPerL), ...byPolicy(own, rowMgPerL)];
    const { id, biocide } = grade;
    return kinds.map((kind) => ({ kind, grade: id, biocide, doseMgPerL, rowMgPerL, policyMgPerL: own, row }));
  });
}

function byDose(doseMgPerL: number | null, { atLeast, atMost }: LimitFigures): readonly ClashKind[] {
  if (doseMgPerL === null) return [];
  if (doseMgPerL > (atMost ?? Number.POSITIVE_INFINITY)) return ['dose-above'];
  return doseMgPerL < (atLeast ?? 0) ? ['dose-below'] : [];
}

function byPolicy(own: LimitFigures | null, row: LimitFigures): readonly ClashKind[] {
  if (own === null) return [];
  const [ownLow, ownHigh] = [own.atLeast ?? 0, own.atMost ?? Number.POSITIVE_INFINITY];
  const [low, high] = [row.atLeast ?? 0, row.atMost ?? Number.POSITIVE_INFINITY];
  if (ownLow > high || ownHigh < low) return ['no-water-meets-both'];
  return ownHigh > high || ownLow < low ? ['part-of-policy-fails'] : [];
}

function inMgPerL(row: LimitRow): LimitFigures | null {
  if (row.limit === null) return null;
  const { atLeast, atMost } = row.limit;
  const low = atLeast === undefined ? undefined : toldIn({ ...row, value: atLeast }, MG_PER_L);
  const high = atMost === undefined ? undefined : toldIn({ ...row, value: atMost }, MG_PER_L);
  if (low === undefined && high === undefined) return null;
  return { ...(low !== undefined && { atLeast: low }), ...(high !== undefined && { atMost: high }) };
}

/** All that the outpost's own rows ask of a biocide, as one range. */
function together(rows: readonly LimitRow[], biocide: string): LimitFigures | null {
  const own = rows.filter(({ parameter }) => parameter === biocide).flatMap((row) => inMgPerL(row) ?? []);
  if (own.length === 0) return null;
  const low = Math.max(0, ...own.map(({ atLeast }) => atLeast ?? 0));
  const high = Math.min(...own.map(({ atMost }) => atMost ?? Number.POSITIVE_INFINITY));
  return { atLeast: low, ...(Number.isFinite(high) && { atMost: high }) };
}
