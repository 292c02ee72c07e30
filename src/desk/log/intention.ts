// Rules refuse an intention: before an entry is kept they say no and show the way out. A fact (`happened`) is never refused.
import { type Fold, type RuleBreak, ruleBreaks, type Side } from '../../account/index.ts';
import type { AnyDraft, Draft } from '../../book/index.ts';
import { dayOf, type Finding } from '../../ground/units/index.ts';
import { deskFinding } from '../desk-finding.ts';
import { isSameName } from './context.ts';

/** What speaks against a draft. Empty: nothing in the book speaks against it. */
export function objections(fold: Fold, draft: AnyDraft): readonly Finding[] {
  const found = [...secondPerson(fold, draft), ...closedDay(fold, draft)];
  if (draft.happened !== undefined) return found;
  return [...found, ...rulesAgainst(fold, draft)];
}

function rulesAgainst(fold: Fold, draft: AnyDraft): readonly Finding[] {
  switch (draft.kind) {
    case 'movement':
      return movementRules(fold, draft);
    case 'hookup':
      return hookupRules(fold, draft);
    case 'weigh':
    case 'gauge':
      return draft.body.amount === null
        ? []
        : contentRules(fold, { store: draft.body.store, massMg: draft.body.amount.massMg });
    case 'declared-full':
      return contentRules(fold, { store: draft.body.store, massMg: draft.body.amount.massMg });
    case 'day-line':
      return lineRules(fold, draft);
    case 'opening':
      return fold.openingMs === null ? [] : [deskFinding('opening-kept', { openingMs: fold.openingMs })];
    case 'store-added':
      return nameRules(fold, draft.body.store);
    default:
      return [];
  }
}

function nameRules(fold: Fold, name: string): Finding[] {
  const taken = [...fold.stores.keys()].find((other) => isSameName(other, name));
  return taken === undefined
    ? []
    : [deskFinding('name-taken', { what: 'store', name: taken }, { where: { field: 'store' } })];
}

const ruleNames: Record<RuleBreak['code'], string> = {
  'biocides-meet': 'biocide',
  'grade-may-not-flow': 'grade',
  'reserve-unreleased': 'reserve',
  'held-water-moved': 'hold',
};

function movementRules(fold: Fold, draft: Draft<'movement'>): Finding[] {
  const from = sideOf(fold, draft.body.from);
  const to = sideOf(fold, draft.body.to);
  const breaks = from !== null && to !== null ? ruleBreaks(fold.index, from, to) : [];
  const found: Finding[] = breaks.map(({ code, data }) =>
    deskFinding('intention-refused', { rule: ruleNames[code], ...data }),
  );
  if (from !== null && to === null) found.push(...useRules(fold, draft, from));
  if (to !== null) found.push(...roomRules(fold, draft, to));
  if (!fold.index.units.has(draft.body.from)) found.push(...contentLeft(fold, draft));
  return found;
}

/** The store behind a name: itself, or what stands on a port, or what feeds a unit. */
function sideOf(fold: Fold, name: string): Side | null {
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
function contentOf(fold: Fold, id: string): { massMg: number; uMg: number } {
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

function contentRules(fold: Fold, reading: { readonly store: string; readonly massMg: number }): Finding[] {
  const facts = fold.stores.get(reading.store)?.facts;
  if (facts === undefined || reading.massMg <= facts.capacityMg) return [];
  const data = { ...reading, capacityMg: facts.capacityMg, mgPerL: fold.mgPerL };
  return [deskFinding('reading-over-capacity', data, { where: { store: reading.store, field: 'amount' } })];
}

function hookupRules(fold: Fold, draft: Draft<'hookup'>): Finding[] {
  const side = fold.stores.get(draft.body.store);
  const port = fold.index.ports.get(draft.body.port);
  if (side === undefined || port === undefined) return [];
  const wanted = fold.index.grades.get(port.takes);
  const has = side.grade === null ? undefined : fold.index.grades.get(side.grade);
  const base = { from: side.facts.id, to: port.id };
  if (side.hold !== null && wanted?.terminal !== true) {
    return [
      deskFinding('intention-refused', {
        rule: 'hold',
        ...base,
        hold: side.hold.hold,
        reason: side.hold.reason,
        sinceMs: side.hold.sinceMs,
      }),
    ];
  }
  if (wanted === undefined || has === undefined || wanted.terminal || has.rank <= wanted.rank) return [];
  return [
    deskFinding('intention-refused', { rule: 'grade', ...base, fromGrade: has.id, toGrade: wanted.id }),
  ];
}

/** One line a day, and counters that only rise. */
function lineRules(fold: Fold, draft: Draft<'day-line'>): Finding[] {
  return draft.body.readings.flatMap((reading): Finding[] => {
    const instrument = fold.index.instruments.get(reading.instrument);
    const last = fold.counters.get(reading.instrument)?.last ?? null;
    if (instrument?.measures !== 'flow' || reading.value === null || last === null || reading.value >= last)
      return [];
    if (instrument.reading === 'runningTotal' && instrument.rollsOverAt !== undefined) return [];
    const data = { instrument: instrument.name, value: reading.value, last };
    return [deskFinding('counter-below-last', data, { where: { field: reading.instrument } })];
  });
}

function closedDay(fold: Fold, draft: AnyDraft): Finding[] {
  const day = dayOf(draft.happenedAtMs, fold.dayRule);
  if (draft.late !== undefined || draft.kind === 'day-close' || !fold.closedDays.has(day)) return [];
  return [deskFinding('day-closed', { day })];
}

function secondPerson(fold: Fold, draft: AnyDraft): Finding[] {
  const act =
    draft.kind === 'relabel' || draft.kind === 'waiver' || draft.kind === 'treatment' ? draft.kind : null;
  if (draft.second?.office === draft.by) return [deskFinding('second-is-first', { office: draft.by })];
  if (act === null || !fold.index.outpost.secondPersonActs.includes(act)) return [];
  return draft.second === undefined ? [deskFinding('second-needed', { act })] : [];
}
