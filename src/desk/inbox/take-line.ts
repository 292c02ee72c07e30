// Taking a line that waits: its cells with what somebody adds, read again, asked by the rules, and kept with a link.
import type { Fold } from '../../account/index.ts';
import { type AnyDraft, type Entry, entryOf } from '../../book/index.ts';
import { type Finding, formatShortStamp, msPerDay } from '../../ground/units/index.ts';
import { entryInWords, type InboxLine, type TakenSheet } from '../../papers/index.ts';
import { type Answer, no, yes } from '../answer.ts';
import type { Desk, Moment } from '../desk.ts';
import type { Context } from '../log/context.ts';
import { objections } from '../log/intention.ts';
import { makeDraft } from '../log/make.ts';
import { bookSpan } from './book-span.ts';
import { checkCounters, checkDays, keptDays } from './cross-check.ts';
import { openLine } from './inbox.ts';
import { inboxFinding, quoted } from './inbox-finding.ts';
import { lineNoOf, unitlessIn } from './line-of-inbox.ts';
import type { Column } from './match-columns.ts';
import { unitOf } from './match-heading.ts';
import { type Meaning, ROLES, type Role, readMeaning, spellMeaning } from './meaning.ts';
import { readRow } from './read-table.ts';
import { rowDrafts } from './row-drafts.ts';
import type { RowReading } from './row-reading.ts';
import { roleColumns, type Sheet } from './sheet.ts';
import { bare, Vocabulary } from './vocabulary.ts';
import { findingOf, settledDraft } from './waiting.ts';

/** What somebody says of a line: the unit of its bare numbers, and cells anew, by heading or by meaning. */
export interface TakeFields {
  readonly unit?: string;
  /** `{ store: 'c07' }`, `{ 'Product (L)': '6.9' }`, `{ strokes: '455' }` */
  readonly cells?: Readonly<Record<string, string>>;
  /** It has happened although something speaks against it, because … */
  readonly happened?: string;
  /** Why it comes after its day was closed. */
  readonly late?: string;
  readonly dryRun?: boolean;
}

export async function inboxTake(
  desk: Desk,
  moment: Moment,
  asked: { readonly ref: string; readonly fields: TakeFields },
): Promise<Answer<TakenSheet>> {
  const opened = await desk.account();
  if (!opened.ok) return opened;
  const { fold } = opened.value;
  const line = await openLine(desk, fold, asked.ref);
  if (!line.ok) return line;
  const context: Context = { desk, fold, moment, presentMs: desk.enteringMs(fold, moment) };
  const row = await desk.port.find(line.value.id);
  const entry = row === null ? null : entryOf(row);
  const made =
    entry?.kind === 'waiting-line'
      ? await draftsOfLine(context, entry, asked.fields)
      : await draftsOfNote(context, line.value, asked.fields);
  if (!made.ok) return made;
  const against = asked.fields.happened === undefined ? rulesAgainst(fold, made.value) : [];
  if (against.length > 0) return no('refused', ...against);
  return await keepTaken(context, line.value, made.value, asked.fields);
}

function rulesAgainst(fold: Fold, drafts: readonly AnyDraft[]): readonly Finding[] {
  return drafts.flatMap((draft) => objections(fold, draft));
}

async function draftsOfLine(
  context: Context,
  entry: Entry<'waiting-line'>,
  fields: TakeFields,
): Promise<Answer<readonly AnyDraft[]>> {
  const { desk, fold } = context;
  const changed = changedLine(entry, fields, new Vocabulary(fold));
  if (!changed.ok) return changed;
  const span = bookSpan(desk, fold, context.presentMs);
  const sheet: Sheet = { ...changed.value.sheet, span };
  const isFact = fields.happened !== undefined;
  const reading = readRow(sheet, { line: entry.body.line, cells: changed.value.cells }, isFact);
  if (sheet.shape === 'days' && reading.faults.length === 0 && !isFact) {
    checkDays([reading], await keptDays(desk, fold));
    checkCounters([reading], fold);
  }
  const made = rowDrafts(reading, entry.body.key, { context, hash: desk.hash, late: fields.late });
  if (made.length > 0 && reading.faults.length === 0)
    return yes(
      await withFreeIds(
        context,
        made.map((draft) => withWord(asFact(draft, fields), fields, context.moment.by)),
      ),
    );
  return no('bad input', ...stillDoubtful(reading, entry));
}

/** A line that was taken, undone, and is taken again is told anew: what was undone keeps its id. */
async function withFreeIds(
  { desk, presentMs }: Context,
  drafts: readonly AnyDraft[],
): Promise<readonly AnyDraft[]> {
  const free: AnyDraft[] = [];
  for (const draft of drafts) {
    const isTaken = (await desk.port.find(draft.id)) !== null;
    free.push(isTaken ? { ...draft, id: desk.newId(presentMs) } : draft);
  }
  return free;
}

function asFact(draft: AnyDraft, { happened }: TakeFields): AnyDraft {
  return happened === undefined ? draft : { ...draft, happened };
}

/** What somebody added to a line stands beside what the line says, with who said it. */
function withWord(draft: AnyDraft, { unit, cells = {} }: TakeFields, by: string): AnyDraft {
  const told = [
    ...(unit === undefined ? [] : [`unit ${unit}`]),
    ...Object.entries(cells).map(([name, text]) => `${name} ${text}`),
  ];
  if (told.length === 0 || draft.by === by) return draft;
  const word = `${told.join(', ')}: said by the ${by}, when the line was taken`;
  return { ...draft, note: draft.note === undefined ? word : `${draft.note}; ${word}` };
}

function stillDoubtful(reading: RowReading, entry: Entry<'waiting-line'>): readonly Finding[] {
  const { file, line } = entry.body;
  const headings = reading.sheet.columns.map(({ heading }) => heading);
  const lineNo = lineNoOf(entry);
  const reasons = reading.faults.map((fault) =>
    findingOf({ ...fault, data: { ...fault.data, lineNo } }, { file, line, headings }),
  );
  return reasons.length > 0 ? reasons : [inboxFinding('line-still-doubtful', { lineNo }, { file, line })];
}

interface Changed {
  readonly sheet: Omit<Sheet, 'span'>;
  readonly cells: readonly string[];
}

/** The line with what was said put into its cells; what it has no column for gets one. */
function changedLine(
  { body }: Entry<'waiting-line'>,
  fields: TakeFields,
  vocabulary: Vocabulary,
): Answer<Changed> {
  const columns: Column[] = body.headings.map((heading, k) =>
    columnOf(heading, body.columns[k] ?? '', vocabulary),
  );
  const cells = columns.map((_, k) => body.cells[k] ?? '');
  const decimals = columns.map((_, k) => decimalOf(body.decimals[k]));
  for (const [name, text] of Object.entries(fields.cells ?? {})) {
    const at = columnNamed(name, columns, vocabulary);
    if (at === null) {
      const names = columns.map(({ heading }) => heading).filter((heading) => heading !== '');
      return no(
        'bad input',
        inboxFinding('sheet-heading-missing', { received: quoted(name), headings: names }),
      );
    }
    if (typeof at !== 'number') columns.push({ heading: name, meaning: at, leftOut: false });
    const place = typeof at === 'number' ? at : columns.length - 1;
    cells[place] = text;
    // What is typed now is typed as everywhere else.
    decimals[place] = { decimal: null, commaSeen: false };
  }
  const unit = fields.unit === undefined ? null : unitOf(fields.unit);
  if (fields.unit !== undefined && unit === null) {
    const data = {
      received: quoted(fields.unit),
      unit: quoted(fields.unit),
      allowed: ['L', 'mL', 'kg', 'g', 'lb', 'gal'],
    };
    return no('bad input', inboxFinding('cell-unit-other', data, { field: 'unit' }));
  }
  const withUnits = columns.map((column) => withUnit(column, unit));
  return yes({ cells, sheet: sheetOf(body, withUnits, { decimals, vocabulary }) });
}

function columnOf(heading: string, means: string, vocabulary: Vocabulary): Column {
  return { heading, meaning: readMeaning(means, vocabulary), leftOut: means === ' ' };
}

function decimalOf(decimal: 'comma' | 'point' | 'open' | undefined): Sheet['decimals'][number] {
  return { decimal: decimal === 'comma' || decimal === 'point' ? decimal : null, commaSeen: true };
}

/** Place of a column, or the meaning of one that the line does not have; null for a word that means nothing. */
function columnNamed(
  name: string,
  columns: readonly Column[],
  vocabulary: Vocabulary,
): number | Meaning | null {
  const byHeading = columns.findIndex(
    ({ heading }) => heading === name || (bare(heading) === bare(name) && bare(name) !== ''),
  );
  if (byHeading >= 0) return byHeading;
  const meaning = readMeaning(name, vocabulary);
  if (meaning === null) return null;
  const key = keyOf(meaning);
  const byMeaning = columns.findIndex((column) => column.meaning !== null && keyOf(column.meaning) === key);
  return byMeaning >= 0 ? byMeaning : meaning;
}

function keyOf({ means }: Meaning): string {
  return spellMeaning({ means, unit: null, zoneMin: null });
}

/** A unit is given to amounts that have none of their own. */
function withUnit(column: Column, unit: string | null): Column {
  const { meaning } = column;
  const isAmount = meaning?.means.what === 'amount' || meaning?.means.what === 'content';
  if (unit === null || meaning === null || !isAmount || meaning.unit !== null) return column;
  return { ...column, meaning: { ...meaning, unit } };
}

function sheetOf(
  body: Entry<'waiting-line'>['body'],
  columns: readonly Column[],
  how: { readonly decimals: Sheet['decimals']; readonly vocabulary: Vocabulary },
): Omit<Sheet, 'span'> {
  const { dayRule } = how.vocabulary.fold;
  return {
    file: body.file,
    shape: body.shape,
    columns,
    vocabulary: how.vocabulary,
    at: roleColumns(columns, ROLES satisfies readonly Role[]),
    decimals: how.decimals,
    order: body.dates ?? null,
    zoneMin: body.zoneMin,
    zoneBy: 'last time',
    dayOneDays: Math.floor(dayRule.dayOneUtcMs / msPerDay),
    besides: columns.flatMap(({ meaning, leftOut }, k) => (meaning === null && !leftOut ? [k] : [])),
    dates: new Map(),
  };
}

/** A note that names an amount without its unit is told anew with it; it stays a note. */
async function draftsOfNote(
  context: Context,
  line: InboxLine,
  { unit, late, happened }: TakeFields,
): Promise<Answer<readonly AnyDraft[]>> {
  const received = unitlessIn(context.fold, line.id) ?? '';
  const [name, text = ''] = [unit === undefined ? null : unitOf(unit), line.cells.at(-1)?.cell];
  if (name === null) {
    return no(
      'bad input',
      inboxFinding('note-unit-missing', { received, text: text.slice(0, 120) }, { field: 'unit' }),
    );
  }
  const about = line.cells.find(({ heading }) => heading === 'about')?.cell;
  const at = new RegExp(`(?<![\\w.,])${received.replace('.', '\\.')}(?![\\w.,]\\d|\\w)`);
  const told = text.replace(at, `${received} ${name}`);
  const fields = { text: told, ...(about !== undefined && { about }) };
  const made = await makeDraft(
    context,
    { what: 'told', kind: 'note', fields },
    { ...(late !== undefined && { late }), ...(happened !== undefined && { happened }) },
  );
  return made.ok ? yes([made.value]) : made;
}

async function keepTaken(
  { desk, fold, moment, presentMs }: Context,
  line: InboxLine,
  drafts: readonly AnyDraft[],
  { dryRun }: TakeFields,
): Promise<Answer<TakenSheet>> {
  const words = { mgPerL: fold.mgPerL, dayRule: fold.dayRule, instruments: fold.index.instruments };
  const said = (draft: AnyDraft, ref: string) => ({
    ref,
    id: draft.id,
    text: entryInWords(draft, words),
    happened: formatShortStamp(draft.happenedAtMs, fold.dayRule),
  });
  if (dryRun === true) return yes({ kept: false, line, entries: drafts.map((draft) => said(draft, '')) });
  const body = { line: line.id, how: 'taken', entries: drafts.map(({ id }) => id) } as const;
  const settled = settledDraft(body, { id: desk.newId(presentMs), presentMs, moment });
  const kept = await desk.keep([...drafts, settled], moment);
  if (!kept.ok) return kept;
  const entries = kept.value.kept.filter(({ id }) => id !== settled.id);
  return yes({
    kept: true,
    line,
    entries: entries.map((entry) => said(entry, `${entry.site} ${entry.number}`)),
  });
}
