// What the outpost file asks of a biocide: least and most in the water, most that is dosed, and how long it may stand.
import type { Limit, OutpostIndex } from '../../outpost/index.ts';

export interface BiocideLimits {
  readonly leastMgPerL: number | null;
  readonly mostMgPerL: number | null;
  /** Above this nothing is dosed. */
  readonly doseMostMgPerL: number | null;
  readonly ageDays: number | null;
  /** What the grade is dosed to. */
  readonly targetMgPerL: number | null;
}

const DAYS_OF_AGE = 'biocide age';

/** Limits that are switched off judge nothing; of several the strictest counts. */
export function biocideLimits(index: OutpostIndex, biocide: string, grade: string | null): BiocideLimits {
  const on = index.outpost.limits.filter(({ status }) => status === 'policy');
  const of = (quantity: string, unit: Limit['unit']) =>
    on.filter((limit) => limit.quantity === quantity && limit.unit === unit);
  return {
    leastMgPerL: strictest(of(biocide, 'mg/L'), 'atLeast'),
    mostMgPerL: strictest(of(biocide, 'mg/L'), 'atMost'),
    doseMostMgPerL: strictest(of(`${biocide} dose`, 'mg/L'), 'atMost'),
    ageDays: strictest(of(DAYS_OF_AGE, 'days'), 'atMost'),
    targetMgPerL: (grade === null ? undefined : index.grades.get(grade)?.biocideMgPerL) ?? null,
  };
}

function strictest(limits: readonly Limit[], end: 'atLeast' | 'atMost'): number | null {
  const figures = limits.flatMap((limit) => limit[end] ?? []);
  if (figures.length === 0) return null;
  return end === 'atLeast' ? Math.max(...figures) : Math.min(...figures);
}
