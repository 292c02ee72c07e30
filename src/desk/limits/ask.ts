// The question before limits change: what it would do, in the figures that a finding can carry.
import type { Finding } from '../../ground/units/index.ts';
import type { LimitsEffect } from '../../papers/index.ts';
import { deskFinding } from '../desk-finding.ts';

export interface LimitsQuestion {
  /** Names of the sets, or the row that is typed. */
  readonly what: readonly string[];
  readonly effect: LimitsEffect;
}

export function askedOf(what: readonly string[], effect: LimitsEffect): LimitsQuestion {
  return { what, effect };
}

export function asQuestion({ what, effect }: LimitsQuestion): Finding {
  const { holds, held, grades, clashes } = effect;
  const off = grades.flatMap((grade) => grade.off.map(({ row }) => row));
  return deskFinding('limits-ask', {
    what,
    stores: holds.filter(({ already }) => !already).map(({ store }) => store),
    heldL: held.value,
    u95L: held.u95 ?? 0,
    off: [...new Set(off)],
    grades: grades.filter((grade) => grade.off.length > 0).map(({ grade }) => grade),
    clashes: clashes.map(({ text }) => text),
  });
}
