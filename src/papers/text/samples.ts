// Samples and results as texts: what was drawn, what came back, how each figure stands, and what a failing one asks to be held.
import type {
  DueLine,
  FigureLine,
  ResultSheet,
  SampleLine,
  SampleSheet,
  SamplesSheet,
} from '../sheets/samples.ts';
import { dropped } from '../words/en/labels.ts';
import {
  figureVerdicts,
  saidDue,
  saidFigure,
  saidLimits,
  sampleLabels,
  sampleStates,
} from '../words/en/samples.ts';
import { fieldsOf } from './figures.ts';
import { findingRecords } from './finding-records.ts';
import { findingLines } from './findings.ts';
import { treeLines, treeRecords } from './hold-tree.ts';
import { keptLines, keptRecords } from './kept.ts';
import { proseWidth, type TextOptions } from './options.ts';
import { page, record } from './page.ts';
import { signed } from './signs.ts';
import { type Column, table } from './table.ts';
import { headLines } from './today-head.ts';
import { hanging, wrap } from './wrap.ts';

const { columns } = sampleLabels;

function prose(sentence: string, options: TextOptions): string[] {
  return wrap(signed(sentence, options.style), proseWidth(options));
}

const listColumns: readonly Column<SampleLine>[] = [
  { head: columns.sample, align: 'left', priority: 0, cell: ({ sample }) => sample, least: 10 },
  { head: columns.place, align: 'left', priority: 1, cell: ({ place }) => place, least: 9 },
  { head: columns.taken, align: 'left', priority: 2, cell: ({ taken }) => taken },
  { head: columns.state, align: 'left', priority: 0, cell: ({ state }) => sampleStates[state] },
  { head: columns.figures, align: 'left', priority: 0, cell: figuresOf, least: 24 },
  {
    head: columns.ref,
    align: 'left',
    priority: 4,
    cell: ({ ref, resultRefs }) => [ref ?? [], ...resultRefs].flat().join(', '),
  },
];

/** What came back; else what is waited for. */
function figuresOf({ figures, open }: SampleLine): string {
  const said = figures.map((figure) => {
    const verdict = figureVerdicts[figure.verdict];
    const isPlain = figure.verdict === 'within' || figure.verdict === 'no limit';
    return `${saidFigure(figure)}${figure.setAside ? ` ${sampleLabels.setAside}` : isPlain ? '' : ` ${verdict}`}`;
  });
  const waits = open.length === 0 ? [] : [sampleLabels.waitsFor(open)];
  return [...said, ...waits].join('; ');
}

const dueColumns: readonly Column<DueLine>[] = [
  { head: columns.due, align: 'left', priority: 0, cell: ({ dueDay }) => `Day\u00A0${dueDay}` },
  {
    head: columns.overdue,
    align: 'left',
    priority: 0,
    cell: ({ overdueDays }) => sampleLabels.overdue(overdueDays),
  },
  { head: columns.what, align: 'left', priority: 0, cell: saidDue, least: 30 },
  {
    head: columns.place,
    align: 'left',
    priority: 2,
    cell: ({ place, name }) => (place === name ? '' : place),
  },
];

export function dueTable(due: readonly DueLine[], options: TextOptions): string[] {
  return due.length === 0 ? [] : [...table(dueColumns, due, options).lines];
}

export function samplesText(sheet: SamplesSheet, options: TextOptions): string {
  if (options.style === 'plain')
    return page([...sheet.samples.flatMap(sampleRecords), ...dueRecords(sheet.due)], options);
  const shown = table(listColumns, sheet.samples, options);
  const list = sheet.samples.length === 0 ? prose(sampleLabels.none, options) : [...shown.lines];
  const notes = [
    ...(sheet.older === 0 ? [] : [sampleLabels.older(sheet.older, sheet.older + sheet.samples.length)]),
    ...(shown.dropped.length === 0 ? [] : [dropped(shown.dropped)]),
    ...(sheet.samples.length === 0 ? [] : [sampleLabels.next]),
  ];
  const due = dueTable(sheet.due, options);
  return page(
    [
      ...headLines(sheet.head, options),
      '',
      ...list,
      ...notes.flatMap((note) => prose(note, options)),
      ...(due.length === 0 ? [] : ['', sampleLabels.dueHead, ...due]),
    ],
    options,
  );
}

/** The longest name of a fact, and two columns. */
const INDENT = 15;

export function sampleText(sheet: SampleSheet, options: TextOptions): string {
  const { sample, tree, method, volume } = sheet;
  if (options.style === 'plain')
    return page([...sampleRecords(sample), ...(tree === null ? [] : treeRecords(tree))], options);
  const facts = sampleLabels.facts(sample, { method, volumeL: volume?.value ?? null });
  return page(
    [
      ...headLines(sheet.head, options),
      '',
      ...prose(sampleLabels.head(sample), options),
      ...facts.flatMap(({ name, text }) =>
        hanging(`  ${name}`, signed(text, options.style), { width: proseWidth(options), indent: INDENT }),
      ),
      ...figureTable(sample.figures, options),
      ...(tree === null ? [] : ['', ...treeLines(tree, options, { isAhead: false })]),
    ],
    options,
  );
}

const figureColumns: readonly Column<FigureLine>[] = [
  { head: columns.parameter, align: 'left', priority: 0, cell: ({ parameter }) => parameter, least: 10 },
  {
    head: columns.figure,
    align: 'left',
    priority: 0,
    cell: (figure) => saidFigure({ ...figure, parameter: '' }),
  },
  { head: columns.limit, align: 'left', priority: 1, cell: saidLimits },
  {
    head: columns.verdict,
    align: 'left',
    priority: 0,
    cell: ({ verdict, setAside }) => (setAside ? sampleLabels.setAside : figureVerdicts[verdict]),
  },
  { head: columns.ref, align: 'left', priority: 3, cell: ({ ref }) => ref ?? '' },
];

function figureTable(figures: readonly FigureLine[], options: TextOptions): string[] {
  return figures.length === 0 ? [] : ['', ...table(figureColumns, figures, options).lines];
}

/** A result that was kept, or that was only tried: with the tree before anything is written. */
export function sampleResultText(sheet: ResultSheet, options: TextOptions): string {
  const { kept, tree, figures, findings, entry } = sheet;
  if (options.style === 'plain') {
    return page(
      [
        ...figures.map((figure) => figureRecord(sheet.sample, figure)),
        ...(tree === null ? [] : treeRecords(tree)),
        ...findingRecords(findings, 'question'),
        ...keptRecords(entry),
      ],
      options,
    );
  }
  const own = keptLines(tree === null ? entry : { ...entry, cover: [], became: [], stores: [] }, options);
  return page(
    [
      ...prose(sampleLabels.resultHead(sheet), options),
      ...figureTable(figures, options),
      ...(tree === null ? [] : ['', ...treeLines(tree, options, { isAhead: !kept })]),
      '',
      ...findingLines(findings, options),
      ...own,
    ],
    options,
  );
}

/** sample name state place taken drawn-from ref · figure sample parameter value unit basis censored verdict ref */
function sampleRecords(line: SampleLine): string[] {
  const { sample, state, place, taken, drawnFrom, ref, open } = line;
  return [
    record(
      ['sample', sample, state, place, taken, drawnFrom ?? '', ref ?? '', open.join(' ')].map((field) =>
        signed(field, 'plain'),
      ),
    ),
    ...line.figures.map((figure) => figureRecord(sample, figure)),
  ];
}

function figureRecord(sample: string, figure: FigureLine): string {
  const { parameter, value, unit, basis, censored, verdict, setAside, ref } = figure;
  const [digits] = fieldsOf({ value, u95: null });
  const fields = [
    sample,
    parameter,
    digits,
    unit,
    basis ?? '',
    censored,
    setAside ? 'set aside' : verdict,
    ref ?? '',
  ];
  return record(['figure', ...fields.map((field) => signed(field, 'plain'))]);
}

/** due kind name place day overdue-days parameters */
export function dueRecords(due: readonly DueLine[]): string[] {
  return due.map(({ kind, name, place, dueDay, overdueDays, parameters }) =>
    record(
      ['due', kind, name, place, `D${dueDay}`, `${overdueDays}`, parameters.join(' ')].map((field) =>
        signed(field, 'plain'),
      ),
    ),
  );
}
