// What an outpost file came to, remembered between two commands: reading it anew takes as long as folding years of entries.
import { hash } from 'node:crypto';
import { isDeepStrictEqual } from 'node:util';
import { type OutpostReader, readOutpost } from '../../desk/index.ts';
import { cachePath, readCached, writeCached } from './cache-folder.ts';
import type { Terminal } from './terminal.ts';

type Outpost = Extract<ReturnType<OutpostReader>, { ok: true }>['outpost'];

/**
 * A reader that remembers. What was remembered counts only for the same text and for a program made of the same
 * sources; a program that runs from the sources remembers nothing.
 */
export function rememberingReader(terminal: Terminal): OutpostReader {
  const { build } = terminal;
  if (build === null) return readAnew;
  return (text) => {
    const path = cachePath(terminal, `outpost-${hash('sha256', text).slice(0, 32)}.json`);
    const known = recall(path, build);
    if (known !== null) return { ok: true, outpost: known, findings: [] };
    const read = readAnew(text);
    if (read.ok) remember(path, build, read.outpost);
    return read;
  };
}

const readAnew: OutpostReader = (text) => readOutpost(text, { file: 'outpost file in the book' });

/** The first line says which program wrote it, and that the second one is whole. */
function recall(path: string, build: string): Outpost | null {
  const [head, json] = readCached(path)?.split('\n', 2) ?? [];
  if (json === undefined || head !== headOf(build, json)) return null;
  return frozen(JSON.parse(json)) as Outpost;
}

/** Only what comes back from JSON as it went in is remembered. */
function remember(path: string, build: string, outpost: Outpost): void {
  const json = JSON.stringify(outpost);
  if (isDeepStrictEqual(JSON.parse(json), outpost)) writeCached(path, `${headOf(build, json)}\n${json}`);
}

function headOf(build: string, json: string): string {
  return `${build} ${hash('sha256', json)}`;
}

function frozen(value: unknown): unknown {
  if (typeof value !== 'object' || value === null) return value;
  for (const inner of Object.values(value)) frozen(inner);
  return Object.freeze(value);
}
