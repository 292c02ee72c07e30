// `start`: Today, and the page; where there is no book yet, the practice book is made first.
import { existsSync } from 'node:fs';
import { today } from '../../../desk/index.ts';
import { startText, todayShortText, todayText } from '../../../papers/index.ts';
import { type BookPlace, findBook, practicePath } from '../book-path.ts';
import type { Call } from '../call.ts';
import { makePractice } from '../new-book.ts';
import { withBook } from '../open-book.ts';
import type { Outcome } from '../outcome.ts';
import { orStop } from '../problem.ts';
import { programName } from '../program-name.ts';
import { serveUntilStopped } from '../serve-book.ts';
import { sightOf } from '../sight.ts';
import { textOptions } from '../text-options.ts';

export async function run(call: Call): Promise<Outcome> {
  const place = findBook(call) ?? { path: practicePath(call), named: false, fallback: true };
  const isNew = !existsSync(place.path);
  if (isNew || (await isOnlyBegun(call, place))) await makePractice(call, place.path, { isNew });
  if (call.has('no-serve')) return shown(call, place);
  return serveUntilStopped(call, place, await inShort(call, place));
}

/** What the page begins with, for whoever has no browser at hand. */
function inShort(call: Call, place: BookPlace): Promise<string> {
  return withBook(call, { write: false, place }, async ({ desk, moment }) => {
    const sheet = orStop(await today(desk, await sightOf(call, desk, moment), moment));
    return `${todayShortText(sheet, textOptions(call, 'stdout'))}\n`;
  });
}

function shown(call: Call, place: BookPlace): Promise<Outcome> {
  return withBook(call, { write: false, place }, async ({ desk, moment }) => {
    const sheet = orStop(await today(desk, await sightOf(call, desk, moment), moment));
    return {
      schema: 'today',
      data: sheet,
      text: (options) =>
        `${todayText(sheet, options)}${startText(startOf(call, sheet.head.practice), options)}`,
      findings: sheet.findings,
    };
  });
}

/** What to try next has to run as it is printed: from this folder, on this book. */
function startOf(call: Call, practice: boolean): Parameters<typeof startText>[0] {
  const book = call.text('book');
  const flags = book === undefined ? '' : ` --book ${/^[\w./-]+$/.test(book) ? book : JSON.stringify(book)}`;
  return { program: programName(call), flags, practice };
}

/** A power cut between the making of the file and its first entry leaves a practice book without entries. */
function isOnlyBegun(call: Call, place: BookPlace): Promise<boolean> {
  return withBook(call, { write: false, place }, async ({ book, desk }) => {
    return desk.info.purpose === 'practice' && (await book.count()) === 0;
  });
}
