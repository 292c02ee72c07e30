// Lines out and lines in: exports of the book, and imports of exports and of field logs.

import type { Fold } from '../account/index.ts';
import {
  type AnyDraft,
  acceptLines,
  bookDigest,
  type CheckResult,
  checkBook,
  type ExportHeader,
  entryOf,
  exportLines,
  type Head,
  readHeader,
  type Since,
} from '../book/index.ts';
import type { Finding } from '../ground/units/index.ts';
import { type WordedFinding, wordFinding } from '../papers/index.ts';
import { type Answer, no, yes } from './answer.ts';
import { type Desk, type Moment, positionAt } from './desk.ts';
import { deskFinding } from './desk-finding.ts';
import { readFieldLog } from './field-log/index.ts';
import { wordOf } from './today.ts';

/** An import of more entries than this is asked about first. */
export const MANY_ENTRIES = 100;

export interface ImportResult {
  readonly format: 'field log' | 'waterwright book';
  readonly understood: number;
  readonly added: number;
  readonly alreadyKept: number;
  /** Lines that were not taken, and why. */
  readonly notTaken: readonly Finding[];
  /** What the account has to say about the entries that came in. */
  readonly findings: readonly WordedFinding[];
  readonly dryRun: boolean;
}

export interface ImportRequest {
  readonly file: string;
  readonly lines: readonly string[];
  readonly untilDay?: number;
  readonly dryRun?: boolean;
  /** Somebody said yes to many entries. */
  readonly sure?: boolean;
}

export type HeaderRead =
  | { readonly ok: true; readonly value: Pick<ExportHeader, 'site' | 'purpose'> }
  | { readonly ok: false; readonly finding: Finding };

/** Whose book an export was made of; null when the lines are no export, a finding when it is one of a newer program. */
export function exportHeader(lines: readonly string[]): HeaderRead | null {
  const read = readHeader(lines.find((line) => line.trim() !== '') ?? '');
  if (read.ok) return { ok: true, value: { site: read.header.site, purpose: read.header.purpose } };
  return read.finding.code === 'shape-newer' ? { ok: false, finding: read.finding } : null;
}

/** Takes a file whose format shows in its first line. */
export async function importLines(
  desk: Desk,
  moment: Moment,
  request: ImportRequest,
): Promise<Answer<ImportResult>> {
  const first = request.lines.find((line) => line.trim() !== '') ?? '';
  const header = exportHeader(request.lines);
  if (header !== null)
    return header.ok ? await importExport(desk, moment, request) : no('bad input', header.finding);
  if (first.trimStart().startsWith('{') || first.trimStart().startsWith('\ufeff{'))
    return importFieldLog(desk, moment, request);
  return no(
    'bad input',
    deskFinding(
      'format-unknown',
      { file: request.file, formats: ['field log', 'waterwright book export'] },
      { where: { file: request.file, line: 1 } },
    ),
  );
}

async function importFieldLog(
  desk: Desk,
  moment: Moment,
  request: ImportRequest,
): Promise<Answer<ImportResult>> {
  const opened = await desk.account();
  if (!opened.ok) return opened;
  const { fold } = opened.value;
  const read = readFieldLog(request.lines, {
    outpost: fold.index,
    file: request.file,
    ...(fold.openingMs !== null && { context: await earlierLog(desk, fold) }),
    ...(request.untilDay !== undefined && { until: { day: request.untilDay } }),
    ...(desk.info.purpose !== 'practice' && { nowMs: moment.nowUtcMs }),
  });
  const notTaken = read.findings.filter((finding) => finding.severity === 'error');
  // What is odd in a line that was taken is told beside what the account has to say.
  const told = read.findings
    .filter((finding) => finding.severity !== 'error')
    .map((finding) => wordFinding(finding, { dayRule: fold.dayRule }));
  if (read.drafts.length === 0) return no('bad input', ...notTaken);
  const fresh = await freshOf(desk, read.drafts);
  if (fresh.length > MANY_ENTRIES && request.sure !== true && request.dryRun !== true) {
    return no('ask first', deskFinding('many-entries', { entries: fresh.length }, { severity: 'know' }));
  }
  const counted = { format: 'field log' as const, understood: read.understood, notTaken };
  if (request.dryRun === true)
    return yes({
      ...counted,
      added: fresh.length,
      alreadyKept: read.drafts.length - fresh.length,
      findings: told,
      dryRun: true,
    });
  const kept = await desk.keep(read.drafts, { nowUtcMs: moment.nowUtcMs });
  if (!kept.ok) return kept;
  const ids = new Set(kept.value.kept.map((entry) => entry.id));
  return yes({
    ...counted,
    added: kept.value.kept.length,
    alreadyKept: kept.value.alreadyKept.length,
    findings: [...told, ...(await findingsAbout(desk, moment, ids))],
    dryRun: false,
  });
}

/** What a log that goes on needs to know of the one before it. */
async function earlierLog(desk: Desk, fold: Fold) {
  const lines: { ref: string; enteredAtMs: number }[] = [];
  for await (const rows of desk.port.scan({ order: 'site' })) {
    for (const entry of rows.map(entryOf)) {
      if (entry.origin?.format === 'field log')
        lines.push({ ref: entry.origin.ref, enteredAtMs: entry.enteredAtMs });
    }
  }
  const { openingMs, dayRule } = fold;
  return {
    dayOneMs: dayRule.dayOneUtcMs,
    ...(openingMs !== null && { openingMs }),
    stores: [...fold.stores.keys()],
    vehicles: [...fold.visits.keys()],
    lines,
  };
}

async function freshOf(desk: Desk, drafts: readonly AnyDraft[]): Promise<AnyDraft[]> {
  const fresh: AnyDraft[] = [];
  for (const draft of drafts) if ((await desk.port.find(draft.id)) === null) fresh.push(draft);
  return fresh;
}

async function findingsAbout(
  desk: Desk,
  moment: Moment,
  ids: ReadonlySet<string>,
): Promise<readonly WordedFinding[]> {
  const seen = await positionAt(desk, { kind: 'now' }, moment);
  if (!seen.ok) return [];
  return [...seen.value.findings]
    .filter((finding) => finding.where.entry !== undefined && ids.has(finding.where.entry))
    .sort((a, b) => a.atMs - b.atMs)
    .map((finding) => wordOf(seen.value, finding));
}

async function importExport(
  desk: Desk,
  moment: Moment,
  request: ImportRequest,
): Promise<Answer<ImportResult>> {
  const { lines } = request;
  const start = lines.findIndex((line) => line.trim() !== '') + 1;
  if (request.dryRun === true) {
    const data = { reason: 'an export is taken whole or not at all; it has no preview' };
    return no('wrong use', deskFinding('line-not-taken', data, { where: { file: request.file } }));
  }
  const accepted = await acceptLines(desk.port, lines.slice(start), {
    hash: desk.hash,
    keptAtMs: moment.nowUtcMs,
    firstLine: start + 1,
  });
  if (!accepted.ok)
    return no(
      'bad input',
      ...accepted.findings.map((finding) => ({
        ...finding,
        where: { ...finding.where, file: request.file },
      })),
    );
  desk.forget();
  return yes({
    format: 'waterwright book',
    understood: accepted.accepted + accepted.alreadyKept,
    added: accepted.accepted,
    alreadyKept: accepted.alreadyKept,
    notTaken: [],
    findings: [],
    dryRun: false,
  });
}

export function exportBook(desk: Desk, since: Since = []): AsyncIterable<string> {
  return exportLines(desk.port, since);
}

export async function digestOf(desk: Desk): Promise<string> {
  return bookDigest(desk.hash, await desk.port.heads());
}

/** Chain, receipt, and a rebuild of the account that must close to nothing. */
export async function checkWhole(
  desk: Desk,
  moment: Moment,
  receipt: readonly Head[],
): Promise<CheckResult & { readonly closureMg: number | null }> {
  const check = await checkBook(desk.port, { hash: desk.hash, receipt });
  const seen = await positionAt(desk, { kind: 'now' }, moment);
  return { ...check, closureMg: seen.ok ? seen.value.closureMg : null };
}
