// Net use of a grade by the outpost's norms: what its units use of it, less what is made into it.
import type { FlowEnd, Norms, Outpost, Unit } from '../outpost/index.ts';

/**
 * Litres per person and day, or null where a norm is missing. Negative when more is made than used.
 * @example Corrie, drinking: 2.72 − 1.70 × 0.965 = 1.08
 */
export function normNetLPerPersonDay(outpost: Outpost, grade: string): number | null {
  let net = 0;
  let any = false;
  for (const unit of outpost.units) {
    const used = usedBy(unit, outpost.norms);
    if (used !== undefined && unit.takes.some((source) => gradeOf(outpost, source) === grade)) {
      if (used === null) return null;
      net += used;
      any = true;
    }
    if (unit.kind === 'purifier' && gradeOf(outpost, unit.feeds) === grade) {
      const collected = outpost.norms.vapourCollectedLPerPersonDay;
      if (collected === undefined) return null;
      net -= collected * unit.yieldShare;
      any = true;
    }
  }
  return any ? net : null;
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
