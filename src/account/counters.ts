// Reading counters: a reading closes an interval; a reading that was left out keeps it open.
import type { AnyEntry, CounterReading } from '../book/index.ts';
import { msPerDay } from '../ground/units/index.ts';
import type { Instrument } from '../outpost/index.ts';
import { noteBeforeCalibration } from './before-calibration.ts';
import { mgPerCount } from './counted-mass.ts';
import { type CounterState, closeCounter, countedSince, forgetDay, learnDaily } from './counter-state.ts';
import type { Fold } from './fold.ts';
import { postInterval } from './interval.ts';
import { noteEntry } from './note.ts';
import { gradesOfCounter } from './tally.ts';

/** More than the unit's limit times this is asked about. Ours, no source. */
export const LEAP_FACTOR = 1.5;

/**
 * Reads the counters of a day line, of a swap or of a meter entry.
 * @returns the instruments that were read
 */
export function readCounters(
  fold: Fold,
  entry: AnyEntry,
  readings: readonly CounterReading[],
  dayLine: boolean,
): ReadonlySet<string> {
  const waiting = new Map(readings.map((reading) => [reading.instrument, reading.value]));
  const read = new Set<string>();
  // Water is made first and then used.
  for (const instrument of fold.instrumentsInOrder) {
    const value = waiting.get(instrument.id);
    if (value === undefined) continue;
    waiting.delete(instrument.id);
    if (value !== null) {
      read.add(instrument.id);
      noteBeforeCalibration(fold, entry, instrument);
    }
    if (instrument.measures === 'flow') readOne(fold, entry, instrument, value, dayLine);
  }
  for (const name of waiting.keys()) {
    noteEntry(fold, entry, {
      code: 'instrument-unknown',
      severity: 'act-today',
      field: name,
      data: { name },
    });
  }
  return read;
}

function readOne(
  fold: Fold,
  entry: AnyEntry,
  instrument: Instrument,
  value: number | null,
  dayLine: boolean,
): void {
  const state = fold.counter(instrument.id, fold.openingMs ?? entry.happenedAtMs);
  if (value === null) {
    state.missedBy = entry;
    noteEntry(fold, entry, {
      code: 'count-missing',
      severity: 'know',
      field: instrument.id,
      data: { instrument: instrument.name },
    });
    return;
  }
  const running = instrument.reading === 'runningTotal';
  const massMg = countedMg(fold, entry, { instrument, state, value, running });
  if (massMg === null) {
    // An amount since the line that fell is a slip of one of the two: the next reading still says all of it.
    if (!running && !dayLine) return;
    forgetDay(state, entry.happenedAtMs);
    for (const grade of gradesOfCounter(fold, instrument.id)) fold.usage.spoil(grade);
  } else {
    learnDaily(state, massMg, { ms: entry.happenedAtMs, dayLine });
    if (instrument.route !== undefined)
      postInterval(fold, entry, { instrument, route: instrument.route, state, massMg });
  }
  closeCounter(state, value, { ms: entry.happenedAtMs, running, dayLine });
}

interface Reading {
  readonly instrument: Instrument;
  readonly state: CounterState;
  readonly value: number;
  readonly running: boolean;
}

/** Milligrams since the last reading, or null where two readings tell no amount. */
function countedMg(fold: Fold, entry: AnyEntry, reading: Reading): number | null {
  const { instrument, state, value, running } = reading;
  const counted = countedSince(state, value, { running, rollsOverAt: instrument.rollsOverAt ?? null });
  const massMg = typeof counted === 'number' ? Math.round(counted * mgPerCount(fold, instrument)) : null;
  const mostMg = mostMgOf(fold, entry, reading);
  const isLeap = massMg !== null && mostMg !== null && massMg > mostMg;
  const last = state.last ?? 0;
  // More than can have passed, on the way over the modulus: it did not roll over, it fell.
  if ((massMg === null && state.last !== null) || (isLeap && value < last)) {
    const data = { instrument: instrument.name, last, value, unit: instrument.unit };
    const code = looksReplaced(fold, reading, mostMg) ? 'counter-replaced' : 'counter-backwards';
    noteEntry(fold, entry, { code, severity: 'act-today', field: instrument.id, data });
    return null;
  }
  if (isLeap) {
    const data = { instrument: instrument.name, massMg, mostMg, mgPerL: fold.mgPerL };
    noteEntry(fold, entry, { code: 'counter-leaps', severity: 'act-today', field: instrument.id, data });
  }
  return massMg;
}

/** A running total that stands where a new counter would, which began at nought since the last reading. */
function looksReplaced(fold: Fold, { instrument, value, running }: Reading, mostMg: number | null): boolean {
  return running && mostMg !== null && value * mgPerCount(fold, instrument) <= mostMg;
}

/** More than the unit can pass in that time is a slip of a digit, or a replaced counter; null where no limit is known. */
function mostMgOf(fold: Fold, entry: AnyEntry, { instrument, state }: Reading): number | null {
  const limitL =
    instrument.meters === undefined ? undefined : fold.index.units.get(instrument.meters)?.limitLPerDay;
  if (limitL === undefined) return null;
  const days = Math.max(1, (entry.happenedAtMs - state.sinceMs) / msPerDay);
  return Math.round(limitL * fold.mgPerL * days * LEAP_FACTOR);
}
