// Movements: single ones, runs with pauses, pushes of several stores, single drinks that a counter will count.
import type { Amount, AnyEntry, Entry } from '../../book/index.ts';
import { countsOnce } from '../duplicates.ts';
import { endOf } from '../ends.ts';
import { flow } from '../flow.ts';
import type { End, Fold } from '../fold.ts';
import { doubtOf, instrumentOf } from '../instrument-of.ts';
import { noteUnsaid } from '../interval.ts';
import { lineAccount } from '../ledger.ts';
import { noteEntry } from '../note.ts';
import { sourcesOf } from '../route.ts';
import { tally } from '../tally.ts';
import { deduceInflow } from '../unmetered.ts';

export function postMovement(fold: Fold, entry: Entry<'movement'>): void {
  const { body } = entry;
  const counted = countedUnit(fold, body.from);
  if (counted !== null) {
    postSingleUse(fold, entry, counted);
    return;
  }
  const { from, to, amount, startAtMs } = body;
  if (!countsOnce(fold, entry, { from, to, massMg: amount.massMg, startAtMs: startAtMs ?? null })) return;
  const source = endOf(fold, entry, from, 'from');
  const target = endOf(fold, entry, to, 'to');
  const doubt = doubtOf(fold, amount, instrumentOf(fold, body));
  deduceInflow(fold, entry, source.store, { massMg: amount.massMg, uMg: doubt.uMg });
  flow(fold, entry, { from: source, to: target, massMg: amount.massMg, ...doubt, grade: body.grade });
  if (body.use !== undefined && source.store?.grade != null) fold.usage.count(source.store.grade, amount.massMg);
}

/** The instrument that counts a unit's water, when an entry names the unit as its source. */
function countedUnit(fold: Fold, from: string) {
  if (!fold.index.units.has(from)) return null;
  return fold.index.outpost.instruments.find((instrument) => instrument.meters === from && instrument.route !== undefined) ?? null;
}

/**
 * A single use inside a counter's open interval: it stands until the counter closes, and is then a part of what was counted.
 * It brings no noise of its own: the counter's reading brings that of the whole.
 */
function postSingleUse(fold: Fold, entry: Entry<'movement'>, instrument: NonNullable<ReturnType<typeof countedUnit>>): void {
  const { massMg } = entry.body.amount;
  const state = fold.counter(instrument.id, fold.openingMs ?? entry.happenedAtMs);
  const route = instrument.route;
  if (route === undefined) return;
  const before = [...state.split.values()].reduce((sum, part) => sum + part, 0);
  const to = endOf(fold, entry, entry.body.to, 'to');
  const calibration = fold.calibrationOf(instrument);
  const posted = new Map(state.split);
  state.split.clear();
  // Shared out as if the counter stood now at all single uses so far; this one posts the difference.
  for (const share of sourcesOf(fold, route, { state: { ...state, split: posted, claims: [] }, massMg: before + massMg })) {
    const { account } = share.end;
    const part = share.massMg - (posted.get(account) ?? 0);
    posted.delete(account);
    state.split.set(account, (state.split.get(account) ?? 0) + share.massMg);
    if (part === 0) continue;
    flow(fold, entry, { from: share.end, to, massMg: part, uMg: 0, calibration, plumbing: true });
    tally(fold, route, share.end, part);
    if (share.unsaid) noteUnsaid(fold, entry, share.end, part);
  }
}

type RunPart = Entry<'run-pause'> | Entry<'run-finish'>;

export function postRunStart(fold: Fold, entry: Entry<'run-start'>): void {
  const { run, from, to } = entry.body;
  fold.runs.set(run, { from, to, lineMg: 0 });
}

/** A run stopped on its way: what stays in the hose is in neither store. */
export function postRunPause(fold: Fold, entry: Entry<'run-pause'>): void {
  const ends = runEnds(fold, entry);
  if (ends === null) return;
  const { body } = entry;
  const lineMg = Math.min(body.lineContentMg ?? 0, body.amount.massMg);
  const line: End = { account: lineAccount(body.run), store: null };
  const doubt = doubtOf(fold, body.amount, instrumentOf(fold, body));
  emptyLine(fold, entry, line, ends.to);
  flow(fold, entry, { from: ends.from, to: ends.to, massMg: body.amount.massMg - lineMg, ...doubt, grade: body.grade });
  flow(fold, entry, { from: ends.from, to: line, massMg: lineMg, uMg: 0, calibration: doubt.calibration });
  fold.runs.set(body.run, { from: ends.names.from, to: ends.names.to, lineMg });
}

export function postRunFinish(fold: Fold, entry: Entry<'run-finish'>): void {
  const ends = runEnds(fold, entry);
  if (ends === null) return;
  const { body } = entry;
  const doubt = doubtOf(fold, body.amount, instrumentOf(fold, body));
  emptyLine(fold, entry, { account: lineAccount(body.run), store: null }, ends.to);
  flow(fold, entry, { from: ends.from, to: ends.to, massMg: body.amount.massMg, ...doubt, grade: body.grade });
  fold.runs.delete(body.run);
}

/** What stood in the hose goes ahead of the new water. */
function emptyLine(fold: Fold, entry: AnyEntry, line: End, to: End): void {
  const massMg = fold.ledger.balanceMg(line.account);
  if (massMg > 0) flow(fold, entry, { from: line, to, massMg, uMg: 0, calibration: -1, plumbing: true });
}

function runEnds(fold: Fold, entry: RunPart): { from: End; to: End; names: { from: string; to: string } } | null {
  const run = fold.runs.get(entry.body.run);
  const from = entry.body.from ?? run?.from;
  const to = entry.body.to ?? run?.to;
  if (from === undefined || to === undefined) {
    noteEntry(fold, entry, { code: 'run-unknown', severity: 'act-today', field: 'run', data: { run: entry.body.run } });
    return null;
  }
  return { from: endOf(fold, entry, from, 'from'), to: endOf(fold, entry, to, 'to'), names: { from, to } };
}

/** Several stores pushed into one or more: all legs over the hose, which is empty before and after. */
export function postPush(fold: Fold, entry: Entry<'push'>): void {
  const { body } = entry;
  const massOf = (legs: readonly { readonly amount: Amount }[]) => legs.reduce((sum, leg) => sum + leg.amount.massMg, 0);
  const key = (legs: readonly { readonly store: string }[]) => legs.map((leg) => leg.store).join('+');
  const movement = { from: key(body.from), to: key(body.to), massMg: massOf(body.from), startAtMs: body.startAtMs ?? null };
  if (!countsOnce(fold, entry, movement)) return;
  const differMg = massOf(body.to) - massOf(body.from);
  if (differMg !== 0) {
    const data = { givenMg: massOf(body.from), gotMg: massOf(body.to), mgPerL: fold.mgPerL };
    noteEntry(fold, entry, { code: 'legs-differ', severity: 'know', data });
  }
  const doubt = doubtOf(fold, body.amount, instrumentOf(fold, body));
  const waiting = body.to.map((leg) => ({ end: endOf(fold, entry, leg.store, 'to'), restMg: leg.amount.massMg }));
  body.from.forEach((leg, k) => {
    const from = endOf(fold, entry, leg.store, 'from');
    let restMg = leg.amount.massMg;
    for (const target of waiting) {
      const massMg = Math.min(restMg, target.restMg);
      if (massMg === 0) continue;
      target.restMg -= massMg;
      restMg -= massMg;
      flow(fold, entry, { from, to: target.end, massMg, uMg: k === 0 ? doubt.uMg : 0, calibration: doubt.calibration, grade: body.grade });
    }
    // More given than got: the last receiver has it, since the legs of the givers were read one by one.
    const last = waiting.at(-1);
    if (restMg > 0 && last !== undefined) flow(fold, entry, { from, to: last.end, massMg: restMg, uMg: restMg, calibration: -1, grade: body.grade });
  });
}

/** The source of a counter's water changed: the amount is a part of what the counter will say. */
export function postSourceChange(fold: Fold, entry: Entry<'source-change'>): void {
  const { body } = entry;
  const instrument = fold.index.instruments.get(body.counter);
  if (instrument?.route === undefined) {
    noteEntry(fold, entry, { code: 'instrument-unknown', severity: 'act-today', field: 'counter', data: { name: body.counter } });
    return;
  }
  const store = fold.stores.get(body.store);
  if (store === undefined) {
    noteEntry(fold, entry, { code: 'store-unknown', severity: 'act-today', field: 'store', data: { name: body.store, nearest: [] } });
    return;
  }
  const state = fold.counter(body.counter, body.sinceMs);
  const uMg = body.amount.uMg ?? Math.round(body.amount.massMg * CLAIM_RELATIVE_U);
  state.claims = [...state.claims, { store: body.store, massMg: body.amount.massMg, uMg, entry: entry.id }];
  if (!store.facts.reserve) return;
  const data = { massMg: body.amount.massMg, mgPerL: fold.mgPerL, said: true };
  noteEntry(fold, entry, { code: 'reserve-drawn', severity: 'act-now', store: body.store, data });
}

/** A source change is found from counters by subtraction: five parts in a hundred, one standard deviation. Ours, no source. */
const CLAIM_RELATIVE_U = 0.05;
