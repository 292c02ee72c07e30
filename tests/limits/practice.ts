// The practice book up to a day in memory, with the sets of limits that ship, and the whole of what it keeps as one text.
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { exportLines, MemoryStore, plainHash } from '../../src/book/index.ts';
import { Desk, type Moment, type NamedText, startPractice } from '../../src/desk/index.ts';
import { LOG_LINES, OUTPOST_TEXT } from '../field-log/corrie-log.ts';

export const KEEPER: Moment = { nowUtcMs: Date.UTC(2147, 4, 1), offsetMin: 0, by: 'keeper' };

const FOLDER = join(import.meta.dirname, '../../limits');

export const SHIPPED: readonly NamedText[] = readdirSync(FOLDER)
  .sort()
  .map((file) => ({ file: `limits/${file}`, text: readFileSync(join(FOLDER, file), 'utf8') }));

export async function practiceAt(
  untilDay: number,
  files: readonly NamedText[] = SHIPPED,
): Promise<{ readonly desk: Desk; readonly bookText: () => Promise<string> }> {
  const port = new MemoryStore({ bookId: 'b', site: 'corrie', purpose: 'practice', createdAtMs: 0 });
  let count = 0;
  const chance = () => Uint8Array.from({ length: 10 }, (_, k) => Math.floor(++count / 256 ** (k % 3)) % 256);
  const desk = await Desk.open(port, { chance, hash: plainHash, limitFiles: () => Promise.resolve(files) });
  const made = await startPractice(desk, KEEPER, {
    outpost: { name: 'outpost.yaml', text: OUTPOST_TEXT },
    log: { name: 'field-log.jsonl', lines: LOG_LINES },
    untilDay,
  });
  if (!made.ok) throw new Error(JSON.stringify(made.findings));
  return { desk, bookText: () => wholeBook(port) };
}

async function wholeBook(port: MemoryStore): Promise<string> {
  const lines: string[] = [];
  for await (const line of exportLines(port)) lines.push(line);
  return lines.join('\n');
}
