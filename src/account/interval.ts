// A closed interval of a counter, posted along its way of water.
import type { AnyEntry } from '../book/index.ts';
import { msPerDay } from '../ground/units/index.ts';
import type { Instrument, Route } from '../outpost/index.ts';
import { mgPerCount } from './counted-mass.ts';
import type { CounterState } from './counter-state.ts';
import { flow } from './flow.ts';
import { type End, type Fold, MG_PER_KG } from './fold.ts';
import { storeAccount } from './ledger.ts';
import { noteEntry } from './note.ts';
import { readState } from './read-state.ts';
import { resolve, type SourceShare, sourcesOf, targetOf } from './route.ts';
import { tally } from './tally.ts';

/** Doubt of a transfer whose size nobody measured, in kilograms: the reading that follows settles it. */
const UNMEASURED_U_KG = 10;

/** Part of the doubt of a remainder that is new each time; the rest is the same each time. Our estimate, no source. */
const REMAINDER_NEW_SHARE = 0.3;

export interface Interval {
  readonly instrument: Instrument;
  readonly route: Route;
  readonly state: CounterState;
  readonly massMg: number;
  /** Doubt beside the instrument's own, one standard deviation: for amounts that nobody read. */
  readonly moreUMg?: number;
}

/** Random doubt of one interval, one standard deviation in milligrams. */
export function randomUMg(fold: Fold, instrument: Instrument, massMg: number): number {
  const random = instrument.random;
  if (random === undefined) return 0;
  const absolute = (random.absolute ?? 0) * mgPerCount(fold, instrument);
  const relative = ((random.relative ?? 0) + (random.relativePerDay ?? 0)) * massMg;
  return Math.round(Math.sqrt(absolute * absolute + relative * relative));
}

/** Posts what single entries of the interval have not posted yet. */
export function postInterval(fold: Fold, entry: AnyEntry, interval: Interval): void {
  const { state, route, instrument, massMg, moreUMg = 0 } = interval;
  const singleMg = toldOfSources(state);
  if (singleMg > massMg) {
    const data = { instrument: instrument.name, singleMg, countedMg: massMg, mgPerL: fold.mgPerL };
    noteEntry(fold, entry, { code: 'drinks-exceed-counter', severity: 'know', field: instrument.id, data });
  }
  const shares = sourcesOf(fold, route, state, massMg);
  const to = targetOf(fold, route.to);
  const randomMg = randomUMg(fold, instrument, massMg);
  const uMg = Math.sqrt(randomMg * randomMg + moreUMg * moreUMg);
  // A store may come up twice: what single entries have posted out of it is set off once.
  const posted = new Map(state.split);
  for (const share of shares) {
    const { account } = share.end;
    const partMg = share.massMg - (posted.get(account) ?? 0);
    posted.delete(account);
    // The parts of one doubt are independent, so their squares add up to its square.
    const part = massMg === 0 ? 0 : Math.min(1, Math.abs(share.massMg) / massMg);
    postShare(fold, entry, { share, to, massMg: partMg, uMg: Math.round(uMg * Math.sqrt(part)), instrument });
    tally(fold, route, share.end, partMg);
  }
  spreadClaims(fold, shares);
  settleRemainder(fold, entry, shares);
  postReject(fold, entry, interval);
  settleAhead(fold, entry, interval);
}

/** What people have said of the interval's sources; a told change of source has the single uses of its store inside. */
function toldOfSources(state: CounterState): number {
  const told = new Map(state.split);
  for (const claim of state.claims) told.set(storeAccount(claim.store), 0);
  for (const { massMg, store } of state.claims)
    told.set(storeAccount(store), (told.get(storeAccount(store)) ?? 0) + massMg);
  return [...told.values()].reduce((sum, massMg) => sum + massMg, 0);
}

function postShare(
  fold: Fold,
  entry: AnyEntry,
  what: { share: SourceShare; to: End; massMg: number; uMg: number; instrument: Instrument },
): void {
  const { share, massMg } = what;
  if (share.through !== null) drawThrough(fold, share.end, share.through);
  flow(fold, entry, {
    from: share.end,
    to: what.to,
    massMg,
    uMg: what.uMg,
    calibration: fold.calibrationOf(what.instrument),
    plumbing: true,
  });
  if (share.unsaid) noteUnsaid(fold, entry, share.end, massMg);
}

/** Water came from a store that gives none unless somebody says so. */
export function noteUnsaid(fold: Fold, entry: AnyEntry, end: End, massMg: number): void {
  if (massMg <= 0) return;
  const data = { massMg, mgPerL: fold.mgPerL, said: false };
  noteEntry(fold, entry, { code: 'reserve-drawn', severity: 'act-now', store: end.store?.facts.id, data });
}

/** What a told change of source is wrong by, the source that gave the rest has given more or less: the counter's total stands. */
function spreadClaims(fold: Fold, shares: readonly SourceShare[]): void {
  const rest = shares.findLast((share) => share.claimUMg === null && share.end.store !== null)?.end.store;
  for (const { end, claimUMg } of shares) {
    if (claimUMg === null || end.store === null || !fold.estimating) continue;
    fold.estimator.move({
      from: end.store.content,
      to: rest?.content ?? -1,
      calibration: -1,
      massKg: 0,
      uKg: claimUMg / MG_PER_KG,
    });
  }
}

/** All of it passed the counter, but how much the buffer and how much the store behind it gave, nobody measured. */
function drawThrough(fold: Fold, source: End, buffer: End): void {
  if (!fold.estimating || source.store === null || buffer.store === null) return;
  fold.estimator.move({
    from: source.store.content,
    to: buffer.store.content,
    calibration: -1,
    massKg: 0,
    uKg: UNMEASURED_U_KG,
  });
}

/** A buffer that was drawn through stands at its remainder now: that is a reading of it. */
function settleRemainder(fold: Fold, entry: AnyEntry, shares: readonly SourceShare[]): void {
  const buffer = shares.find((share) => share.through !== null)?.through?.store;
  if (buffer == null || !fold.estimating) return;
  const { facts, content } = buffer;
  const uKg = facts.remainderUMg / MG_PER_KG;
  const { place } = fold.error('remainder', facts.id, uKg);
  readState(fold, entry, {
    place: content,
    shared: [{ place, weight: 1 }],
    valueKg: facts.remainderMg / MG_PER_KG,
    uKg: uKg * REMAINDER_NEW_SHARE,
    recordOf: null,
  });
  buffer.lastReading = { atMs: entry.happenedAtMs, how: 'reckoned', entry: entry.id };
}

/** A purifier's counter stands behind it: what it rejects left the same source. */
function postReject(fold: Fold, entry: AnyEntry, interval: Interval): void {
  const reject = rejectOf(fold, interval.route);
  if (reject === null) return;
  const { unit, from } = reject;
  const massMg = Math.round((interval.massMg * (1 - unit.yieldShare)) / unit.yieldShare);
  const uMg = Math.round((interval.massMg * unit.yieldDoubt) / (unit.yieldShare * unit.yieldShare));
  flow(fold, entry, {
    from,
    to: targetOf(fold, unit.rejectTo),
    massMg,
    uMg,
    calibration: -1,
    plumbing: true,
  });
}

/** The purifier behind a way, and where it takes its water; null for any other way. */
function rejectOf(fold: Fold, route: Route) {
  const unit = route.through === undefined ? undefined : fold.index.units.get(route.through);
  const source = unit?.kind === 'purifier' ? unit.takes[0] : undefined;
  const from = source === undefined ? null : resolve(fold, source);
  return unit?.kind === 'purifier' && from !== null ? { unit, from } : null;
}

/** Doubt of an amount that is posted ahead of its counter, relative, one standard deviation. Ours, no source. */
const AHEAD_RELATIVE_U = 0.3;

/** What was posted ahead stands here until the counter that it is a part of is read. */
const ahead: End = { account: 'ahead', store: null };

/**
 * The store on a port is about to change, and what flowed into it since its counters were last read is not known yet:
 * the learned daily mean stands in, and is set off when the counter is read.
 */
export function postAhead(fold: Fold, entry: AnyEntry, port: string): void {
  for (const { id, route } of fold.instrumentsInOrder) {
    const state = fold.counters.get(id);
    const share = route === undefined ? 0 : shareIntoPort(fold, route, port);
    if (share === 0 || state === undefined || state.meanMgPerDay === null) continue;
    const massMg = Math.round(
      (state.meanMgPerDay * share * (entry.happenedAtMs - state.aheadUntilMs)) / msPerDay,
    );
    if (massMg <= 0) continue;
    state.aheadMg += massMg;
    state.aheadUntilMs = entry.happenedAtMs;
    const uMg = Math.round(massMg * AHEAD_RELATIVE_U);
    flow(fold, entry, {
      from: ahead,
      to: targetOf(fold, { port }),
      massMg,
      uMg,
      calibration: -1,
      plumbing: true,
    });
  }
}

/** Part of a counter's amount that goes into a port: all of a use, the rejected part of what was purified. */
function shareIntoPort(fold: Fold, route: Route, port: string): number {
  if ('port' in route.to && route.to.port === port) return 1;
  const reject = rejectOf(fold, route);
  if (reject === null || !('port' in reject.unit.rejectTo) || reject.unit.rejectTo.port !== port) return 0;
  return (1 - reject.unit.yieldShare) / reject.unit.yieldShare;
}

/** The counter was read: the store that is on the port now did not get what an earlier one got. */
function settleAhead(fold: Fold, entry: AnyEntry, interval: Interval): void {
  const { state, route } = interval;
  if (state.aheadMg === 0) return;
  const end = 'port' in route.to ? route.to : rejectOf(fold, route)?.unit.rejectTo;
  if (end === undefined) return;
  const uMg = Math.round(state.aheadMg * AHEAD_RELATIVE_U);
  flow(fold, entry, {
    from: targetOf(fold, end),
    to: ahead,
    massMg: state.aheadMg,
    uMg,
    calibration: -1,
    plumbing: true,
  });
}

/** Doubt of the level that a purifier leaves in the buffer before it: the same every day, and new each day. Ours, no source. */
const LEVEL_SAME_U_L = 0.3;
const LEVEL_NEW_U_L = 0.2;

/**
 * The purifier passes on what it gets and leaves the buffer at its level. Only when what came in and what went out
 * were both read at this moment: in between the buffer is nobody's guess.
 */
export function settleLevels(fold: Fold, entry: AnyEntry, read: ReadonlySet<string>): void {
  if (!fold.estimating) return;
  for (const unit of fold.index.outpost.units) {
    if (unit.kind !== 'purifier' || unit.keepsInBufferL === undefined) continue;
    const source = unit.takes[0];
    if (source === undefined || !('store' in source)) continue;
    const buffer = fold.stores.get(source.store);
    const counters = fold.index.outpost.instruments.filter(
      ({ route }) => route !== undefined && touchesStore(route, source.store),
    );
    if (buffer === undefined || !counters.every((instrument) => read.has(instrument.id))) continue;
    const { place } = fold.error('level', source.store, fold.kgOfL(LEVEL_SAME_U_L));
    readState(fold, entry, {
      place: buffer.content,
      shared: [{ place, weight: 1 }],
      valueKg: fold.kgOfL(unit.keepsInBufferL),
      uKg: fold.kgOfL(LEVEL_NEW_U_L),
      recordOf: null,
    });
  }
}

function touchesStore(route: Route, store: string): boolean {
  return [...route.from, route.to].some((end) => 'store' in end && end.store === store);
}
