// What the account of a book came to, remembered between two commands, so that a long book is not folded from its first entry each time.
import { hash } from 'node:crypto';
import { mkdirSync, readFileSync, renameSync, writeFileSync } from 'node:fs';
import { dirname } from 'node:path';
import { deserialize, serialize } from 'node:v8';
import type { DeskTools } from '../../desk/index.ts';
import { cachePath } from './cache-folder.ts';
import type { Terminal } from './terminal.ts';

type Place = NonNullable<DeskTools['snapshots']>;

/**
 * A place in the person's folder of throw-away things, for one book. What lies there counts only for the same program and
 * only while it is whole; a program that runs from the sources remembers nothing.
 */
export function rememberedAccount(terminal: Terminal, bookId: string): Place | undefined {
  const { build } = terminal;
  if (build === null) return undefined;
  const path = cachePath(terminal, `account-${hash('sha256', bookId).slice(0, 32)}`);
  return {
    keepAfter: KEEP_AFTER,
    load: () => read(path, build),
    keep: (snapshot) => write(path, build, serialize(snapshot)),
  };
}

/** Fewer entries are folded faster than an account is written. */
const KEEP_AFTER = 300;
const NEW_LINE = 10;

/** The first line says which program wrote it, and that the rest is whole. */
function read(path: string, build: string): ReturnType<Place['load']> {
  try {
    const bytes = readFileSync(path);
    const end = bytes.indexOf(NEW_LINE);
    const body = bytes.subarray(end + 1);
    return end > 0 && bytes.toString('utf8', 0, end) === headOf(build, body) ? deserialize(body) : null;
  } catch {
    // Not there, or not readable: the book is folded.
    return null;
  }
}

/** Whole or not at all; where it cannot be written it is not. */
function write(path: string, build: string, body: Buffer): void {
  try {
    mkdirSync(dirname(path), { recursive: true });
    const fresh = `${path}.${process.pid}`;
    writeFileSync(fresh, Buffer.concat([Buffer.from(`${headOf(build, body)}\n`), body]), { mode: 0o600 });
    renameSync(fresh, path);
  } catch {
    // A throw-away thing is no reason to fail.
  }
}

function headOf(build: string, body: Uint8Array): string {
  return `waterwright account ${build} ${hash('sha256', body)}`;
}
