// The list of stores as a text: one row each, with its ±, how it is known and how old that is.
import type { StoresSheet } from '../sheets/store.ts';
import * as words from '../words/en/labels.ts';
import { proseWidth, type TextOptions } from './options.ts';
import { page, record } from './page.ts';
import { signed } from './signs.ts';
import { listColumns } from './store-columns.ts';
import { table } from './table.ts';
import { headLines } from './today-head.ts';
import { storeFields } from './today-plain.ts';
import { wrap } from './wrap.ts';

export function storesText(sheet: StoresSheet, options: TextOptions): string {
  if (options.style === 'plain') {
    return page(
      sheet.stores.map((store) => record(storeFields(store, options))),
      options,
    );
  }
  const { lines, dropped } = table(listColumns(options, sheet.quality), sheet.stores, options);
  const notes = [words.todayLabels.doubtSentence, ...(dropped.length === 0 ? [] : [words.dropped(dropped)])];
  const none = sheet.stores.length === 0 ? wrap(words.todayLabels.noStores, proseWidth(options)) : lines;
  const foot =
    sheet.stores.length === 0
      ? []
      : ['', ...notes.flatMap((note) => wrap(signed(note, options.style), proseWidth(options)))];
  return page([...headLines(sheet.head, options), '', ...none, ...foot], options);
}
