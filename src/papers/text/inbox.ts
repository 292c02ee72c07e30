// Imports of tables and the inbox as texts: what was made of a table, what waits and why, what became of a line.
import type {
  DroppedSheet,
  InboxLine,
  InboxSheet,
  TableLine,
  TableSheet,
  TakenSheet,
} from '../sheets/inbox.ts';
import { saidCapacity, saidReadings } from '../words/en/inbox.ts';
import { andMore, moreFindings } from '../words/en/labels.ts';
import {
  becomes,
  droppedWords,
  headOfLine,
  inboxLabels,
  placeOf,
  saidCounts,
  saidDates,
  saidKnown,
  saidZone,
  tableLabels,
  takenWords,
} from '../words/en/tables.ts';
import { firstThought } from './commands.ts';
import { findingRecords } from './finding-records.ts';
import { findingLines } from './findings.ts';
import { proseWidth, type TextOptions } from './options.ts';
import { page, record } from './page.ts';
import { signed } from './signs.ts';
import { type Column, table } from './table.ts';
import { hanging, wrap } from './wrap.ts';

/** Lines of a preview that are shown; the counts speak of all. */
const MOST_LINES = 400;

function prose(sentences: readonly string[], options: TextOptions): string[] {
  return sentences
    .filter((each) => each !== '')
    .flatMap((sentence) => wrap(signed(sentence, options.style), proseWidth(options)));
}

const plain = (fields: readonly (string | number | null)[]): string =>
  record(fields.map((field) => signed(`${field ?? ''}`, 'plain')));

export function tableText(sheet: TableSheet, options: TextOptions): string {
  if (options.style === 'plain') return page(plainTable(sheet), options);
  const lines = [
    ...prose([tableLabels.head(sheet)], options),
    '',
    ...table(headingColumns, sheet.columns, options).lines,
    '',
    ...prose([[saidZone(sheet), saidDates(sheet)].filter((each) => each !== '').join(' ')], options),
    ...prose([saidCounts(sheet).join(' ')], options),
    ...(sheet.remembered && !sheet.dryRun ? prose([tableLabels.remembered], options) : []),
    ...(sheet.dryRun ? [tableLabels.nothing] : []),
    ...previewLines(sheet, options),
    ...(sheet.findings.length === 0 ? [] : ['', ...findingLines(sheet.findings, options)]),
    ...(sheet.moreFindings === 0 ? [] : prose([`${andMore(sheet.moreFindings)}: ${moreFindings}.`], options)),
  ];
  return page(lines, options);
}

const headingColumns: readonly Column<TableSheet['columns'][number]>[] = [
  {
    head: tableLabels.columns.heading,
    align: 'left',
    priority: 0,
    cell: ({ heading }) => (heading === '' ? tableLabels.noHeading : heading),
    least: 12,
  },
  {
    head: tableLabels.columns.means,
    align: 'left',
    priority: 0,
    cell: ({ means, leftOut }) =>
      means === '' ? (leftOut ? tableLabels.leftOut : tableLabels.intoNote) : means,
    least: 12,
  },
];

const previewColumns: readonly Column<TableLine>[] = [
  { head: tableLabels.preview.line, align: 'right', priority: 0, cell: ({ line }) => `${line}` },
  { head: tableLabels.preview.what, align: 'left', priority: 0, cell: ({ what }) => becomes[what] },
  { head: tableLabels.preview.text, align: 'left', priority: 0, cell: saidLine, least: 20 },
];

function saidLine({ what, text, reasons }: TableLine): string {
  if (what === 'known') return saidKnown(text);
  if (what !== 'waits') return text;
  // A reason that an earlier line has in full stands as a text.
  return [text, ...reasons.map((reason) => whyOf(reason.text))].filter((part) => part !== '').join(' ');
}

/** That the line waits stands in the column before. */
function whyOf(text: string): string {
  return text.replace(/ The line waits in the inbox\.$/, '');
}

function previewLines({ preview }: TableSheet, options: TextOptions): string[] {
  if (preview.length === 0) return [];
  return ['', ...table(previewColumns, preview.slice(0, MOST_LINES), options).lines];
}

/** table file format shape lines taken entries known waiting settled · column heading means · line number becomes text · finding … */
function plainTable(sheet: TableSheet): string[] {
  const { file, format, shape, lines, taken, entries, known, waiting, settled, dryRun } = sheet;
  const verb = dryRun ? 'would-import' : 'imported';
  return [
    plain([
      verb,
      format,
      file,
      shape,
      lines,
      taken,
      entries,
      known,
      waiting,
      settled,
      sheet.zone.offset,
      sheet.zone.by,
    ]),
    ...sheet.columns.map(({ heading, means, leftOut }) =>
      plain(['column', heading, means, leftOut ? 'left out' : '']),
    ),
    ...sheet.preview.map((line) => plain(['line', line.line, line.what, saidLine(line)])),
    ...findingRecords(sheet.findings, 'finding'),
  ];
}

const listColumns: readonly Column<InboxLine>[] = [
  { head: inboxLabels.columns.ref, align: 'left', priority: 0, cell: ({ ref }) => ref },
  { head: inboxLabels.columns.from, align: 'left', priority: 2, cell: placeOf, least: 12 },
  {
    head: inboxLabels.columns.why,
    align: 'left',
    priority: 0,
    cell: ({ reasons, settled }) =>
      settled === null ? reasons.map(({ text }) => firstThought(whyOf(text))).join(' ') : settledIn(settled),
    least: 24,
  },
  { head: inboxLabels.columns.since, align: 'left', priority: 3, cell: ({ since }) => since },
];

function settledIn(settled: NonNullable<InboxLine['settled']>): string {
  return settled.how === 'taken'
    ? inboxLabels.taken(settled.entries, settled.ref)
    : inboxLabels.dropped(settled.reason, settled.ref);
}

export function inboxText(sheet: InboxSheet, options: TextOptions): string {
  const { lines, settled } = sheet;
  if (options.style === 'plain') return page(lines.flatMap(plainLine), options);
  if (lines.length === 0)
    return page(
      prose([inboxLabels.empty, ...(settled === 0 ? [] : [inboxLabels.settled(settled)])], options),
      options,
    );
  const isAll = lines.some((line) => line.settled !== null);
  return page(
    [
      ...table(listColumns, lines, options).lines,
      '',
      ...prose(
        [inboxLabels.next, ...(settled === 0 || isAll ? [] : [inboxLabels.settled(settled)])],
        options,
      ),
    ],
    options,
  );
}

/** waits or the word of its settlement, then ref id file line since by · cell heading means text · reading … · finding … */
function plainLine(line: InboxLine): string[] {
  const state = line.settled === null ? 'waits' : line.settled.how;
  return [
    plain([state, line.ref, line.id, line.file, line.line, line.since, line.by]),
    ...line.cells.map(({ heading, means, cell }) => plain(['cell', heading, means, cell])),
    ...line.readings.map((each) =>
      plain(['reading', each.received, each.unit, each.litres, each.store, each.capacityL]),
    ),
    ...findingRecords(line.reasons, 'reason'),
  ];
}

const INDENT = 11;

export function inboxLineText(line: InboxLine, options: TextOptions): string {
  if (options.style === 'plain') return page(plainLine(line), options);
  const cells = line.cells.filter(({ cell }) => cell.trim() !== '');
  const reasons = line.reasons.flatMap(({ text, remedy }, k) => [
    ...hanging(k === 0 ? inboxLabels.why : '', signed(whyOf(text), options.style), at(options)),
    ...hanging('', signed(remedy, options.style), at(options)),
  ]);
  return page(
    [
      ...prose([headOfLine(line)], options),
      '',
      ...table(cellColumns, cells, options).lines,
      '',
      ...reasons,
      ...readingLines(line, options),
    ],
    options,
  );
}

const cellColumns: readonly Column<InboxLine['cells'][number]>[] = [
  {
    head: tableLabels.columns.heading,
    align: 'left',
    priority: 0,
    cell: ({ heading }) => (heading === '' ? tableLabels.noHeading : heading),
    least: 12,
  },
  { head: inboxLabels.says, align: 'left', priority: 0, cell: ({ cell }) => cell, least: 12 },
  { head: tableLabels.columns.means, align: 'left', priority: 1, cell: ({ means }) => means, least: 12 },
];

function at(options: TextOptions) {
  return { width: proseWidth(options), indent: INDENT };
}

/** `"430" as L it is 430 L, as kg 431 L; FA holds 200 L` */
function readingLines({ readings }: InboxLine, options: TextOptions): string[] {
  const groups = new Map<string, InboxLine['readings'][number][]>();
  for (const each of readings) {
    const key = `${each.received}\n${each.store ?? ''}`;
    groups.set(key, [...(groups.get(key) ?? []), each]);
  }
  return [...groups.values()].flatMap((group, k) => {
    const [first] = group;
    if (first === undefined) return [];
    const said = `"${first.received}" ${saidReadings(group)}${saidCapacity(first.store, first.capacityL)}`;
    return hanging(k === 0 ? inboxLabels.could : '', signed(said, options.style), at(options));
  });
}

export function takenText(sheet: TakenSheet, options: TextOptions): string {
  if (options.style === 'plain') {
    const head = plain([sheet.kept ? 'taken' : 'would-take', sheet.line.ref, sheet.line.id]);
    return page(
      [
        head,
        ...sheet.entries.map(({ ref, id, happened, text }) => plain(['entry', ref, id, happened, text])),
      ],
      options,
    );
  }
  return page(prose(takenWords(sheet), options), options);
}

export function droppedText(sheet: DroppedSheet, options: TextOptions): string {
  if (options.style === 'plain') {
    return page(
      [plain([sheet.kept ? 'dropped' : 'would-drop', sheet.line.ref, sheet.line.id, sheet.reason])],
      options,
    );
  }
  return page(prose(droppedWords(sheet), options), options);
}
