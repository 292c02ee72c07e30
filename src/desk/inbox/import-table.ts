// Takes a table into the book: good lines become entries, doubtful ones wait with their reasons, known ones add nothing.
import type { AnyDraft, AnyEntry } from '../../book/index.ts';
import type { Finding } from '../../ground/units/index.ts';
import {
  entryInWords,
  sameReason,
  type TableLine,
  type TableSheet,
  wordFinding,
} from '../../papers/index.ts';
import { type Answer, no, yes } from '../answer.ts';
import { type Desk, type Moment, positionAt } from '../desk.ts';
import { deskFinding } from '../desk-finding.ts';
import type { Context } from '../log/context.ts';
import { wordOf } from '../today.ts';
import { bookSpan } from './book-span.ts';
import { findHeadings } from './headings.ts';
import { inboxFinding } from './inbox-finding.ts';
import {
  isSameMatching,
  knownMatching,
  matchingBody,
  matchingDraft,
  signatureOf,
  withKnown,
} from './known-matching.ts';
import { meaningsOf } from './match-heading.ts';
import { spellMeaning, spellZone } from './meaning.ts';
import type { TableOptions } from './options.ts';
import { readSheet, type SheetRead } from './read-table.ts';
import type { Sheet } from './sheet.ts';
import { type SortedRow, sortRows } from './sort-rows.ts';
import type { Table } from './table.ts';
import { Vocabulary } from './vocabulary.ts';
import { findingOf, settledDraft, waitingDraft } from './waiting.ts';

/** More lines than this are asked about first. */
const MANY_LINES = 100;
/** Findings of the account that are told with an import. */
const MOST_FINDINGS = 12;

export interface TableImport {
  readonly table: Table;
  readonly options?: TableOptions;
  readonly dryRun?: boolean;
  /** Somebody said yes to many lines. */
  readonly sure?: boolean;
  /** Why lines of closed days come now. */
  readonly late?: string;
}

export async function importTable(
  desk: Desk,
  moment: Moment,
  request: TableImport,
): Promise<Answer<TableSheet>> {
  const opened = await desk.account();
  if (!opened.ok) return opened;
  const { fold } = opened.value;
  if (fold.openingMs === null) return no('wrong use', deskFinding('book-not-begun', { what: 'opening' }));
  const offices = [...fold.index.offices.keys()];
  if (!offices.includes(moment.by))
    return no('bad input', deskFinding('office-unknown', { office: moment.by.slice(0, 60), offices }));
  const context: Context = { desk, fold, moment, presentMs: desk.enteringMs(fold, moment) };
  const matching = await matchingOf(context, request);
  const read = readWith(context, request, matching);
  if (!read.ok)
    return no('bad input', ...read.findings.map((finding) => inFile(finding, request.table.file)));
  const sorted = await sortRows(context, read, { ...request, hash: desk.hash });
  const work: Work = {
    context,
    request,
    matching,
    read: { ...read, sheet: sorted.sheet },
    rows: sorted.rows,
  };
  const fresh = work.rows.filter(({ what }) => what === 'entry' || what === 'waits').length;
  if (request.dryRun === true) return yes(sheetOf(work, { remembered: isNewMatching(work), findings: [] }));
  if (fresh > MANY_LINES && request.sure !== true)
    return no('ask first', inboxFinding('many-lines', { lines: fresh }, {}, 'know'));
  return await keepRows(work);
}

interface Matching {
  readonly signature: string;
  readonly known: Awaited<ReturnType<typeof knownMatching>>;
}

interface Work {
  readonly context: Context;
  readonly request: TableImport;
  readonly matching: Matching;
  readonly read: Extract<SheetRead, { ok: true }>;
  readonly rows: readonly SortedRow[];
}

async function matchingOf({ desk, fold }: Context, { table }: TableImport): Promise<Matching> {
  const vocabulary = new Vocabulary(fold);
  const headings = findHeadings(table, (text) => meaningsOf(text, vocabulary).length > 0)?.headings ?? [];
  const signature = signatureOf(desk.hash, headings);
  return { signature, known: await knownMatching(desk, signature) };
}

function readWith({ desk, fold, presentMs }: Context, request: TableImport, { known }: Matching): SheetRead {
  const { options = {} } = request;
  return readSheet(request.table, {
    vocabulary: new Vocabulary(fold),
    span: bookSpan(desk, fold, presentMs),
    options: withKnown(options, known),
    // What a heading says by itself is read anew: names may have come aboard since.
    known: new Map(
      known?.columns.filter(({ means }) => means !== '').map(({ heading, means }) => [heading, means]),
    ),
    zoneKnown: options.zoneMin === undefined,
  });
}

function inFile(finding: Finding, file: string): Finding {
  return { ...finding, where: { file, ...finding.where } };
}

function isNewMatching({ read, matching, request }: Work): boolean {
  const body = matchingBody(read.sheet, matching.signature, declaredOf(request, matching));
  return matching.known === null || !isSameMatching(matching.known, body);
}

function declaredOf({ options = {} }: TableImport, { known }: Matching): TableOptions {
  return withKnown(options, known);
}

/** Entries, lines that wait, settlements of lines that waited, and the matching: all of it in one append, or none. */
async function keepRows(work: Work): Promise<Answer<TableSheet>> {
  const { context, rows, read, matching, request } = work;
  const { desk, moment, presentMs } = context;
  const taken = rows.filter(({ what }) => what === 'entry');
  const waiting = rows.filter(({ what }) => what === 'waits');
  const isNew = rows.length > 0 && isNewMatching(work);
  const at = (id: string) => ({ id, presentMs, moment });
  const drafts: AnyDraft[] = taken.flatMap((row) => row.drafts);
  for (const row of waiting) drafts.push(waitingDraft(row.reading, row.key, at(row.waitingId)));
  for (const row of taken) {
    if (!row.waited) continue;
    const body = { line: row.waitingId, how: 'taken', entries: row.drafts.map(({ id }) => id) } as const;
    drafts.push(settledDraft(body, at(desk.newId(presentMs))));
  }
  if (isNew) {
    const body = matchingBody(read.sheet, matching.signature, declaredOf(request, matching));
    const id = desk.newId(presentMs);
    drafts.push(matchingDraft(body, { id, ms: presentMs, offsetMin: moment.offsetMin, by: moment.by }));
  }
  const kept = await desk.keep(drafts, moment);
  if (!kept.ok) return kept;
  const findings = await findingsAbout(desk, moment, kept.value.kept);
  return yes(sheetOf(work, { remembered: isNew, findings }));
}

async function findingsAbout(
  desk: Desk,
  moment: Moment,
  kept: readonly AnyEntry[],
): Promise<TableSheet['findings']> {
  const ids = new Set(kept.map(({ id }) => id));
  const seen = await positionAt(desk, { kind: 'now' }, moment);
  if (!seen.ok) return [];
  return seen.value.findings
    .filter(({ where }) => where.entry !== undefined && ids.has(where.entry))
    .sort((a, b) => a.atMs - b.atMs)
    .map((finding) => wordOf(seen.value, finding));
}

function sheetOf(
  work: Work,
  more: { readonly remembered: boolean; readonly findings: TableSheet['findings'] },
): TableSheet {
  const { request, read, rows, context } = work;
  const { sheet } = read;
  const words = { dayRule: context.fold.dayRule, mgPerL: context.fold.mgPerL };
  const unsaid = zoneUnsaid(sheet, rows);
  const told = [...unsaid, ...read.findings].map((finding) =>
    wordFinding(inFile(finding, sheet.file), words),
  );
  const count = (what: TableLine['what']) => rows.filter((row) => row.what === what).length;
  const taken = rows.filter(({ what }) => what === 'entry');
  const shown = request.dryRun === true ? rows : rows.filter(isTold);
  return {
    file: sheet.file,
    format: request.table.format,
    shape: sheet.shape,
    columns: columnsOf(sheet),
    zone: { offset: spellZone(sheet.zoneMin), by: sheet.zoneBy },
    dates: sheet.order === 'open' ? null : sheet.order,
    lines: rows.length,
    taken: taken.length,
    entries: taken.reduce((sum, { drafts }) => sum + drafts.length, 0),
    known: count('known'),
    waiting: count('waits'),
    settled: taken.filter(({ waited }) => waited).length,
    saysNothing: count('says nothing'),
    remembered: more.remembered,
    preview: reasonsOnce(shown.map((row) => lineOf(row, work))),
    findings: [...told, ...more.findings.slice(0, MOST_FINDINGS)],
    moreFindings: Math.max(0, more.findings.length - MOST_FINDINGS),
    dryRun: request.dryRun === true,
  };
}

/** Days say by their evening line which clock they are of; acts say nothing, and are read by that of the outpost. */
function zoneUnsaid({ shape, zoneBy, zoneMin }: Sheet, rows: readonly SortedRow[]): readonly Finding[] {
  if (shape !== 'acts' || zoneBy !== 'outpost clock' || rows.length === 0) return [];
  return [inboxFinding('sheet-zone-unsaid', { offset: spellZone(zoneMin) }, {}, 'know')];
}

/** One cause of many lines is told of the first of them; the others name it. */
const ONE_CAUSE: ReadonlySet<string> = new Set(['row-day-closed']);

function reasonsOnce(lines: readonly TableLine[]): readonly TableLine[] {
  const first = new Map<string, number>();
  return lines.map((line) => {
    const told = line.reasons.filter(({ code }) => ONE_CAUSE.has(code) && first.has(code));
    for (const { code } of line.reasons) if (!first.has(code)) first.set(code, line.line);
    if (told.length === 0) return line;
    const as = first.get(told[0]?.code ?? '') ?? 0;
    return { ...line, text: sameReason(as), reasons: line.reasons.filter((each) => !told.includes(each)) };
  });
}

/** After an import: lines that wait, and lines that stand twice in one table. */
function isTold({ what, knownAs }: SortedRow): boolean {
  return what === 'waits' || (what === 'known' && knownAs?.startsWith('line ') === true);
}

function columnsOf({ columns }: Sheet): TableSheet['columns'] {
  return columns.map(({ heading, meaning, leftOut }) => ({
    heading,
    means: meaning === null ? '' : spellMeaning(meaning),
    leftOut,
  }));
}

function lineOf({ reading, what, drafts, knownAs }: SortedRow, { context, read }: Work): TableLine {
  const { fold } = context;
  const words = { mgPerL: fold.mgPerL, dayRule: fold.dayRule, instruments: fold.index.instruments };
  const headings = read.sheet.columns.map(({ heading }) => heading);
  const at = { file: read.sheet.file, line: reading.row.line, headings };
  const said =
    what === 'entry' ? drafts.map((draft) => entryInWords(draft, words)).join('; ') : (knownAs ?? '');
  return {
    line: reading.row.line,
    what,
    text: said,
    reasons: what === 'waits' ? reading.faults.map((fault) => wordFinding(findingOf(fault, at), words)) : [],
  };
}
