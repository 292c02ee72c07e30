// Reads the names of a book for completion, when something was entered or a shell asks for the first time.
import { type BookNames, bookNames, type Desk } from '../../../desk/index.ts';
import type { Terminal } from '../terminal.ts';
import { writeNames } from './names.ts';

/** What a shell offers is no reason to fail: where this does not work out it has no names. */
export async function keepNames(terminal: Terminal, bookPath: string, desk: Desk): Promise<BookNames | null> {
  try {
    const names = await bookNames(desk);
    if (!names.ok) return null;
    writeNames(terminal, bookPath, names.value);
    return names.value;
  } catch {
    return null;
  }
}
