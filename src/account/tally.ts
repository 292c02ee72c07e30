// What counts as use and what as making, grade by grade.
import type { FlowEnd, OutpostIndex, Route } from '../outpost/index.ts';
import type { End, Fold } from './fold.ts';

/** Grade that an end of a way carries by the outpost's plumbing. */
function gradeOfEnd(fold: Fold, end: FlowEnd): string | null {
  if ('pool' in end) return null;
  if ('port' in end) return fold.index.ports.get(end.port)?.takes ?? null;
  return fold.index.stores.get(end.store)?.holds ?? null;
}

/** Grade that a way makes: it ends in a store, and comes from a pool or from another grade. Else null. */
export function gradeMade(fold: Fold, route: Route): string | null {
  const made = gradeOfEnd(fold, route.to);
  const first = route.from[0];
  if (made === null || first === undefined || 'port' in route.to) return null;
  return gradeOfEnd(fold, first) === made ? null : made;
}

/** Counts a posted part of a way. */
export function tally(fold: Fold, route: Route, from: End, massMg: number): void {
  const made = gradeMade(fold, route);
  const used = from.store?.grade ?? gradeUsed(fold, route);
  if (made !== null) fold.usage.count(made, -massMg);
  else if (used !== null) fold.usage.count(used, massMg);
}

/** Grade that a way draws on by the outpost's plumbing: of water that nobody can place, too. */
function gradeUsed(fold: Fold, route: Route): string | null {
  const first = route.from[0];
  return first === undefined ? null : gradeOfEnd(fold, first);
}

/** By outpost: it is asked of every day line, and an outpost file never changes. */
const knownCounters = new WeakMap<OutpostIndex, Map<string, readonly string[]>>();

/** Counters that must all be read for the day's use of a grade to be whole. */
export function countersOfGrade(fold: Fold, grade: string): readonly string[] {
  const known = knownCounters.get(fold.index) ?? new Map<string, readonly string[]>();
  knownCounters.set(fold.index, known);
  const counters = known.get(grade) ?? findCounters(fold, grade);
  known.set(grade, counters);
  return counters;
}

function findCounters(fold: Fold, grade: string): readonly string[] {
  return fold.index.outpost.instruments.flatMap((instrument) => {
    const route = instrument.route;
    if (route === undefined || instrument.reading === 'amount') return [];
    const made = gradeMade(fold, route);
    const touches =
      made === grade || (made === null && route.from.some((source) => gradeOfEnd(fold, source) === grade));
    return touches ? [instrument.id] : [];
  });
}

/** Grades whose day is not whole without this counter. */
export function gradesOfCounter(fold: Fold, id: string): readonly string[] {
  return fold.usage.grades().filter((grade) => countersOfGrade(fold, grade).includes(id));
}
