// The same act entered twice: same ends, same amount, told by another source, or told again at once, or by a clock that runs apart.
import type { AnyEntry, Entry } from '../book/index.ts';
import { msPerMinute } from '../ground/units/index.ts';
import type { Fold, RecentMovement } from './fold.ts';
import { entryNoOf, noteEntry, refOf } from './note.ts';

/** A double tap of the same person comes within this time. */
export const DOUBLE_TAP_MS = 2 * msPerMinute;
/** Copies of one act by two people differ by no more than this. */
export const SAME_ACT_MS = 30 * msPerMinute;
/** Clocks of two places differ by whole quarters of an hour, at most by this. */
export const CLOCK_STEP_MS = 15 * msPerMinute;
export const WIDEST_CLOCK_MS = 14 * 60 * msPerMinute;
/** So many movements are compared with at the least; nobody copies an act after more of them. */
const MOST_RECENT = 200;

export type DuplicateReason = 'double tap' | 'another source' | 'clock apart';

/** Why two movements look like one act, or null. */
export function duplicateReason(first: RecentMovement, second: RecentMovement): DuplicateReason | null {
  if (first.massMg !== second.massMg || first.from !== second.from || first.to !== second.to) return null;
  if (first.person !== null && second.person !== null && first.person !== second.person) return null;
  const apartMs = Math.abs(second.atMs - first.atMs);
  const isCopy = first.source !== second.source || first.site !== second.site;
  if (!isCopy && first.by === second.by)
    return apartMs <= DOUBLE_TAP_MS && first.startAtMs === second.startAtMs ? 'double tap' : null;
  if (apartMs <= SAME_ACT_MS) return 'another source';
  // Two people of one place read one clock: only what was copied elsewhere can have another.
  const startsAgree =
    first.startAtMs === null ||
    second.startAtMs === null ||
    second.startAtMs - first.startAtMs === second.atMs - first.atMs;
  return isCopy && apartMs <= WIDEST_CLOCK_MS && apartMs % CLOCK_STEP_MS === 0 && startsAgree
    ? 'clock apart'
    : null;
}

type MovedFacts = Pick<RecentMovement, 'from' | 'to' | 'massMg' | 'startAtMs' | 'person'>;

/**
 * Looks a movement up among the recent ones. A proposed twin is left out of the position until somebody decides.
 * @returns whether the movement counts
 */
export function countsOnce(fold: Fold, entry: AnyEntry, movement: MovedFacts): boolean {
  const mine = asRecent(entry, movement);
  const decision = fold.decisions.get(entry.id);
  const twin = decision === undefined ? findTwin(fold, mine) : null;
  remember(fold, mine);
  if (decision !== undefined) return decision.decision === 'both are true';
  if (twin === null) return true;
  const data = {
    reason: twin.reason,
    massMg: mine.massMg,
    mgPerL: fold.mgPerL,
    from: mine.from,
    to: mine.to,
    atMs: mine.atMs,
    firstAtMs: twin.movement.atMs,
    firstRef: twin.movement.ref,
    firstEntryNo: twin.movement.entryNo,
    apartMin: Math.round((mine.atMs - twin.movement.atMs) / msPerMinute),
    ...wouldHold(fold, mine),
  };
  noteEntry(fold, entry, {
    code: 'duplicate-proposed',
    severity: 'act-today',
    store: mine.to,
    data,
    entries: [twin.movement.entry],
  });
  return false;
}

/** A push as one movement, by which another one like it is seen. */
export function pushedFacts({ from, to, startAtMs }: Entry<'push'>['body']): MovedFacts {
  const key = (legs: readonly { readonly store: string }[]) => legs.map((leg) => leg.store).join('+');
  const massMg = from.reduce((sum, leg) => sum + leg.amount.massMg, 0);
  return { from: key(from), to: key(to), massMg, startAtMs: startAtMs ?? null, person: null };
}

/** Is the movement about to be proposed as a twin, or decided to be one? Such a one is left out, and nothing else is asked about it. */
export function isTwin(fold: Fold, entry: AnyEntry, movement: MovedFacts): boolean {
  const decision = fold.decisions.get(entry.id);
  if (decision !== undefined) return decision.decision === 'merge';
  return findTwin(fold, asRecent(entry, movement)) !== null;
}

function asRecent(entry: AnyEntry, movement: MovedFacts): RecentMovement {
  return {
    ...movement,
    entry: entry.id,
    ref: refOf(entry),
    entryNo: entryNoOf(entry),
    site: entry.site,
    atMs: entry.happenedAtMs,
    source: entry.source ?? null,
    by: entry.by,
  };
}

function findTwin(
  fold: Fold,
  mine: RecentMovement,
): { movement: RecentMovement; reason: DuplicateReason } | null {
  let twin: { movement: RecentMovement; reason: DuplicateReason } | null = null;
  // From the youngest back to the oldest that can be a copy: of several the oldest is named.
  for (let k = fold.recent.length - 1; k >= 0; k--) {
    const movement = fold.recent[k];
    if (movement === undefined || mine.atMs - movement.atMs > WIDEST_CLOCK_MS) break;
    // Most amounts differ: this is the only thing that is looked at for nearly all of them.
    if (movement.massMg !== mine.massMg) continue;
    const reason = duplicateReason(movement, mine);
    // A pair may have been named the other way round: then the earlier one has been dealt with.
    const isDecided = fold.decisions.get(movement.entry)?.first === mine.entry;
    if (reason !== null && !isDecided) twin = { movement, reason };
  }
  return twin;
}

/** Keeps at least the youngest ones; the list is cut now and then, not at every movement. */
function remember(fold: Fold, mine: RecentMovement): void {
  fold.recent.push(mine);
  if (fold.recent.length >= 2 * MOST_RECENT) fold.recent = fold.recent.slice(-MOST_RECENT);
}

/** What the receiving store would hold with both of them, against its capacity. */
function wouldHold(fold: Fold, mine: RecentMovement): Record<string, number | null> {
  const store = fold.stores.get(mine.to);
  if (store === undefined) return { wouldHoldMg: null, capacityMg: null };
  return {
    wouldHoldMg: fold.ledger.balanceMg(`store:${mine.to}`) + mine.massMg,
    capacityMg: store.facts.capacityMg,
  };
}
