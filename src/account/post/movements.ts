// Movements: single ones, runs with pauses, pushes of several stores, single drinks that a counter will count.
import type { Amount, AnyEntry, Entry } from '../../book/index.ts';
import type { Instrument } from '../../outpost/index.ts';
import { countsOnce, pushedFacts } from '../duplicates.ts';
import { endOf, storeOf } from '../ends.ts';
import { flow } from '../flow.ts';
import type { End, Fold } from '../fold.ts';
import { fusedFlow } from '../fused-flow.ts';
import { doubtOf, instrumentOf } from '../instrument-of.ts';
import { noteUnsaid } from '../interval.ts';
import { lineAccount } from '../ledger.ts';
import { noteEntry } from '../note.ts';
import { sourcesOf } from '../route.ts';
import { cloneStore, type StoreState } from '../store-state.ts';
import { tally } from '../tally.ts';
import { deduceInflow } from '../unmetered.ts';

export function postMovement(fold: Fold, entry: Entry<'movement'>): void {
  const { body } = entry;
  const counted = fold.counterOfUnit.get(body.from);
  if (counted !== undefined) {
    postSingleUse(fold, entry, counted);
    return;
  }
  const { from, to, amount, startAtMs } = body;
  if (
    !countsOnce(fold, entry, {
      from,
      to,
      massMg: amount.massMg,
      startAtMs: startAtMs ?? null,
      person: body.person ?? null,
    })
  )
    return;
  const source = endOf(fold, entry, from, 'from');
  const target = endOf(fold, entry, to, 'to');
  const doubt = doubtOf(fold, amount, instrumentOf(fold, body));
  noteReserveDrawn(fold, entry, { source, target, massMg: amount.massMg });
  deduceInflow(fold, entry, source.store, { massMg: amount.massMg, uMg: doubt.uMg });
  const moved = { from: source, to: target, massMg: amount.massMg, ...doubt, grade: body.grade };
  fusedFlow(fold, entry, moved, body.alsoRead ?? []);
  if (body.use !== undefined && source.store?.grade != null)
    fold.usage.count(source.store.grade, amount.massMg);
}

/** Water leaves the reserve for something else: it is said until it is repaid. */
function noteReserveDrawn(
  fold: Fold,
  entry: AnyEntry,
  { source, target, massMg }: { readonly source: End; readonly target: End; readonly massMg: number },
): void {
  if (source.store?.facts.reserve !== true || target.store?.facts.reserve === true) return;
  const data = { massMg, mgPerL: fold.mgPerL, said: true };
  noteEntry(fold, entry, { code: 'reserve-drawn', severity: 'act-now', store: source.store.facts.id, data });
}

/**
 * A single use inside a counter's open interval: it stands until the counter closes, and is then a part of what was counted.
 * It brings no noise of its own: the counter's reading brings that of the whole.
 */
function postSingleUse(fold: Fold, entry: Entry<'movement'>, instrument: Instrument): void {
  const state = fold.counter(instrument.id, fold.openingMs ?? entry.happenedAtMs);
  const route = instrument.route;
  if (route === undefined) return;
  let allMg = entry.body.amount.massMg;
  for (const massMg of state.split.values()) allMg += massMg;
  const to = endOf(fold, entry, entry.body.to, 'to');
  const calibration = fold.calibrationOf(instrument);
  const before = state.split;
  const split = new Map<string, number>();
  // Shared out as if the counter stood now at all single uses so far; this one posts the difference.
  for (const share of sourcesOf(fold, route, { split: before, claims: [] }, allMg)) {
    const { account } = share.end;
    const sharedMg = split.get(account);
    // A store may come up twice: what it gave before is set off once.
    const part = share.massMg - (sharedMg === undefined ? (before.get(account) ?? 0) : 0);
    split.set(account, (sharedMg ?? 0) + share.massMg);
    if (part === 0) continue;
    flow(fold, entry, { from: share.end, to, massMg: part, uMg: 0, calibration, plumbing: true });
    tally(fold, route, share.end, part);
    if (share.unsaid) noteUnsaid(fold, entry, share.end, part);
  }
  state.split = split;
}

type RunPart = Entry<'run-pause'> | Entry<'run-finish'>;

export function postRunStart(fold: Fold, entry: Entry<'run-start'>): void {
  const { run, from, to } = entry.body;
  fold.runs.set(run, { from, to });
}

/** A run stopped on its way: what stays in the hose is in neither store. */
export function postRunPause(fold: Fold, entry: Entry<'run-pause'>): void {
  const ends = runEnds(fold, entry);
  if (ends === null) return;
  const { body } = entry;
  const lineMg = Math.min(body.lineContentMg ?? 0, body.amount.massMg);
  const line: End = { account: lineAccount(body.run), store: null };
  const doubt = doubtOf(fold, body.amount, instrumentOf(fold, body));
  flow(fold, entry, {
    from: ends.from,
    to: ends.to,
    massMg: body.amount.massMg - lineMg,
    ...doubt,
    grade: body.grade,
  });
  emptyLine(fold, entry, line, ends);
  flow(fold, entry, { from: ends.from, to: line, massMg: lineMg, uMg: 0, calibration: doubt.calibration });
  const inHose = ends.from.store === null ? null : cloneStore(ends.from.store);
  fold.runs.set(body.run, { ...ends.names, inHose });
}

export function postRunFinish(fold: Fold, entry: Entry<'run-finish'>): void {
  const ends = runEnds(fold, entry);
  if (ends === null) return;
  const { body } = entry;
  const doubt = doubtOf(fold, body.amount, instrumentOf(fold, body));
  const moved = { from: ends.from, to: ends.to, massMg: body.amount.massMg, ...doubt, grade: body.grade };
  fusedFlow(fold, entry, moved, body.alsoRead ?? []);
  emptyLine(fold, entry, { account: lineAccount(body.run), store: null }, ends);
  fold.runs.delete(body.run);
}

/** What stood in the hose gets in as well; after the new water, so that it is that which says what the store holds now. */
function emptyLine(fold: Fold, entry: AnyEntry, line: End, { to, inHose }: RunEnds): void {
  const massMg = fold.ledger.balanceMg(line.account);
  if (massMg <= 0) return;
  flow(fold, entry, { from: line, to, massMg, uMg: 0, calibration: -1, plumbing: true, inHose });
}

interface RunEnds {
  readonly from: End;
  readonly to: End;
  readonly names: { readonly from: string; readonly to: string };
  /** Whose water stands in the hose since the last pause. */
  readonly inHose: StoreState | null;
}

function runEnds(fold: Fold, entry: RunPart): RunEnds | null {
  const run = fold.runs.get(entry.body.run);
  const from = entry.body.from ?? run?.from;
  const to = entry.body.to ?? run?.to;
  if (from === undefined || to === undefined) {
    noteEntry(fold, entry, {
      code: 'run-unknown',
      severity: 'act-today',
      field: 'run',
      data: { run: entry.body.run },
    });
    return null;
  }
  const ends = { from: endOf(fold, entry, from, 'from'), to: endOf(fold, entry, to, 'to') };
  return { ...ends, names: { from, to }, inHose: run?.inHose ?? null };
}

/** Several stores pushed into one or more: all legs over the hose, which is empty before and after. */
export function postPush(fold: Fold, entry: Entry<'push'>): void {
  const { body } = entry;
  const givenMg = sumOfLegs(body.from);
  const gotMg = sumOfLegs(body.to);
  if (!countsOnce(fold, entry, pushedFacts(body))) return;
  const doubt = doubtOf(fold, body.amount, instrumentOf(fold, body));
  const parts = partsOfPush(fold, entry, body);
  for (const { from, to, massMg } of parts) {
    // The parts of one doubt are independent, so their squares add up to its square.
    const uMg = Math.round(doubt.uMg * Math.sqrt(givenMg === 0 ? 0 : massMg / givenMg));
    flow(fold, entry, { from, to, massMg, uMg, calibration: doubt.calibration, grade: body.grade });
  }
  const last = parts.at(-1);
  if (givenMg === gotMg || last === undefined) return;
  flow(fold, entry, {
    from: last.from,
    to: last.to,
    massMg: 0,
    uMg: Math.abs(givenMg - gotMg),
    calibration: -1,
  });
  noteEntry(fold, entry, {
    code: 'legs-differ',
    severity: 'know',
    data: { givenMg, gotMg, mgPerL: fold.mgPerL },
  });
}

function sumOfLegs(legs: readonly { readonly amount: Amount }[]): number {
  return legs.reduce((sum, leg) => sum + leg.amount.massMg, 0);
}

/** Who gave whom how much: givers fill receivers one by one. What was given stands, since the givers were read one by one. */
function partsOfPush(
  fold: Fold,
  entry: Entry<'push'>,
  { from, to }: Entry<'push'>['body'],
): { from: End; to: End; massMg: number }[] {
  const waiting = to.map((leg) => ({ end: endOf(fold, entry, leg.store, 'to'), restMg: leg.amount.massMg }));
  const parts: { from: End; to: End; massMg: number }[] = [];
  for (const leg of from) {
    const end = endOf(fold, entry, leg.store, 'from');
    let restMg = leg.amount.massMg;
    waiting.forEach((target, k) => {
      const massMg = k === waiting.length - 1 ? restMg : Math.min(restMg, target.restMg);
      target.restMg -= massMg;
      restMg -= massMg;
      if (massMg > 0) parts.push({ from: end, to: target.end, massMg });
    });
  }
  return parts;
}

/** The source of a counter's water changed: the amount is a part of what the counter will say. */
export function postSourceChange(fold: Fold, entry: Entry<'source-change'>): void {
  const { body } = entry;
  const instrument = fold.index.instruments.get(body.counter);
  if (instrument?.route === undefined) {
    noteEntry(fold, entry, {
      code: 'instrument-unknown',
      severity: 'act-today',
      field: 'counter',
      data: { name: body.counter },
    });
    return;
  }
  const store = storeOf(fold, entry, body.store);
  if (store === null) return;
  const state = fold.counter(body.counter, body.sinceMs);
  const uMg = body.amount.uMg ?? Math.round(body.amount.massMg * CLAIM_RELATIVE_U);
  state.claims = [...state.claims, { store: body.store, massMg: body.amount.massMg, uMg, entry: entry.id }];
  if (!store.facts.reserve) return;
  const data = { massMg: body.amount.massMg, mgPerL: fold.mgPerL, said: true };
  noteEntry(fold, entry, { code: 'reserve-drawn', severity: 'act-now', store: body.store, data });
}

/** A source change is found from counters by subtraction: five parts in a hundred, one standard deviation. Ours, no source. */
const CLAIM_RELATIVE_U = 0.05;
