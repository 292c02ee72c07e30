// The outpost's own count of days: calendar days from day 1, and the time of the line that closes each.
import { weekdayOf } from './civil-date.ts';
import type { FigureStyle } from './format-figure.ts';
import { formatDate, msPerDay, msPerMinute, twoDigits } from './instant.ts';

export interface DayRule {
  /** 00:00 of day 1, in UTC milliseconds. */
  readonly dayOneUtcMs: number;
  /** Minutes from 00:00 to the day line: 1260 is 21:00. */
  readonly lineMinuteOfDay: number;
}

/** The number of the calendar day on which the instant lies: 1 for day 1, 0 and less before it. */
export function dayOf(utcMs: number, rule: DayRule): number {
  return Math.floor((utcMs - rule.dayOneUtcMs) / msPerDay) + 1;
}

/** 00:00 of a day. */
export function dayStartUtcMs(day: number, rule: DayRule): number {
  return rule.dayOneUtcMs + (day - 1) * msPerDay;
}

/** The instant of a day's line. */
export function dayLineUtcMs(day: number, rule: DayRule): number {
  return dayStartUtcMs(day, rule) + rule.lineMinuteOfDay * msPerMinute;
}

/** `D46`: how a day is named in commands. */
export function formatDayCode(utcMs: number, rule: DayRule): string {
  return `D${dayOf(utcMs, rule)}`;
}

/** `21:00` in UTC. */
export function formatClockUtc(utcMs: number): string {
  const minute = Math.floor((utcMs - Math.floor(utcMs / msPerDay) * msPerDay) / msPerMinute);
  return `${twoDigits(Math.floor(minute / 60))}:${twoDigits(minute % 60)}`;
}

/** `Day 46 · 2147-04-15 Sat · 21:00 UTC`; in plain text the dots are commas. */
export function formatStamp(utcMs: number, rule: DayRule, style: FigureStyle = 'screen'): string {
  const days = Math.floor(utcMs / msPerDay);
  const dot = style === 'screen' ? ' · ' : ', ';
  const date = `${formatDate(days)} ${weekdayOf(days)}`;
  return [`Day ${dayOf(utcMs, rule)}`, date, `${formatClockUtc(utcMs)} UTC`].join(dot);
}

/** `Day 46 21:00 UTC`: the stamp for the middle of a sentence. */
export function formatShortStamp(utcMs: number, rule: DayRule): string {
  return `Day ${dayOf(utcMs, rule)} ${formatClockUtc(utcMs)} UTC`;
}
