// Reading entries back: in the total order, as known at one instant and as of another, with undo and corrections applied.
import { type Amendments, amend, amendmentKinds, readAmendments } from './amendments.ts';
import type { AnyEntry } from './entry.ts';
import { migrated } from './migrations.ts';
import type { OrderKey } from './order.ts';
import type { BookPort, KeptEntry } from './port.ts';

/** Which part of the book a reader wants to see. Absent: all of it. */
export interface View {
  /** Only what had been entered by then, in UTC milliseconds. */
  readonly knownAtMs?: number;
  /** Only what had happened by then. */
  readonly asOfMs?: number;
}

/** The entry of a kept row, in the shape of today. Its own shape was checked when it was kept. */
export function entryOf(row: KeptEntry): AnyEntry {
  return migrated(JSON.parse(row.text) as AnyEntry);
}

function inView(row: KeptEntry, view: View): boolean {
  if (view.knownAtMs !== undefined && row.enteredAtMs > view.knownAtMs) return false;
  return view.asOfMs === undefined || row.happenedAtMs <= view.asOfMs;
}

/** Undo, corrections and decisions that count in a view. */
export async function amendmentsOf(port: BookPort, view: View): Promise<Amendments> {
  const found: AnyEntry[] = [];
  for await (const rows of port.scan({ order: 'total', kinds: amendmentKinds })) {
    for (const row of rows)
      if (view.knownAtMs === undefined || row.enteredAtMs <= view.knownAtMs) found.push(entryOf(row));
  }
  return readAmendments(found);
}

/** Few enough that a batch is gone before its memory is looked at a second time: twice as many take half as much memory again. */
const READ_BATCH = 500;

/**
 * Entries in the total order, as they count in a view: undone ones are left out, corrected ones carry their new body.
 * Batches only: a book of any length is never held whole.
 */
export async function* readBook(
  port: BookPort,
  view: View = {},
  from: { readonly after?: OrderKey; readonly amendments?: Amendments } = {},
): AsyncIterable<readonly AnyEntry[]> {
  const amendments = from.amendments ?? (await amendmentsOf(port, view));
  for await (const rows of port.scan({
    order: 'total',
    batch: READ_BATCH,
    ...(from.after && { after: from.after }),
  })) {
    const batch: AnyEntry[] = [];
    for (const row of rows) {
      if (!inView(row, view)) continue;
      const entry = amend(entryOf(row), amendments);
      if (entry !== null) batch.push(entry);
    }
    if (batch.length > 0) yield batch;
    const last = rows.at(-1);
    if (view.asOfMs !== undefined && last !== undefined && last.happenedAtMs > view.asOfMs) return;
  }
}
