// `book backup`: a copy that was read back before it is called one.
import { resolve } from 'node:path';
import { copiedText } from '../../../papers/index.ts';
import { backupBook } from '../../disk/index.ts';
import { needBook } from '../book-path.ts';
import type { Call } from '../call.ts';
import type { Outcome } from '../outcome.ts';

export async function run(call: Call): Promise<Outcome> {
  const place = needBook(call);
  const copy = await backupBook(place.path, resolve(call.terminal.cwd, call.arg(0)));
  const data = { path: call.arg(0), entries: copy.entries, digest: copy.digest };
  return { schema: 'copied', data, text: (options) => copiedText(data, options) };
}
