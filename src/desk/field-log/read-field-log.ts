// Reads a field log, version 1: lines of text in, drafts of the book and findings out. Every line is understood or reported.
import type { AnyDraft } from '../../book/index.ts';
import { dayStartUtcMs } from '../../ground/units/index.ts';
import type { OutpostIndex } from '../../outpost/index.ts';
import { type DatingFacts, dateLine, enteredAt } from './dated-lines.ts';
import { draftOf, idOfLine } from './entry-of-line.ts';
import { factsOfLog } from './facts-of-log.ts';
import { type FieldLogFinding, LogFindings } from './log-finding.ts';
import { bodyOf } from './map/body-of.ts';
import { LineAt, type LogFacts } from './map/line-at.ts';
import { type EarlierLog, findOpening, type OpeningFacts } from './opening-facts.ts';
import { compareLineIds } from './order.ts';
import { type RawLine, readRawLines } from './raw-lines.ts';
import { type JudgedLine, sortOutIds } from './same-ids.ts';
import { judgeLine } from './shape/judge-line.ts';
import { shown } from './shape/shown.ts';

export interface FieldLogRequest {
  readonly outpost: OutpostIndex;
  /** Name of the file, for the findings. */
  readonly file: string;
  /** What the book knows, for a log that goes on without an opening line. */
  readonly context?: EarlierLog;
  /** Only lines with `t` up to the end of this calendar day are taken; all of them are judged. */
  readonly until?: { readonly day: number };
  /** The present, where there is one: a line cannot tell of what has not happened yet. A practice log lives in its own time. */
  readonly nowMs?: number;
}

export interface FieldLogRead {
  /** In the order of writing. */
  readonly drafts: readonly AnyDraft[];
  /** Lines that were understood, repeated ones and those after `until` among them. */
  readonly understood: number;
  /** Understood lines that `until` leaves out. */
  readonly later: number;
  readonly notUnderstood: readonly UnreadLine[];
  readonly findings: readonly FieldLogFinding[];
  /** Where an entry stands in the file, by its id. */
  readonly lineOf: ReadonlyMap<string, number>;
}

export interface UnreadLine {
  readonly line: number;
  /** What the line calls itself, where that can be read. */
  readonly ref: string | null;
  readonly kind: string | null;
}

/**
 * A line with a fault is not taken and nothing of it is guessed; the others are. What to do with the rest is the caller's.
 * @example readFieldLog(text.split('\n'), { outpost: indexOutpost(outpost), file: 'field-log.jsonl' })
 */
export function readFieldLog(lines: Iterable<string>, request: FieldLogRequest): FieldLogRead {
  const findings = new LogFindings(request.file);
  const { raws, told } = readRawLines(lines, findings);
  const known = { outpostName: request.outpost.outpost.outpost.name, earlier: request.context };
  const opening = findOpening(raws, known, findings);
  const entries = opening === null ? nothing : readLines(raws, opening, request, findings);
  const unread = told.filter((line) => !entries.understood.has(line));
  return {
    drafts: entries.drafts,
    understood: told.length - unread.length,
    later: entries.later,
    notUnderstood: describe(unread, raws),
    findings: findings.all(),
    lineOf: entries.lineOf,
  };
}

interface ReadEntries {
  readonly drafts: AnyDraft[];
  readonly lineOf: Map<string, number>;
  /** Numbers of the lines that were understood. */
  readonly understood: Set<number>;
  readonly later: number;
}

const nothing: ReadEntries = { drafts: [], lineOf: new Map(), understood: new Set(), later: 0 };

function readLines(
  raws: readonly RawLine[],
  opening: OpeningFacts,
  request: FieldLogRequest,
  findings: LogFindings,
): ReadEntries {
  const judged = raws.flatMap((raw) => judgeAndDate(raw, { ...opening, nowMs: request.nowMs }, findings));
  const { dayOneMs } = opening;
  if (dayOneMs === null) return nothing;
  const { single, repeated } = sortOutIds(judged, findings);
  const { outpost: index, context: earlier } = request;
  const lines = single.flatMap(({ line }) => line ?? []);
  const facts = factsOfLog(lines, { index, earlier, dayOneMs });
  const made = makeDrafts(single, { facts, earlier, until: request.until }, findings);
  for (const line of repeated) made.understood.add(line);
  return made;
}

/** Both are asked of every line, so that all of its faults are told at once. */
function judgeAndDate(raw: RawLine, opening: DatingFacts, findings: LogFindings): JudgedLine[] {
  const judged = judgeLine(raw.value);
  if (!judged.ok) for (const fault of judged.faults) findings.add(raw.line, fault);
  const dated = dateLine(raw, opening, findings);
  if (dated === null) return [];
  return [{ dated, line: judged.ok && !findings.isRefused(raw.line) ? judged.line : null }];
}

function makeDrafts(
  judged: readonly JudgedLine[],
  how: {
    readonly facts: LogFacts;
    readonly earlier: EarlierLog | undefined;
    readonly until: FieldLogRequest['until'];
  },
  findings: LogFindings,
): ReadEntries {
  const { facts, earlier } = how;
  const log = { outpostName: facts.index.outpost.outpost.name, dayOneMs: facts.dayOneMs };
  const entered = enteredAt(
    judged.map(({ dated }) => dated),
    earlier?.lines ?? [],
  );
  const endMs = endOf(how.until, facts.dayOneMs);
  const drafts: AnyDraft[] = [];
  const lineOf = new Map<string, number>();
  const understood = new Set<number>();
  let later = 0;
  for (const { dated, line } of [...judged].sort((a, b) => compareLineIds(a.dated.ref, b.dated.ref))) {
    if (line === null) continue;
    const at = new LineAt(facts, dated.happened.utcMs);
    const made = bodyOf(line, at);
    for (const fault of at.faults) findings.add(dated.line, fault);
    if (findings.isRefused(dated.line)) continue;
    understood.add(dated.line);
    if (dated.happened.utcMs >= endMs) {
      later += 1;
      continue;
    }
    const id = idOfLine(log, dated.ref);
    // Stocks are those of `as_of`: what happened between then and the writing of the line comes after them.
    const happened =
      made.kind === 'opening' ? { ...dated.happened, utcMs: made.body.asOfMs } : dated.happened;
    drafts.push(draftOf(line, made, { id, happened, entered: entered.get(dated.ref) ?? dated.happened }));
    lineOf.set(id, dated.line);
  }
  return { drafts, lineOf, understood, later };
}

/** The first instant after a calendar day. */
function endOf(until: FieldLogRequest['until'], dayOneMs: number): number {
  if (until === undefined) return Number.POSITIVE_INFINITY;
  return dayStartUtcMs(until.day + 1, { dayOneUtcMs: dayOneMs, lineMinuteOfDay: 0 });
}

function describe(unread: readonly number[], raws: readonly RawLine[]): UnreadLine[] {
  const values = new Map(raws.map(({ line, value }) => [line, value]));
  const said = (word: unknown) => (typeof word === 'string' ? shown(word) : null);
  return unread.map((line) => {
    const value = values.get(line);
    return { line, ref: said(value?.['id']), kind: said(value?.['kind']) };
  });
}
