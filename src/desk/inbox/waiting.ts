// Lines that wait: made from what a table says and why it is not taken, and found again in the book.
import {
  type AnyDraft,
  type AnyEntry,
  amendmentsOf,
  type Body,
  type Entry,
  entryOf,
  kindVersion,
  readDraft,
} from '../../book/index.ts';
import type { Finding } from '../../ground/units/index.ts';
import type { Desk, Moment } from '../desk.ts';
import { spellMeaning } from './meaning.ts';
import type { RowFault, RowReading } from './row-reading.ts';

export type WaitingBody = Body<'waiting-line'>;

/** Most figures and names of a reason; texts are cut where a reason is made. */
const MOST_REASONS = 50;

export function waitingDraft(
  reading: RowReading,
  key: string,
  how: { readonly id: string; readonly presentMs: number; readonly moment: Moment },
): AnyDraft {
  const { moment, presentMs, id } = how;
  const read = readDraft({
    id,
    version: kindVersion('waiting-line'),
    kind: 'waiting-line',
    happenedAtMs: presentMs,
    happenedOffsetMin: moment.offsetMin,
    enteredAtMs: presentMs,
    enteredOffsetMin: moment.offsetMin,
    by: moment.by,
    body: waitingBody(reading, key),
  });
  // Cells are held to their caps where they are read, and reasons are made here.
  if (!read.ok) throw new Error(`a line that waits cannot be kept: ${JSON.stringify(read.findings[0])}`);
  return read.draft;
}

function waitingBody({ sheet, row, faults, possible }: RowReading, key: string): WaitingBody {
  const { decimals, order, zoneMin } = sheet;
  return {
    key,
    file: sheet.file.slice(-400).toWellFormed(),
    line: row.line,
    shape: sheet.shape,
    headings: sheet.columns.map(({ heading }) => heading),
    cells: [...row.cells],
    columns: sheet.columns.map(({ meaning }) => (meaning === null ? '' : spellMeaning(meaning))),
    decimals: decimals.map(({ decimal }) => decimal ?? 'open'),
    ...((order === 'day-first' || order === 'month-first') && { dates: order }),
    zoneMin,
    reasons: faults.slice(0, MOST_REASONS).map(({ code, column, data }) => ({
      code,
      ...(column !== null && { column }),
      data: { ...data } as WaitingBody['reasons'][number]['data'],
    })),
    readings: possible.map((each) => ({ ...each })),
  };
}

/** A reason as a finding: at its line, its column and under its heading. */
export function findingOf(
  { code, column, data }: RowFault,
  at: { readonly file: string; readonly line: number; readonly headings: readonly string[] },
): Finding {
  const field = column === null ? '' : (at.headings[column - 1] ?? '');
  const where = {
    file: at.file,
    line: at.line,
    ...(column !== null && { column }),
    ...(field !== '' && { field: field.slice(0, 80) }),
  };
  return { code, severity: 'error', where, data, entries: [] };
}

/** Every line that ever waited, and what became of it. A settlement counts no more when it is undone, or all that came of it. */
export async function waitingLines(desk: Pick<Desk, 'port'>): Promise<{
  readonly lines: readonly Entry<'waiting-line'>[];
  readonly settled: ReadonlyMap<string, Entry<'waiting-line-settled'>>;
}> {
  const { undone } = await amendmentsOf(desk.port, {});
  const lines: Entry<'waiting-line'>[] = [];
  const settled = new Map<string, Entry<'waiting-line-settled'>>();
  for await (const rows of desk.port.scan({
    order: 'total',
    kinds: ['waiting-line', 'waiting-line-settled'],
  })) {
    for (const entry of rows.map(entryOf)) take(entry, { undone, lines, settled });
  }
  return { lines, settled };
}

function take(
  entry: AnyEntry,
  into: {
    readonly undone: ReadonlyMap<string, unknown>;
    readonly lines: Entry<'waiting-line'>[];
    readonly settled: Map<string, Entry<'waiting-line-settled'>>;
  },
): void {
  if (into.undone.has(entry.id)) return;
  if (entry.kind === 'waiting-line') into.lines.push(entry);
  if (entry.kind !== 'waiting-line-settled') return;
  const { entries, line } = entry.body;
  const isVoid = entries.length > 0 && entries.every((id) => into.undone.has(id));
  if (!isVoid) into.settled.set(line, entry);
}

export function settledDraft(
  body: Body<'waiting-line-settled'>,
  how: { readonly id: string; readonly presentMs: number; readonly moment: Moment },
): AnyDraft {
  const { id, presentMs, moment } = how;
  return {
    id,
    version: kindVersion('waiting-line-settled'),
    kind: 'waiting-line-settled',
    happenedAtMs: presentMs,
    happenedOffsetMin: moment.offsetMin,
    enteredAtMs: presentMs,
    enteredOffsetMin: moment.offsetMin,
    by: moment.by,
    body,
  };
}
