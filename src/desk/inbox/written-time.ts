// A date and a clock as they stand in a cell, before anybody knows the order of day and month, the year or the zone.
import { digits, readZone } from './meaning.ts';

export interface WrittenDate {
  readonly year: number | null;
  /** A year of two digits is half a year: the century has to be proven. */
  readonly shortYear: boolean;
  readonly order: 'known' | 'open';
  /** Month and day where the order is known; else the two numbers as they stand. */
  readonly first: number;
  readonly second: number;
}

export interface WrittenTime {
  /** `D46` and `Day 46`. */
  readonly day: number | null;
  readonly date: WrittenDate | null;
  readonly secondOfDay: number | null;
  readonly zoneMin: number | null;
}

const LONGEST = 64;
const ISO = /^(\d{4})([-/.])(\d{1,2})\2(\d{1,2})(?:[T ,]+(.+))?$/;
const NUMBERS = /^(\d{1,2})([./-])(\d{1,2})(?:\2(\d{4}|\d{2})?)?(?:[ ,T]+(.+))?$/;
const DAY_MONTH =
  /^(\d{1,2})(?:st|nd|rd|th)?\.?[ -]?([A-Za-z]{3,9})\.?(?:[ ,-]+(\d{4}|\d{2}))?(?:[ ,]+(\d.*))?$/;
const MONTH_DAY = /^([A-Za-z]{3,9})\.? (\d{1,2})(?:st|nd|rd|th)?(?:,? (\d{4}))?(?:[ ,]+(\d.*))?$/;
const DAY_CODE = /^D(?:ay)?\s?(\d{1,5})(?:[ T,]+(.+))?$/i;
const WEEKDAY = /^(?:mon|tue|wed|thu|fri|sat|sun)[a-z]{0,6}[., ]+/i;
const CLOCK =
  /^(\d{1,2}):(\d{2})(?::(\d{2})(?:\.\d{1,6})?)?\s?(?:([ap])\.?m\.?)?\s?(Z|(?:UTC|GMT)?\s?(?:[+\-\u2212]\d{1,2}(?::?\d{2})?)?)$/i;
const MONTHS = [
  'january',
  'february',
  'march',
  'april',
  'may',
  'june',
  'july',
  'august',
  'september',
  'october',
  'november',
  'december',
];

/** Null for a text that is no date. */
export function readWritten(text: string): WrittenTime | null {
  if (text.length > LONGEST) return null;
  const trimmed = text.trim().replace(WEEKDAY, '');
  const found = isoDate(trimmed) ?? numberDate(trimmed) ?? namedDate(trimmed) ?? dayCode(trimmed);
  if (found === null) return null;
  const { rest, ...written } = found;
  if (rest === undefined || rest.trim() === '') return { ...written, secondOfDay: null, zoneMin: null };
  const clock = readWrittenClock(rest);
  return clock === null ? null : { ...written, ...clock };
}

type Dated = Pick<WrittenTime, 'day' | 'date'> & { readonly rest: string | undefined };

function isoDate(text: string): Dated | null {
  const match = ISO.exec(text);
  if (match === null) return null;
  const [, year = '', , month = '', day = '', rest] = match;
  return { day: null, date: known(digits(month), digits(day), year), rest };
}

function numberDate(text: string): Dated | null {
  const match = NUMBERS.exec(text);
  if (match === null) return null;
  const [, first = '', , second = '', year, rest] = match;
  return { day: null, date: { ...known(digits(first), digits(second), year), order: 'open' }, rest };
}

function namedDate(text: string): Dated | null {
  const [dayFirst, monthFirst] = [DAY_MONTH.exec(text), MONTH_DAY.exec(text)];
  const match = dayFirst ?? monthFirst;
  if (match === null) return null;
  const [, one = '', two = '', year, rest] = match;
  const [day, name] = dayFirst === null ? [two, one] : [one, two];
  const month = MONTHS.findIndex((each) => each.startsWith(name.toLowerCase())) + 1;
  return month === 0 ? null : { day: null, date: known(month, digits(day), year), rest };
}

function dayCode(text: string): Dated | null {
  const match = DAY_CODE.exec(text);
  return match === null ? null : { day: digits(match[1] ?? ''), date: null, rest: match[2] };
}

function known(month: number, day: number, year: string | undefined): WrittenDate {
  const isShort = year?.length === 2;
  return {
    year: year === undefined ? null : digits(year),
    shortYear: isShort,
    order: 'known',
    first: month,
    second: day,
  };
}

/** `14:05`, `2:05 pm`, `02:30 +05:30`; null for a text that is no clock. */
export function readWrittenClock(text: string): Pick<WrittenTime, 'secondOfDay' | 'zoneMin'> | null {
  const match = text.length > LONGEST ? null : CLOCK.exec(text.trim());
  if (match === null) return null;
  const [, hourText = '', minute = '', second = '0', half, zone = ''] = match;
  const hour = half === undefined ? digits(hourText) : halfDay(digits(hourText), half);
  if (hour === null || hour > 23 || digits(minute) > 59 || digits(second) > 59) return null;
  const zoneMin = zone.trim() === '' ? null : readZone(zone);
  if (zone.trim() !== '' && zoneMin === null) return null;
  return { secondOfDay: (hour * 60 + digits(minute)) * 60 + digits(second), zoneMin };
}

/** 12 am is midnight, 12 pm is noon. */
function halfDay(hour: number, half: string): number | null {
  if (hour < 1 || hour > 12) return null;
  return (hour % 12) + (half.toLowerCase() === 'p' ? 12 : 0);
}
