// The files of limits that come with this program, and those that somebody names.
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { NamedText } from '../../desk/index.ts';
import type { Call } from './call.ts';
import { readInput } from './input-file.ts';
import { packageRoot } from './package-root.ts';
import { wrongUse } from './problem.ts';

const FOLDER = 'limits';
const ENDING = '.yaml';

/** Names of the files in their order; nothing of them is read. */
export function limitFileNames(): readonly string[] {
  try {
    return readdirSync(join(packageRoot(), FOLDER))
      .filter((name) => name.endsWith(ENDING))
      .sort();
  } catch {
    throw wrongUse('program-not-whole', { what: FOLDER });
  }
}

/** How a command names the sets that ship: a set has the name of its file. */
export function shippedSetNames(): readonly string[] {
  return limitFileNames().map((name) => name.slice(0, -ENDING.length));
}

export function shippedLimitFiles(): Promise<readonly NamedText[]> {
  const files = limitFileNames().map((name) => ({
    file: `${FOLDER}/${name}`,
    text: readFileSync(join(packageRoot(), FOLDER, name), 'utf8'),
  }));
  return Promise.resolve(files);
}

/** Files of `--file`, read with the caps of every file that somebody brings. */
export async function ownLimitFiles(call: Call): Promise<readonly NamedText[]> {
  const files: NamedText[] = [];
  for (const typed of call.texts('file')) {
    const { name, text } = await readInput(call, typed);
    files.push({ file: name, text });
  }
  return files;
}
