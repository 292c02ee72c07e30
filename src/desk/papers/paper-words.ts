// Who said so in an entry, with the second person beside them, as papers print it.
import type { AnyEntry, BookPort } from '../../book/index.ts';
import { entryOf } from '../../book/index.ts';
import { type DayRule, formatShortStamp } from '../../ground/units/index.ts';
import type { PaperWord } from '../../papers/index.ts';
import { refOf } from '../quality/past.ts';

export function wordOfEntry(entry: AnyEntry, dayRule: DayRule): PaperWord {
  const { by, second, happenedAtMs } = entry;
  return {
    by,
    second: second === undefined ? null : { office: second.office, confirmation: second.confirmation },
    at: formatShortStamp(happenedAtMs, dayRule),
    ref: refOf(entry),
  };
}

/** Null where the book has no such entry. */
export async function entryOfId(port: BookPort, id: string): Promise<AnyEntry | null> {
  const row = await port.find(id);
  return row === null ? null : entryOf(row);
}
