// A line of a table that has one day in each: the day line of its meters, and readings of the stores beside them.
import { convert, findUnit, type Instant } from '../../ground/units/index.ts';
import type { Instrument } from '../../outpost/index.ts';
import type { PlainRequest } from '../log/make.ts';
import { isNothing, NUMBER_AT_START, readCellNumber } from './cell-number.ts';
import { quoted } from './inbox-finding.ts';
import { unitOf } from './match-heading.ts';
import { rowAmount, ruleOf } from './row-amount.ts';
import { rowNote } from './row-note.ts';
import type { RowReading } from './row-reading.ts';
import { rowTime } from './row-time.ts';

export function readDayRow(reading: RowReading): void {
  const happened = rowTime(reading);
  const readings = metersOf(reading);
  const people = peopleOf(reading);
  const contents = contentsOf(reading);
  reading.note = rowNote(reading);
  if (happened === null || reading.faults.length > 0) return;
  const isRead = Object.values(readings).some((value) => value !== '-');
  const add = (request: PlainRequest) => reading.ask({ request, happened, beside: {} });
  if (isRead) add({ what: 'day', readings, ...(people !== null && { peopleAboard: people }) });
  for (const request of contents) add(request);
  if (!isRead && contents.length === 0 && reading.note !== undefined)
    addNote(reading, reading.note, happened);
}

function addNote(reading: RowReading, text: string, happened: Instant): void {
  reading.note = undefined;
  reading.ask({ request: { what: 'told', kind: 'note', fields: { text } }, happened, beside: {} });
}

/** A cell without a number was not read, and that is never zero. */
function metersOf(reading: RowReading): Readonly<Record<string, string>> {
  const values: Record<string, string> = {};
  const { columns, vocabulary } = reading.sheet;
  for (let column = 0; column < columns.length; column++) {
    const means = columns[column]?.meaning?.means;
    if (means?.what !== 'instrument') continue;
    const instrument = vocabulary.fold.index.instruments.get(means.id);
    if (instrument === undefined) continue;
    const value = meterValue(reading, column, instrument);
    if (value !== undefined) values[means.id] = value === null ? '-' : `${value}`;
  }
  return values;
}

/** Null: not read. Undefined: it was said why it cannot be taken. */
function meterValue(reading: RowReading, column: number, instrument: Instrument): number | null | undefined {
  const text = reading.cell(column).trim();
  if (isNothing(text)) return null;
  const number = NUMBER_AT_START.exec(text)?.[0] ?? '';
  const behind = text.slice(number.length).trim();
  const unit =
    behind === '' ? (reading.sheet.columns[column]?.meaning?.unit ?? instrument.unit) : unitOf(behind);
  const isWords =
    number === '' || (behind !== '' && unit === null && !/^[A-Za-z%\u00B0\u00B5]{1,8}$/.test(behind));
  const read = readCellNumber(isWords ? text : number, ruleOf(reading.sheet, column));
  if (!read.ok) {
    reading.sayFault(read.fault, column);
    return undefined;
  }
  const value = inUnitOf(instrument, read.value, unit);
  if (value === null) {
    const data = { received: quoted(text), unit: unit ?? quoted(behind), allowed: [instrument.unit] };
    reading.say('cell-unit-other', column, data);
    return undefined;
  }
  if (value >= 0 || instrument.measures !== 'flow') return value;
  reading.say('cell-negative', column, { received: quoted(text) });
  return undefined;
}

function inUnitOf(instrument: Instrument, value: number, unit: string | null): number | null {
  if (unit === null) return null;
  if (unit === instrument.unit) return value;
  const [own, told] = [findUnit(instrument.unit), findUnit(unit)];
  if (own === undefined || told === undefined) return null;
  if (own === told) return value;
  return own.dimension === told.dimension && own.dimension !== 'count'
    ? convert(value, told.name, own.name)
    : null;
}

function peopleOf(reading: RowReading): number | null {
  const column = reading.sheet.at.people;
  const text = reading.cell(column).trim();
  if (isNothing(text)) return null;
  const read = readCellNumber(text, ruleOf(reading.sheet, column));
  if (read.ok && Number.isSafeInteger(read.value) && read.value >= 0 && read.value <= MOST_PEOPLE)
    return read.value;
  reading.sayFault(
    read.ok ? { code: 'cell-no-number', data: { received: quoted(text) } } : read.fault,
    column,
  );
  return null;
}

const MOST_PEOPLE = 10_000;

/** A column under the name of a store: weighed where that store is weighed, gauged otherwise. */
function contentsOf(reading: RowReading): readonly PlainRequest[] {
  const { columns, vocabulary } = reading.sheet;
  const requests: PlainRequest[] = [];
  for (let column = 0; column < columns.length; column++) {
    const means = columns[column]?.meaning?.means;
    if (means?.what !== 'content' || isNothing(reading.cell(column))) continue;
    const { store } = means;
    const amount = rowAmount(reading, { column, stores: [store], unitColumn: -1, doubtColumn: -1 });
    const isWeighed = vocabulary.fold.index.stores.get(store)?.gaugedBy === 'weighing';
    if (amount !== null) requests.push({ what: isWeighed ? 'weigh' : 'gauge', store, amount });
  }
  return requests;
}
