// Answers a shell that wants to complete a command line: one candidate a line.
import type { BookNames } from '../../../desk/index.ts';
import { findBook } from '../book-path.ts';
import { Call } from '../call.ts';
import type { Terminal } from '../terminal.ts';
import { readTyped } from '../typed.ts';
import { candidates } from './candidates.ts';
import { readNames } from './names.ts';

export async function complete(words: readonly string[], terminal: Terminal): Promise<string> {
  const found = await candidates(words, () => namesFor(words, terminal));
  return found.map((word) => `${word}\n`).join('');
}

function namesFor(words: readonly string[], terminal: Terminal): Promise<BookNames | null> {
  const call = new Call(terminal, null, readTyped(words));
  const place = findBook(call);
  const known = place === null ? null : readNames(terminal, place.path);
  return place === null || known !== null ? Promise.resolve(known) : fromBook(call);
}

/** Slower, and only before anything was entered by this program on this machine. */
async function fromBook(call: Call): Promise<BookNames | null> {
  const [{ withBook }, { keepNames }] = await Promise.all([
    import('../open-book.ts'),
    import('./keep-names.ts'),
  ]);
  return withBook(call, { write: false }, ({ desk, place }) => keepNames(call.terminal, place.path, desk));
}
