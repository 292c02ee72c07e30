// The medic's queue as a text: what is due, what waits for a word and who waits on it, what is parked, ends soon or is off.
import type { EndingLine, QualitySheet, WaitingStore } from '../sheets/quality.ts';
import { saidLacks } from '../words/en/holds.ts';
import { qualityLabels } from '../words/en/quality.ts';
import { amountOf, fieldsOf } from './figures.ts';
import { findingRecords } from './finding-records.ts';
import { findingLines } from './findings.ts';
import { holdRecords, waitLines, waitRecords } from './holds.ts';
import { proseWidth, type TextOptions } from './options.ts';
import { page, record } from './page.ts';
import { dueRecords, dueTable } from './samples.ts';
import { signed } from './signs.ts';
import { type Column, table } from './table.ts';
import { headLines } from './today-head.ts';
import { wrap } from './wrap.ts';

const { columns } = qualityLabels;

export function qualityText(sheet: QualitySheet, options: TextOptions): string {
  if (options.style === 'plain') return page(plainLines(sheet), options);
  const say = (sentence: string) => wrap(signed(sentence, options.style), proseWidth(options));
  const under = (head: string, lines: readonly string[]) => (lines.length === 0 ? [] : [head, ...lines]);
  const blocks = [
    headLines(sheet.head, options),
    say(qualityLabels.sum(sheet)),
    findingLines(sheet.findings, options),
    under(qualityLabels.due, dueTable(sheet.due, options)),
    under(qualityLabels.waiting, [
      ...waitingTable(sheet.waiting, options),
      ...waitLines(sheet.waits, options),
    ]),
    under(
      qualityLabels.parked,
      sheet.parked.flatMap(({ hold, parked }) =>
        parked === null ? [] : say(qualityLabels.parkedLine(hold, parked.owner, parked.until, parked.over)),
      ),
    ),
    under(qualityLabels.ending, endingTable(sheet.ending, options)),
    under(
      qualityLabels.off,
      sheet.off.flatMap(({ set, row, parameter }) => say(qualityLabels.offLine(set, row, parameter))),
    ),
  ].filter((lines) => lines.length > 0);
  return page(
    blocks.flatMap((lines, k) => (k === 0 ? lines : ['', ...lines])),
    options,
  );
}

function waitingTable(waiting: readonly WaitingStore[], options: TextOptions): string[] {
  if (waiting.length === 0) return [];
  const list: readonly Column<WaitingStore>[] = [
    { head: columns.store, align: 'left', priority: 0, cell: ({ store }) => store },
    { head: columns.mark, align: 'left', priority: 0, cell: ({ why }) => qualityLabels.why[why], least: 11 },
    { head: columns.hold, align: 'left', priority: 2, cell: ({ hold }) => hold ?? '' },
    { head: columns.volume, align: 'figure', priority: 1, cell: ({ volume }) => amountOf(volume, options) },
    { head: columns.lacks, align: 'left', priority: 0, cell: ({ lacks }) => saidLacks(lacks), least: 24 },
  ];
  return [...table(list, waiting, options).lines];
}

function endingTable(ending: readonly EndingLine[], options: TextOptions): string[] {
  if (ending.length === 0) return [];
  const list: readonly Column<EndingLine>[] = [
    { head: columns.store, align: 'left', priority: 0, cell: ({ store }) => store },
    {
      head: columns.what,
      align: 'left',
      priority: 0,
      cell: ({ kind, by }) => qualityLabels.endingOf(kind, by),
    },
    { head: columns.until, align: 'left', priority: 0, cell: ({ until }) => until },
  ];
  return [...table(list, ending, options).lines];
}

function plainLines(sheet: QualitySheet): string[] {
  const plain = (fields: readonly string[]) => record(fields.map((field) => signed(field, 'plain')));
  return [
    ...findingRecords(sheet.findings, 'finding'),
    ...dueRecords(sheet.due),
    ...sheet.waiting.map(({ store, why, hold, volume, lacks }) =>
      plain(['waiting', store, why, hold ?? '', ...fieldsOf(volume), lacks.join('; ')]),
    ),
    ...waitRecords(sheet.waits),
    ...sheet.parked.flatMap(holdRecords),
    ...sheet.ending.map(({ store, kind, by, untilDay }) =>
      plain(['ending', store, kind, by, `D${untilDay}`]),
    ),
    ...sheet.off.map(({ set, row, parameter }) => plain(['off', set, row, parameter])),
  ];
}
