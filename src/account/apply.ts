// Applying one entry to a fold. It never refuses: what does not fit is a finding.
import type { AnyEntry } from '../book/index.ts';
import { dayOf } from '../ground/units/index.ts';
import type { Fold } from './fold.ts';
import { noteEntry } from './note.ts';
import { post } from './post/index.ts';

export function applyEntry(fold: Fold, entry: AnyEntry): void {
  fold.entries += 1;
  fold.lastEntryMs = entry.happenedAtMs;
  if (fold.openingMs !== null && entry.happenedAtMs < fold.openingMs) {
    noteEntry(fold, entry, { code: 'before-opening', severity: 'act-today', data: { openingMs: fold.openingMs } });
  }
  noteLate(fold, entry);
  post(fold, entry);
}

/** An entry that came after its day was closed: the paper stands, the past is believed anew. */
function noteLate(fold: Fold, entry: AnyEntry): void {
  if (entry.kind === 'day-close' || entry.late === undefined) return;
  const day = dayOf(entry.happenedAtMs, fold.dayRule);
  noteEntry(fold, entry, { code: 'late-in-closed-day', severity: 'know', data: { day, late: entry.late } });
}
