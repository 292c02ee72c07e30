// What speaks against moving water: who meets whom, which label takes what, the reserve, room, and what is there.
import {
  type Fold,
  gradeAfter,
  isWaste,
  type RuleBreak,
  ruleBreaks,
  type Side,
} from '../../account/index.ts';
import type { Draft } from '../../book/index.ts';
import type { Finding } from '../../ground/units/index.ts';
import { deskFinding } from '../desk-finding.ts';

const ruleNames: Record<RuleBreak['code'], string> = {
  'biocides-meet': 'biocide',
  'grade-may-not-flow': 'grade',
  'reserve-unreleased': 'reserve',
  'held-water-moved': 'hold',
  'conditional-water-moved': 'conditional',
};

export function movementRules(fold: Fold, draft: Draft<'movement'>): Finding[] {
  const from = sideOf(fold, draft.body.from);
  const to = sideOf(fold, draft.body.to);
  const found = flowRules(fold, draft.body, draft.by);
  if (from !== null && to === null) found.push(...useRules(fold, draft, from));
  if (to !== null) found.push(...roomRules(fold, draft, to));
  if (!fold.index.units.has(draft.body.from)) found.push(...contentLeft(fold, draft));
  return found;
}

/** What speaks against any water going that way, however much it is. */
export function flowRules(
  fold: Fold,
  ends: { readonly from: string; readonly to: string },
  by: string,
): Finding[] {
  const from = sideOf(fold, ends.from);
  const to = sideOf(fold, ends.to);
  if (from === null) return [];
  const found = to === null ? [] : [...breaksOf(fold, from, to), ...labelRules(fold, from, to)];
  return fold.index.units.has(ends.from)
    ? found
    : [...found, ...reserveRules(fold, { from, to, by }, ends.to)];
}

function breaksOf(fold: Fold, from: Side, to: Side): Finding[] {
  return ruleBreaks(fold.index, from, to).map(({ code, data }) => {
    const said = code === 'grade-may-not-flow' && to.emptied ? labelOf(fold, from, to) : {};
    return deskFinding('intention-refused', { rule: ruleNames[code], ...data, ...said });
  });
}

/**
 * An emptied container may take the grade into which its own rest may flow, and is told to be of it from then on: freed
 * drinking containers are where technical water goes. Waste and raw water go in only after a new label.
 */
function labelRules(fold: Fold, from: Side, to: Side): Finding[] {
  if (!to.emptied || to.grade === null || isWaste(fold.index, to)) return [];
  if (mayGoDown(fold, { from: to.grade, to: from.grade })) return [];
  if (gradeAfter(fold.index, from, to) === to.grade) return [];
  const isBroken = ruleBreaks(fold.index, from, to).some(({ code }) => code === 'grade-may-not-flow');
  if (isBroken) return [];
  const ends = { from: from.facts.id, to: to.facts.id, fromGrade: from.grade, toGrade: to.grade };
  return [deskFinding('intention-refused', { rule: 'grade', ...ends, ...labelOf(fold, from, to) })];
}

function mayGoDown({ index }: Fold, grades: { readonly from: string; readonly to: string | null }): boolean {
  const lower = grades.to === null ? undefined : index.grades.get(grades.to);
  if (lower === undefined || lower.terminal) return false;
  return index.grades.get(grades.from)?.mayFlowInto.includes(lower.id) === true;
}

/** The label that would make the way free, and whether it takes two; none for a store that the file ties to its grade. */
function labelOf(fold: Fold, from: Side, to: Side): { relabelTo?: string; takesTwo?: boolean } {
  const { index } = fold;
  if (from.grade === null || index.stores.get(to.facts.id)?.holds !== undefined) return {};
  return { relabelTo: from.grade, takesTwo: index.outpost.secondPersonActs.includes('relabel') };
}

/** Who alone may draw on the reserve stands in the outpost file. From one reserve tank to the other nothing is drawn. */
function reserveRules(
  fold: Fold,
  { from, to, by }: { readonly from: Side; readonly to: Side | null; readonly by: string },
  target: string,
): Finding[] {
  const { mayBeDrawnBy } = fold.index.outpost.policy.reserve;
  if (!from.facts.reserve || to?.facts.reserve === true || by === mayBeDrawnBy) return [];
  const data = { rule: 'reserve-draw', from: from.facts.id, to: target, by, mayBeDrawnBy };
  return [deskFinding('intention-refused', data)];
}

/** The store behind a name: itself, or what stands on a port, or what feeds a unit. */
export function sideOf(fold: Fold, name: string): Side | null {
  const unit = fold.index.units.get(name);
  if (unit !== undefined) {
    const fed = unit.takes.flatMap((end) => ('port' in end ? [fold.storeOn(end.port)] : []));
    return fed.find((store) => store !== null) ?? null;
  }
  return fold.stores.get(name) ?? (fold.ports.has(name) ? fold.storeOn(name) : null);
}

const peopleUses: ReadonlySet<string> = new Set(['drink', 'food', 'medical']);

/** Held water, and water of a lower grade, are not for people. */
function useRules(fold: Fold, draft: Draft<'movement'>, from: Side): Finding[] {
  const { use } = draft.body;
  if (use === undefined || !peopleUses.has(use)) return [];
  if (from.hold !== null) {
    return [
      deskFinding('intention-refused', {
        rule: 'hold',
        from: from.facts.id,
        to: use,
        hold: from.hold.hold,
        reason: from.hold.reason,
        sinceMs: from.hold.sinceMs,
      }),
    ];
  }
  if (from.conditional !== null) {
    const { hold, reason, sinceMs } = from.conditional;
    return [
      deskFinding('intention-refused', {
        rule: 'conditional',
        from: from.facts.id,
        to: use,
        hold,
        reason,
        sinceMs,
      }),
    ];
  }
  const grade = from.grade === null ? undefined : fold.index.grades.get(from.grade);
  if (grade !== undefined && grade.rank === 1) return [];
  return [
    deskFinding('intention-refused', {
      rule: 'grade',
      from: from.facts.id,
      to: use,
      fromGrade: from.grade,
      toGrade: use,
    }),
  ];
}

/** More than a store has, beyond its doubt, does not come out of it. A store that nothing gauges may have more than is known. */
function contentLeft(fold: Fold, draft: Draft<'movement'>): Finding[] {
  const side = sideOf(fold, draft.body.from);
  if (side === null || fold.index.stores.get(side.facts.id)?.gaugedBy === 'nothing') return [];
  const { massMg, uMg } = contentOf(fold, side.facts.id);
  const asked = draft.body.amount.massMg;
  if (asked <= massMg + 2 * uMg) return [];
  const usableMg = Math.max(0, massMg - side.facts.remainderMg);
  const data = {
    rule: 'remainder',
    from: side.facts.id,
    to: draft.body.to,
    massMg: asked,
    usableMg,
    mgPerL: fold.mgPerL,
  };
  return [deskFinding('intention-refused', data)];
}

/** Best value and doubt of a store, in whole milligrams. */
export function contentOf(fold: Fold, id: string): { massMg: number; uMg: number } {
  const place = fold.stores.get(id)?.content ?? -1;
  return {
    massMg: Math.round(fold.estimator.mean(place) * 1_000_000),
    uMg: Math.round(Math.sqrt(Math.max(0, fold.estimator.variance(place))) * 1_000_000),
  };
}

function roomRules(fold: Fold, draft: Draft<'movement'>, to: Side): Finding[] {
  const known = fold.stores.get(to.facts.id);
  if (known === undefined) return [];
  const { massMg: thereMg, uMg } = contentOf(fold, to.facts.id);
  const { massMg } = draft.body.amount;
  if (thereMg + massMg <= to.facts.capacityMg + 2 * uMg) return [];
  const data = {
    rule: 'capacity',
    from: draft.body.from,
    to: to.facts.id,
    massMg,
    thereMg,
    capacityMg: to.facts.capacityMg,
    mgPerL: fold.mgPerL,
  };
  return [deskFinding('intention-refused', data)];
}
