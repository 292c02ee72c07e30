// One line of the daybook: an entry in words, with when it happened and when it was entered.
import { type Amendments, type AnyEntry, amend, type BookPort, entryOf } from '../book/index.ts';
import { type DayRule, formatShortStamp } from '../ground/units/index.ts';
import type { Instrument } from '../outpost/index.ts';
import { type BookLine, entryInWords } from '../papers/index.ts';
import { mayCorrect } from './log/correctable.ts';

/** What the words of an entry need to know. */
export interface LineContext {
  readonly dayRule: DayRule;
  readonly mgPerL: number;
  readonly instruments: ReadonlyMap<string, Instrument>;
  readonly amendments?: Amendments;
  /** How people name the entries that these entries speak of. */
  readonly refOf?: (id: string) => string | null;
  /** The entries that these ones correct, as they were made. */
  readonly targetOf?: (id: string) => AnyEntry | null;
}

/** The entries that some entries point at: those that they undo, correct, decide on, rest on; by site and number. */
export async function refsIn(
  port: BookPort,
  entries: readonly AnyEntry[],
): Promise<Required<Pick<LineContext, 'refOf' | 'targetOf'>>> {
  const found = new Map<string, AnyEntry>();
  for (const id of new Set(entries.flatMap(pointedAt))) {
    const row = await port.find(id);
    if (row !== null) found.set(id, entryOf(row));
  }
  const refOf = (id: string) => {
    const entry = found.get(id);
    return entry === undefined ? null : `${entry.site} ${entry.number}`;
  };
  return { refOf, targetOf: (id) => found.get(id) ?? null };
}

function pointedAt(entry: AnyEntry): readonly string[] {
  if (entry.kind === 'undo' || entry.kind === 'correction') return [entry.body.target];
  if (entry.kind === 'duplicate-decision') return [entry.body.first, entry.body.second];
  return entry.kind === 'explanation' ? entry.body.evidence : [];
}

export function bookLine(entry: AnyEntry, by: LineContext): BookLine {
  const undone = by.amendments?.undone.get(entry.id);
  const corrected = by.amendments?.corrected.get(entry.id);
  const counts = by.amendments === undefined || corrected === undefined ? null : amend(entry, by.amendments);
  return {
    ref: `${entry.site} ${entry.number}`,
    fileRef: entry.origin?.ref ?? null,
    id: entry.id,
    happened: formatShortStamp(entry.happenedAtMs, by.dayRule),
    entered: formatShortStamp(entry.enteredAtMs, by.dayRule),
    kind: entry.kind,
    text: entryInWords(entry, by),
    by: entry.by,
    source: entry.source ?? null,
    note: entry.note ?? null,
    undoneBy: undone === undefined ? null : `${undone.site} ${undone.number}`,
    correctedBy: corrected === undefined ? null : `${corrected.site} ${corrected.number}`,
    now: counts === null ? null : entryInWords(counts, by),
    mayCorrect: undone === undefined ? mayCorrect(entry) : null,
    late: entry.late !== undefined,
  };
}
