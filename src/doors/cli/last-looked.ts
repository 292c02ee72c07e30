// When each office last looked at a book: kept for the person in front of it, outside the book.
import { hash } from 'node:crypto';
import { homedir } from 'node:os';
import { isAbsolute, join } from 'node:path';
import { readCached, writeCached } from './cache-folder.ts';
import type { Terminal } from './terminal.ts';

/** By the rule of the XDG base directories: what lasts, and is no setting. */
function statePath({ env }: Terminal, name: string): string {
  const told = env['XDG_STATE_HOME'] ?? '';
  const state = isAbsolute(told) ? told : join(env['HOME'] || homedir(), '.local', 'state');
  return join(state, 'waterwright', name);
}

interface Looker {
  readonly bookId: string;
  readonly office: string;
}

function lookedPath(terminal: Terminal, { bookId, office }: Looker): string {
  return statePath(terminal, `looked-${hash('sha256', `${bookId}\n${office}`).slice(0, 32)}`);
}

/** UTC milliseconds of the book's own time; null where this office never looked, or nothing readable tells. */
export function lastLooked(terminal: Terminal, looker: Looker): number | null {
  const text = readCached(lookedPath(terminal, looker));
  return text !== null && /^-?\d{1,16}\n?$/.test(text) ? (JSON.parse(text) as number) : null;
}

export function rememberLook(terminal: Terminal, looker: Looker, utcMs: number): void {
  writeCached(lookedPath(terminal, looker), `${utcMs}\n`);
}
