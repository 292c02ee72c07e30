// The person's folder for what may be thrown away at any time.
import { mkdirSync, readFileSync, renameSync, writeFileSync } from 'node:fs';
import { homedir } from 'node:os';
import { dirname, isAbsolute, join } from 'node:path';
import type { Terminal } from './terminal.ts';

/** By the rule of the XDG base directories a relative path there is to be ignored. */
export function cachePath({ env }: Terminal, name: string): string {
  const told = env['XDG_CACHE_HOME'] ?? '';
  const cache = isAbsolute(told) ? told : join(env['HOME'] || homedir(), '.cache');
  return join(cache, 'waterwright', name);
}

export function readCached(path: string): string | null {
  try {
    return readFileSync(path, 'utf8');
  } catch {
    return null;
  }
}

/** Whole or not at all; where it cannot be written it is not. */
export function writeCached(path: string, text: string): void {
  try {
    if (readCached(path) === text) return;
    mkdirSync(dirname(path), { recursive: true });
    const fresh = `${path}.${process.pid}`;
    writeFileSync(fresh, text);
    renameSync(fresh, path);
  } catch {
    // Nothing rests on it.
  }
}
