// What the rest of a log stands on: Day 1, the instant of the stocks, and that it is a log of this outpost in this format.
import { parseInstantIso } from '../../ground/units/index.ts';
import type { LogFindings } from './log-finding.ts';
import { compareLineIds } from './order.ts';
import type { RawLine } from './raw-lines.ts';
import { DATE_PATTERN } from './shape/atoms.ts';
import { LOG_FORMAT, LOG_VERSION } from './shape/opening.ts';
import { shown } from './shape/shown.ts';

/** What the book knows already, for a log that goes on without an opening line of its own. */
export interface EarlierLog {
  /** 00:00 of Day 1. */
  readonly dayOneMs: number;
  /** Instant of the opening stocks. */
  readonly openingMs?: number;
  /** Stores and vehicles that came with visits before. */
  readonly stores?: readonly string[];
  readonly vehicles?: readonly string[];
  /** Lines of this log that the book has: id, and when it was known. */
  readonly lines?: readonly { readonly ref: string; readonly enteredAtMs: number }[];
}

export interface OpeningFacts {
  /** Null: the opening line does not say it in a way that can be read. */
  readonly dayOneMs: number | null;
  readonly openingMs: number | null;
}

/** Null when the log is not for this outpost, or tells no beginning: then nothing of it can be taken. */
export function findOpening(
  raws: readonly RawLine[],
  known: { readonly outpostName: string; readonly earlier: EarlierLog | undefined },
  findings: LogFindings,
): OpeningFacts | null {
  const openings = raws.filter(({ value }) => value['kind'] === 'opening_balance').sort(byId);
  const first = openings[0];
  if (first === undefined) {
    if (known.earlier !== undefined) return { openingMs: null, ...known.earlier };
    findings.whole('log-opening-missing');
    return null;
  }
  for (const other of openings.slice(1)) {
    if (first.value['id'] === other.value['id']) continue;
    findings.error(other.line, 'log-opening-twice', { otherLine: first.line }, 'kind');
  }
  return isForUs(first, known.outpostName, findings) ? factsOf(first, known.earlier, findings) : null;
}

function byId(a: RawLine, b: RawLine): number {
  const order = compareLineIds(shown(a.value['id']), shown(b.value['id']));
  return order === 0 ? a.line - b.line : order;
}

/** A field of the wrong type is for the judge of shapes; here only what is well said and not ours. */
function isForUs({ line, value }: RawLine, outpostName: string, findings: LogFindings): boolean {
  const { format, version, outpost } = value;
  if (typeof format === 'string' && format !== LOG_FORMAT) {
    findings.error(line, 'log-format-other', { received: shown(format), wanted: LOG_FORMAT }, 'format');
    return false;
  }
  if (typeof version === 'number' && version > LOG_VERSION) {
    findings.error(line, 'log-version-newer', { received: shown(version), known: LOG_VERSION }, 'version');
    return false;
  }
  if (typeof outpost === 'string' && outpost !== outpostName) {
    findings.error(line, 'log-outpost-other', { received: shown(outpost), wanted: outpostName }, 'outpost');
    return false;
  }
  return true;
}

function factsOf(
  opening: RawLine,
  earlier: EarlierLog | undefined,
  findings: LogFindings,
): OpeningFacts | null {
  const { line, value } = opening;
  const dayOneMs = readDate(value['day_1']);
  const asOf = typeof value['as_of'] === 'string' ? parseInstantIso(value['as_of']) : null;
  if (dayOneMs === undefined) {
    findings.error(line, 'log-date-wrong', { received: shown(value['day_1']) }, 'day_1');
  }
  if (earlier !== undefined && typeof dayOneMs === 'number' && dayOneMs !== earlier.dayOneMs) {
    findings.error(line, 'log-opening-other', { receivedMs: dayOneMs, wantedMs: earlier.dayOneMs }, 'day_1');
    return null;
  }
  return { dayOneMs: dayOneMs ?? null, openingMs: asOf?.ok ? asOf.instant.utcMs : null };
}

/** 00:00 UTC of a date. Null: no date by its form. Undefined: not in the calendar, or before 1970, where no entry id reaches. */
function readDate(text: unknown): number | null | undefined {
  if (typeof text !== 'string' || !DATE_PATTERN.test(text)) return null;
  const read = parseInstantIso(`${text}T00:00Z`);
  return read.ok && read.instant.utcMs >= 0 ? read.instant.utcMs : undefined;
}
