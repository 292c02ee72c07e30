// An entry that says what another one has said already: typed twice, or copied by a source whose clock runs apart.
import { type AnyEntry, canonicalJson, type Json, type Kind } from '../../book/index.ts';
import { msPerMinute } from '../../ground/units/index.ts';
import { CLOCK_STEP_MS, DOUBLE_TAP_MS, SAME_ACT_MS, WIDEST_CLOCK_MS } from '../duplicates.ts';
import type { Fold } from '../fold.ts';
import { entryNoOf, noteEntry, refOf } from '../note.ts';
import { storeOfBody } from './times.ts';

/**
 * Kinds that are never taken for copies: movements and pushes are looked up by their amounts (see duplicates.ts), an opening
 * tells all anew, and so does a choice of limits, which may go back to the one before the last; words may be repeated.
 */
const notCompared: ReadonlySet<Kind> = new Set<Kind>([
  'outpost',
  'opening',
  'limits-chosen',
  'limit-typed',
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
  const decision = fold.decisions.get(entry.id);
  const first = decision === undefined ? findFirst(fold, entry) : null;
  remember(fold, entry);
  if (decision !== undefined) return decision.decision === 'merge';
  if (first === null) return false;
  const { of, reason } = first;
  const data = {
    reason,
    apartMin: Math.round((entry.happenedAtMs - of.happenedAtMs) / msPerMinute),
    atMs: entry.happenedAtMs,
    firstAtMs: of.happenedAtMs,
    firstRef: refOf(of),
    firstEntryNo: entryNoOf(of),
  };
  const store = storeOfBody(entry);
  noteEntry(fold, entry, { code: 'copy-proposed', severity: 'act-today', store, data, entries: [of.id] });
  return true;
}

/** Keeps the youngest ones; the list is cut now and then, not at every entry. */
function remember(fold: Fold, entry: AnyEntry): void {
  const { habits } = fold;
  habits.recent.push(entry);
  if (habits.recent.length >= 2 * MOST_COMPARED) habits.recent = habits.recent.slice(-MOST_COMPARED);
}

function findFirst(fold: Fold, mine: AnyEntry): { of: AnyEntry; reason: string } | null {
  let found: { of: AnyEntry; reason: string } | null = null;
  const { recent } = fold.habits;
  // From the youngest back: of several the oldest is named. Contents are looked at last, since most entries end before them.
  for (let k = recent.length - 1; k >= 0; k--) {
    const of = recent[k];
    if (of === undefined || mine.happenedAtMs - of.happenedAtMs > WIDEST_CLOCK_MS) break;
    if (of.kind !== mine.kind) continue;
    const reason = reasonOf(of, mine);
    if (reason === null || fold.decisions.get(of.id)?.first === mine.id || !saysTheSame(of, mine)) continue;
    found = { of, reason };
  }
  return found;
}

function reasonOf(first: AnyEntry, mine: AnyEntry): string | null {
  const apartMs = Math.abs(mine.happenedAtMs - first.happenedAtMs);
  const doubleTapMs = readAgain.has(mine.kind) ? 0 : DOUBLE_TAP_MS;
  const isElsewhere = first.source !== mine.source || first.site !== mine.site;
  if (!isElsewhere) return first.by === mine.by && apartMs <= doubleTapMs ? 'double tap' : null;
  if (apartMs <= SAME_ACT_MS) return 'another source';
  return apartMs <= WIDEST_CLOCK_MS && apartMs % CLOCK_STEP_MS === 0 ? 'clock apart' : null;
}

/** Times inside may have been told by the clock of either: as they stand, or counted from when it happened. */
function saysTheSame(a: AnyEntry, b: AnyEntry): boolean {
  return contentOf(a, 0) === contentOf(b, 0) || contentOf(a, a.happenedAtMs) === contentOf(b, b.happenedAtMs);
}

/** The body, whatever the order of its fields; the day goes with the clock and is no part of it. */
function contentOf({ body }: AnyEntry, fromMs: number): string {
  const plain = JSON.stringify(body, (key, value: unknown) => {
    if (key === 'day') return undefined;
    // A count at a point of use has no bottle: where it came from stands in for its name.
    if (key === 'sample' && 'point' in body) return undefined;
    return key.endsWith('Ms') && typeof value === 'number' ? value - fromMs : value;
  });
  return canonicalJson(JSON.parse(plain) as Json);
}
