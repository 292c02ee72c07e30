// From lines of text to plain objects: line ends, blanks and caps dealt with, everything else still to be judged.
import type { LogFindings } from './log-finding.ts';
import { repeatedKey } from './repeated-key.ts';
import { kindOf, shown } from './shape/shown.ts';

/** No line of a log is this long: one is read by a person. UTF-16 units. */
export const LONGEST_LINE = 1_000_000;
/** More lines than a hundred years of a small outpost. */
export const MOST_LINES = 200_000;

export interface RawLine {
  /** Counts from 1. */
  readonly line: number;
  readonly value: Readonly<Record<string, unknown>>;
}

export interface RawLog {
  readonly raws: readonly RawLine[];
  /** Numbers of lines that are not blank, those that could not be read inside. */
  readonly told: readonly number[];
}

/** A byte order mark belongs to the file, and a carriage return to the end of a line: neither says anything. */
function bare(text: string, line: number): string {
  const from = line === 1 && text.startsWith('\uFEFF') ? 1 : 0;
  return text.slice(from, text.endsWith('\r') ? -1 : undefined);
}

/** Blank lines are passed over. A last line that breaks off in the middle is told from one that is no JSON. */
export function readRawLines(lines: Iterable<string>, findings: LogFindings): RawLog {
  const raws: RawLine[] = [];
  const told: number[] = [];
  let broken: { readonly line: number; readonly text: string } | null = null;
  let line = 0;
  for (const given of lines) {
    line += 1;
    const text = bare(given, line);
    if (text.length <= LONGEST_LINE && text.trim() === '') continue;
    if (line > MOST_LINES) {
      findings.whole('log-too-many-lines', { most: MOST_LINES });
      break;
    }
    told.push(line);
    if (broken !== null) sayBroken(broken, false, findings);
    broken = null;
    const value = parseLine(text, line, findings);
    if (value === undefined) broken = { line, text };
    else if (value !== null) raws.push({ line, value });
  }
  if (broken !== null) sayBroken(broken, true, findings);
  return { raws, told };
}

/** The object of a line; null when the fault was said; undefined when it is no JSON at all. */
function parseLine(text: string, line: number, findings: LogFindings): RawLine['value'] | null | undefined {
  if (text.length > LONGEST_LINE) {
    findings.error(line, 'log-line-too-long', { length: text.length, longest: LONGEST_LINE });
    return null;
  }
  let value: unknown;
  try {
    value = JSON.parse(text);
  } catch {
    return undefined;
  }
  if (typeof value !== 'object' || value === null || Array.isArray(value)) {
    findings.error(line, 'log-line-no-object', { receivedKind: kindOf(value) });
    return null;
  }
  const key = repeatedKey(text);
  if (key === null) return value as RawLine['value'];
  findings.error(line, 'log-key-twice', { key: shown(key) });
  return null;
}

function sayBroken(broken: { line: number; text: string }, last: boolean, findings: LogFindings): void {
  const text = broken.text.trim();
  const torn = last && text.startsWith('{') && !text.endsWith('}');
  findings.error(broken.line, torn ? 'log-line-torn' : 'log-line-no-json', {
    received: shown(torn ? text.slice(-40) : text),
  });
}
