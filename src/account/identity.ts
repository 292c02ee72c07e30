// Identity goes with the water: grade, biocides, on whose word it may be used, and a hold.
import type { AnyEntry } from '../book/index.ts';
import type { Flow, Fold } from './fold.ts';
import { conditionalsOf, holdsOf, makeConditional, putOnHold } from './hold.ts';
import { OUTSIDE, UNACCOUNTED } from './ledger.ts';
import { noteEntry } from './note.ts';
import { bringWaived } from './quality/waivers.ts';
import { biocidesIn, gradeAfter, isWaste, ruleBreaks, withAll } from './rules.ts';
import {
  type HoldState,
  holdsNow,
  type Release,
  type ReleaseRecord,
  ranDry,
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
  const from = what.from.store ?? what.inHose ?? null;
  const to = what.to.store;
  if (to === null) return;
  const isMade = what.plumbing === true && isMadeByUnit(fold, what, to.facts.id);
  waterCame(entry, what, to, isMade);
  if (what.plumbing === true && !isMade && isByPort(entry, what)) foulByPort(fold, entry, to);
  if (from === null) cameFromPool(fold, what, to, isMade);
  else if (isMade && (from.grade === null || from.grade !== to.grade)) makeInto(fold, entry, from, to);
  else {
    if (what.plumbing !== true) checkNamedGrade(fold, entry, from, what.grade);
    const isByHand = what.plumbing !== true || entry.kind === 'movement';
    if (isByHand || (!isMade && !isWaste(fold.index, to))) noteBreaks(fold, entry, from, to);
    mix(fold, from, to);
  }
}

/** New water makes results of what was there before results of other water; a unit's own product goes on. */
function waterCame(entry: AnyEntry, what: Flow, to: StoreState, isMade: boolean): void {
  if (what.massMg <= 0) return;
  to.inflowMg += what.massMg;
  if (isMade || isAdded(what)) return;
  const from = what.from.store ?? what.inHose ?? null;
  const sinceMs = Math.max(entry.happenedAtMs, from === null ? entry.happenedAtMs : sampledFrom(from));
  to.waterSinceMs = ranDry(to) ? sinceMs : Math.max(sinceMs, sampledFrom(to));
  if (from === null) return;
  to.filledFrom = from.facts.id;
  if (!ranDry(to)) return;
  // What was known was of water that is gone; what is bad of the new water comes with it as a hold.
  to.results = [];
  to.badNewsSinceMs = entry.happenedAtMs;
  to.treated = null;
}

/** From when on a sample speaks of this water: a treatment keeps it waiting wherever it goes. */
export function sampledFrom({ waterSinceMs, treated }: StoreState): number {
  return Math.max(waterSinceMs, treated?.untilMs ?? Number.NEGATIVE_INFINITY);
}

/** A dose: it changes what is there, and is no other water. */
const isAdded = ({ plumbing, from }: Flow): boolean => plumbing === true && from.account === OUTSIDE;

/** Water that came in over a port: not out of the hose of a run, and not drawn into it by hand. */
const isByPort = ({ kind }: AnyEntry, what: Flow): boolean =>
  kind !== 'movement' && !isAdded(what) && what.inHose === undefined;

/** What comes in over a port is of the grade that the port is for, whatever stands on it. */
function foulByPort(fold: Fold, entry: AnyEntry, to: StoreState): void {
  const port = fold.portOf(to.facts.id);
  const takes = port === null ? undefined : fold.index.ports.get(port)?.takes;
  const comes = takes === undefined ? undefined : fold.index.grades.get(takes);
  const there = to.grade === null ? undefined : fold.index.grades.get(to.grade);
  if (port === null || comes === undefined || comes.rank <= (there?.rank ?? 0)) return;
  const data = { from: port, to: to.facts.id, fromGrade: comes.id, toGrade: there?.id ?? 'unknown' };
  const code = 'grade-may-not-flow';
  noteEntry(fold, entry, {
    ...{ code, severity: 'act-now', store: to.facts.id },
    data: { ...data, happened: entry.happened ?? null },
  });
  putOnHold(to, ruleHold(entry, code));
  holdsNow(to, comes.id);
}

function cameFromPool(fold: Fold, what: Flow, to: StoreState, isMade: boolean): void {
  // A dose makes an empty store no fuller, and a full one no other water.
  if (isAdded(what) && !isMade) return;
  const isKnown = what.plumbing === true && (isMade || isWaste(fold.index, to));
  if (!isKnown) arriveUnknown(fold, what, to);
  else if (to.grade !== null) holdsNow(to, to.grade);
}

/** A purifier makes another grade of it: the receiving store keeps its own. What is held is held behind it, too. */
function makeInto(fold: Fold, entry: AnyEntry, from: StoreState, to: StoreState): void {
  if (ranDry(to)) to.released = null;
  to.release = ranDry(to) ? 'made here' : weakerRelease(to.release, 'made here');
  bringHolds(fold, from, to);
  if (!mayEnter(fold, from, to)) holdOnce(to, ruleHold(entry, 'grade-may-not-enter'));
  if (to.grade !== null) holdsNow(to, to.grade);
}

/** A unit makes water of the grades that may enter it, and of no others. */
function mayEnter({ index }: Fold, { grade }: StoreState, to: StoreState): boolean {
  const unit = index.outpost.units.find(({ feeds }) => 'store' in feeds && feeds.store === to.facts.id);
  const entering = index.outpost.grades.filter(({ mayEnterUnits }) => mayEnterUnits.includes(unit?.id ?? ''));
  return entering.length === 0 || entering.some(({ id }) => id === grade);
}

/** The same thing goes on with every reading of a meter. */
function holdOnce(state: StoreState, hold: HoldState): void {
  if (!holdsOf(state).some(({ reason }) => reason === hold.reason)) putOnHold(state, hold);
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

/** Did the unit that fills this store make the water, or did it come another way? */
function isMadeByUnit(fold: Fold, { from }: Flow, store: string): boolean {
  if (from.store === null) return from.account === 'cabin air' || isMadeFrom(fold, from.account, store);
  const id = from.store.facts.id;
  return fold.index.outpost.units.some(
    ({ feeds, takes }) =>
      'store' in feeds &&
      feeds.store === store &&
      takes.some((end) =>
        'store' in end ? end.store === id : 'port' in end && fold.portOf(id) === end.port,
      ),
  );
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
export function endsFirst(a: ReleaseRecord | null, b: ReleaseRecord | null): ReleaseRecord | null {
  const endOf = (one: ReleaseRecord | null) => one?.untilMs ?? Number.POSITIVE_INFINITY;
  return endOf(b) < endOf(a) ? b : a;
}

function mix(fold: Fold, from: StoreState, to: StoreState): void {
  const wasEmpty = ranDry(to);
  to.biocides = withAll(to.biocides, biocidesIn(fold.index, from));
  bringHolds(fold, from, to);
  const grade = gradeAfter(fold.index, from, to);
  if (grade !== null) holdsNow(to, grade);
  else toUnknown(from, to);
  to.release = wasEmpty ? from.release : weakerRelease(to.release, from.release);
  to.released = wasEmpty ? from.released : endsFirst(to.released, from.released);
}

/** What came in stays written down, for when the store is empty again. */
function toUnknown(from: StoreState, to: StoreState): void {
  if (from.grade !== null) holdsNow(to, from.grade);
  to.grade = null;
  to.emptied = false;
}

function bringHolds(fold: Fold, from: StoreState, to: StoreState): void {
  if (isWaste(fold.index, to)) return;
  for (const hold of holdsOf(from)) putOnHold(to, hold);
  for (const waived of from.waived) bringWaived(to, waived);
  for (const why of conditionalsOf(from)) makeConditional(to, why);
}
