// Making the file of a new book, and the practice book that is made of the examples.
import { mkdirSync, readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { Desk, type ImportResult, startPractice } from '../../desk/index.ts';
import { createBook, openBook } from '../disk/index.ts';
import { ownPath } from './book-path.ts';
import type { Call } from './call.ts';
import { lineOf } from './find-command.ts';
import { linesOf } from './input-file.ts';
import { deskTools, momentOf } from './open-book.ts';
import { packageRoot } from './package-root.ts';
import { orStop, wrongUse } from './problem.ts';

type NewBook = Parameters<typeof createBook>[1];

/** Makes an empty book. Only the person's own data folder is made where it is missing. */
export function createFor(call: Call, path: string, book: Pick<NewBook, 'site' | 'purpose'>): void {
  if (path === ownPath(call)) mkdirSync(dirname(path), { recursive: true });
  createBook(path, { ...book, bookId: bookId(call), createdAtMs: call.terminal.now() });
}

function bookId(call: Call): string {
  return Buffer.from(call.terminal.chance(16)).toString('hex');
}

/** A text that comes with this program. */
export function exampleText(name: string): string {
  const path = join(packageRoot(), 'examples', name);
  try {
    return readFileSync(path, 'utf8');
  } catch {
    throw wrongUse('program-not-whole', { what: join('examples', name) });
  }
}

/** Makes the practice book, or finishes one that was only begun. */
export async function makePractice(
  call: Call,
  path: string,
  made: { readonly isNew: boolean; readonly untilDay?: number },
): Promise<ImportResult> {
  const outpost = { name: 'examples/corrie/outpost.yaml', text: exampleText('corrie/outpost.yaml') };
  const log = {
    name: 'examples/corrie/field-log.jsonl',
    lines: linesOf(exampleText('corrie/field-log.jsonl')),
  };
  if (made.isNew) createFor(call, path, { site: 'corrie', purpose: 'practice' });
  const book = await openBook(path, { owner: lineOf(call.command) });
  try {
    const desk = await Desk.open(book, deskTools(call));
    const untilDay = made.untilDay === undefined ? {} : { untilDay: made.untilDay };
    return orStop(await startPractice(desk, momentOf(call), { outpost, log, ...untilDay }));
  } finally {
    book.close();
  }
}
