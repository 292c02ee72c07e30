// When each line happened and when it was known: `t` and `day` held against each other, and the order of writing.
import { dayOf, type Instant, isInRange, msPerMinute, parseInstantIso } from '../../ground/units/index.ts';
import type { LogFindings } from './log-finding.ts';
import type { OpeningFacts } from './opening-facts.ts';
import { compareLineIds } from './order.ts';
import type { RawLine } from './raw-lines.ts';
import { LINE_ID_PATTERN } from './shape/atoms.ts';
import { shown } from './shape/shown.ts';

export interface DatedLine {
  readonly line: number;
  readonly ref: string;
  readonly happened: Instant;
}

/** What the times of a log are held against. */
export type DatingFacts = OpeningFacts & { readonly nowMs?: number | undefined };

/** Clocks of one outpost differ by a little. */
const SLACK_MS = 2 * msPerMinute;

/** Id and time of a line, whatever else may be wrong with it; null when one of the two does not stand. */
export function dateLine(raw: RawLine, opening: DatingFacts, findings: LogFindings): DatedLine | null {
  const { id, t, day } = raw.value;
  const happened = typeof t === 'string' ? readTime(t, raw, findings) : null;
  if (happened === null || typeof id !== 'string' || !LINE_ID_PATTERN.test(id)) return null;
  const { dayOneMs, openingMs, nowMs } = opening;
  if (dayOneMs === null || !isDayRight({ happened, day, dayOneMs }, raw, findings)) return null;
  // Of the opening line itself it is said at its `as_of`.
  if (openingMs !== null && happened.utcMs < openingMs && raw.value['kind'] !== 'opening_balance') {
    const data = { t: shown(t), happenedAtMs: happened.utcMs, asOfMs: openingMs };
    findings.error(raw.line, 'log-before-opening', data, 't');
    return null;
  }
  // A log whose opening lies ahead keeps another calendar than this clock: by it nothing can be told.
  const keepsCalendar = nowMs !== undefined && openingMs !== null && openingMs <= nowMs;
  if (keepsCalendar && happened.utcMs > nowMs + SLACK_MS) {
    findings.error(raw.line, 'log-in-future', { t: shown(t), happenedAtMs: happened.utcMs, nowMs }, 't');
    return null;
  }
  return { line: raw.line, ref: id, happened };
}

function readTime(text: string, raw: RawLine, findings: LogFindings): Instant | null {
  const read = parseInstantIso(text);
  if (read.ok && isInRange(read.instant.utcMs)) return read.instant;
  const problem = read.ok
    ? { received: shown(text), earliest: 1900, latest: 2999, problem: 'time-year-out-of-range' }
    : { ...read.finding.data, problem: read.finding.code };
  findings.error(raw.line, 'log-time-wrong', problem, 't');
  return null;
}

/** Two ways to say one day: when they differ nobody knows which of them is the slip. */
function isDayRight(
  told: { readonly happened: Instant; readonly day: unknown; readonly dayOneMs: number },
  raw: RawLine,
  findings: LogFindings,
): boolean {
  const day = dayOf(told.happened.utcMs, { dayOneUtcMs: told.dayOneMs, lineMinuteOfDay: 0 });
  // A day of the wrong type is for the judge of shapes.
  if (typeof told.day !== 'number' || told.day === day) return true;
  findings.error(raw.line, 'log-day-differs', { said: told.day, day, t: shown(raw.value['t']) }, 'day');
  return false;
}

/**
 * Entered-at of every line: the latest `t` among all lines with an id not above its own, those of the book among them.
 * A log has no time of writing; this is the earliest one that fits the order of its ids.
 */
export function enteredAt(
  dated: readonly DatedLine[],
  earlier: readonly { readonly ref: string; readonly enteredAtMs: number }[],
): ReadonlyMap<string, Instant> {
  const known = earlier.map(({ ref, enteredAtMs }) => ({
    ref,
    happened: { utcMs: enteredAtMs, offsetMin: 0 },
  }));
  const ordered = [...known, ...dated].sort((a, b) => compareLineIds(a.ref, b.ref));
  const entered = new Map<string, Instant>();
  let latest: Instant | null = null;
  for (const { ref, happened } of ordered) {
    if (latest === null || happened.utcMs > latest.utcMs) latest = happened;
    entered.set(ref, latest);
  }
  return entered;
}
