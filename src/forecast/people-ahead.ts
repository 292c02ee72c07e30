// How many people will be aboard over the days ahead, as far as the roster says.
import type { Position } from '../account/index.ts';
import { dayOf, dayStartUtcMs, msPerDay } from '../ground/units/index.ts';

export interface PeopleFrom {
  readonly fromMs: number;
  readonly people: number;
}

/** Those who are aboard now, and visits by their planned days: in the middle of a day, since nobody says an hour. */
export function peopleAhead(position: Position): readonly PeopleFrom[] {
  const { atMs, dayRule, peopleAboard } = position;
  const today = dayOf(atMs, dayRule);
  const steps = position.visits.flatMap(({ visit, berthDay, departDay, aboard }) => {
    const told = position.index.visits.get(visit)?.findLast(({ knownSinceDay }) => knownSinceDay <= today);
    const people = told?.people ?? 0;
    if (people === 0) return [];
    const come = !aboard && berthDay >= today ? [{ day: berthDay, people }] : [];
    const leavesAgain = departDay !== null && departDay >= today && (aboard || come.length > 0);
    return leavesAgain ? [...come, { day: departDay, people: -people }] : come;
  });
  steps.sort((a, b) => a.day - b.day);
  let people = peopleAboard;
  return [
    { fromMs: atMs, people },
    ...steps.map((step) => {
      people = Math.max(0, people + step.people);
      return { fromMs: Math.max(atMs, dayStartUtcMs(step.day, dayRule) + msPerDay / 2), people };
    }),
  ];
}
