// A reading from before the instrument's calibration: what the file says of its doubt was not yet true then.
import type { AnyEntry } from '../book/index.ts';
import { parseInstantIso } from '../ground/units/index.ts';
import type { Instrument } from '../outpost/index.ts';
import type { Fold } from './fold.ts';
import { noteEntry } from './note.ts';

/** Said once for an instrument: the readings that come after the first one say nothing more. */
export function noteBeforeCalibration(fold: Fold, entry: AnyEntry, instrument: Instrument | undefined): void {
  if (instrument?.calibratedOn === undefined || fold.saidBeforeCalibration.includes(instrument.id)) return;
  const read = parseInstantIso(`${instrument.calibratedOn}T00:00Z`);
  if (!read.ok || entry.happenedAtMs >= read.instant.utcMs) return;
  fold.saidBeforeCalibration = [...fold.saidBeforeCalibration, instrument.id];
  noteEntry(fold, entry, {
    code: 'reading-before-calibration',
    severity: 'know',
    field: instrument.id,
    data: { instrument: instrument.name, calibratedOn: instrument.calibratedOn },
  });
}
