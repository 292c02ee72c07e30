// `init`: begins a book, makes the practice book, or writes an outpost file to begin with.
import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { readOutpostFile, startBook } from '../../../desk/index.ts';
import { begunText } from '../../../papers/index.ts';
import { namedPath, ownPath, practicePath } from '../book-path.ts';
import type { Call } from '../call.ts';
import { readInput } from '../input-file.ts';
import { createFor, exampleText, makePractice } from '../new-book.ts';
import { withBook } from '../open-book.ts';
import type { Outcome, Sheet } from '../outcome.ts';
import { orStop, wrongUse } from '../problem.ts';
import { shownPath } from '../shown-path.ts';
import { readDay } from '../whole-number.ts';

const TEMPLATES = ['corrie', 'polar', 'lunar'] as const;

export function run(call: Call): Promise<Outcome> {
  call.holdApart('practice', 'outpost');
  call.holdApart('practice', 'template');
  call.holdApart('outpost', 'template');
  const template = call.oneOf('template', TEMPLATES);
  if (template !== undefined) return Promise.resolve(templateOf(template));
  return call.has('practice') ? practice(call) : begin(call);
}

function templateOf(name: string): Outcome {
  return {
    raw: [exampleText(join(name, 'outpost.yaml'))],
    talk: [
      'Change it to what your outpost has (docs/outpost-file.md), then: waterwright init --outpost FILE',
    ],
  };
}

async function practice(call: Call): Promise<Sheet> {
  const path = namedPath(call) ?? practicePath(call);
  const until = call.text('until');
  const untilDay = until === undefined ? {} : { untilDay: readDay(until, '--until') };
  const made = await makePractice(call, path, { isNew: true, ...untilDay });
  return sheetOf({
    outpost: 'Corrie',
    book: shownPath(call.terminal.cwd, path),
    site: 'corrie',
    practice: true,
    entries: made.added + 1,
  });
}

async function begin(call: Call): Promise<Sheet> {
  const typed = call.text('outpost');
  if (typed === undefined) {
    const because =
      'A file to begin with: waterwright init --template corrie -o FILE. To practise: waterwright init --practice.';
    throw wrongUse('flag-needed', { flag: '--outpost FILE', command: 'init', because });
  }
  const file = await readInput(call, typed);
  const read = orStop(readOutpostFile(file));
  const path = namedPath(call) ?? ownPath(call);
  const site = call.text('site') ?? read.site;
  if (!existsSync(path)) createFor(call, path, { site, purpose: 'book' });
  await withBook(
    call,
    { write: true, place: { path, named: true, fallback: false } },
    async ({ desk, moment }) => orStop(await startBook(desk, moment, file)),
  );
  return sheetOf({
    outpost: read.outpost,
    book: shownPath(call.terminal.cwd, path),
    site,
    practice: false,
    entries: 1,
  });
}

function sheetOf(sheet: Parameters<typeof begunText>[0]): Sheet {
  return { schema: 'begun', data: sheet, text: (options) => begunText(sheet, options) };
}
