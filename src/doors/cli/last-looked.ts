// When each office last looked at a book, and how far the book went then: kept for the person in front of it, outside the book.
import { hash } from 'node:crypto';
import { homedir } from 'node:os';
import { isAbsolute, join } from 'node:path';
import type { Look } from '../../desk/index.ts';
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
  return statePath(terminal, `looked-${hash('sha256', `${bookId}\n${office}`).slice(0, 32)}.json`);
}

/** Null where this office never looked, or nothing readable tells. */
export function lastLooked(terminal: Terminal, looker: Looker): Required<Look> | null {
  try {
    const { atMs, heads } = JSON.parse(readCached(lookedPath(terminal, looker)) ?? 'null') as Required<Look>;
    return Number.isSafeInteger(atMs) && heads.every(isHead) ? { atMs, heads } : null;
  } catch {
    return null;
  }
}

function isHead({ site, number }: Required<Look>['heads'][number]): boolean {
  return typeof site === 'string' && Number.isSafeInteger(number);
}

export function rememberLook(terminal: Terminal, looker: Looker, look: Required<Look>): void {
  writeCached(lookedPath(terminal, looker), `${JSON.stringify(look)}\n`);
}
