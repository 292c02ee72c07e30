// Times as people type them: brought into the form that the desk reads, and asked of its own parser whether it can be read.
import { formatClockUtc, formatDate, msPerDay, msPerMinute, parseWhen } from '../../ground/units/index.ts';

/** What a time is read against. */
export interface Present {
  readonly utcMs: number;
  readonly day: number;
}

/** `D60 14:05`, `day 60, 14:05`, `yesterday 14:05`, `9:05`, `20 min ago` in the desk's own form; all else as it stands. */
export function tidyWhen(typed: string, present: Present): string {
  const text = typed.trim().replace(/\s+/g, ' ');
  const day = /^d(?:ay)? ?(\d{1,5})$/i.exec(text);
  if (day !== null) return `D${day[1]}`;
  const timeOfDay = /^d(?:ay)? ?(\d{1,5})(?:,? ?t?|, )(\d{1,2}):(\d{2})$/i.exec(text);
  if (timeOfDay !== null) return `D${timeOfDay[1]}T${clockOf(timeOfDay[2], timeOfDay[3])}`;
  const named = /^(yesterday|today),? (\d{1,2}):(\d{2})(?: ?utc| ?z)?$/i.exec(text);
  if (named !== null) {
    const days = Math.floor(present.utcMs / msPerDay) - (named[1]?.toLowerCase() === 'yesterday' ? 1 : 0);
    return `${formatDate(days)}T${clockOf(named[2], named[3])}Z`;
  }
  const clock = /^(\d{1,2}):(\d{2})$/.exec(text);
  if (clock !== null) return clockOf(clock[1], clock[2]);
  const ago = /^(\d{1,5}) ?(m|h|d)(?:in|ours?|ays?)? (?:ago|earlier|before)$/i.exec(text);
  if (ago !== null) return `-${ago[1]}${ago[2]?.toLowerCase()}`;
  return /^now$/i.test(text) ? 'now' : text;
}

function clockOf(hour = '', minute = ''): string {
  return `${hour.padStart(2, '0')}:${minute}`;
}

/** Whether the desk could read it, and whether it is still to come. Days are compared by their numbers. */
export function judgeWhen(tidy: string, present: Present): 'fine' | 'unreadable' | 'to come' {
  const rule = {
    dayOneUtcMs: (Math.floor(present.utcMs / msPerDay) - (present.day - 1)) * msPerDay,
    lineMinuteOfDay: 0,
  };
  const read = parseWhen(tidy, { nowUtcMs: present.utcMs, offsetMin: 0, rule });
  if (!read.ok) return 'unreadable';
  const day = /^D(\d+)/.exec(tidy);
  if (day !== null && Math.floor((read.instant.utcMs - rule.dayOneUtcMs) / msPerDay) + 1 === present.day)
    return 'fine';
  return read.instant.utcMs > present.utcMs ? 'to come' : 'fine';
}

/** The clock so many minutes before the present; with its date where that is another one. */
export function clockBefore(minutes: number, { utcMs }: Present): string {
  const at = utcMs - minutes * msPerMinute;
  const date = Math.floor(at / msPerDay);
  const clock = `${formatClockUtc(at)}\u00A0UTC`;
  return date === Math.floor(utcMs / msPerDay) ? clock : `${formatDate(date)} ${clock}`;
}
