// One posting for each entry kind: a kind without a line here does not compile.
import type { AnyEntry, Entry, Kind } from '../../book/index.ts';
import type { Fold } from '../fold.ts';
import { postDoseAndHold } from './dose.ts';
import { postInstrumentCalibrated, postInstrumentReplaced } from './instruments.ts';
import {
  postRoster,
  postStoreAdded,
  postUnitCondition,
  postVisitBerth,
  postVisitDepart,
  postVisitSlip,
} from './life.ts';
import {
  postMovement,
  postPush,
  postRunFinish,
  postRunPause,
  postRunStart,
  postSourceChange,
} from './movements.ts';
import { postOpening } from './opening.ts';
import {
  postDowngrade,
  postHold,
  postLimitsChosen,
  postLimitTyped,
  postParked,
  postRelabel,
  postRelease,
  postResult,
  postResultSetAside,
  postSample,
  postTreatment,
  postWaiver,
} from './quality.ts';
import {
  postDayLine,
  postDeclaredEmpty,
  postDeclaredFull,
  postHookup,
  postMeter,
  postPvt,
  postStockCount,
  postWeigh,
} from './readings.ts';
import { postDayClose, postNote, postRefused } from './record.ts';

type Posting<K extends Kind> = (fold: Fold, entry: Entry<K>) => void;

/** Kept and shown, and without a part in the account. */
const onlyKept = () => {};

const postings: { readonly [K in Kind]: Posting<K> } = {
  // The fold was made with this file; another file starts another fold.
  outpost: onlyKept,
  opening: postOpening,
  'day-line': postDayLine,
  meter: postMeter,
  movement: postMovement,
  push: postPush,
  'run-start': postRunStart,
  'run-pause': postRunPause,
  'run-resume': onlyKept,
  'run-finish': postRunFinish,
  'source-change': postSourceChange,
  hookup: postHookup,
  weigh: postWeigh,
  gauge: postWeigh,
  pvt: postPvt,
  'declared-empty': postDeclaredEmpty,
  'declared-full': postDeclaredFull,
  'stock-count': postStockCount,
  sample: postSample,
  result: postResult,
  'result-set-aside': postResultSetAside,
  hold: postHold,
  parked: postParked,
  release: postRelease,
  waiver: postWaiver,
  downgrade: postDowngrade,
  treatment: postTreatment,
  dose: postDoseAndHold,
  relabel: postRelabel,
  check: onlyKept,
  'limits-chosen': postLimitsChosen,
  'limit-typed': postLimitTyped,
  taste: onlyKept,
  'store-added': postStoreAdded,
  roster: postRoster,
  'visit-berth': postVisitBerth,
  'visit-slip': postVisitSlip,
  'visit-depart': postVisitDepart,
  service: onlyKept,
  'unit-condition': postUnitCondition,
  'cabin-window': onlyKept,
  'instrument-calibrated': postInstrumentCalibrated,
  'instrument-replaced': postInstrumentReplaced,
  'part-received': onlyKept,
  'part-used': onlyKept,
  'part-counted': onlyKept,
  note: postNote,
  refused: postRefused,
  anomaly: onlyKept,
  explanation: onlyKept,
  // Undo, correction and decision have done their work before the fold: see book/amendments.
  undo: onlyKept,
  correction: onlyKept,
  'duplicate-decision': onlyKept,
  'day-close': postDayClose,
  // What waits in the inbox is no amount, and how headings are read is no reading.
  'waiting-line': onlyKept,
  'waiting-line-settled': onlyKept,
  'column-matching': onlyKept,
  // Who confirms by a code is no matter of the water.
  'code-set': onlyKept,
};

export function post<K extends Kind>(fold: Fold, entry: Entry<K>): void {
  postings[entry.kind](fold, entry);
}

export type { AnyEntry };
