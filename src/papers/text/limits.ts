// Limits as a text: what is in force, the sets that there are, one set whole.
import type {
  LimitLine,
  LimitSetLine,
  LimitSetLines,
  LimitSetSheet,
  LimitSetsSheet,
  LimitsSheet,
} from '../sheets/limits.ts';
import {
  limitLabels as labels,
  saidEvidence,
  saidExposure,
  saidLimit,
  setWord,
} from '../words/en/limits-sheet.ts';
import { findingRecords } from './finding-records.ts';
import { findingLines } from './findings.ts';
import { proseWidth, type TextOptions } from './options.ts';
import { page, record } from './page.ts';
import { signed } from './signs.ts';
import { type Column, table } from './table.ts';
import { headLines } from './today-head.ts';
import { hanging, wrap } from './wrap.ts';

export function limitsText(sheet: LimitsSheet, options: TextOptions): string {
  if (options.style === 'plain') return page(plainLimits(sheet), options);
  const { chosen, exposureDays, sets, findings } = sheet;
  const by =
    chosen === null ? labels.byFile : labels.byEntry(chosen.ref, chosen.by, chosen.at, chosen.reason);
  const long = exposureDays === null ? [] : [labels.exposure(exposureDays)];
  return page(
    [
      ...headLines(sheet.head, options),
      ...findingLines(findings, options),
      '',
      ...prose([by, ...long].join(' '), options),
      ...sets.flatMap((set) => ['', ...setBlock(set, options)]),
      '',
      ...prose(labels.more, options),
    ],
    options,
  );
}

export function limitSetText(sheet: LimitSetSheet, options: TextOptions): string {
  if (options.style === 'plain')
    return page([setRecord(sheet), ...rowRecords(sheet.set, new Set(sheet.inForce))], options);
  const { set, off } = sheet;
  const required = new Set(sheet.inForce);
  const typeIt = off === 0 ? [] : prose(labels.typeIt(setWord(set.id)), options);
  return page(
    [...setBlock(set, options, required), '', ...typeIt, ...prose(labels.look(setWord(set.id)), options)],
    options,
  );
}

export function limitSetsText({ sets }: LimitSetsSheet, options: TextOptions): string {
  if (options.style === 'plain') return page(sets.map(setRecord), options);
  return page(
    [
      ...table(setColumns, sets, options).lines,
      '',
      ...prose(labels.choose, options),
      ...prose(labels.files, options),
    ],
    options,
  );
}

const prose = (text: string, options: TextOptions): string[] =>
  wrap(signed(text, options.style), proseWidth(options));

const number = (value: number): string => (value === 0 ? '' : `${value}`);

const setColumns: readonly Column<LimitSetLine>[] = [
  { head: labels.columns.set, align: 'left', priority: 0, cell: ({ id }) => id, least: 20 },
  { head: labels.columns.rows, align: 'right', priority: 2, cell: ({ rows }) => `${rows}` },
  { head: labels.columns.on, align: 'right', priority: 1, cell: ({ on }) => `${on}` },
  { head: labels.columns.off, align: 'right', priority: 0, cell: ({ off }) => number(off) },
  { head: labels.columns.required, align: 'right', priority: 0, cell: ({ required }) => number(required) },
  { head: labels.columns.from, align: 'left', priority: 3, cell: ({ from }) => labels.from[from] },
];

/** The rows, what to do when one is not met, and where they come from: what many rows share is said once. */
function setBlock(
  set: LimitSetLines,
  options: TextOptions,
  required: ReadonlySet<string> = new Set(),
): string[] {
  const { name, what, uses, rows } = set;
  const about = [what === '' ? name : `${name}: ${what}${what.endsWith('.') ? '' : '.'}`, labels.uses(uses)];
  return [
    ...prose(about.join(' '), options),
    ...table(rowColumns(required), rows, options).lines,
    ...offLines(rows, options),
    ...shared(labels.acts, rows, { of: labels.act, style: options }),
    ...shared(labels.sources, rows, { of: sourceOf, style: options }),
  ];
}

function rowColumns(required: ReadonlySet<string>): readonly Column<LimitLine>[] {
  const { columns } = labels;
  return [
    { head: columns.row, align: 'left', priority: 0, cell: ({ id }) => id, least: 14 },
    { head: columns.parameter, align: 'left', priority: 4, cell: ({ parameter }) => parameter, least: 10 },
    { head: columns.limit, align: 'left', priority: 0, cell: saidLimit, least: 16 },
    { head: columns.exposure, align: 'left', priority: 1, cell: ({ exposure }) => saidExposure(exposure) },
    { head: columns.evidence, align: 'left', priority: 1, cell: saidEvidence },
    {
      head: columns.required,
      align: 'left',
      priority: 2,
      cell: ({ id }) => (required.has(id) ? labels.required.yes : labels.required.no),
    },
    { head: columns.where, align: 'left', priority: 3, cell: ({ locator }) => locator, least: 14 },
  ];
}

function offLines(rows: readonly LimitLine[], options: TextOptions): string[] {
  const off = rows.filter(({ limit }) => limit === null);
  if (off.length === 0) return [];
  const said = [labels.offIs(off.length), labels.remembered(off)];
  return ['', ...hanging(labels.off, signed(said.join(' '), options.style), at(options, 5))];
}

const at = (options: TextOptions, indent: number) => ({ width: proseWidth(options), indent });

function sourceOf({ source, typed }: LimitLine): string {
  return typed === null ? source : `${source} (${labels.typed(typed)})`;
}

/** Rows that say the same are named together before it. */
function shared(
  head: string,
  rows: readonly LimitLine[],
  { of, style }: { readonly of: (row: LimitLine) => string; readonly style: TextOptions },
): string[] {
  const groups = new Map<string, string[]>();
  for (const row of rows) groups.set(of(row), [...(groups.get(of(row)) ?? []), row.id]);
  const whole = groups.size === 1;
  return [
    '',
    head,
    ...[...groups].flatMap(([text, ids]) => {
      const said = whole ? text : `${ids.join(', ')}: ${text}`;
      return hanging('', signed(said, style.style), at(style, 2));
    }),
  ];
}

const plain = (fields: readonly (string | number | null | undefined)[]): string =>
  record(fields.map((field) => signed(`${field ?? ''}`, 'plain')));

/** limits exposure-days chosen-by ref at reason · set … · row … · finding … */
function plainLimits({ sets, chosen, exposureDays, findings }: LimitsSheet): string[] {
  return [
    plain(['limits', exposureDays, chosen?.by, chosen?.ref, chosen?.at, chosen?.reason]),
    ...sets.flatMap((set) => [
      plain(['set', set.id, set.name]),
      ...rowRecords(set, new Set(set.rows.map(({ id }) => id))),
    ]),
    ...findingRecords(findings, 'finding'),
  ];
}

/** set id name rows with-figure off required from. */
function setRecord({ id, name, rows, on, off, required, from }: LimitSetLine): string {
  return plain(['set', id, name, rows, on, off, required, from]);
}

/**
 * row set id parameter at-least at-most unit basis exposure evidence required remembered-least remembered-most
 * source locator cause consequence first-act hours typed-by copy.
 */
function rowRecords({ id: set, rows }: LimitSetLines, required: ReadonlySet<string>): string[] {
  return rows.map((row) =>
    plain([
      ...['row', set, row.id, row.parameter, row.limit?.atLeast, row.limit?.atMost, row.unit, row.basis],
      ...[row.exposure, row.evidence, required.has(row.id) ? 'required' : ''],
      ...[row.remembered?.atLeast, row.remembered?.atMost, row.source, row.locator],
      ...[row.cause, row.consequence, row.firstAct, row.timeToActH, row.typed?.by, row.typed?.copy],
    ]),
  );
}
