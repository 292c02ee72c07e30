// Net use of a grade by the outpost's norms: what its units use of it, less what is made into it.
import type { FlowEnd, Norms, Outpost, Unit } from '../outpost/index.ts';

/** Litres per person and day of a grade by the norms. */
export interface NormUse {
  /** What is used less what is made; negative when more is made than used. */
  readonly netL: number;
  /** What is used and what is made, together: what a norm can be off by grows with it, not with the difference. */
  readonly grossL: number;
}

/**
 * Null where a norm is missing, or where nobody uses or makes the grade.
 * @example Corrie, drinking: net 2.72 − 1.70 × 0.965 = 1.08, gross 2.72 + 1.70 × 0.965 = 4.36
 */
export function normUse(outpost: Outpost, grade: string): NormUse | null {
  const parts = outpost.units.flatMap((unit) => [
    ...(unit.takes.some((source) => gradeOf(outpost, source) === grade) ? [usedBy(unit, outpost.norms)] : []),
    ...(unit.kind === 'purifier' && gradeOf(outpost, unit.feeds) === grade
      ? [madeBy(unit, outpost.norms)]
      : []),
  ]);
  const known = parts.filter((part) => part !== undefined);
  if (known.length === 0 || known.includes(null)) return null;
  const litres = known.filter((part) => part !== null);
  return {
    netL: litres.reduce((sum, part) => sum + part, 0),
    grossL: litres.reduce((sum, part) => sum + Math.abs(part), 0),
  };
}

/** What a purifier gives, below 0; null: the norm is missing. */
function madeBy(unit: Unit & { readonly kind: 'purifier' }, norms: Norms): number | null {
  const collected = norms.vapourCollectedLPerPersonDay;
  return collected === undefined ? null : -collected * unit.yieldShare;
}

/** Litres per person and day that a unit uses up; null: the norm is missing; undefined: it is no using unit. */
function usedBy(unit: Unit, norms: Norms): number | null | undefined {
  if (unit.kind === 'dispenser') return norms.tapLPerPersonDay ?? null;
  if (unit.kind === 'flush')
    return norms.flushesPerPersonDay === undefined ? null : norms.flushesPerPersonDay * unit.flushL;
  if (unit.kind === 'electrolyser') {
    return norms.electrolyserLPerDay === undefined || norms.people === 0
      ? null
      : norms.electrolyserLPerDay / norms.people;
  }
  if (unit.kind === 'line' && unit.use !== undefined) return norms.tapLPerPersonDay ?? null;
  return undefined;
}

function gradeOf(outpost: Outpost, end: FlowEnd): string | null {
  if ('pool' in end) return null;
  if ('port' in end) return outpost.ports.find((port) => port.id === end.port)?.takes ?? null;
  return outpost.stores.find((store) => store.id === end.store)?.holds ?? null;
}
