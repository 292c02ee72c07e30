// Notes, refusals and the close of a day.
import type { Entry } from '../../book/index.ts';
import { dayOf } from '../../ground/units/index.ts';
import type { Fold } from '../fold.ts';
import { noteEntry } from '../note.ts';
import { amountWithoutUnit } from '../unit-doubt.ts';

/** A note that names an amount of water without its unit is kept, and asked about: it never becomes an amount by itself. */
export function postNote(fold: Fold, entry: Entry<'note'>): void {
  const { text, about } = entry.body;
  const visits = [...fold.visits.keys()];
  const amount = amountWithoutUnit(text, [
    ...visits,
    ...fold.stores.keys(),
    ...(about === undefined ? [] : [about]),
  ]);
  if (amount === null) return;
  noteEntry(fold, entry, {
    code: 'unit-doubt',
    severity: 'act-today',
    data: { amount, text: text.slice(0, 120), by: entry.by },
  });
}

export function postRefused(fold: Fold, entry: Entry<'refused'>): void {
  const { what, rule } = entry.body;
  noteEntry(fold, entry, {
    code: 'refused-recorded',
    severity: 'know',
    data: { what: what.slice(0, 200), rule: rule.slice(0, 200) },
  });
}

/** The close of a month closes every day up to its own that is still open. */
export function postDayClose(fold: Fold, entry: Entry<'day-close'>): void {
  const { day, what } = entry.body;
  const firstDay =
    what === 'day' || fold.openingMs === null
      ? day
      : Math.max(dayOf(fold.openingMs, fold.dayRule), day - MOST_DAYS_CLOSED);
  for (let closed = firstDay; closed <= day; closed++) {
    if (!fold.closedDays.has(closed))
      fold.closedDays.set(closed, { atMs: entry.enteredAtMs, entry: entry.id });
  }
}

/** A month's close reaches no further back than this. */
const MOST_DAYS_CLOSED = 400;
