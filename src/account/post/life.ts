// Visits, people and units: who and what comes and goes.
import type { Entry } from '../../book/index.ts';
import { dayOf } from '../../ground/units/index.ts';
import { flow } from '../flow.ts';
import type { Fold } from '../fold.ts';
import { OUTSIDE } from '../ledger.ts';
import { postNorms } from '../norms.ts';
import { noteEntry } from '../note.ts';
import { bringStore } from './opening.ts';

export function postStoreAdded(fold: Fold, entry: Entry<'store-added'>): void {
  bringStore(fold, entry, entry.body, null);
}

export function postRoster(fold: Fold, entry: Entry<'roster'>): void {
  postNorms(fold, entry);
  const { change, people } = entry.body;
  fold.peopleAboard = Math.max(0, fold.peopleAboard + (change === 'arrive' ? people : -people));
}

export function postVisitBerth(fold: Fold, entry: Entry<'visit-berth'>): void {
  const { visit, departDay, peopleArrive, stores } = entry.body;
  postNorms(fold, entry);
  const berthDay = dayOf(entry.happenedAtMs, fold.dayRule);
  fold.visits.set(visit, { visit, berthDay, departDay: departDay ?? null, aboard: true });
  fold.peopleAboard += peopleArrive;
  for (const store of stores) bringStore(fold, entry, store, visit);
}

export function postVisitSlip(fold: Fold, entry: Entry<'visit-slip'>): void {
  const { visit, newDay } = entry.body;
  const known = fold.visits.get(visit);
  fold.visits.set(visit, { visit, berthDay: newDay, departDay: null, aboard: known?.aboard ?? false });
}

/** What is in its stores leaves with the vehicle. */
export function postVisitDepart(fold: Fold, entry: Entry<'visit-depart'>): void {
  const { visit, peopleDepart, took } = entry.body;
  postNorms(fold, entry);
  fold.peopleAboard = Math.max(0, fold.peopleAboard - peopleDepart);
  const known = fold.visits.get(visit);
  const departDay = dayOf(entry.happenedAtMs, fold.dayRule);
  fold.visits.set(visit, { visit, berthDay: known?.berthDay ?? departDay, departDay, aboard: false });
  for (const state of fold.stores.values()) {
    const leaves = took.length > 0 ? took.includes(state.facts.id) : state.facts.visit === visit;
    if (!state.aboard || !leaves) continue;
    const from = fold.endOfStore(state);
    const massMg = fold.ledger.balanceMg(from.account);
    flow(fold, entry, { from, to: { account: OUTSIDE, store: null }, massMg, uMg: 0, calibration: -1 });
    fold.estimator.reset(state.content, 0, 0);
    state.aboard = false;
    const port = fold.portOf(state.facts.id);
    if (port !== null) fold.setPort(port, null, entry.happenedAtMs);
  }
}

export function postUnitCondition(fold: Fold, entry: Entry<'unit-condition'>): void {
  const { unit, state, readings } = entry.body;
  if (state !== 'alarm' && state !== 'failed') return;
  const first = readings[0];
  const data = {
    unit,
    state,
    reading: first?.value ?? null,
    readingName: first?.name ?? null,
    readingUnit: first?.unit ?? null,
  };
  noteEntry(fold, entry, { code: 'unit-alarm', severity: 'act-today', data });
}
