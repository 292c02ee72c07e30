// Flows that people make: their times, their amounts, the store that they went into, and what is learned from them.
import type { Entry } from '../../book/index.ts';
import { isTwin, pushedFacts } from '../duplicates.ts';
import type { Fold } from '../fold.ts';
import { askGrade } from './grades.ts';
import { askFlowTimes, learnFlow } from './hoses.ts';
import { askLabels } from './labels.ts';
import { askMoved, askPush } from './moved.ts';
import { askRoom } from './room.ts';

type Moved = Entry<'movement'> | Entry<'run-pause'> | Entry<'run-finish'>;

export function askFlow(fold: Fold, entry: Moved): void {
  const { to, amount, receiverWas, receiverWasEmptied } = entry.body;
  if (entry.kind === 'movement' && isNotAsked(fold, entry)) return;
  askFlowTimes(fold, entry);
  const state = to === undefined ? undefined : fold.stores.get(to);
  if (askMoved(fold, entry)) {
    learnFlow(fold, entry);
    if (state !== undefined) askRoom(fold, entry, state, { massMg: amount.massMg, receiverWasEmptied });
  }
  if (state === undefined) return;
  askGrade(fold, entry, { store: state.facts.id, said: receiverWas, believed: state.grade });
  const { movedInMg } = fold.habits;
  movedInMg.set(state.facts.id, (movedInMg.get(state.facts.id) ?? 0) + amount.massMg);
}

/** A single use is a part of what a counter says; a twin is left out, and asked about as such. */
function isNotAsked(fold: Fold, entry: Entry<'movement'>): boolean {
  const { from, to, amount, startAtMs = null, person = null } = entry.body;
  if (fold.counterOfUnit.has(from)) return true;
  return isTwin(fold, entry, { from, to, massMg: amount.massMg, startAtMs, person });
}

export function askPushed(fold: Fold, entry: Entry<'push'>): void {
  if (isTwin(fold, entry, pushedFacts(entry.body))) return;
  askLabels(fold, entry);
  askFlowTimes(fold, entry);
  askPush(fold, entry);
}
