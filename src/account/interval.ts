// A closed interval of a counter, posted along its way of water.
import type { AnyEntry } from '../book/index.ts';
import type { Instrument, Route } from '../outpost/index.ts';
import type { CounterState } from './counter-state.ts';
import { flow } from './flow.ts';
import { type End, type Fold, MG_PER_KG } from './fold.ts';
import { noteEntry } from './note.ts';
import { resolve, type SourceShare, sourcesOf, splitOver, type Target, targetsOf } from './route.ts';
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
}

/** Random doubt of one interval, one standard deviation in milligrams. */
export function randomUMg(fold: Fold, instrument: Instrument, massMg: number): number {
  const random = instrument.random;
  if (random === undefined) return 0;
  const absolute = (random.absolute ?? 0) * (instrument.litresPerCount ?? 1) * fold.mgPerL;
  const relative = ((random.relative ?? 0) + (random.relativePerDay ?? 0)) * massMg;
  return Math.round(Math.sqrt(absolute * absolute + relative * relative));
}

/** Posts what single entries of the interval have not posted yet. */
export function postInterval(fold: Fold, entry: AnyEntry, interval: Interval): void {
  const { state, route, instrument } = interval;
  const single = [...state.split.values()].reduce((sum, massMg) => sum + massMg, 0);
  if (single > interval.massMg) {
    const data = { instrument: instrument.name, singleMg: single, countedMg: interval.massMg, mgPerL: fold.mgPerL };
    noteEntry(fold, entry, { code: 'drinks-exceed-counter', severity: 'know', field: instrument.id, data });
  }
  const shares = sourcesOf(fold, route, interval);
  const targets = targetsOf(fold, route.to, { fromMs: state.sinceMs, toMs: entry.happenedAtMs });
  const uMg = randomUMg(fold, instrument, interval.massMg);
  for (const share of shares) {
    const massMg = share.massMg - (state.split.get(share.end.account) ?? 0);
    const part = interval.massMg === 0 ? 0 : Math.abs(share.massMg) / interval.massMg;
    postShare(fold, entry, { share, targets, massMg, uMg: share.claimUMg ?? Math.round(uMg * part), instrument });
    tally(fold, route, share.end, massMg);
  }
  settleRemainder(fold, entry, shares);
  postReject(fold, entry, interval);
}

function postShare(
  fold: Fold,
  entry: AnyEntry,
  what: { share: SourceShare; targets: readonly Target[]; massMg: number; uMg: number; instrument: Instrument },
): void {
  const { share, massMg } = what;
  if (share.through !== null) drawThrough(fold, share.end, share.through);
  // A told change of source has its own doubt; what the counter says has the counter's.
  const calibration = share.claimUMg === null ? fold.calibrationOf(what.instrument) : -1;
  splitOver(what.targets, massMg).forEach((part, k) => {
    flow(fold, entry, { from: share.end, to: part.end, massMg: part.massMg, uMg: k === 0 ? what.uMg : 0, calibration, plumbing: true });
  });
  if (share.unsaid && massMg > 0) {
    const data = { massMg, mgPerL: fold.mgPerL, said: false };
    noteEntry(fold, entry, { code: 'reserve-drawn', severity: 'act-now', store: share.end.store?.facts.id, data });
  }
}

/** All of it passed the counter, but how much the buffer and how much the store behind it gave, nobody measured. */
function drawThrough(fold: Fold, source: End, buffer: End): void {
  if (!fold.estimating || source.store === null || buffer.store === null) return;
  fold.estimator.move({ from: source.store.content, to: buffer.store.content, calibration: -1, massKg: 0, uKg: UNMEASURED_U_KG });
}

/** A buffer that was drawn through stands at its remainder now: that is a reading of it. */
function settleRemainder(fold: Fold, entry: AnyEntry, shares: readonly SourceShare[]): void {
  const buffer = shares.find((share) => share.through !== null)?.through?.store;
  if (buffer == null || !fold.estimating) return;
  const { facts, content } = buffer;
  const uKg = facts.remainderUMg / MG_PER_KG;
  const offset = fold.offset(`remainder:${facts.id}`, uKg);
  fold.estimator.read({ places: [content, offset], value: facts.remainderMg / MG_PER_KG, u: uKg * REMAINDER_NEW_SHARE });
  buffer.lastReading = { atMs: entry.happenedAtMs, how: 'reckoned', entry: entry.id };
}

/** A purifier's counter stands behind it: what it rejects left the same source. */
function postReject(fold: Fold, entry: AnyEntry, interval: Interval): void {
  const unit = interval.route.through === undefined ? undefined : fold.index.units.get(interval.route.through);
  if (unit?.kind !== 'purifier') return;
  const source = unit.takes[0];
  const from = source === undefined ? null : resolve(fold, source);
  if (from === null) return;
  const rejectMg = Math.round((interval.massMg * (1 - unit.yieldShare)) / unit.yieldShare);
  const uMg = Math.round((interval.massMg * unit.yieldDoubt) / (unit.yieldShare * unit.yieldShare));
  const targets = targetsOf(fold, unit.rejectTo, { fromMs: interval.state.sinceMs, toMs: entry.happenedAtMs });
  splitOver(targets, rejectMg).forEach(({ end, massMg }, k) => {
    flow(fold, entry, { from, to: end, massMg, uMg: k === 0 ? uMg : 0, calibration: -1, plumbing: true });
  });
}

/** Doubt of the level that a purifier leaves in the buffer before it: the same every day, and new each day. Ours, no source. */
const LEVEL_SAME_U_L = 0.3;
const LEVEL_NEW_U_L = 0.2;

/**
 * The purifier passes on what it gets and leaves the buffer at its level. Only when what came in and what went out
 * were both read at this moment: in between the buffer is nobody's guess.
 */
export function settleLevels(fold: Fold, read: ReadonlySet<string>): void {
  if (!fold.estimating) return;
  for (const unit of fold.index.outpost.units) {
    if (unit.kind !== 'purifier' || unit.keepsInBufferL === undefined) continue;
    const source = unit.takes[0];
    if (source === undefined || !('store' in source)) continue;
    const buffer = fold.stores.get(source.store);
    const counters = fold.index.outpost.instruments.filter(({ route }) => route !== undefined && touchesStore(route, source.store));
    if (buffer === undefined || !counters.every((instrument) => read.has(instrument.id))) continue;
    const kg = (litres: number) => (litres * fold.mgPerL) / MG_PER_KG;
    const offset = fold.offset(`level:${source.store}`, kg(LEVEL_SAME_U_L));
    fold.estimator.read({ places: [buffer.content, offset], value: kg(unit.keepsInBufferL), u: kg(LEVEL_NEW_U_L) });
  }
}

function touchesStore(route: Route, store: string): boolean {
  return [...route.from, route.to].some((end) => 'store' in end && end.store === store);
}
