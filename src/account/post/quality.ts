// Holds and every way out of one, samples, doses, labels: what water is fit for.
import type { AnyEntry, Entry } from '../../book/index.ts';
import { storeOf } from '../ends.ts';
import { flow } from '../flow.ts';
import type { Fold } from '../fold.ts';
import { endHold, putOnHold } from '../hold.ts';
import { ruleHold } from '../identity.ts';
import { OUTSIDE } from '../ledger.ts';
import { noteEntry } from '../note.ts';
import { biocidesIn, enemiesAmong } from '../rules.ts';
import { type HoldState, holdsNow, type StoreState } from '../store-state.ts';

export function postHold(fold: Fold, entry: Entry<'hold'>): void {
  const { body } = entry;
  const hold: HoldState = {
    hold: body.hold,
    sinceMs: entry.happenedAtMs,
    reason: body.reason,
    entry: entry.id,
  };
  for (const state of statesOf(fold, entry, body.stores)) putOnHold(state, hold);
  for (const state of statesOf(fold, entry, body.conditional)) state.conditional = hold;
}

/** Released by the medic with a passing sample: the outpost's own word from now on. */
export function postRelease(fold: Fold, entry: Entry<'release'>): void {
  const { hold, stores } = entry.body;
  for (const state of statesOf(fold, entry, stores)) {
    endHold(state, hold);
    if (hold === undefined || state.conditional?.hold === hold) state.conditional = null;
    state.release = 'own sample';
  }
}

/** A waiver lets water be used without making it any better. */
export function postWaiver(fold: Fold, entry: Entry<'waiver'>): void {
  needsTwo(fold, entry, 'waiver');
  for (const state of statesOf(fold, entry, entry.body.stores)) endHold(state, entry.body.hold);
}

/** Down is a way out of a hold; up is none, whatever the entry says that the water was. */
export function postDowngrade(fold: Fold, entry: Entry<'downgrade'>): void {
  const { body } = entry;
  const state = storeOf(fold, entry, body.store);
  if (state === null) return;
  const goesUp = [body.fromGrade, state.grade].some(
    (grade) => grade !== null && rank(fold, body.toGrade) < rank(fold, grade),
  );
  if (goesUp)
    noteRise(fold, entry, state, { fromGrade: state.grade ?? body.fromGrade, toGrade: body.toGrade });
  else endHold(state, body.hold);
  holdsNow(state, body.toGrade);
}

function noteRise(
  fold: Fold,
  entry: AnyEntry,
  state: StoreState,
  data: { fromGrade: string; toGrade: string },
): void {
  noteEntry(fold, entry, { code: 'grade-went-up', severity: 'act-now', store: state.facts.id, data });
  putOnHold(state, ruleHold(entry, 'grade-went-up'));
}

/** Treated water waits: it counts for nothing until its sample has passed and the medic has released it. */
export function postTreatment(fold: Fold, entry: Entry<'treatment'>): void {
  const { body } = entry;
  needsTwo(fold, entry, 'treatment');
  const state = storeOf(fold, entry, body.store);
  if (state === null) return;
  if (body.dose !== undefined)
    flow(fold, entry, {
      from: outside,
      to: fold.endOfStore(state),
      massMg: body.dose.massMg,
      uMg: 0,
      calibration: -1,
      plumbing: true,
    });
  holdsNow(state, body.toGrade);
  const biocide = fold.index.grades.get(body.toGrade)?.biocide ?? 'none';
  if (biocide !== 'none') addBiocide(fold, entry, state, biocide);
  state.release = 'none';
  putOnHold(state, {
    hold: `treated ${entry.site} ${entry.number}`,
    sinceMs: entry.happenedAtMs,
    reason: 'treated, not yet released',
    entry: entry.id,
  });
}

export function postDose(fold: Fold, entry: Entry<'dose'>): void {
  const { body } = entry;
  for (const state of statesOf(fold, entry, body.stores)) {
    flow(fold, entry, {
      from: outside,
      to: fold.endOfStore(state),
      massMg: body.doseEach.massMg,
      uMg: 0,
      calibration: -1,
      plumbing: true,
    });
    addBiocide(fold, entry, state, body.biocide);
  }
}

function addBiocide(fold: Fold, entry: AnyEntry, state: StoreState, biocide: string): void {
  const had = biocidesIn(fold.index, state);
  state.biocides = [...new Set([...state.biocides, biocide])];
  const enemies = had.includes(biocide) ? null : enemiesAmong(fold.index, [...had, biocide]);
  if (enemies === null) return;
  const meets = enemies.find((one) => one !== biocide) ?? biocide;
  const data = {
    from: 'a dose',
    to: state.facts.id,
    comes: biocide,
    meets,
    residue: state.emptied ? 'residue' : 'content',
    happened: entry.happened ?? null,
  };
  noteEntry(fold, entry, { code: 'biocides-meet', severity: 'act-now', store: state.facts.id, data });
  putOnHold(state, ruleHold(entry, 'biocides-meet'));
}

/** A label goes one way only: down. It changes what a store is for, not what is in it. */
export function postRelabel(fold: Fold, entry: Entry<'relabel'>): void {
  const { body } = entry;
  const state = storeOf(fold, entry, body.store);
  if (state === null) return;
  if (!body.twoPersons)
    noteEntry(fold, entry, {
      code: 'alone-for-two',
      severity: 'act-now',
      store: body.store,
      data: { act: 'relabel' },
    });
  if (state.grade !== null && rank(fold, body.toGrade) < rank(fold, state.grade)) {
    noteRise(fold, entry, state, { fromGrade: state.grade, toGrade: body.toGrade });
  }
  const { emptied } = state;
  holdsNow(state, body.toGrade);
  state.emptied = emptied;
}

/** What a sample took out of a store; a sample drawn elsewhere took nothing from the contents. */
export function postSample(fold: Fold, entry: Entry<'sample'>): void {
  const { body } = entry;
  if (body.volumeMg === undefined || body.drawnFrom !== undefined) return;
  const state = storeOf(fold, entry, body.store);
  if (state === null) return;
  flow(fold, entry, {
    from: fold.endOfStore(state),
    to: outside,
    massMg: body.volumeMg,
    uMg: 0,
    calibration: -1,
  });
}

const outside = { account: OUTSIDE, store: null } as const;

function statesOf(fold: Fold, entry: AnyEntry, stores: readonly string[]): StoreState[] {
  return stores.flatMap((id) => {
    const state = storeOf(fold, entry, id);
    return state === null ? [] : [state];
  });
}

function needsTwo(fold: Fold, entry: AnyEntry, act: 'waiver' | 'treatment'): void {
  if (!fold.index.outpost.secondPersonActs.includes(act) || entry.second !== undefined) return;
  noteEntry(fold, entry, { code: 'alone-for-two', severity: 'act-now', data: { act } });
}

function rank(fold: Fold, grade: string): number {
  return fold.index.grades.get(grade)?.rank ?? 0;
}
