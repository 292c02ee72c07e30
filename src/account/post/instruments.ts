// Instruments that are calibrated anew or replaced: what was learned of them ends, and a counter starts where the new one stands.
import type { AnyEntry, Entry } from '../../book/index.ts';
import { msPerDay } from '../../ground/units/index.ts';
import type { Instrument } from '../../outpost/index.ts';
import { closeCounter, forgetDay } from '../counter-state.ts';
import { readCounters } from '../counters.ts';
import { errorKey, startAnew } from '../error-state.ts';
import type { Fold } from '../fold.ts';
import { postInterval } from '../interval.ts';
import { noteEntry } from '../note.ts';
import { gradesOfCounter } from '../tally.ts';

type Doubts = Pick<
  Entry<'instrument-replaced'>['body'],
  'calibrationRelative' | 'calibrationAbsolute' | 'litresPerCount'
>;

export function postInstrumentCalibrated(fold: Fold, entry: Entry<'instrument-calibrated'>): void {
  const instrument = instrumentNamed(fold, entry, entry.body.instrument);
  if (instrument !== null) forgetErrors(fold, entry, instrument, entry.body);
}

export function postInstrumentReplaced(fold: Fold, entry: Entry<'instrument-replaced'>): void {
  const { instrument: id, endedAt, startsAt } = entry.body;
  const instrument = instrumentNamed(fold, entry, id);
  if (instrument === null) return;
  if (instrument.measures === 'flow' && instrument.reading !== 'amount') {
    if (endedAt == null) standIn(fold, entry, instrument);
    else readCounters(fold, entry, [{ instrument: id, value: endedAt }], false);
    const state = fold.counter(id, fold.openingMs ?? entry.happenedAtMs);
    closeCounter(state, startsAt, { ms: entry.happenedAtMs, running: true, dayLine: false });
  }
  forgetErrors(fold, entry, instrument, entry.body);
}

function instrumentNamed(fold: Fold, entry: AnyEntry, name: string): Instrument | null {
  const instrument = fold.index.instruments.get(name);
  if (instrument !== undefined) return instrument;
  noteEntry(fold, entry, {
    code: 'instrument-unknown',
    severity: 'act-today',
    field: 'instrument',
    data: { name },
  });
  return null;
}

function forgetErrors(fold: Fold, entry: AnyEntry, instrument: Instrument, doubts: Doubts): void {
  const { id, calibration } = instrument;
  if (doubts.litresPerCount !== undefined) fold.litresPerCount.set(id, doubts.litresPerCount);
  fold.records.delete(id);
  const ms = entry.happenedAtMs;
  for (const [kind, assumedU] of [
    ['calibration', doubts.calibrationRelative ?? calibration?.relative ?? 0],
    ['gauge', doubts.calibrationAbsolute ?? calibration?.absolute ?? 0],
  ] as const) {
    const error = fold.errors.get(errorKey(kind, id));
    if (error !== undefined) startAnew(fold.estimator, error, { assumedU, ms });
    else if (assumedU > 0 && fold.estimating) fold.error(kind, id, assumedU, driftOf(instrument, kind));
  }
}

function driftOf(instrument: Instrument, kind: 'calibration' | 'gauge'): number {
  return kind === 'calibration' ? (instrument.driftRelativePerSqrtDay ?? 0) : 0;
}

/** Doubt of what passed a counter that nobody read before it was taken off, relative, one standard deviation. Ours, no source. */
const UNREAD_RELATIVE_U = 0.15;

/** Nobody read the old counter at the end: its learned daily mean stands in for what passed since its last reading. */
function standIn(fold: Fold, entry: AnyEntry, instrument: Instrument): void {
  const state = fold.counter(instrument.id, fold.openingMs ?? entry.happenedAtMs);
  const days = Math.max(0, (entry.happenedAtMs - state.sinceMs) / msPerDay);
  const mean = state.meanMgPerDay;
  const massMg = mean === null ? 0 : Math.round(mean * days);
  const moreUMg = Math.round(massMg * UNREAD_RELATIVE_U);
  if (instrument.route !== undefined && massMg > 0)
    postInterval(fold, entry, { instrument, route: instrument.route, state, massMg, moreUMg });
  forgetDay(state, entry.happenedAtMs);
  for (const grade of gradesOfCounter(fold, instrument.id)) fold.usage.spoil(grade);
  const data = {
    instrument: instrument.name,
    massMg: mean === null ? null : massMg,
    u95Mg: 2 * moreUMg,
    mgPerL: fold.mgPerL,
  };
  noteEntry(fold, entry, { code: 'counter-gap', severity: 'know', field: instrument.id, data });
}
