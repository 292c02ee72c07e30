// Reading counters: a reading closes an interval; a reading that was left out keeps it open.
import type { AnyEntry, CounterReading } from '../book/index.ts';
import { msPerDay } from '../ground/units/index.ts';
import type { Instrument } from '../outpost/index.ts';
import { type CounterState, closeCounter, countedSince, learnDaily } from './counter-state.ts';
import type { Fold } from './fold.ts';
import { postInterval } from './interval.ts';
import { noteEntry } from './note.ts';

/** More than the unit's limit times this is asked about. Ours, no source. */
const LEAP_FACTOR = 1.5;

/**
 * Reads the counters of a day line, of a swap or of a meter entry.
 * @returns the instruments that were read
 */
export function readCounters(fold: Fold, entry: AnyEntry, readings: readonly CounterReading[], dayLine: boolean): ReadonlySet<string> {
  const waiting = new Map(readings.map((reading) => [reading.instrument, reading.value]));
  const read = new Set<string>();
  // Water is made first and then used.
  for (const instrument of fold.instrumentsInOrder) {
    const value = waiting.get(instrument.id);
    if (value === undefined) continue;
    waiting.delete(instrument.id);
    if (value !== null) read.add(instrument.id);
    if (instrument.measures === 'flow') readOne(fold, entry, instrument, value, dayLine);
  }
  for (const name of waiting.keys()) {
    noteEntry(fold, entry, { code: 'instrument-unknown', severity: 'act-today', field: name, data: { name } });
  }
  return read;
}

function readOne(fold: Fold, entry: AnyEntry, instrument: Instrument, value: number | null, dayLine: boolean): void {
  if (value === null) {
    fold.counter(instrument.id, fold.openingMs ?? entry.happenedAtMs).missedBy = entry;
    noteEntry(fold, entry, { code: 'count-missing', severity: 'know', field: instrument.id, data: { instrument: instrument.name } });
    return;
  }
  const running = instrument.reading === 'runningTotal';
  const state = fold.counter(instrument.id, fold.openingMs ?? entry.happenedAtMs);
  const counted = countedSince(state, value, { running, rollsOverAt: instrument.rollsOverAt ?? null });
  if (typeof counted === 'number') {
    const massMg = Math.round(counted * (instrument.litresPerCount ?? 1) * fold.mgPerL);
    askAboutLeap(fold, entry, { instrument, state, massMg });
    learnDaily(state, massMg, { ms: entry.happenedAtMs, dayLine });
    if (instrument.route !== undefined) postInterval(fold, entry, { instrument, route: instrument.route, state, massMg });
  } else if (counted.kind === 'backwards') {
    const data = { instrument: instrument.name, last: counted.last, value, unit: instrument.unit };
    noteEntry(fold, entry, { code: 'counter-backwards', severity: 'act-today', field: instrument.id, data });
  }
  closeCounter(state, value, { ms: entry.happenedAtMs, running, dayLine });
}

/** More than the unit can pass in that time: a slip of a digit, or a replaced counter. */
function askAboutLeap(fold: Fold, entry: AnyEntry, what: { instrument: Instrument; state: CounterState; massMg: number }): void {
  const { instrument, state, massMg } = what;
  const limitL = instrument.meters === undefined ? undefined : fold.index.units.get(instrument.meters)?.limitLPerDay;
  if (limitL === undefined) return;
  const days = Math.max(1, (entry.happenedAtMs - state.sinceMs) / msPerDay);
  const mostMg = Math.round(limitL * fold.mgPerL * days * LEAP_FACTOR);
  if (massMg <= mostMg) return;
  const data = { instrument: instrument.name, massMg, mostMg, mgPerL: fold.mgPerL };
  noteEntry(fold, entry, { code: 'counter-leaps', severity: 'act-today', field: instrument.id, data });
}
