// Names that the book knows: what a door offers while somebody fills in a field.
import { type Answer, yes } from './answer.ts';
import { PARTS } from './count-sheet.ts';
import type { Desk } from './desk.ts';

export interface BookNames {
  readonly stores: readonly string[];
  readonly ports: readonly string[];
  readonly units: readonly string[];
  readonly grades: readonly string[];
  readonly hoses: readonly string[];
  readonly instruments: readonly string[];
  readonly offices: readonly string[];
  readonly parts: readonly string[];
  /** Where things are counted: the places of the outpost file, and the parts. */
  readonly places: readonly string[];
}

/** Stores are those that are aboard now; everything else stands in the outpost file that counts. */
export async function bookNames(desk: Desk): Promise<Answer<BookNames>> {
  const opened = await desk.account();
  if (!opened.ok) return opened;
  const { fold } = opened.value;
  const { index } = fold;
  return yes({
    stores: [...fold.stores.values()].filter(({ aboard }) => aboard).map(({ facts }) => facts.id),
    ports: [...fold.ports.keys()],
    units: [...index.units.keys()],
    grades: [...index.grades.keys()],
    hoses: [...index.hoses.keys()],
    instruments: [...index.instruments.keys()],
    offices: [...index.offices.keys()],
    parts: index.outpost.parts.map(({ id }) => id),
    places: [...index.outpost.places.map(({ id }) => id), PARTS],
  });
}
