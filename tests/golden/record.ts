// Golden records: the exact text of a command or a paper, compared here and rewritten by `npm run golden`.
import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { expect } from 'vitest';

export const RECORDS = join(import.meta.dirname, 'records');

/** Holds a text against the record `NAME` under `folder`, for example `today/day-14.txt`. */
export function expectGolden(name: string, text: string, folder = RECORDS): void {
  const path = join(folder, name);
  if (process.env['WATERWRIGHT_GOLDEN'] === 'write') {
    mkdirSync(dirname(path), { recursive: true });
    writeFileSync(path, text);
    return;
  }
  expect(text, `differs from the golden record ${name}; if it should, run: npm run golden`).toBe(
    recorded(path),
  );
}

function recorded(path: string): string {
  try {
    return readFileSync(path, 'utf8');
  } catch {
    throw new Error(`There is no golden record ${path} yet. Write it and read it: npm run golden`);
  }
}
