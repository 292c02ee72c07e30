// Readings: day lines, meters, weights, gaugings, declared empty and full, stock counts, hook-ups.
import type { AnyEntry, Entry } from '../../book/index.ts';
import { noteBeforeCalibration } from '../before-calibration.ts';
import { closeCabinBalances } from '../cabin-balance.ts';
import { readCounters } from '../counters.ts';
import { storeOf } from '../ends.ts';
import type { Fold } from '../fold.ts';
import { gaugeDoubt, gaugeOfStore } from '../gauge-doubt.ts';
import { injectionDoubt } from '../injection-doubt.ts';
import { instrumentOf } from '../instrument-of.ts';
import { postAhead, settleLevels } from '../interval.ts';
import { postNorms } from '../norms.ts';
import { noteEntry } from '../note.ts';
import { readContent } from '../read-content.ts';
import type { HowKnown } from '../store-state.ts';
import { countersOfGrade } from '../tally.ts';

export function postDayLine(fold: Fold, entry: Entry<'day-line'>): void {
  const { body } = entry;
  postNorms(fold, entry);
  const read = readCounters(fold, entry, body.readings, true);
  settleLevels(fold, entry, read);
  closeCabinBalances(fold, entry, { readings: body.readings, read, peopleAboard: body.peopleAboard });
  for (const grade of fold.usage.grades()) {
    const complete = countersOfGrade(fold, grade).every((id) => read.has(id));
    fold.usage.close(grade, {
      day: body.day,
      atMs: entry.happenedAtMs,
      peopleAboard: body.peopleAboard,
      complete,
      entry: entry.id,
    });
  }
  fold.lastLineMs = entry.happenedAtMs;
}

export function postMeter(fold: Fold, entry: Entry<'meter'>): void {
  readCounters(fold, entry, entry.body.readings, false);
}

export function postHookup(fold: Fold, entry: Entry<'hookup'>): void {
  const { store, port } = entry.body;
  if (!fold.ports.has(port)) {
    noteEntry(fold, entry, { code: 'port-unknown', severity: 'act-today', field: 'port', data: { port } });
    return;
  }
  if (storeOf(fold, entry, store) === null) return;
  beforePortChanges(fold, entry, port);
  const before = fold.portOf(store);
  if (before !== null && before !== port) {
    beforePortChanges(fold, entry, before);
    fold.setPort(before, null, entry.happenedAtMs);
  }
  fold.setPort(port, store, entry.happenedAtMs);
}

export function postWeigh(fold: Fold, entry: Entry<'weigh'> | Entry<'gauge'>): void {
  const { body } = entry;
  const state = storeOf(fold, entry, body.store);
  if (state === null) return;
  if (body.amount === null) {
    noteEntry(fold, entry, { code: 'reading-skipped', severity: 'know', store: body.store });
    return;
  }
  const how: HowKnown = entry.kind === 'weigh' ? 'weighed' : 'gauged';
  const instrument = instrumentOf(fold, body);
  noteBeforeCalibration(fold, entry, instrument);
  const doubt = gaugeDoubt(fold, body.store, instrument, body.amount);
  readContent(fold, entry, state, { massMg: body.amount.massMg, how, instrument: instrument?.id, ...doubt });
}

export function postPvt(fold: Fold, entry: Entry<'pvt'>): void {
  const { body } = entry;
  const state = storeOf(fold, entry, body.store);
  if (state === null) return;
  const doubt = injectionDoubt(fold, state, body.amount);
  readContent(fold, entry, state, {
    massMg: body.amount.massMg,
    how: 'gauged',
    instrument: 'gas injection',
    ...doubt,
  });
}

export function postDeclaredEmpty(fold: Fold, entry: Entry<'declared-empty'>): void {
  const { body } = entry;
  if (body.counters.length > 0) readCounters(fold, entry, body.counters, false);
  const state = storeOf(fold, entry, body.store);
  if (state === null) return;
  if (body.port !== undefined && fold.storeOn(body.port)?.facts.id === body.store) {
    beforePortChanges(fold, entry, body.port);
    fold.setPort(body.port, null, entry.happenedAtMs);
  }
  const runDry = body.flowStopped ?? !state.facts.emptyNeedsFlowStopped;
  if (!runDry) {
    // Nobody means to draw on it any more, so it is in no free figure; what is in it stays as reckoned.
    state.emptied = true;
    state.setAside = true;
    const data = { bookMg: body.bookMg ?? null, remainderMg: state.facts.remainderMg, mgPerL: fold.mgPerL };
    noteEntry(fold, entry, { code: 'tank-not-run-dry', severity: 'act-today', store: body.store, data });
    return;
  }
  state.emptied = true;
  state.setAside = false;
  // Nobody knew what it held: the container is of the worst that it is known to have held.
  state.grade ??= worstOf(fold, state.gradeHistory);
  const massMg = body.residual?.massMg ?? state.facts.remainderMg;
  const uMg = body.residual?.uMg ?? state.facts.remainderUMg;
  readContent(fold, entry, state, { massMg, uMg, how: 'declared empty' });
}

function worstOf({ index }: Fold, grades: readonly string[]): string | null {
  const rank = (id: string) => index.grades.get(id)?.rank ?? 0;
  return grades.reduce<string | null>(
    (worst, each) => (worst === null || rank(each) > rank(worst) ? each : worst),
    null,
  );
}

export function postDeclaredFull(fold: Fold, entry: Entry<'declared-full'>): void {
  const { body } = entry;
  const state = storeOf(fold, entry, body.store);
  if (state === null) return;
  const port = fold.portOf(body.store);
  if (port !== null) beforePortChanges(fold, entry, port);
  const fullU = fold.index.stores.get(body.store)?.fullAtDoubtL ?? 0.3;
  const uMg = body.amount.uMg ?? Math.round(fullU * fold.mgPerL);
  readContent(fold, entry, state, { massMg: body.amount.massMg, uMg, how: 'declared full' });
  if (port !== null) fold.setPort(port, null, entry.happenedAtMs);
}

/** What flowed to or from the store on a port up to now belongs to that store. */
function beforePortChanges(fold: Fold, entry: AnyEntry, port: string): void {
  if (fold.storeOn(port) === null) return;
  postNorms(fold, entry);
  postAhead(fold, entry, port);
}

export function postStockCount(fold: Fold, entry: Entry<'stock-count'>): void {
  for (const reading of entry.body.readings) {
    const state = storeOf(fold, entry, reading.store);
    if (state === null || reading.amount === null) continue;
    const gauge = gaugeOfStore(fold, reading.store);
    const doubt = gaugeDoubt(fold, reading.store, gauge, reading.amount);
    const { massMg } = reading.amount;
    readContent(fold, entry, state, { massMg, how: 'counted', instrument: gauge?.id, ...doubt });
  }
}
