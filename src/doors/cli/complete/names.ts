// Names of a book for completion, kept where a shell finds them at once: nothing of the book is loaded for them.
import { hash } from 'node:crypto';
import type { BookNames } from '../../../desk/index.ts';
import { cachePath, readCached, writeCached } from '../cache-folder.ts';
import type { Terminal } from '../terminal.ts';

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

export function writeNames(terminal: Terminal, bookPath: string, names: BookNames): void {
  writeCached(namesPath(terminal, bookPath), JSON.stringify(names));
}
