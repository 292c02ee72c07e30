// Instants, dates, outpost days and typed times.
import { describe, expect, it } from 'vitest';
import { civilFromDays, daysFromCivil, daysInMonth, weekdayOf } from './civil-date.ts';
import { formatIso, formatIsoUtc, isInRange, parseInstantIso } from './instant.ts';
import {
  type DayRule,
  dayLineUtcMs,
  dayOf,
  formatDayCode,
  formatShortStamp,
  formatStamp,
} from './outpost-day.ts';
import { parseWhen } from './parse-when.ts';

const rule: DayRule = { dayOneUtcMs: Date.UTC(2147, 2, 1), lineMinuteOfDay: 1260 };

function utcMs(text: string): number {
  const read = parseInstantIso(text);
  if (!read.ok) throw new Error(`${text}: ${read.finding.code}`);
  return read.instant.utcMs;
}

describe('dates', () => {
  it('agree with an independent calendar on every day from 1900 to 2999', () => {
    let looked = 0;
    for (let days = Date.UTC(1900, 0, 1) / 86_400_000; days < Date.UTC(3000, 0, 1) / 86_400_000; days += 1) {
      const other = new Date(days * 86_400_000);
      const own = civilFromDays(days);
      const same =
        own.year === other.getUTCFullYear() &&
        own.month === other.getUTCMonth() + 1 &&
        own.day === other.getUTCDate() &&
        daysFromCivil(own) === days &&
        weekdayOf(days) === ['Sun', 'Mon', 'Tue', 'Wed', 'Thu', 'Fri', 'Sat'][other.getUTCDay()];
      if (!same) expect(own).toBe(other.toISOString());
      looked += 1;
    }
    expect(looked).toBe(401_767);
  });

  it('know the lengths of months', () => {
    expect([daysInMonth(2000, 2), daysInMonth(1900, 2), daysInMonth(2148, 2), daysInMonth(2147, 2)]).toEqual([
      29, 28, 29, 28,
    ]);
    expect([daysInMonth(2147, 0), daysInMonth(2147, 13)]).toEqual([0, 0]);
  });
});

describe('ISO 8601', () => {
  it.each([
    ['2147-04-15T21:00Z', Date.UTC(2147, 3, 15, 21)],
    ['2147-04-15T21:00:07Z', Date.UTC(2147, 3, 15, 21, 0, 7)],
    ['2147-04-15T21:00:07.250Z', Date.UTC(2147, 3, 15, 21, 0, 7, 250)],
    ['2147-04-16T02:30+05:30', Date.UTC(2147, 3, 15, 21)],
    ['2147-04-15T18:00-03:00', Date.UTC(2147, 3, 15, 21)],
    ['2147-202T14:07Z', Date.UTC(2147, 6, 21, 14, 7)],
    ['2148-366T00:00Z', Date.UTC(2148, 11, 31)],
    ['2148-02-29T00:00Z', Date.UTC(2148, 1, 29)],
    ['1900-01-01T00:00Z', Date.UTC(1900, 0, 1)],
    ['2999-12-31T23:59:59.999Z', Date.UTC(2999, 11, 31, 23, 59, 59, 999)],
  ])('%s', (text, expected) => {
    expect(utcMs(text)).toBe(expected);
  });

  it.each([
    ['2147-02-30T00:00Z', 'time-date-not-in-calendar'],
    ['2147-02-29T00:00Z', 'time-date-not-in-calendar'],
    ['2147-13-01T00:00Z', 'time-date-not-in-calendar'],
    ['2147-00-01T00:00Z', 'time-date-not-in-calendar'],
    ['2147-04-00T00:00Z', 'time-date-not-in-calendar'],
    ['2147-366T00:00Z', 'time-date-not-in-calendar'],
    ['2147-000T00:00Z', 'time-date-not-in-calendar'],
    ['2147-04-15T21:00:60Z', 'time-second-60'],
    ['2147-04-15T23:59:60Z', 'time-second-60'],
    ['2147-04-15T24:00Z', 'time-hour-24'],
    ['2147-04-15T24:01Z', 'time-not-on-clock'],
    ['2147-04-15T21:60Z', 'time-not-on-clock'],
    ['2147-04-15T21:00:61Z', 'time-not-on-clock'],
    ['2147-04-15T21:00', 'time-offset-missing'],
    ['2147-04-15T21:00+15:00', 'time-offset-unreadable'],
    ['2147-04-15T21:00+05:60', 'time-offset-unreadable'],
    ['2147-04-15T21:00-00:00', 'time-offset-unreadable'],
    ['2147-04-15T21:00z', 'time-offset-unreadable'],
    ['2147-04-15T21:00Z[UTC]', 'time-offset-unreadable'],
    ['2147-04-15T21:00:07.25Z', 'time-offset-unreadable'],
    ['1899-12-31T23:59Z', 'time-year-out-of-range'],
    ['3000-01-01T00:00Z', 'time-year-out-of-range'],
    ['2147-04-15 21:00Z', 'time-unreadable'],
    ['2147-4-15T21:00Z', 'time-unreadable'],
    ['2147-04-15', 'time-unreadable'],
    ['', 'time-unreadable'],
    [`2147-04-15T21:00${'Z'.repeat(80)}`, 'input-too-long'],
  ])('%s is refused: %s', (text, code) => {
    const read = parseInstantIso(text);
    expect(read.ok ? read.instant : read.finding.code).toBe(code);
  });

  it('is printed back in its own offset and in UTC', () => {
    const read = parseInstantIso('2147-04-16T02:30:00+05:30');
    if (!read.ok) throw new Error('not read');
    expect(formatIso(read.instant)).toBe('2147-04-16T02:30:00+05:30');
    expect(formatIsoUtc(read.instant.utcMs)).toBe('2147-04-15T21:00:00Z');
    expect(formatIso({ utcMs: read.instant.utcMs + 250, offsetMin: -210 })).toBe(
      '2147-04-15T17:30:00.250-03:30',
    );
    expect(formatIsoUtc(-1)).toBe('1969-12-31T23:59:59.999Z');
    expect(() => formatIsoUtc(0.5)).toThrow(RangeError);
  });

  it('reads back what it prints, all over the range', () => {
    let looked = 0;
    for (let at = Date.UTC(1900, 0, 2); at < Date.UTC(2999, 11, 30); at += 86_400_000 * 37 + 12_345_678) {
      const instant = { utcMs: at, offsetMin: ((looked * 15) % 1_680) - 840 };
      expect(parseInstantIso(formatIso(instant))).toEqual({ ok: true, instant });
      looked += 1;
    }
    expect(looked).toBeGreaterThan(10_000);
  });
});

describe('outpost days', () => {
  it('count calendar days from day 1', () => {
    expect(dayOf(utcMs('2147-03-01T00:00Z'), rule)).toBe(1);
    expect(dayOf(utcMs('2147-03-01T23:59Z'), rule)).toBe(1);
    expect(dayOf(utcMs('2147-02-28T21:00Z'), rule)).toBe(0);
    expect(dayLineUtcMs(13, rule)).toBe(utcMs('2147-03-13T21:00Z'));
    expect(formatDayCode(utcMs('2147-04-15T21:00Z'), rule)).toBe('D46');
  });

  it('are stamped with day, date, weekday and time', () => {
    const at = utcMs('2147-04-15T21:00Z');
    expect(formatStamp(at, rule)).toBe('Day 46 · 2147-04-15 Sat · 21:00 UTC');
    expect(formatStamp(at, rule, 'plain')).toBe('Day 46, 2147-04-15 Sat, 21:00 UTC');
    expect(formatShortStamp(at, rule)).toBe('Day 46 21:00 UTC');
  });
});

describe('typed times', () => {
  const nowUtcMs = utcMs('2147-04-15T14:09:30Z');

  function when(text: string, offsetMin = 0): string {
    const read = parseWhen(text, { nowUtcMs, offsetMin, rule });
    return read.ok ? formatIso(read.instant) : read.finding.code;
  }

  it.each([
    ['now', 0, '2147-04-15T14:09:30Z'],
    ['-15m', 0, '2147-04-15T13:54:30Z'],
    ['-2h', 0, '2147-04-15T12:09:30Z'],
    ['\u22121d', 0, '2147-04-14T14:09:30Z'],
    ['14:05', 0, '2147-04-15T14:05:00Z'],
    ['14:09', 0, '2147-04-15T14:09:00Z'],
    ['14:10', 0, '2147-04-14T14:10:00Z'],
    ['19:39', 330, '2147-04-15T19:39:00+05:30'],
    ['19:40', 330, '2147-04-14T19:40:00+05:30'],
    ['00:05', -840, '2147-04-15T00:05:00-14:00'],
    ['00:10', -840, '2147-04-14T00:10:00-14:00'],
    ['D13', 0, '2147-03-13T21:00:00Z'],
    ['D0', 0, '2147-02-28T21:00:00Z'],
    ['D143T14:07', 330, '2147-07-21T14:07:00Z'],
    ['2147-202T14:07Z', 0, '2147-07-21T14:07:00Z'],
    [' now ', 0, '2147-04-15T14:09:30Z'],
  ])('%j by a clock %d min ahead is %s', (text, offsetMin, expected) => {
    expect(when(text, offsetMin)).toBe(expected);
  });

  it.each([
    ['14:60', 'time-not-on-clock'],
    ['24:00', 'time-hour-24'],
    ['D13T25:00', 'time-not-on-clock'],
    ['-15', 'time-unreadable'],
    ['15m', 'time-unreadable'],
    ['yesterday', 'time-unreadable'],
    ['D', 'time-unreadable'],
    ['D-3', 'time-unreadable'],
    ['', 'time-unreadable'],
    ['-999999d', 'time-year-out-of-range'],
    ['2147-02-30T00:00Z', 'time-date-not-in-calendar'],
    ['now'.repeat(40), 'input-too-long'],
  ])('%j is refused: %s', (text, code) => {
    expect(when(text)).toBe(code);
  });
});

it('knows its range of years', () => {
  expect([
    isInRange(0),
    isInRange(Date.UTC(1899, 11, 31)),
    isInRange(Date.UTC(3000, 0, 1)),
    isInRange(0.5),
  ]).toEqual([true, false, false, false]);
});
