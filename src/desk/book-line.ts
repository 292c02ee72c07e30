// One line of the daybook: an entry in words, with when it happened and when it was entered.
import type { Amendments, AnyEntry, BookPort } from '../book/index.ts';
import { type DayRule, formatShortStamp } from '../ground/units/index.ts';
import type { Instrument } from '../outpost/index.ts';
import { type BookLine, entryInWords } from '../papers/index.ts';

/** What the words of an entry need to know. */
export interface LineContext {
  readonly dayRule: DayRule;
  readonly mgPerL: number;
  readonly instruments: ReadonlyMap<string, Instrument>;
  readonly amendments?: Amendments;
  /** How people name the entries that these entries speak of. */
  readonly refOf?: (id: string) => string | null;
}

/** Site and number of the entries that some entries point at: those that they undo, correct, decide on, rest on. */
export async function refsIn(
  port: BookPort,
  entries: readonly AnyEntry[],
): Promise<(id: string) => string | null> {
  const refs = new Map<string, string>();
  for (const id of new Set(entries.flatMap(pointedAt))) {
    const found = await port.find(id);
    if (found !== null) refs.set(id, `${found.site} ${found.number}`);
  }
  return (id) => refs.get(id) ?? null;
}

function pointedAt(entry: AnyEntry): readonly string[] {
  if (entry.kind === 'undo' || entry.kind === 'correction') return [entry.body.target];
  if (entry.kind === 'duplicate-decision') return [entry.body.first, entry.body.second];
  return entry.kind === 'explanation' ? entry.body.evidence : [];
}

export function bookLine(entry: AnyEntry, by: LineContext): BookLine {
  const undone = by.amendments?.undone.get(entry.id);
  const corrected = by.amendments?.corrected.get(entry.id);
  return {
    ref: `${entry.site} ${entry.number}`,
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
    late: entry.late !== undefined,
  };
}
