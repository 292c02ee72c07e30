// Table of readings: what each kind of line becomes in the book. A kind without a row here does not compile.
import type { AnyLine, LineKind, LineOf } from '../shape/line-shapes.ts';
import {
  readAlarm,
  readBedChange,
  readCabinPressure,
  readLeakFound,
  readManifestNote,
  readMonthClose,
  readRefused,
  readRepair,
} from './events.ts';
import {
  readBagRecovery,
  readReserveDraw,
  readTransfer,
  readTransferSetup,
  readWasteTransfer,
} from './flows.ts';
import type { LineAt, Made } from './line-at.ts';
import { readOpening } from './opening.ts';
import {
  readDowngrade,
  readLabelCheck,
  readPlateCount,
  readQuarantine,
  readRebiocide,
  readRelabel,
  readRelease,
  readSample,
  readSampleResult,
} from './quality.ts';
import {
  readContainerEmpty,
  readDaily,
  readGaugePvt,
  readHookup,
  readTankDeclaredEmpty,
  readWasteFull,
  readWeigh,
} from './readings.ts';
import { readBerth, readCargoDelay, readDock, readUndock } from './visits.ts';

type Readings = { readonly [K in LineKind]: (line: LineOf<K>, at: LineAt) => Made };

const readings: Readings = {
  opening_balance: readOpening,
  daily: readDaily,
  container_empty: readContainerEmpty,
  hookup: readHookup,
  weigh: readWeigh,
  gauge_pvt: readGaugePvt,
  tank_declared_empty: readTankDeclaredEmpty,
  waste_full: readWasteFull,
  transfer_setup: readTransferSetup,
  transfer: readTransfer,
  bag_recovery: readBagRecovery,
  waste_transfer: readWasteTransfer,
  reserve_draw: readReserveDraw,
  berth: readBerth,
  dock: readDock,
  undock: readUndock,
  cargo_delay: readCargoDelay,
  sample: readSample,
  sample_result: readSampleResult,
  plate_count: readPlateCount,
  quarantine: readQuarantine,
  release: readRelease,
  downgrade: readDowngrade,
  rebiocide: readRebiocide,
  relabel: readRelabel,
  label_check: readLabelCheck,
  repair: readRepair,
  bed_change: readBedChange,
  alarm: readAlarm,
  leak_found: readLeakFound,
  cabin_pressure: readCabinPressure,
  refused: readRefused,
  manifest_note: readManifestNote,
  month_close: readMonthClose,
};

/** What a line becomes. What does not fit is said to `at`; the line counts only if no error was said. */
export function bodyOf(line: AnyLine, at: LineAt): Made {
  return (readings[line.kind] as (line: AnyLine, at: LineAt) => Made)(line, at);
}
