// `book backup`: a copy that was read back before it is called one.
import { resolve } from 'node:path';
import { copiedText } from '../../../papers/index.ts';
import { type Backup, backupBook } from '../../disk/index.ts';
import type { RemoteBook } from '../../server/index.ts';
import { needBook } from '../book-path.ts';
import type { Call } from '../call.ts';
import { openServed } from '../open-book.ts';
import type { Outcome } from '../outcome.ts';

async function copyServed(book: RemoteBook, target: string): Promise<Backup> {
  try {
    return await book.copy(target);
  } finally {
    book.close();
  }
}

export async function run(call: Call): Promise<Outcome> {
  const place = needBook(call);
  const target = resolve(call.terminal.cwd, call.arg(0));
  const served = await openServed(call, place.path, { write: false });
  const copy = served === null ? await backupBook(place.path, target) : await copyServed(served, target);
  const data = { path: call.arg(0), entries: copy.entries, digest: copy.digest };
  return { schema: 'copied', data, text: (options) => copiedText(data, options) };
}
