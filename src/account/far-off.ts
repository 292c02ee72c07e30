// Two stores of which each was read as the other: swapped labels, or one name taken for the other.
import type { AnyEntry } from '../book/index.ts';
import { msPerDay } from '../ground/units/index.ts';
import type { FarOffReading } from './far-off-reading.ts';
import type { Fold } from './fold.ts';
import { entryNoOf, noteEntry, refOf } from './note.ts';

/** Two labels that were swapped show within this time. Ours, no source. */
const SAME_SWAP_MS = 14 * msPerDay;
const MOST_KEPT = 20;
/** Each reading has to fit the other store within this many standard deviations. Ours, no source. */
const FITS = 2;

/**
 * Remembers a reading that was far off, and says so when an earlier one is its mirror image: equal and opposite, each of the
 * two being what the other store was expected to hold.
 * @returns whether the two look like swapped labels
 */
export function noteFarOff(
  fold: Fold,
  entry: AnyEntry,
  mine: Omit<FarOffReading, 'entry' | 'entryNo' | 'ref' | 'atMs'>,
) {
  const reading: FarOffReading = {
    ...mine,
    atMs: entry.happenedAtMs,
    entry: entry.id,
    ref: refOf(entry),
    entryNo: entryNoOf(entry),
  };
  const mirror = fold.farOff.findLast(
    (other) => reading.atMs - other.atMs <= SAME_SWAP_MS && isMirror(other, reading),
  );
  fold.farOff = [...fold.farOff.slice(1 - MOST_KEPT), reading];
  if (mirror === undefined) return false;
  const data = {
    other: mirror.store,
    otherRef: mirror.ref,
    otherEntryNo: mirror.entryNo,
    readMg: reading.readMg,
    expectedMg: reading.expectedMg,
    otherReadMg: mirror.readMg,
    otherExpectedMg: mirror.expectedMg,
    mgPerL: fold.mgPerL,
  };
  noteEntry(fold, entry, {
    code: 'labels-swapped',
    severity: 'act-today',
    store: reading.store,
    data,
    entries: [mirror.entry],
  });
  return true;
}

function isMirror(a: FarOffReading, b: FarOffReading): boolean {
  if (a.store === b.store) return false;
  const u = Math.sqrt(a.uMg * a.uMg + b.uMg * b.uMg);
  const isOpposite = Math.abs(a.readMg - a.expectedMg + (b.readMg - b.expectedMg)) <= FITS * u;
  const fitsOther =
    Math.abs(a.readMg - b.expectedMg) <= FITS * u && Math.abs(b.readMg - a.expectedMg) <= FITS * u;
  return isOpposite && fitsOther;
}
