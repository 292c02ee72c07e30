// Instants: UTC milliseconds with the offset of the clock that gave them; a strict ISO 8601 reader and printer.
import { civilFromDays, daysFromCivil, daysInMonth, isLeapYear } from './civil-date.ts';
import type { Where } from './finding.ts';
import { quoted, type Read, refuse } from './quantity-finding.ts';

export interface Instant {
  /** Milliseconds since 1970-01-01T00:00Z, leap seconds not counted. */
  readonly utcMs: number;
  /** Minutes that the source's clock is ahead of UTC. */
  readonly offsetMin: number;
}

export const msPerMinute = 60_000;
export const msPerDay = 86_400_000;

const earliestYear = 1900;
const latestYear = 2999;
const longestInput = 64;
const greatestOffsetMin = 14 * 60;
const shape = /^(\d{4})-(?:(\d{2})-(\d{2})|(\d{3}))T(\d{2}):(\d{2})(?::(\d{2})(?:\.(\d{3}))?)?(.*)$/;

type Refusal = Extract<Read<'instant', Instant>, { ok: false }>;

/**
 * Reads ISO 8601 to the minute, second or millisecond, with `Z` or an offset: `2147-04-15T21:00Z`,
 * `2147-04-16T02:30:00+05:30`, `2147-105T21:00Z` (day of the year).
 * @example parseInstantIso('1970-01-01T00:00Z') // { ok: true, instant: { utcMs: 0, offsetMin: 0 } }
 */
export function parseInstantIso(text: string, where: Where = {}): Read<'instant', Instant> {
  if (text.length > longestInput) {
    return refuse('input-too-long', where, {
      received: quoted(text),
      length: text.length,
      longest: longestInput,
    });
  }
  const match = shape.exec(text);
  if (match === null) return refuse('time-unreadable', where, { received: quoted(text) });
  const [, year, month, day, dayOfYear, hour, minute, second, millisecond, offset = ''] = match;
  const days = readDays({ year: Number(year), month, day, dayOfYear }, text, where);
  if (typeof days !== 'number') return days;
  const clockMs = readClock(
    [hour, minute, second, millisecond].map((part) => Number(part ?? 0)),
    text,
    where,
  );
  if (typeof clockMs !== 'number') return clockMs;
  const offsetMin = readOffset(offset, text, where);
  if (typeof offsetMin !== 'number') return offsetMin;
  return { ok: true, instant: { utcMs: days * msPerDay + clockMs - offsetMin * msPerMinute, offsetMin } };
}

interface DateText {
  readonly year: number;
  readonly month: string | undefined;
  readonly day: string | undefined;
  readonly dayOfYear: string | undefined;
}

function readDays(date: DateText, received: string, where: Where): number | Refusal {
  const { year } = date;
  if (year < earliestYear || year > latestYear) {
    return refuse('time-year-out-of-range', where, { received, earliest: earliestYear, latest: latestYear });
  }
  if (date.dayOfYear !== undefined) {
    const number = Number(date.dayOfYear);
    const length = isLeapYear(year) ? 366 : 365;
    if (number >= 1 && number <= length) return daysFromCivil({ year, month: 1, day: 1 }) + number - 1;
    return refuse('time-date-not-in-calendar', where, { received, lastDay: length, of: `${year}` });
  }
  const month = Number(date.month);
  const day = Number(date.day);
  const length = daysInMonth(year, month);
  if (day >= 1 && day <= length) return daysFromCivil({ year, month, day });
  return refuse('time-date-not-in-calendar', where, {
    received,
    lastDay: length,
    of: `${year}-${date.month}`,
  });
}

/** The milliseconds since midnight of [hour, minute, second, millisecond]. */
export function readClock(parts: readonly number[], received: string, where: Where): number | Refusal {
  const [hour = 0, minute = 0, second = 0, millisecond = 0] = parts;
  if (second === 60) return refuse('time-second-60', where, { received });
  if (hour === 24 && minute === 0 && second === 0) return refuse('time-hour-24', where, { received });
  if (hour > 23 || minute > 59 || second > 59) return refuse('time-not-on-clock', where, { received });
  return ((hour * 60 + minute) * 60 + second) * 1000 + millisecond;
}

function readOffset(offset: string, received: string, where: Where): number | Refusal {
  if (offset === '') return refuse('time-offset-missing', where, { received });
  if (offset === 'Z') return 0;
  const match = /^([+-])(\d{2}):(\d{2})$/.exec(offset);
  const size = match === null ? Number.NaN : Number(match[2]) * 60 + Number(match[3]);
  const negative = match?.[1] === '-';
  // -00:00 says that the offset is not known, which is not good enough here.
  const known = size <= greatestOffsetMin && Number(match?.[3]) < 60 && !(negative && size === 0);
  if (!known) return refuse('time-offset-unreadable', where, { received, offset: quoted(offset) });
  return negative ? -size : size;
}

/** Whether the instant lies in the years that the tool reads and prints, 1900 to 2999 UTC. */
export function isInRange(utcMs: number): boolean {
  if (!Number.isSafeInteger(utcMs)) return false;
  const year = civilFromDays(Math.floor(utcMs / msPerDay)).year;
  return year >= earliestYear && year <= latestYear;
}

export function twoDigits(value: number): string {
  return String(value).padStart(2, '0');
}

/** `2147-04-15` for the days since 1970-01-01. */
export function formatDate(days: number): string {
  const { year, month, day } = civilFromDays(days);
  return `${String(year).padStart(4, '0')}-${twoDigits(month)}-${twoDigits(day)}`;
}

/** ISO 8601 in the instant's own offset, with seconds, and with milliseconds where there are any. */
export function formatIso({ utcMs, offsetMin }: Instant): string {
  if (!Number.isSafeInteger(utcMs))
    throw new RangeError(`an instant is a whole number of milliseconds, not ${utcMs}`);
  const localMs = utcMs + offsetMin * msPerMinute;
  const days = Math.floor(localMs / msPerDay);
  const clockMs = localMs - days * msPerDay;
  const seconds = Math.floor(clockMs / 1000);
  const clock = [Math.floor(seconds / 3600), Math.floor(seconds / 60) % 60, seconds % 60]
    .map(twoDigits)
    .join(':');
  const millisecond = clockMs % 1000 === 0 ? '' : `.${String(clockMs % 1000).padStart(3, '0')}`;
  return `${formatDate(days)}T${clock}${millisecond}${formatOffset(offsetMin)}`;
}

/** ISO 8601 in UTC. */
export function formatIsoUtc(utcMs: number): string {
  return formatIso({ utcMs, offsetMin: 0 });
}

function formatOffset(offsetMin: number): string {
  if (offsetMin === 0) return 'Z';
  const size = Math.abs(offsetMin);
  return `${offsetMin < 0 ? '-' : '+'}${twoDigits(Math.floor(size / 60))}:${twoDigits(size % 60)}`;
}
