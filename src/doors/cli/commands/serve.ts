// `serve`: the page and the interface for programs, on this machine only, until somebody stops it.

import { needBook } from '../book-path.ts';
import type { Call } from '../call.ts';
import type { Outcome } from '../outcome.ts';
import { serveUntilStopped } from '../serve-book.ts';

export function run(call: Call): Promise<Outcome> {
  return serveUntilStopped(call, needBook(call));
}
