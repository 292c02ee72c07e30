// Where a sample is drawn: a store that is aboard, or a point with a name: a sampling point, a port, a unit.
import type { Fold, SamplingPoint } from '../../account/index.ts';
import { type Answer, yes } from '../answer.ts';
import { findName } from '../log/context.ts';

export type Place = { readonly store: string } | { readonly point: string };

export function findPlace(fold: Fold, typed: string): Answer<Place> {
  const stores = [...fold.stores.values()].filter(({ aboard }) => aboard).map(({ facts }) => facts.id);
  const { samplingPoints, units } = fold.index;
  const points = [...samplingPoints.keys(), ...fold.ports.keys(), ...units.keys()];
  const found = findName('store or point', typed, [...stores, ...points]);
  if (!found.ok) return found;
  return yes(stores.includes(found.value) ? { store: found.value } : { point: found.value });
}

export const nameOfPlace = (place: Place): string => ('store' in place ? place.store : place.point);

/** What a trace takes a place for; null for one that nobody knows any more. */
export function pointOf(fold: Fold, place: Place): SamplingPoint | null {
  if ('store' in place) return place;
  const { samplingPoints, units } = fold.index;
  const of = samplingPoints.get(place.point)?.of;
  if (of !== undefined) return of;
  if (fold.ports.has(place.point)) return { port: place.point };
  return units.has(place.point) ? { unit: place.point } : null;
}
