// The purifier beds as a text: the list, one bed, and the days ahead.
import type {
  BedBand,
  BedLine,
  BedParameter,
  BedPlotPoint,
  BedReading,
  BedSheet,
  BedsSheet,
} from '../sheets/beds.ts';
import * as words from '../words/en/beds.ts';
import { dropped } from '../words/en/labels.ts';
import { saidValue, saidValueAt } from '../words/en/said.ts';
import { bedRecords, bedsRecords, curveRecords } from './bed-records.ts';
import { amountOf } from './figures.ts';
import { findingLines } from './findings.ts';
import { proseWidth, type TextOptions } from './options.ts';
import { page } from './page.ts';
import { signed } from './signs.ts';
import { type Column, table } from './table.ts';
import { headLines } from './today-head.ts';
import { hanging, wrap } from './wrap.ts';

const { bedLabels: labels } = words;

export function bedsText(sheet: BedsSheet, options: TextOptions): string {
  if (options.style === 'plain') return page(bedsRecords(sheet), options);
  return inBlocks(options, [
    headLines(sheet.head, options),
    tableLines(bedColumns(options), sheet.beds, options),
    prose([labels.bands, words.noSpareWords(sheet.spares)], options),
    findingLines(sheet.findings, options),
  ]);
}

export function bedText(sheet: BedSheet, options: TextOptions): string {
  if (options.style === 'plain') return page(bedRecords(sheet), options);
  const { bed, advice, parameters, feed, changes, causes } = sheet;
  return inBlocks(options, [
    headLines(sheet.head, options),
    prose([words.bedSentence(bed), ...(advice === null ? [labels.lag] : advice.texts)], options),
    findingLines(sheet.findings, options),
    parameters.length === 0
      ? []
      : [...tableLines(parameterColumns, parameters, options), ...prose([labels.bands], options)],
    causes.length === 0 ? [] : causeLines(sheet, options),
    prose(
      [...(feed === null ? [] : [words.feedInWords(feed)]), ...changes.map(words.changeInWords)],
      options,
    ),
    readingLines(sheet, options),
  ]);
}

/** The days ahead of one bed, with the advice that hangs on them. */
export function bedForecastText(sheet: BedSheet, options: TextOptions): string {
  if (options.style === 'plain') return page(curveRecords(sheet), options);
  const { bed, advice, plot, feed } = sheet;
  return inBlocks(options, [
    headLines(sheet.head, options),
    prose([words.bedSentence(bed), ...(advice === null ? [labels.lag] : advice.texts)], options),
    prose(feed === null ? [] : [words.feedInWords(feed)], options),
    plot === null
      ? []
      : [
          `${labels.ahead}: ${signed(`${plot.parameter}, ${plot.unit}; ${saidLimit(plot)}`, options.style)}`,
          ...tableLines(
            aheadColumns(plot.limit),
            plot.curve.filter(({ isAhead }) => isAhead),
            options,
          ),
          ...prose([labels.bands], options),
        ],
  ]);
}

function saidLimit({ limit, unit }: { readonly limit: number; readonly unit: string }): string {
  return `limit ${saidValue(limit, unit)}`;
}

function inBlocks(options: TextOptions, blocks: readonly (readonly string[])[]): string {
  const used = blocks.filter((lines) => lines.length > 0);
  return page(
    used.flatMap((lines, k) => (k === 0 ? lines : ['', ...lines])),
    options,
  );
}

function prose(sentences: readonly string[], options: TextOptions): string[] {
  return sentences.flatMap((sentence) => wrap(signed(sentence, options.style), proseWidth(options)));
}

function tableLines<Row>(
  columns: readonly Column<Row>[],
  rows: readonly Row[],
  options: TextOptions,
): string[] {
  const { lines, dropped: gone } = table(columns, rows, options);
  return [...lines, ...(gone.length === 0 ? [] : prose([dropped(gone)], options))];
}

function bedColumns(options: TextOptions): readonly Column<BedLine>[] {
  return [
    { head: labels.bed, align: 'left', priority: 0, cell: ({ id }) => id },
    {
      head: labels.used,
      align: 'figure',
      priority: 1,
      cell: ({ used }) => {
        const { value, u95 } = amountOf(used, options);
        return { value, u95 };
      },
    },
    {
      head: labels.share,
      align: 'left',
      priority: 0,
      cell: ({ usedPercent }) => words.saidPercent(usedPercent),
    },
    {
      head: labels.due,
      align: 'left',
      priority: 0,
      cell: ({ dates }) => (dates === null ? '' : words.saidDates(dates)),
    },
    { head: labels.by, align: 'left', priority: 2, cell: ({ by }) => by ?? '' },
    { head: labels.since, align: 'left', priority: 3, cell: ({ since }) => words.saidSince(since) },
  ];
}

const saidBand = ({ q10, q50, q90 }: BedBand): string =>
  `${Math.round(q50)}\u00A0(${Math.round(q10)}\u00A0to\u00A0${Math.round(q90)})`;

const parameterColumns: readonly Column<BedParameter>[] = [
  {
    head: labels.quantity,
    align: 'left',
    priority: 0,
    cell: ({ parameter, unit }) => `${parameter}, ${unit}`,
  },
  { head: labels.limit, align: 'right', priority: 1, cell: ({ limit }) => saidValue(limit, '') },
  { head: labels.count, align: 'right', priority: 4, cell: ({ readings }) => `${readings}` },
  {
    head: labels.last,
    align: 'right',
    priority: 2,
    cell: ({ last }) => (last === null ? '' : saidReading(last)),
  },
  { head: labels.moves, align: 'left', priority: 0, cell: ({ moves }) => moves },
  {
    head: labels.perDay,
    align: 'figure',
    priority: 1,
    cell: ({ perDay }) => (perDay === null ? '' : { value: perDay.value, u95: perDay.u95 }),
  },
  {
    head: labels.left,
    align: 'left',
    priority: 3,
    cell: ({ left }) => (left === null ? '' : saidBand(left)),
  },
  { head: labels.reaches, align: 'left', priority: 0, cell: words.saidDue },
];

function saidReading({ value, below }: { readonly value: number; readonly below: boolean }): string {
  return `${below ? '<' : ''}${saidValue(value, '')}`;
}

function causeLines({ causes }: BedSheet, options: TextOptions): string[] {
  const width = proseWidth(options);
  return [
    ...prose([labels.causes], options),
    ...causes.flatMap(({ cause, evidence }, k) => [
      ...hanging(`  ${k + 1}`, signed(words.causeInWords(cause), options.style), { width, indent: 5 }),
      ...evidence.flatMap(({ side, text }) =>
        hanging(`     ${labels[side]}`, signed(text, options.style), { width, indent: 14 }),
      ),
    ]),
  ];
}

/** Those of the beds before stand in the records for programs. */
function readingLines({ readings }: BedSheet, options: TextOptions): string[] {
  const own = readings.filter(({ of }) => of !== 'beds before');
  const older = readings.length - own.length;
  return [
    ...(own.length === 0 ? [] : tableLines(readingColumns, own, options)),
    ...(older === 0 ? [] : prose([words.olderReadings(older)], options)),
  ];
}

const readingColumns: readonly Column<BedReading>[] = [
  { head: labels.entry, align: 'left', priority: 2, cell: ({ ref }) => ref },
  { head: labels.taken, align: 'left', priority: 0, cell: ({ stamp }) => stamp },
  {
    head: labels.reading,
    align: 'left',
    priority: 0,
    cell: ({ parameter, value, below, unit }) => `${parameter} ${saidReading({ value, below })}\u00A0${unit}`,
  },
  {
    head: labels.through,
    align: 'right',
    priority: 1,
    cell: ({ throughputL }) => `${Math.round(throughputL)}`,
  },
  { head: labels.of, align: 'left', priority: 3, cell: ({ of }) => of },
];

function aheadColumns(limit: number): readonly Column<BedPlotPoint>[] {
  // As fine as its limit asks for.
  const place = limit < 10 ? -2 : limit < 100 ? -1 : 0;
  const told = (value: number): string => saidValueAt(value, place, '');
  return [
    { head: labels.day, align: 'right', priority: 0, cell: ({ day }) => `${Math.floor(day)}` },
    {
      head: labels.through,
      align: 'figure',
      priority: 1,
      cell: ({ throughputL, throughputU95L }) => ({ value: throughputL, u95: throughputU95L }),
    },
    { head: labels.middle, align: 'right', priority: 0, cell: ({ q50 }) => told(q50) },
    {
      head: labels.band,
      align: 'left',
      priority: 0,
      cell: ({ q10, q90 }) => `${told(q10)}\u00A0to\u00A0${told(q90)}`,
    },
  ];
}
