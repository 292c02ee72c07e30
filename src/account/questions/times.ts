// Times that cannot be, or that this outpost never had: entered before it happened, told a day late, a day line at another hour.
import type { AnyEntry, Entry } from '../../book/index.ts';
import { dayLineUtcMs, dayOf, msPerDay, msPerMinute } from '../../ground/units/index.ts';
import type { Fold } from '../fold.ts';
import { noteEntry, refOf } from '../note.ts';

/** Clocks of one outpost differ by a little. */
const CLOCK_SLACK_MS = 2 * msPerMinute;
/**
 * What happened is due with the next day line, that of the hour before a line with the one after it; so long after that it is
 * late. Ours, no source: whoever writes down the evening next morning is in time.
 */
const BEFORE_LINE_MS = 60 * msPerMinute;
const LATE_MS = 10 * 60 * msPerMinute;
/** What is made up for at one sitting is asked about once. Ours, no source. */
const ONE_SITTING_MS = 2 * 60 * msPerMinute;
/** A day line so far from its time is asked about. Ours, no source. */
const LINE_APART_MS = 3 * 60 * msPerMinute;

/** Entered-at against happened-at. */
export function askEntered(fold: Fold, entry: AnyEntry): void {
  const store = storeOfBody(entry);
  const lateMs = entry.enteredAtMs - entry.happenedAtMs;
  if (lateMs < -CLOCK_SLACK_MS) {
    const data = { why: 'after entered', enteredAtMs: entry.enteredAtMs, happenedAtMs: entry.happenedAtMs };
    noteEntry(fold, entry, { code: 'order-impossible', severity: 'act-today', store, data });
    return;
  }
  const dueMs = dueOf(fold, entry.happenedAtMs);
  if (entry.enteredAtMs - dueMs < LATE_MS || isExplained(fold, entry)) return;
  const { lateAskedMs } = fold.habits;
  if (lateAskedMs !== null && Math.abs(entry.enteredAtMs - lateAskedMs) <= ONE_SITTING_MS) return;
  fold.habits.lateAskedMs = entry.enteredAtMs;
  const data = { why: 'written late', minutes: lateMs / msPerMinute };
  noteEntry(fold, entry, { code: 'time-implausible', severity: 'act-today', store, data });
}

/** Whoever says why, or writes a note with it, knows that it is late; and a single use is a split of what was counted. */
function isExplained(fold: Fold, entry: AnyEntry): boolean {
  if (entry.late !== undefined || entry.note !== undefined) return true;
  return entry.kind === 'movement' && fold.counterOfUnit.has(entry.body.from);
}

/** The day line that an act should have been written down with. */
function dueOf(fold: Fold, happenedMs: number): number {
  const dayMs = dayLineUtcMs(dayOf(happenedMs, fold.dayRule), fold.dayRule);
  return dayMs - happenedMs >= BEFORE_LINE_MS ? dayMs : dayMs + msPerDay;
}

export function storeOfBody({ body }: AnyEntry): string | undefined {
  if ('store' in body && typeof body.store === 'string') return body.store;
  return 'to' in body && typeof body.to === 'string' ? body.to : undefined;
}

/** A second line on one day, and a line hours away from its time. */
export function askLineTime(fold: Fold, entry: Entry<'day-line'>): void {
  const { line } = fold.habits;
  const { day, peopleAboard } = entry.body;
  const atMs = entry.happenedAtMs;
  fold.habits.line = { day, atMs, entry: entry.id, ref: refOf(entry), people: peopleAboard };
  if (line !== null && (line.day === day || atMs - line.atMs < msPerDay / 2)) {
    const data = { why: 'line twice', day, otherRef: line.ref, otherAtMs: line.atMs };
    const entries = [line.entry];
    noteEntry(fold, entry, { code: 'time-implausible', severity: 'act-today', data, entries });
    return;
  }
  const dueMs = dayLineUtcMs(day, fold.dayRule);
  const apartMs = Math.min(...[-1, 0, 1].map((days) => Math.abs(atMs - dueMs - days * msPerDay)));
  if (apartMs <= LINE_APART_MS) return;
  const data = { why: 'line hour', minutes: apartMs / msPerMinute, dueMs };
  noteEntry(fold, entry, { code: 'time-implausible', severity: 'act-today', data });
}
