// One line of the daybook: an entry in words, with when it happened and when it was entered.
import type { Amendments, AnyEntry } from '../book/index.ts';
import { type DayRule, formatShortStamp } from '../ground/units/index.ts';
import type { Instrument } from '../outpost/index.ts';
import { type BookLine, entryInWords } from '../papers/index.ts';

/** What the words of an entry need to know. */
export interface LineContext {
  readonly dayRule: DayRule;
  readonly mgPerL: number;
  readonly instruments: ReadonlyMap<string, Instrument>;
  readonly amendments?: Amendments;
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
