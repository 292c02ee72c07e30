// Names of a book for completion: read from it when something was entered, and kept where a shell finds them at once.
import { createHash } from 'node:crypto';
import { mkdirSync, readFileSync, renameSync, writeFileSync } from 'node:fs';
import { homedir } from 'node:os';
import { dirname, isAbsolute, join } from 'node:path';
import type { Desk } from '../../../desk/index.ts';
import type { Terminal } from '../terminal.ts';

export interface BookNames {
  readonly stores: readonly string[];
  readonly ports: readonly string[];
  readonly units: readonly string[];
  readonly grades: readonly string[];
  readonly hoses: readonly string[];
  readonly instruments: readonly string[];
  readonly offices: readonly string[];
}

/** In the cache folder of the person, under a name made of the path of the book. */
function cachePath({ env }: Terminal, bookPath: string): string {
  const told = env['XDG_CACHE_HOME'] ?? '';
  const cache = isAbsolute(told) ? told : join(env['HOME'] || homedir(), '.cache');
  return join(
    cache,
    'waterwright',
    `${createHash('sha256').update(bookPath).digest('hex').slice(0, 24)}.json`,
  );
}

export function readNames(terminal: Terminal, bookPath: string): BookNames | null {
  try {
    return JSON.parse(readFileSync(cachePath(terminal, bookPath), 'utf8')) as BookNames;
  } catch {
    return null;
  }
}

/** What a shell offers is no reason to fail: where this does not work out it has no names. */
export async function keepNames(terminal: Terminal, bookPath: string, desk: Desk): Promise<BookNames | null> {
  try {
    const names = await namesOf(desk);
    if (names !== null) writeIfNew(cachePath(terminal, bookPath), JSON.stringify(names));
    return names;
  } catch {
    return null;
  }
}

function writeIfNew(path: string, text: string): void {
  if (readIfThere(path) === text) return;
  mkdirSync(dirname(path), { recursive: true });
  const fresh = `${path}.${process.pid}`;
  writeFileSync(fresh, text);
  renameSync(fresh, path);
}

function readIfThere(path: string): string | null {
  try {
    return readFileSync(path, 'utf8');
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
  };
}
