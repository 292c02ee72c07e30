// The daybook as a text: one entry after the other, with what became of it.
import type { BookLine, BookSheet } from '../sheets/book.ts';
import * as words from '../words/en/labels.ts';
import { proseWidth, type TextOptions } from './options.ts';
import { page, record } from './page.ts';
import { signed } from './signs.ts';
import { type Column, table } from './table.ts';
import { headLines } from './today-head.ts';
import { wrap } from './wrap.ts';

const bookColumns: readonly Column<BookLine>[] = [
  { head: words.columns.entry, align: 'left', priority: 0, cell: ({ ref }) => ref },
  { head: words.columns.happened, align: 'left', priority: 1, cell: ({ happened }) => happened },
  { head: words.columns.entered, align: 'left', priority: 4, cell: enteredOf },
  { head: words.columns.by, align: 'left', priority: 3, cell: ({ by }) => by },
  { head: words.columns.what, align: 'left', priority: 0, cell: whatOf, least: 46 },
];

/** Only where it says something: most entries are made soon after they happened. */
function enteredOf({ happened, entered }: BookLine): string {
  return entered === happened ? '' : entered;
}

/** The entry in words, its note, who copied it, and what became of it. */
export function whatOf(line: BookLine): string {
  const note = line.note === null ? '' : ` "${line.note}"`;
  const source = line.source === null ? '' : ` (${words.bookLabels.copied(line.source)})`;
  const fileRef = line.fileRef === null ? '' : ` [${line.fileRef}]`;
  return `${fateOf(line)}${line.text}${nowOf(line)}${note}${source}${fileRef}`;
}

/** What counts instead of what was said. */
export function nowOf({ now }: Pick<BookLine, 'now'>): string {
  return now === null ? '' : `; ${words.bookLabels.now(now)}`;
}

type Fate = Pick<BookLine, 'undoneBy' | 'correctedBy'> & { readonly late?: boolean };

/** `[undone by corrie 36] `; nothing for an entry that stands as it was made. */
export function fateOf({ undoneBy, correctedBy, late = false }: Fate): string {
  const fate = [
    undoneBy === null ? '' : words.bookLabels.undoneBy(undoneBy),
    correctedBy === null ? '' : words.bookLabels.correctedBy(correctedBy),
    late ? words.bookLabels.late : '',
  ].filter((part) => part !== '');
  return fate.length === 0 ? '' : `[${fate.join(', ')}] `;
}

/** The lines alone, for a sheet that shows some of them. */
export function bookLines(lines: readonly BookLine[], options: TextOptions): readonly string[] {
  return table(bookColumns, lines, options).lines;
}

export function bookText(sheet: BookSheet, options: TextOptions): string {
  if (options.style === 'plain')
    return page(
      sheet.lines.map((line) => record(fieldsOfLine(line))),
      options,
    );
  const { lines, dropped } = table(bookColumns, sheet.lines, options);
  const notes = [
    ...(sheet.more ? [words.bookLabels.more] : []),
    ...(dropped.length === 0 ? [] : [words.dropped(dropped)]),
  ].flatMap((note) => wrap(signed(note, options.style), proseWidth(options)));
  const body = sheet.lines.length === 0 ? wrap(words.bookLabels.none, proseWidth(options)) : lines;
  return page(
    [...headLines(sheet.head, options), '', ...body, ...(notes.length === 0 ? [] : ['', ...notes])],
    options,
  );
}

/** ref · id · happened · entered · kind · by · source · undone by · corrected by · late · text · note · now · name in the file. */
function fieldsOfLine(line: BookLine): string[] {
  const { ref, id, happened, entered, kind, by, source, undoneBy, correctedBy, late, text, note } = line;
  const { now, fileRef } = line;
  return [
    ref,
    id,
    happened,
    entered,
    kind,
    by,
    source ?? '',
    undoneBy ?? '',
    correctedBy ?? '',
    late ? 'late' : '',
    text,
    note ?? '',
    now ?? '',
    fileRef ?? '',
  ].map((field) => signed(field, 'plain'));
}
