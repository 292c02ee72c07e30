// Where the page is: every view has an address, after the # so that any server of files can give the page.
import { useSyncExternalStore } from 'react';

export interface Place {
  readonly page: string;
  /** A store, or a day of the daybook. */
  readonly item: string | null;
  /** As known at that time; null: now. */
  readonly at: string | null;
  readonly asOf: string | null;
}

export function parsePlace(hash: string): Place {
  const [path = '', query = ''] = hash.replace(/^#\/?/, '').split('?');
  const [page = '', item] = path.split('/').map(decoded);
  const told = new URLSearchParams(query);
  return { page: page || 'today', item: item || null, at: told.get('at'), asOf: told.get('as-of') };
}

/** A percent sign that starts nothing is taken as it stands. */
function decoded(part: string): string {
  try {
    return decodeURIComponent(part);
  } catch {
    return part;
  }
}

export function hrefOf(place: Partial<Place> & { readonly page: string }): string {
  const item = place.item == null ? '' : `/${encodeURIComponent(place.item)}`;
  return `#/${encodeURIComponent(place.page)}${item}${sightQuery(place)}`;
}

function sightQuery({ at, asOf }: Partial<Pick<Place, 'at' | 'asOf'>>): string {
  if (at != null) return `?at=${encodeURIComponent(at)}`;
  return asOf == null ? '' : `?as-of=${encodeURIComponent(asOf)}`;
}

/** The address of a sheet of the server, seen from where the page looks. */
export function sheetPath(path: string, place: Place, more: Readonly<Record<string, string>> = {}): string {
  const query = new URLSearchParams(more);
  if (place.at !== null) query.set('at', place.at);
  if (place.asOf !== null) query.set('as-of', place.asOf);
  const told = query.toString();
  return `/api/${path}${told === '' ? '' : `?${told}`}`;
}

export function go(place: Partial<Place> & { readonly page: string }): void {
  window.location.hash = hrefOf(place);
}

function watch(tell: () => void): () => void {
  window.addEventListener('hashchange', tell);
  return () => window.removeEventListener('hashchange', tell);
}

export function usePlace(): Place {
  return parsePlace(useSyncExternalStore(watch, () => window.location.hash));
}

/** Nothing can be entered into the past by looking at it. */
export function isPast(place: Place): boolean {
  return place.at !== null || place.asOf !== null;
}
