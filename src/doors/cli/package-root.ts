// Where this program's own folder is: the examples and the practice book lie in it.
import { existsSync, readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { wrongUse } from './problem.ts';

/** The nearest folder above this file whose package.json is ours; the file may be the source or a part of the bundle. */
export function packageRoot(): string {
  let folder = dirname(fileURLToPath(import.meta.url));
  for (;;) {
    if (isOurs(join(folder, 'package.json'))) return folder;
    const above = dirname(folder);
    if (above === folder) throw wrongUse('program-not-whole', { what: 'package.json' });
    folder = above;
  }
}

function isOurs(path: string): boolean {
  if (!existsSync(path)) return false;
  try {
    return (JSON.parse(readFileSync(path, 'utf8')) as { name?: unknown }).name === 'waterwright';
  } catch {
    return false;
  }
}
