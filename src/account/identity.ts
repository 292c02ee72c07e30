// Identity goes with the water: grade, biocides, on whose word it may be used, and a hold.
import type { AnyEntry } from '../book/index.ts';
import type { Flow, Fold } from './fold.ts';
import { holdsOf, putOnHold } from './hold.ts';
import { UNACCOUNTED } from './ledger.ts';
import { noteEntry } from './note.ts';
import { waive } from './quality/waivers.ts';
import { biocidesIn, gradeAfter, isWaste, ruleBreaks, withAll } from './rules.ts';
import {
  type HoldState,
  holdsNow,
  type Release,
  type ReleaseRecord,
  type StoreState,
} from './store-state.ts';

const releaseOrder: readonly Release[] = [
  'own sample',
  'made here',
  'opening',
  'loader’s certificate',
  'none',
];

/** Of two words the weaker one stands for the mix. */
export function weakerRelease(a: Release, b: Release): Release {
  return releaseOrder.indexOf(a) >= releaseOrder.indexOf(b) ? a : b;
}

/** Carries the identity of moved water into the receiving store, and says what rules it broke. */
export function passIdentity(fold: Fold, entry: AnyEntry, what: Flow): void {
  const from = what.from.store;
  const to = what.to.store;
  if (to === null) return;
  waterCame(entry, what, to);
  if (from === null) {
    if (what.plumbing !== true) arriveUnknown(fold, what, to);
    else if (to.grade !== null) holdsNow(to, to.grade);
    return;
  }
  if (what.plumbing === true && from.grade !== to.grade) {
    makeInto(to);
    return;
  }
  if (what.plumbing !== true) {
    checkNamedGrade(fold, entry, from, what.grade);
    noteBreaks(fold, entry, from, to);
  }
  mix(fold, from, to);
}

/** New water makes results of what was there before results of other water; a unit's own product goes on. */
function waterCame(entry: AnyEntry, { from, massMg, plumbing }: Flow, to: StoreState): void {
  if (massMg <= 0) return;
  to.inflowMg += massMg;
  if (plumbing === true) return;
  to.waterSinceMs = entry.happenedAtMs;
  if (from.store === null) return;
  to.filledFrom = from.store.facts.id;
  if (!to.emptied) return;
  // What was known was of water that is gone; what is bad of the new water comes with it as a hold.
  to.results = [];
  to.badNewsSinceMs = entry.happenedAtMs;
  to.treated = null;
}

/** A purifier makes another grade of it: the receiving store keeps its own. */
function makeInto(to: StoreState): void {
  to.release = to.emptied ? 'made here' : weakerRelease(to.release, 'made here');
  if (to.release === 'made here') to.released = null;
  if (to.grade !== null) holdsNow(to, to.grade);
}

/** Water that comes from no store: of no known grade and on nobody's word, unless it is the store's own water found again, or its unit made it. */
function arriveUnknown(fold: Fold, what: Flow, to: StoreState): void {
  const pool = what.from.account;
  if (pool !== UNACCOUNTED)
    to.release = isMadeFrom(fold, pool, to.facts.id) ? weakerRelease(to.release, 'made here') : 'none';
  if (to.release === 'none') to.released = null;
  if (to.grade !== null) holdsNow(to, to.grade);
  to.emptied = false;
}

/** Does a unit feed this store from that pool by the outpost's plumbing? */
function isMadeFrom(fold: Fold, pool: string, store: string): boolean {
  return fold.index.outpost.units.some(
    ({ feeds, takes }) =>
      'store' in feeds && feeds.store === store && takes.some((end) => 'pool' in end && end.pool === pool),
  );
}

/** The entry names a grade that the account does not believe: one of the two is wrong. */
function checkNamedGrade(fold: Fold, entry: AnyEntry, from: StoreState, grade: string | undefined): void {
  if (grade === undefined || from.grade === null || grade === from.grade) return;
  const data = { said: grade, believed: from.grade };
  noteEntry(fold, entry, { code: 'grade-mismatch', severity: 'act-today', store: from.facts.id, data });
}

function noteBreaks(fold: Fold, entry: AnyEntry, from: StoreState, to: StoreState): void {
  for (const broken of ruleBreaks(fold.index, from, to)) {
    const data = { ...broken.data, happened: entry.happened ?? null };
    noteEntry(fold, entry, { code: broken.code, severity: 'act-now', store: to.facts.id, data });
    if (broken.code === 'biocides-meet' || broken.code === 'grade-may-not-flow') {
      const hold = ruleHold(entry, broken.code);
      putOnHold(from, hold);
      putOnHold(to, hold);
    }
  }
}

/** A fact that breaks a rule is kept, and what it touched waits. */
export function ruleHold(entry: AnyEntry, reason: string): HoldState {
  return { hold: `rule ${entry.site} ${entry.number}`, sinceMs: entry.happenedAtMs, reason, entry: entry.id };
}

/** Of two releases on the same word the mix has the one that is over first. */
function endsFirst(a: ReleaseRecord | null, b: ReleaseRecord | null): ReleaseRecord | null {
  const endOf = (one: ReleaseRecord | null) => one?.untilMs ?? Number.POSITIVE_INFINITY;
  return endOf(b) < endOf(a) ? b : a;
}

function mix(fold: Fold, from: StoreState, to: StoreState): void {
  const wasEmpty = to.emptied;
  const waits = !isWaste(fold.index, to);
  to.biocides = withAll(to.biocides, biocidesIn(fold.index, from));
  const grade = gradeAfter(fold.index, from, to);
  if (grade !== null) holdsNow(to, grade);
  const before = to.release;
  to.release = wasEmpty ? from.release : weakerRelease(to.release, from.release);
  if (wasEmpty || to.release !== before) to.released = from.released;
  else to.released = endsFirst(to.released, from.released);
  if (!waits) return;
  for (const hold of holdsOf(from)) putOnHold(to, hold);
  for (const waived of from.waived) waive(to, waived);
  to.conditional ??= from.conditional;
}
