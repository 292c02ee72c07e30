// From a line that was understood to drafts of entries, by the same bodies that a typed command goes through.
import { type AnyDraft, type Hash, kindVersion, readDraft } from '../../book/index.ts';
import { dayOf, type Finding, msPerDay } from '../../ground/units/index.ts';
import type { Context } from '../log/context.ts';
import { plainBody } from '../log/make.ts';
import { idOfLine } from './content-key.ts';
import type { RowReading, RowRequest } from './row-reading.ts';

/** How the origin of an entry names a table. */
export const TABLE_ORIGIN = 'table';

export interface DraftingOf {
  readonly context: Context;
  readonly hash: Hash;
  /** Why lines come after their day was closed; absent: such lines wait. */
  readonly late?: string | undefined;
}

/** No draft where something speaks against the line: then its reasons say what. */
export function rowDrafts(reading: RowReading, key: string, how: DraftingOf): readonly AnyDraft[] {
  const drafts: AnyDraft[] = [];
  reading.requests.forEach((request, part) => {
    const draft = draftOf(reading, request, { ...how, id: entryIdOf(reading, key, part, how) });
    if (draft !== null) drafts.push(draft);
  });
  return reading.faults.length === 0 ? drafts : [];
}

/** Entries of one time lie beside each other in a book: the date as it is written is a part of their ids. */
export function entryIdOf(reading: RowReading, key: string, part: number, { hash }: DraftingOf): string {
  const { dayRule } = reading.sheet.vocabulary.fold;
  const days = reading.days;
  return idOfLine(hash, key, { atMs: days === null ? dayRule.dayOneUtcMs : days * msPerDay, part });
}

/** However its time comes to be read, the line that waits is the same. */
export function waitingIdOf(reading: RowReading, key: string, { hash }: DraftingOf): string {
  return idOfLine(hash, key, { atMs: reading.sheet.vocabulary.fold.dayRule.dayOneUtcMs, part: -1 });
}

function draftOf(
  reading: RowReading,
  asked: RowRequest,
  how: DraftingOf & { readonly id: string },
): AnyDraft | null {
  const { context, late, id } = how;
  const { happened } = asked;
  const { fold, moment, presentMs, desk } = context;
  const made = plainBody(context, asked.request, happened.utcMs);
  if (!made.ok) return sayFindings(reading, made.findings);
  const isClosed = fold.closedDays.has(dayOf(happened.utcMs, fold.dayRule));
  if (isClosed && late === undefined) {
    const day = dayOf(happened.utcMs, fold.dayRule);
    // What a line becomes is of one day: that it is closed is said once.
    const isSaid = reading.faults.some(({ code, data }) => code === 'row-day-closed' && data['day'] === day);
    if (!isSaid) reading.say('row-day-closed', -1, { day });
    return null;
  }
  const { sheet, row, note, office } = reading;
  const body = made.value.kind === 'movement' ? { ...made.value.body, ...asked.beside } : made.value.body;
  const read = readDraft({
    id,
    version: kindVersion(made.value.kind),
    kind: made.value.kind,
    happenedAtMs: happened.utcMs,
    happenedOffsetMin: happened.offsetMin,
    enteredAtMs: Math.max(presentMs, desk.info.purpose === 'practice' ? happened.utcMs : presentMs),
    enteredOffsetMin: moment.offsetMin,
    by: office ?? moment.by,
    ...(note !== undefined && { note }),
    ...(isClosed && late !== undefined && { late }),
    origin: {
      format: TABLE_ORIGIN,
      ref: `${sheet.file.slice(-LONGEST_NAME).toWellFormed()}:${row.line}`,
      line: row.line,
    },
    body,
  });
  return read.ok ? read.draft : sayFindings(reading, read.findings);
}

const LONGEST_NAME = 180;

function sayFindings(reading: RowReading, findings: readonly Finding[]): null {
  for (const { code, data } of findings) reading.say(code, -1, data);
  return null;
}
