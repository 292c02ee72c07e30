// When a line of a table happened: its date, its clock and its day, held against each other and against the book.
import { dayLineUtcMs, dayOf, type Instant, msPerDay, msPerMinute } from '../../ground/units/index.ts';
import { isNothing } from './cell-number.ts';
import { dated, daysOf, inOrder, isDate } from './date-order.ts';
import { quoted } from './inbox-finding.ts';
import { digits } from './meaning.ts';
import type { DateOrder } from './options.ts';
import type { RowReading } from './row-reading.ts';
import type { Sheet } from './sheet.ts';
import { readWritten, readWrittenClock, type WrittenDate, type WrittenTime } from './written-time.ts';

/** Clocks of one outpost differ by a little. */
const SLACK_MS = 2 * msPerMinute;

/** Null where it was said why it cannot be told. */
export function rowTime(reading: RowReading): Instant | null {
  const { sheet } = reading;
  const written = writtenTime(reading);
  if (written === null) return null;
  const days = writtenDays(reading, written);
  if (days === null) return null;
  reading.days = days;
  // A whole date stands in the cells; one without its year is another line in another year.
  if (written.date !== null && (written.date.year === null || written.date.shortYear))
    reading.writtenDays = days;
  const zoneMin = written.zoneMin ?? sheet.zoneMin;
  const utcMs =
    written.secondOfDay === null
      ? timeOfDay(sheet, days)
      : days * msPerDay + written.secondOfDay * 1000 - zoneMin * msPerMinute;
  if (!isDayRight(reading, days, utcMs)) return null;
  return isInside(reading, utcMs) ? { utcMs, offsetMin: zoneMin } : null;
}

/** Without a clock a line of meters is that of its day's line; an act is told for the line too, by when it was done. */
function timeOfDay({ vocabulary }: Sheet, days: number): number {
  const { dayRule } = vocabulary.fold;
  return dayLineUtcMs(dayOf(days * msPerDay, dayRule), dayRule);
}

interface Written extends WrittenTime {
  readonly column: number;
  readonly received: string;
}

/** The column that tells the day, with the clock beside it. */
function writtenTime(reading: RowReading): Written | null {
  const { at } = reading.sheet;
  const column = [at.time, at.date, at.day].find((place) => place >= 0) ?? -1;
  const received = reading.cell(column).trim();
  if (isNothing(received)) {
    reading.say('cell-missing', column, { means: 'time' });
    return null;
  }
  const isBareDay = column === at.day && /^\d{1,5}$/.test(received);
  const read = isBareDay
    ? { day: digits(received), date: null, secondOfDay: null, zoneMin: null }
    : readWritten(received);
  if (read === null) {
    reading.say('cell-time-unreadable', column, { received: quoted(received) });
    return null;
  }
  const clock = reading.of('clock').trim();
  if (isNothing(clock)) {
    // A day begins elsewhere by another clock: where others have theirs, a line without one does not tell its day.
    if (at.clock < 0 || read.secondOfDay !== null) return { ...read, column, received };
    reading.say('cell-missing', at.clock, { means: 'clock' });
    return null;
  }
  const told = readWrittenClock(clock);
  if (told !== null) return { ...read, ...told, column, received };
  reading.say('cell-time-unreadable', at.clock, { received: quoted(clock) });
  return null;
}

/** The calendar day as it is written, as days since 1970-01-01. */
function writtenDays(reading: RowReading, written: Written): number | null {
  const { day, date, column, received } = written;
  if (day !== null) return reading.sheet.dayOneDays + day - 1;
  if (date === null) return null;
  const key = received.slice(0, 64);
  const known = reading.sheet.dates.get(key);
  const found = known ?? daysWritten(date, reading.sheet);
  if (known === undefined && reading.sheet.dates.size < MOST_KEPT) reading.sheet.dates.set(key, found);
  const [days] = found;
  if (days !== undefined && found.length === 1) return days;
  sayOpen(reading, date, { column, received });
  return null;
}

const MOST_KEPT = 20_000;

function daysWritten(date: WrittenDate, sheet: Sheet): readonly number[] {
  const orders: readonly DateOrder[] =
    sheet.order === 'day-first' || sheet.order === 'month-first'
      ? [sheet.order]
      : ['day-first', 'month-first'];
  const days = orders.flatMap((order) => {
    const told = inOrder(date, order);
    return told.year !== null && !told.shortYear ? dated(told, told.year) : daysOf(told, sheet.span);
  });
  return [...new Set(days)];
}

function sayOpen(
  reading: RowReading,
  date: WrittenDate,
  at: { readonly column: number; readonly received: string },
) {
  const { column } = at;
  const received = quoted(at.received);
  const { order, span } = reading.sheet;
  const known: DateOrder = order === 'month-first' ? 'month-first' : 'day-first';
  if (
    order !== 'day-first' &&
    order !== 'month-first' &&
    date.order === 'open' &&
    date.first !== date.second
  ) {
    const both = isDate(inOrder(date, 'day-first')) && isDate(inOrder(date, 'month-first'));
    if (both)
      return reading.say('cell-date-two-readings', column, {
        received,
        readings: ['day-first', 'month-first'],
      });
  }
  const told = inOrder(date, known);
  if (!isDate(told) || (told.year !== null && !told.shortYear))
    return reading.say('cell-time-unreadable', column, { received });
  return reading.say('cell-year-open', column, { received, years: daysOf(told, span).length });
}

/** Two ways to say one day: when they differ nobody knows which of them is the slip. */
function isDayRight(reading: RowReading, days: number, utcMs: number): boolean {
  const { at, dayOneDays, vocabulary } = reading.sheet;
  const cell = reading.of('day').trim();
  if ((at.time < 0 && at.date < 0) || isNothing(cell)) return true;
  const match = /^(?:D|Day)?\s?(\d{1,5})$/i.exec(cell);
  const { dayRule } = vocabulary.fold;
  const other = dayOf(utcMs, dayRule);
  const told = match === null ? null : digits(match[1] ?? '');
  if (told === days - dayOneDays + 1 || told === other) return true;
  reading.say('row-days-differ', at.day, { day: quoted(cell), other });
  return false;
}

function isInside(reading: RowReading, utcMs: number): boolean {
  const { at, span } = reading.sheet;
  const column = [at.time, at.date, at.day].find((place) => place >= 0) ?? -1;
  const received = quoted([reading.cell(column), reading.of('clock')].join(' ').trim());
  if (utcMs < span.fromMs) {
    reading.say('cell-time-outside', column, {
      received,
      happenedAtMs: utcMs,
      side: 'before',
      limitMs: span.fromMs,
    });
    return false;
  }
  if (utcMs <= span.untilMs + SLACK_MS) return true;
  reading.say('cell-time-outside', column, {
    received,
    happenedAtMs: utcMs,
    side: 'after',
    limitMs: span.untilMs,
  });
  return false;
}
