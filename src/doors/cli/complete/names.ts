// Names of a book for completion: read from it when something was entered, and kept where a shell finds them at once.
import { hash } from 'node:crypto';
import type { Desk } from '../../../desk/index.ts';
import { cachePath, readCached, writeCached } from '../cache-folder.ts';
import type { Terminal } from '../terminal.ts';

export interface BookNames {
  readonly stores: readonly string[];
  readonly ports: readonly string[];
  readonly units: readonly string[];
  readonly grades: readonly string[];
  readonly hoses: readonly string[];
  readonly instruments: readonly string[];
  readonly offices: readonly string[];
  readonly parts: readonly string[];
  readonly places: readonly string[];
}

/** Under a name made of the path of the book. */
function namesPath(terminal: Terminal, bookPath: string): string {
  return cachePath(terminal, `names-${hash('sha256', bookPath).slice(0, 32)}.json`);
}

export function readNames(terminal: Terminal, bookPath: string): BookNames | null {
  try {
    const names = JSON.parse(
      readCached(namesPath(terminal, bookPath)) ?? 'null',
    ) as Partial<BookNames> | null;
    // An older program kept fewer names: then they are read anew.
    return names?.parts === undefined ? null : (names as BookNames);
  } catch {
    return null;
  }
}

/** What a shell offers is no reason to fail: where this does not work out it has no names. */
export async function keepNames(terminal: Terminal, bookPath: string, desk: Desk): Promise<BookNames | null> {
  try {
    const names = await namesOf(desk);
    if (names !== null) writeCached(namesPath(terminal, bookPath), JSON.stringify(names));
    return names;
  } catch {
    return null;
  }
}

async function namesOf(desk: Desk): Promise<BookNames | null> {
  const opened = await desk.account();
  if (!opened.ok) return null;
  const { fold } = opened.value;
  const { index } = fold;
  return {
    stores: [...fold.stores.values()].filter(({ aboard }) => aboard).map(({ facts }) => facts.id),
    ports: [...fold.ports.keys()],
    units: [...index.units.keys()],
    grades: [...index.grades.keys()],
    hoses: [...index.hoses.keys()],
    instruments: [...index.instruments.keys()],
    offices: [...index.offices.keys()],
    parts: index.outpost.parts.map(({ id }) => id),
    places: [...index.outpost.places.map(({ id }) => id), 'parts'],
  };
}
