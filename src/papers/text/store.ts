// One store as a text: may it be used, what is in it, how it is known, where it came from.
import type { StoreEvent, StoreSheet } from '../sheets/store.ts';
import * as words from '../words/en/labels.ts';
import { moreOf } from '../words/en/store-story.ts';
import { worthLabels } from '../words/en/worth.ts';
import { saidKnown } from './age.ts';
import { biocideLines, biocideRecords, lifeLines } from './biocide.ts';
import { fateOf, nowOf } from './book.ts';
import { familyLines, familyRecords } from './family.ts';
import { said, stockOf } from './figures.ts';
import { findingRecords } from './finding-records.ts';
import { findingLines } from './findings.ts';
import { proseWidth, type TextOptions } from './options.ts';
import { page, record } from './page.ts';
import { readingLines, readingRecords } from './readings.ts';
import { signed } from './signs.ts';
import { type Column, table } from './table.ts';
import { headLines } from './today-head.ts';
import { readingRecord, storeFields } from './today-plain.ts';
import { widthOf } from './width.ts';
import { worthText } from './worth.ts';
import { hanging, wrap } from './wrap.ts';

export function storeText(sheet: StoreSheet, options: TextOptions): string {
  if (options.style === 'plain') return page(plainLines(sheet, options), options);
  const blocks = [
    headLines(sheet.head, options),
    storeLines(sheet, options),
    findingLines(sheet.findings, options),
    familyLines(sheet.family, options),
    readingLines(sheet, options),
    factLines(sheet, options),
    biocideLines(sheet, options),
    lifeLines(sheet, options),
    historyLines(sheet, options),
  ].filter((lines) => lines.length > 0);
  return page(
    blocks.flatMap((lines, k) => (k === 0 ? lines : ['', ...lines])),
    options,
  );
}

/** What it is and what is in it, and then the answer that was asked for. */
function storeLines({ store, answer, quality }: StoreSheet, options: TextOptions): string[] {
  const holds = store.grade ?? words.gradeUnknown;
  const name = store.name === store.id ? store.id : `${store.id}, ${store.name}`;
  const mark = store.mark === '' ? [] : [store.mark];
  const figure = `${said(stockOf(store, options), options)}, ${saidKnown(store)}`;
  const line = [name, holds, ...mark, figure]
    .map((part) => signed(part, options.style))
    .join(options.style === 'screen' ? ' · ' : '; ');
  // The answer has said what holds it; what else is known of it comes behind.
  const more = quality.words.filter(
    (each) => !/^(?:Do not use it|CONDITIONAL)/.test(each) && !answer.includes(each),
  );
  return [line, answer, ...more].flatMap((each) => wrap(signed(each, options.style), proseWidth(options)));
}

function factLines(sheet: StoreSheet, options: TextOptions): string[] {
  const { facts, gradeHistory, biocides, worth } = sheet;
  const all = [
    ...facts,
    ...(worth === null ? [] : [{ name: worthLabels.now, text: worthText(worth, options) }]),
    ...(gradeHistory.length === 0
      ? []
      : [{ name: words.storeLabels.heldBefore, text: gradeHistory.join(', ') }]),
    ...(biocides.length === 0 ? [] : [{ name: words.storeLabels.biocides, text: biocides.join(', ') }]),
  ].map(({ name, text }) => ({ name: signed(name, options.style), text: signed(text, options.style) }));
  const indent = Math.min(24, Math.max(0, ...all.map(({ name }) => widthOf(name))) + 4);
  return all.flatMap(({ name, text }) => hanging(`  ${name}`, text, { width: proseWidth(options), indent }));
}

const historyColumns: readonly Column<StoreEvent>[] = [
  { head: words.columns.entry, align: 'left', priority: 1, cell: ({ ref }) => ref },
  { head: words.columns.happened, align: 'left', priority: 2, cell: ({ stamp }) => stamp },
  {
    head: words.columns.what,
    align: 'left',
    priority: 0,
    cell: (event) => `${fateOf(event)}${event.text}${nowOf(event)}`,
    least: 40,
  },
];

function historyLines({ history, olderEvents, store }: StoreSheet, options: TextOptions): string[] {
  if (history.length === 0) return [];
  const { lines, dropped } = table(historyColumns, history, options);
  const notes = [
    ...(olderEvents === 0 ? [] : [moreOf(olderEvents, store.id, history.length + olderEvents)]),
    ...(dropped.length === 0 ? [] : [words.dropped(dropped)]),
  ];
  return [...lines, ...notes.flatMap((note) => wrap(signed(note, options.style), proseWidth(options)))];
}

/** store … · answer … · fact name text · worth as reading in today · biocide and life as in biocide.ts · finding … · family … · reading … · entry ref id stamp kind text undone-by corrected-by now. */
function plainLines(sheet: StoreSheet, options: TextOptions): string[] {
  const text = (value: string) => signed(value, 'plain');
  return [
    record(['store', ...storeFields(sheet.store, options)]),
    record(['answer', text(sheet.answer)]),
    record(['quality', text(sheet.quality.word), text(sheet.quality.onWordOf)]),
    ...sheet.quality.words.map((each) => record(['says', text(each)])),
    ...sheet.facts.map((fact) => record(['fact', text(fact.name), text(fact.text)])),
    ...sheet.gradeHistory.map((grade) => record(['held', text(grade)])),
    ...sheet.biocides.map((biocide) => record(['biocide', text(biocide)])),
    ...(sheet.worth === null ? [] : [readingRecord(sheet.worth, options)]),
    ...biocideRecords(sheet),
    ...findingRecords(sheet.findings, 'finding'),
    ...familyRecords(sheet.family, options),
    ...readingRecords(sheet.gauging.readings, options),
    ...sheet.history.map(({ ref, id, stamp, kind, text: what, undoneBy, correctedBy, now }) =>
      record([
        'entry',
        ...[ref, id, stamp, kind, what, undoneBy ?? '', correctedBy ?? '', now ?? ''].map(text),
      ]),
    ),
  ];
}
