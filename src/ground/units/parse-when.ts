// Reads a time as it is typed in a command: `now`, `-15m`, `14:05`, `D13`, `D143T14:07`, or ISO 8601.
import type { Where } from './finding.ts';
import { type Instant, isInRange, msPerDay, msPerMinute, parseInstantIso, readClock } from './instant.ts';
import { type DayRule, dayLineUtcMs, dayStartUtcMs } from './outpost-day.ts';
import { quoted, type Read, refuse } from './quantity-finding.ts';

export interface WhenRule {
  readonly nowUtcMs: number;
  /** The offset of the clock that the person looks at. */
  readonly offsetMin: number;
  readonly rule: DayRule;
  readonly where?: Where;
}

const minutesOf = { m: 1, h: 60, d: 1_440 } as const;
const longestInput = 64;

/**
 * Reads a time. `14:05` is by the person's clock and is the latest one that is not in the future; `D13` is the time of
 * that day's line; `D143T14:07` is UTC on that day.
 * @example parseWhen('-15m', { nowUtcMs: 900_000, offsetMin: 0, rule }) // { ok: true, instant: { utcMs: 0, offsetMin: 0 } }
 */
export function parseWhen(text: string, asked: WhenRule): Read<'instant', Instant> {
  const where = asked.where ?? {};
  if (text.length > longestInput) {
    return refuse('input-too-long', where, {
      received: quoted(text),
      length: text.length,
      longest: longestInput,
    });
  }
  const trimmed = text.trim();
  const read =
    readNow(trimmed, asked) ??
    readAgo(trimmed, asked) ??
    readClockTime(trimmed, asked) ??
    readDay(trimmed, asked);
  const found = read ?? parseInstantIso(trimmed, where);
  if (found.ok && !isInRange(found.instant.utcMs)) {
    return refuse('time-year-out-of-range', where, { received: trimmed, earliest: 1900, latest: 2999 });
  }
  return found;
}

type Reading = Read<'instant', Instant> | null;

function instantAt(utcMs: number, offsetMin: number): Reading {
  return { ok: true, instant: { utcMs, offsetMin } };
}

function readNow(text: string, { nowUtcMs, offsetMin }: WhenRule): Reading {
  return text === 'now' ? instantAt(nowUtcMs, offsetMin) : null;
}

function readAgo(text: string, { nowUtcMs, offsetMin }: WhenRule): Reading {
  const match = /^[-\u2212](\d{1,6})([mhd])$/.exec(text);
  if (match === null) return null;
  const minutes = Number(match[1]) * minutesOf[match[2] as 'm' | 'h' | 'd'];
  return instantAt(nowUtcMs - minutes * msPerMinute, offsetMin);
}

function readClockTime(text: string, { nowUtcMs, offsetMin, where }: WhenRule): Reading {
  const match = /^(\d{2}):(\d{2})$/.exec(text);
  if (match === null) return null;
  const clockMs = readClock([Number(match[1]), Number(match[2])], text, where ?? {});
  if (typeof clockMs !== 'number') return clockMs;
  const localMidnightMs = Math.floor((nowUtcMs + offsetMin * msPerMinute) / msPerDay) * msPerDay;
  const todayUtcMs = localMidnightMs + clockMs - offsetMin * msPerMinute;
  return instantAt(todayUtcMs > nowUtcMs ? todayUtcMs - msPerDay : todayUtcMs, offsetMin);
}

function readDay(text: string, { rule, where }: WhenRule): Reading {
  const match = /^D(\d{1,5})(?:T(\d{2}):(\d{2}))?$/.exec(text);
  if (match === null) return null;
  const day = Number(match[1]);
  if (match[2] === undefined) return instantAt(dayLineUtcMs(day, rule), 0);
  const clockMs = readClock([Number(match[2]), Number(match[3])], text, where ?? {});
  return typeof clockMs === 'number' ? instantAt(dayStartUtcMs(day, rule) + clockMs, 0) : clockMs;
}
