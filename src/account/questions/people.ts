// People aboard: what a day line counts, and what arrivals and departures say.
import type { AnyEntry, Entry } from '../../book/index.ts';
import type { Fold } from '../fold.ts';
import { noteEntry } from '../note.ts';

/** Asks once about a line that counts other people than were aboard at any time since the line before. */
export function askPeopleInLine(fold: Fold, entry: Entry<'day-line'>): void {
  const { habits } = fold;
  const said = entry.body.peopleAboard;
  const { fewest, most } = habits.people ?? { fewest: fold.peopleAboard, most: fold.peopleAboard };
  habits.people = { fewest: fold.peopleAboard, most: fold.peopleAboard };
  if (said >= fewest && said <= most) {
    habits.peopleAsked = null;
    return;
  }
  if (habits.peopleAsked === said) return;
  habits.peopleAsked = said;
  const data = { said, fewest, most };
  noteEntry(fold, entry, { code: 'people-differ', severity: 'act-today', field: 'peopleAboard', data });
}

/** Whoever comes was not there before: a line that counted them already says that one of the two days is off. */
export function askArrival(fold: Fold, entry: AnyEntry, change: number): void {
  const { line, peopleAsked } = fold.habits;
  if (change === 0 || line === null || peopleAsked === null || line.people !== fold.peopleAboard + change)
    return;
  const data = { why: 'people before', people: line.people, otherRef: line.ref, otherAtMs: line.atMs };
  noteEntry(fold, entry, {
    code: 'order-impossible',
    severity: 'act-today',
    data,
    entries: [line.entry],
  });
}

/** After an entry: the people aboard now count among those since the last line. */
export function rememberPeople(fold: Fold): void {
  const now = fold.peopleAboard;
  const { fewest, most } = fold.habits.people ?? { fewest: now, most: now };
  if (fold.habits.people !== null && now >= fewest && now <= most) return;
  fold.habits.people = { fewest: Math.min(fewest, now), most: Math.max(most, now) };
}
