// A line of the inbox as people see it: its cells under their headings, why it waits, and what its bare number could be.
import type { Fold } from '../../account/index.ts';
import { type Entry, entryOf } from '../../book/index.ts';
import { formatShortStamp, parseNumber } from '../../ground/units/index.ts';
import { type InboxLine, wordFinding } from '../../papers/index.ts';
import type { Desk } from '../desk.ts';
import { inboxFinding } from './inbox-finding.ts';
import { mgPerUnit } from './row-amount.ts';
import { findingOf, waitingLines } from './waiting.ts';

/** Every line that ever waited, the oldest first: lines of tables, and notes that name an amount without its unit. */
export async function inboxLines(desk: Desk, fold: Fold): Promise<readonly InboxLine[]> {
  const { lines, settled } = await waitingLines(desk);
  const refs = new Map<string, string>();
  for (const id of [...settled.values()].flatMap(({ body }) => body.entries)) {
    const row = await desk.port.find(id);
    if (row !== null) refs.set(id, `${row.site} ${row.number}`);
  }
  const settledOf = (id: string): InboxLine['settled'] => {
    const by = settled.get(id);
    if (by === undefined) return null;
    const { how, entries, reason = null } = by.body;
    return {
      how,
      ref: `${by.site} ${by.number}`,
      entries: entries.map((each) => refs.get(each) ?? each),
      reason,
    };
  };
  const notes = await notesWithoutUnit(desk, fold);
  return [
    ...lines.map((entry) => ({ ...tableLine(entry, fold), settled: settledOf(entry.id) })),
    ...notes.map((entry) => ({ ...noteLine(entry, fold), settled: settledOf(entry.id) })),
  ];
}

function headOf(entry: Entry, { dayRule }: Fold) {
  return {
    ref: `${entry.site} ${entry.number}`,
    id: entry.id,
    since: formatShortStamp(entry.enteredAtMs, dayRule),
    by: entry.by,
    settled: null,
  };
}

/** How a command names a line. */
export function lineNoOf({ site, number }: Pick<Entry, 'site' | 'number'>): string {
  return `${site}:${number}`;
}

function tableLine(entry: Entry<'waiting-line'>, fold: Fold): InboxLine {
  const { file, line, headings, cells, columns, reasons, readings } = entry.body;
  const words = { dayRule: fold.dayRule, mgPerL: fold.mgPerL };
  return {
    ...headOf(entry, fold),
    file,
    line,
    cells: cells.map((cell, k) => ({ heading: headings[k] ?? '', cell, means: columns[k] ?? '' })),
    reasons: reasons.map(({ code, column = null, data }) =>
      wordFinding(
        findingOf({ code, column, data: { ...data, lineNo: lineNoOf(entry) } }, { file, line, headings }),
        words,
      ),
    ),
    readings: readings.map(({ received, unit, massMg, store, capacityMg }) => ({
      received,
      unit,
      litres: massMg / fold.mgPerL,
      store: store ?? null,
      capacityL: capacityMg === undefined ? null : capacityMg / fold.mgPerL,
    })),
  };
}

/** Notes of the book that the account has found to name an amount without its unit. */
async function notesWithoutUnit(desk: Desk, fold: Fold): Promise<readonly Entry<'note'>[]> {
  const notes: Entry<'note'>[] = [];
  for (const { code, where } of fold.findings) {
    const row = code === 'unit-doubt' && where.entry !== undefined ? await desk.port.find(where.entry) : null;
    const entry = row === null ? null : entryOf(row);
    if (entry?.kind === 'note') notes.push(entry);
  }
  return notes;
}

export function unitlessIn(fold: Fold, id: string): string | null {
  const found = fold.findings.find(({ code, where }) => code === 'unit-doubt' && where.entry === id);
  const amount = found?.data['amount'];
  return typeof amount === 'string' ? amount : null;
}

/** Units that somebody may have meant. */
const MEANT = ['L', 'kg', 'lb'];

function noteLine(entry: Entry<'note'>, fold: Fold): InboxLine {
  const { text, about = '' } = entry.body;
  const received = unitlessIn(fold, entry.id) ?? '';
  const words = { dayRule: fold.dayRule, mgPerL: fold.mgPerL };
  const where = { entry: entry.id };
  return {
    ...headOf(entry, fold),
    file: entry.origin?.ref ?? 'daybook',
    line: null,
    cells: [
      ...(about === '' ? [] : [{ heading: 'about', cell: about, means: '' }]),
      { heading: 'note', cell: text, means: 'note' },
    ],
    reasons: [
      wordFinding(
        inboxFinding(
          'note-unit-missing',
          { received, text: text.slice(0, 120), lineNo: lineNoOf(entry) },
          where,
        ),
        words,
      ),
    ],
    readings: noteReadings(received, fold),
  };
}

/** A note names no store: the largest one aboard is the yardstick. */
function noteReadings(received: string, fold: Fold): InboxLine['readings'] {
  const number = parseNumber(received);
  if (!number.ok) return [];
  const aboard = [...fold.stores.values()].filter((store) => store.aboard).map(({ facts }) => facts);
  const [largest] = [...aboard].sort((a, b) => b.capacityMg - a.capacityMg);
  return MEANT.map((unit) => ({
    received,
    unit,
    litres: (number.value * (mgPerUnit(unit, fold.mgPerL) ?? 0)) / fold.mgPerL,
    store: largest?.id ?? null,
    capacityL: largest === undefined ? null : largest.capacityMg / fold.mgPerL,
  }));
}
