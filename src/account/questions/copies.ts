// An entry that says what another one has said already: typed twice, or copied by a source whose clock runs apart.
import type { AnyEntry, Kind } from '../../book/index.ts';
import { msPerMinute } from '../../ground/units/index.ts';
import { CLOCK_STEP_MS, DOUBLE_TAP_MS, SAME_ACT_MS, WIDEST_CLOCK_MS } from '../duplicates.ts';
import type { Fold } from '../fold.ts';
import { entryNoOf, noteEntry, refOf } from '../note.ts';
import type { CopyMark } from './habits.ts';

/**
 * Kinds that are never taken for copies: movements and pushes are looked up by their amounts (see duplicates.ts), an opening
 * tells all anew, and words may be repeated.
 */
const notCompared: ReadonlySet<Kind> = new Set<Kind>([
  'outpost',
  'opening',
  'movement',
  'push',
  'note',
  'refused',
  'anomaly',
  'explanation',
  'undo',
  'correction',
  'duplicate-decision',
  'day-close',
]);

/** A store may be read again and again, and read the same: such readings are a double tap only at the very same instant. */
const readAgain: ReadonlySet<Kind> = new Set<Kind>(['weigh', 'gauge', 'pvt', 'meter', 'stock-count']);

/** So many entries are compared with at the most. */
const MOST_COMPARED = 60;

/**
 * Is this entry proposed as a copy of an earlier one? A reading that counts twice counts its water twice, so a proposed copy is
 * left out of the account until somebody decides, as a proposed twin of a movement is.
 */
export function isProposedCopy(fold: Fold, entry: AnyEntry): boolean {
  if (notCompared.has(entry.kind)) return false;
  const mine = markOf(entry);
  const { habits, decisions } = fold;
  const decision = decisions.get(entry.id);
  const first = decision === undefined ? findFirst(fold, entry.kind, mine) : null;
  habits.copies = [...habits.copies.slice(1 - MOST_COMPARED), mine];
  if (decision !== undefined) return decision.decision === 'merge';
  if (first === null) return false;
  const data = {
    reason: first.reason,
    apartMin: Math.round((mine.atMs - first.of.atMs) / msPerMinute),
    atMs: mine.atMs,
    firstAtMs: first.of.atMs,
    firstRef: first.of.ref,
    firstEntryNo: first.of.entryNo,
  };
  const store = 'store' in entry.body && typeof entry.body.store === 'string' ? entry.body.store : undefined;
  noteEntry(fold, entry, {
    code: 'copy-proposed',
    severity: 'act-today',
    store,
    data,
    entries: [first.of.entry],
  });
  return true;
}

function markOf(entry: AnyEntry): CopyMark {
  return {
    mark: `${entry.kind} ${contentOf(entry, 0)}`,
    markByClock: `${entry.kind} ${contentOf(entry, entry.happenedAtMs)}`,
    entry: entry.id,
    ref: refOf(entry),
    entryNo: entryNoOf(entry),
    atMs: entry.happenedAtMs,
    site: entry.site,
    source: entry.source ?? null,
    by: entry.by,
  };
}

/**
 * The day goes with the clock and is no part of it.
 * @param fromMs what times inside count from: from when it happened, a copy by another clock has the same content
 */
function contentOf({ body }: AnyEntry, fromMs: number): string {
  return JSON.stringify(body, (key, value: unknown) => {
    if (key === 'day') return undefined;
    // A count at a point of use has no bottle: where it came from stands in for its name.
    if (key === 'sample' && 'point' in body) return undefined;
    return key.endsWith('Ms') && typeof value === 'number' ? value - fromMs : value;
  });
}

function findFirst(fold: Fold, kind: Kind, mine: CopyMark): { of: CopyMark; reason: string } | null {
  for (const of of fold.habits.copies) {
    if (of.mark !== mine.mark && of.markByClock !== mine.markByClock) continue;
    const reason = reasonOf(of, mine, readAgain.has(kind) ? 0 : DOUBLE_TAP_MS);
    const isDecided = fold.decisions.get(of.entry)?.first === mine.entry;
    if (reason !== null && !isDecided) return { of, reason };
  }
  return null;
}

function reasonOf(first: CopyMark, mine: CopyMark, doubleTapMs: number): string | null {
  const apartMs = Math.abs(mine.atMs - first.atMs);
  const isElsewhere = first.source !== mine.source || first.site !== mine.site;
  if (!isElsewhere) return first.by === mine.by && apartMs <= doubleTapMs ? 'double tap' : null;
  if (apartMs <= SAME_ACT_MS) return 'another source';
  return apartMs <= WIDEST_CLOCK_MS && apartMs % CLOCK_STEP_MS === 0 ? 'clock apart' : null;
}
