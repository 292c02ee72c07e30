// Reads a table: headings, meanings, what its cells prove, and then line by line. It keeps nothing and asks no book.
import { dayOf, type Finding, msPerDay, parseInstantIso } from '../../ground/units/index.ts';
import type { BookSpan } from './date-order.ts';
import { provenOrder } from './date-order.ts';
import { findHeadings } from './headings.ts';
import { inboxFinding, quoted } from './inbox-finding.ts';
import {
  type Column,
  type KnownColumns,
  matchColumns,
  shapeOf,
  unknownHeadings,
  withClock,
} from './match-columns.ts';
import { meaningsOf } from './match-heading.ts';
import { ROLES } from './meaning.ts';
import type { TableOptions } from './options.ts';
import { readActRow } from './row-acts.ts';
import { readDayRow } from './row-days.ts';
import { rowOffice } from './row-note.ts';
import { RowReading } from './row-reading.ts';
import { decimalRules, roleColumns, type Sheet } from './sheet.ts';
import type { Table, TableRow } from './table.ts';
import type { Vocabulary } from './vocabulary.ts';
import { readWritten, readWrittenClock, type WrittenDate } from './written-time.ts';

export interface ReadingOf {
  readonly vocabulary: Vocabulary;
  readonly span: BookSpan;
  readonly options: TableOptions;
  /** How these headings were read before; the options of that time stand in `options` already. */
  readonly known: KnownColumns;
  readonly zoneKnown: boolean;
}

export type SheetRead =
  | {
      readonly ok: true;
      readonly sheet: Sheet;
      readonly body: readonly TableRow[];
      readonly findings: readonly Finding[];
    }
  | { readonly ok: false; readonly columns: readonly Column[]; readonly findings: readonly Finding[] };

/** What the table says as a whole; where something has to be declared first, all of it is asked at once. */
export function readSheet(table: Table, how: ReadingOf): SheetRead {
  const headed = findHeadings(table, (text) => meaningsOf(text, how.vocabulary).length > 0);
  if (headed === null)
    return {
      ok: false,
      columns: [],
      findings: [inboxFinding('sheet-no-headings', { lines: Math.min(60, table.rows.length) })],
    };
  const { options, vocabulary } = how;
  const matched = matchColumns(headed.headings, vocabulary, how);
  const columns = withClock(matched.columns, headed.body);
  const shape = shapeOf(columns, options.shape);
  const open = [...matched.findings, ...wholeFaults(columns, shape)];
  const at = roleColumns(columns, ROLES);
  const order = options.dates ?? provenOrder(writtenDates(at, headed.body), how.span);
  if (order === 'open') open.push(datesOpen(at, headed.body));
  const zone = zoneOf(columns, how);
  const ask = zone.zoneBy === 'outpost clock' && shape === 'days' ? zoneOpen(at, headed.body, how) : [];
  open.push(...ask);
  if (open.length > 0 || shape === null) return { ok: false, columns, findings: open };
  const besides = columns.flatMap(({ meaning, leftOut }, k) => (meaning === null && !leftOut ? [k] : []));
  const sheet: Sheet = {
    file: table.file,
    shape,
    columns,
    vocabulary,
    span: how.span,
    at,
    decimals: decimalRules(
      columns,
      headed.body,
      options.decimal ?? (table.format === 'JSON Lines' ? 'point' : undefined),
    ),
    order,
    ...zone,
    dayOneDays: options.dayOneDays ?? Math.floor(vocabulary.fold.dayRule.dayOneUtcMs / msPerDay),
    besides: shape === 'acts' ? [...besides, ...metersAmong(columns)] : besides,
    dates: new Map(),
  };
  return { ok: true, sheet, body: headed.body, findings: unknownHeadings(columns, headed.body, vocabulary) };
}

/** In a table of acts a meter has no act; what stands there is kept with the note. */
function metersAmong(columns: readonly Column[]): readonly number[] {
  return columns.flatMap(({ meaning }, k) =>
    meaning?.means.what === 'instrument' || meaning?.means.what === 'content' ? [k] : [],
  );
}

function wholeFaults(columns: readonly Column[], shape: Sheet['shape'] | null): readonly Finding[] {
  const has = (what: string) => columns.some(({ meaning }) => meaning?.means.what === what);
  const headings = columns
    .map(({ heading }) => quoted(heading))
    .filter((text) => text !== '')
    .slice(0, 20);
  return [
    ...(has('time') || has('date') || has('day') ? [] : [inboxFinding('sheet-no-time', { headings })]),
    ...(shape === null ? [inboxFinding('sheet-no-kind', { headings })] : []),
  ];
}

function timeCells(at: Sheet['at'], body: readonly TableRow[]): readonly string[] {
  const column = [at.time, at.date].find((place) => place >= 0) ?? -1;
  return column < 0 ? [] : body.map(({ cells }) => cells[column]?.trim() ?? '');
}

/** Each text is read once: a table of acts has many of one day. */
function writtenDates(at: Sheet['at'], body: readonly TableRow[]): readonly WrittenDate[] {
  return [...new Set(timeCells(at, body))].flatMap((cell) => readWritten(cell)?.date ?? []);
}

function datesOpen(at: Sheet['at'], body: readonly TableRow[]): Finding {
  const cell = timeCells(at, body).find((text) => {
    const date = readWritten(text)?.date;
    return date != null && date.order === 'open' && date.first !== date.second;
  });
  return inboxFinding('sheet-dates-open', {
    received: quoted(cell ?? ''),
    readings: ['day-first', 'month-first'],
  });
}

function zoneOf(
  columns: readonly Column[],
  { options, vocabulary, zoneKnown }: ReadingOf,
): Pick<Sheet, 'zoneMin' | 'zoneBy'> {
  if (options.zoneMin !== undefined)
    return { zoneMin: options.zoneMin, zoneBy: zoneKnown ? 'last time' : 'declared' };
  const named = columns.find(({ meaning }) => meaning !== null && meaning.zoneMin !== null)?.meaning?.zoneMin;
  if (named != null) return { zoneMin: named, zoneBy: 'heading' };
  return { zoneMin: offsetOf(vocabulary.fold.index.outpost.outpost.clockOffset), zoneBy: 'outpost clock' };
}

export function offsetOf(text: string): number {
  const read = parseInstantIso(`1970-01-01T12:00${text === '+00:00' ? 'Z' : text}`);
  return read.ok ? read.instant.offsetMin : 0;
}

/** How far a line may be written from the time that it is for. */
const NEAR_MIN = 45;
const FEWEST_CLOCKS = 3;

/** Lines that all stand where the other clock has the line's time are very likely told by that clock: it is asked. */
function zoneOpen(at: Sheet['at'], body: readonly TableRow[], { vocabulary }: ReadingOf): readonly Finding[] {
  const { clockOffset, groundClockOffset } = vocabulary.fold.index.outpost.outpost;
  if (groundClockOffset === undefined || groundClockOffset === clockOffset) return [];
  const column = at.clock >= 0 ? at.clock : [at.time, at.date].find((place) => place >= 0);
  const clocks = body.flatMap(({ cells }) => clockMinute(cells[column ?? -1] ?? ''));
  const { lineMinuteOfDay } = vocabulary.fold.dayRule;
  const isNear = (zone: string) =>
    clocks.every((minute) => apart(minute - offsetOf(zone), lineMinuteOfDay) <= NEAR_MIN);
  if (clocks.length < FEWEST_CLOCKS || isNear(clockOffset) || !isNear(groundClockOffset)) return [];
  const [first = 0] = clocks;
  const two = (value: number) => `${value}`.padStart(2, '0');
  const said = (minute: number) => `${two(Math.floor(minute / 60))}:${two(minute % 60)}`;
  const data = { clock: said(first), lineAt: said(lineMinuteOfDay), offset: groundClockOffset };
  return [inboxFinding('sheet-zone-open', data, column === undefined ? {} : { column: column + 1 })];
}

function clockMinute(cell: string): readonly number[] {
  const read = readWrittenClock(cell) ?? readWritten(cell);
  // A cell that names its zone needs none.
  return read === null || read.secondOfDay === null || read.zoneMin !== null
    ? []
    : [Math.floor(read.secondOfDay / 60)];
}

/** Minutes between two clocks, the shorter way round. */
function apart(a: number, b: number): number {
  const size = Math.abs(((a - b) % 1440) + 1440) % 1440;
  return Math.min(size, 1440 - size);
}

const SUM_WORDS = /^(?:grand )?(?:total|totals|sum|sums|subtotal|mean|average|avg|max|min|count)\b[: ]*$/i;

/** Reads one line of a table that is understood. */
export function readRow(sheet: Sheet, row: TableRow, isFact = false): RowReading {
  const reading = new RowReading(sheet, row);
  reading.isFact = isFact;
  const last = row.cells.findLastIndex((cell) => cell.trim() !== '');
  if (last >= sheet.columns.length) {
    reading.say('row-too-wide', -1, { cells: last + 1, headings: sheet.columns.length });
    return reading;
  }
  const first = row.cells.find((cell) => cell.trim() !== '')?.trim() ?? '';
  if (SUM_WORDS.test(first)) {
    reading.say('row-total', -1, { received: quoted(first) });
    return reading;
  }
  if (saysNothing(reading)) return reading;
  reading.office = rowOffice(reading);
  if (sheet.shape === 'days') readDayRow(reading);
  else readActRow(reading);
  return reading;
}

/** A date and nothing beside it: a day on which nothing was read. */
function saysNothing({ sheet, row }: RowReading): boolean {
  const { at } = sheet;
  const ofTime = new Set([at.time, at.date, at.clock, at.day]);
  return row.cells.every((cell, k) => ofTime.has(k) || cell.trim() === '');
}

/** The day of a line, for what is once a day. */
export function dayOfRow(reading: RowReading): number | null {
  const happened = reading.requests.find(({ request }) => request.what === 'day')?.happened;
  return happened === undefined ? null : dayOf(happened.utcMs, reading.sheet.vocabulary.fold.dayRule);
}
