// Codes of offices as a text: who has one, and what the setting of one ends with.
import type { KeptSheet } from '../sheets/book.ts';
import type { CodeLine, CodesSheet } from '../sheets/codes.ts';
import { codeColumns, codeLabels, saidCode } from '../words/en/codes.ts';
import { keptLabels } from '../words/en/labels.ts';
import { keptText } from './kept.ts';
import { proseWidth, type TextOptions } from './options.ts';
import { page, record } from './page.ts';
import { signed } from './signs.ts';
import { type Column, table } from './table.ts';
import { wrap } from './wrap.ts';

const columns: readonly Column<CodeLine>[] = [
  { head: codeColumns.office, align: 'left', priority: 0, cell: ({ office }) => office },
  { head: codeColumns.code, align: 'left', priority: 0, cell: saidCode, least: 20 },
];

/** Plain: office, since, seconds that it waits. */
export function codesText({ offices }: CodesSheet, options: TextOptions): string {
  if (options.style !== 'plain') return page(table(columns, offices, options).lines, options);
  const records = offices.map(({ office, since, waitsMs }) =>
    record([signed(office, 'plain'), signed(since ?? '', 'plain'), `${Math.ceil(waitsMs / 1000)}`]),
  );
  return page(records, options);
}

/** A code is not taken back by an undo, so no undo is offered. */
export function codeSetText(sheet: KeptSheet, options: TextOptions): string {
  if (options.style === 'plain') return keptText(sheet, options);
  const { ref, text, by, happened } = sheet.line;
  const sentences = [keptLabels.kept({ ref, text, by, happened }), codeLabels.next];
  return page(
    sentences.flatMap((sentence) => wrap(signed(sentence, options.style), proseWidth(options))),
    options,
  );
}
