// Vehicles that come or go on another day than was planned, and leak checks that come after the flow that they are for.
import type { AnyEntry, Entry } from '../../book/index.ts';
import { dayOf } from '../../ground/units/index.ts';
import type { Fold } from '../fold.ts';
import { noteEntry } from '../note.ts';
import { askStoreAdded } from './first-told.ts';
import { askArrival } from './people.ts';

/** A day that nobody has changed stands: if it has changed, the slip belongs into the book. */
function askVisitDay(
  fold: Fold,
  entry: AnyEntry,
  visit: string,
  plannedDay: number | null | undefined,
): void {
  if (plannedDay == null) return;
  const day = dayOf(entry.happenedAtMs, { ...fold.dayRule, lineMinuteOfDay: 0 });
  if (day === plannedDay) return;
  const data = { why: 'visit day', visit, day, plannedDay };
  noteEntry(fold, entry, { code: 'time-implausible', severity: 'act-today', data });
}

export function askBerth(fold: Fold, entry: Entry<'visit-berth'>): void {
  const { visit, peopleArrive, stores } = entry.body;
  askVisitDay(fold, entry, visit, fold.visits.get(visit)?.berthDay);
  askArrival(fold, entry, peopleArrive);
  for (const store of stores) askStoreAdded(fold, entry, store);
}

export function askDeparture(fold: Fold, entry: Entry<'visit-depart'>): void {
  const { visit, peopleDepart } = entry.body;
  askVisitDay(fold, entry, visit, fold.visits.get(visit)?.departDay);
  askArrival(fold, entry, -peopleDepart);
}

export function askLeakCheck(fold: Fold, entry: Entry<'check'>): void {
  const { what, visit } = entry.body;
  if (visit === undefined) return;
  const key = `${what} ${visit}`;
  const isFirst = !fold.habits.checked.has(key);
  fold.habits.checked.set(key, entry.id);
  if (!isFirst) return;
  for (const { facts, movedAtMs, aboard } of fold.stores.values()) {
    if (!aboard || facts.visit !== visit || facts.kind !== 'vehicleTank' || movedAtMs === null) continue;
    const data = { why: 'check after flow', what, visit, movedAtMs };
    noteEntry(fold, entry, { code: 'order-impossible', severity: 'act-today', store: facts.id, data });
    return;
  }
}
