// Which book a command works on: a flag, the environment, the folder, the person's own, and at last the practice book.
import { existsSync } from 'node:fs';
import { homedir } from 'node:os';
import { isAbsolute, join, resolve } from 'node:path';
import type { Call } from './call.ts';
import { wrongUse } from './problem.ts';

/** The name of a book where nobody gave another. */
const BOOK_NAME = 'waterwright.book';
const PRACTICE_NAME = 'practice.waterwright';

export interface BookPlace {
  readonly path: string;
  /** By `--book` or WATERWRIGHT_BOOK, or found because it lies where books lie. */
  readonly named: boolean;
  /** The practice book, taken because there is no other. */
  readonly fallback: boolean;
}

/** The path that the caller names, if any. */
export function namedPath(call: Call): string | undefined {
  const { env, cwd } = call.terminal;
  const named = call.text('book') ?? (env['WATERWRIGHT_BOOK'] || undefined);
  return named === undefined ? undefined : resolve(cwd, named);
}

/** Where this person's book lies when it lies nowhere else. */
export function ownPath(call: Call): string {
  const { env } = call.terminal;
  const told = env['XDG_DATA_HOME'] ?? '';
  // By the rule of the XDG base directories a relative path there is to be ignored.
  const data = isAbsolute(told) ? told : join(env['HOME'] || homedir(), '.local', 'share');
  return join(data, 'waterwright', BOOK_NAME);
}

export function practicePath({ terminal }: Call): string {
  return join(terminal.practiceFolder(), PRACTICE_NAME);
}

/** The book to work on; null where none is named and none is found. */
export function findBook(call: Call): BookPlace | null {
  const named = namedPath(call);
  if (named !== undefined) return { path: named, named: true, fallback: false };
  const here = join(call.terminal.cwd, BOOK_NAME);
  const found = [here, ownPath(call)].find((path) => existsSync(path));
  if (found !== undefined) return { path: found, named: false, fallback: false };
  const practice = practicePath(call);
  return existsSync(practice) ? { path: practice, named: false, fallback: true } : null;
}

export function needBook(call: Call): BookPlace {
  const place = findBook(call);
  if (place !== null) return place;
  const places = [join(call.terminal.cwd, BOOK_NAME), ownPath(call), practicePath(call)];
  throw wrongUse('no-book-found', { places });
}
