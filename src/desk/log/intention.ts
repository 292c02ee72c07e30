// Rules refuse an intention: before an entry is kept they say no and show the way out. A fact (`happened`) is never refused.
import type { Fold } from '../../account/index.ts';
import type { AnyDraft, Draft } from '../../book/index.ts';
import { dayOf, type Finding } from '../../ground/units/index.ts';
import { doseRules } from '../biocide/dose-rules.ts';
import { deskFinding } from '../desk-finding.ts';
import { isSameName } from './context.ts';
import { figureRules } from './figure-rules.ts';
import { flowRules, movementRules } from './movement-rules.ts';

/** What speaks against a draft. Empty: nothing in the book speaks against it. */
export function objections(fold: Fold, draft: AnyDraft): readonly Finding[] {
  const found = [...secondPerson(fold, draft), ...closedDay(fold, draft), ...figureRules(fold, draft)];
  if (draft.happened !== undefined) return found;
  return [...found, ...rulesAgainst(fold, draft)];
}

function rulesAgainst(fold: Fold, draft: AnyDraft): readonly Finding[] {
  switch (draft.kind) {
    case 'movement':
      return movementRules(fold, draft);
    case 'run-start':
      return flowRules(fold, draft.body, draft.by);
    case 'push':
      return draft.body.from.flatMap((leg) =>
        draft.body.to.flatMap((end) => flowRules(fold, { from: leg.store, to: end.store }, draft.by)),
      );
    case 'hookup':
      return hookupRules(fold, draft);
    case 'weigh':
    case 'gauge':
      return draft.body.amount === null
        ? []
        : contentRules(fold, { store: draft.body.store, massMg: draft.body.amount.massMg });
    case 'declared-full':
      return contentRules(fold, { store: draft.body.store, massMg: draft.body.amount.massMg });
    case 'opening':
      return fold.openingMs === null ? [] : [deskFinding('opening-kept', { openingMs: fold.openingMs })];
    case 'dose':
      return doseRules(fold, draft);
    case 'taste':
      return placeRules(draft);
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

/** One of the two has to be named, for it is of some water. */
function placeRules({ body }: Draft<'taste'>): Finding[] {
  if ((body.store === undefined) !== (body.point === undefined)) return [];
  const data = { field: 'store', received: null, expected: 'either a store or a point' };
  return [deskFinding('field-needed', data, { where: { field: 'store' } })];
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

/** No paper of a day tells of these. */
const NOT_OF_A_DAY: ReadonlySet<string> = new Set(['day-close', 'code-set']);

function closedDay(fold: Fold, draft: AnyDraft): Finding[] {
  const day = dayOf(draft.happenedAtMs, fold.dayRule);
  if (draft.late !== undefined || NOT_OF_A_DAY.has(draft.kind) || !fold.closedDays.has(day)) return [];
  return [deskFinding('day-closed', { day })];
}

function secondPerson(fold: Fold, draft: AnyDraft): Finding[] {
  const act =
    draft.kind === 'relabel' || draft.kind === 'waiver' || draft.kind === 'treatment' ? draft.kind : null;
  if (draft.second?.office === draft.by) return [deskFinding('second-is-first', { office: draft.by })];
  if (act === null || !fold.index.outpost.secondPersonActs.includes(act)) return [];
  return draft.second === undefined ? [deskFinding('second-needed', { act })] : [];
}
