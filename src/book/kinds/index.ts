// The table of entry kinds: name, version of its shape, schema. A new kind is one line here, a schema, and a posting in the account.
import type * as z from 'zod';
import * as code from './code.ts';
import * as flow from './flow.ts';
import * as inbox from './inbox.ts';
import * as instrument from './instrument.ts';
import * as life from './life.ts';
import * as limits from './limits.ts';
import * as quality from './quality.ts';
import * as reading from './reading.ts';
import * as record from './record.ts';
import * as sense from './sense.ts';

export const kinds = {
  outpost: life.outpost,
  opening: reading.opening,
  'day-line': flow.dayLine,
  meter: flow.meter,
  movement: flow.movement,
  push: flow.push,
  'run-start': flow.runStart,
  'run-pause': flow.runPause,
  'run-resume': flow.runResume,
  'run-finish': flow.runFinish,
  'source-change': flow.sourceChange,
  hookup: flow.hookup,
  weigh: reading.weigh,
  gauge: reading.gauge,
  pvt: reading.pvt,
  'declared-empty': reading.declaredEmpty,
  'declared-full': reading.declaredFull,
  'stock-count': reading.stockCount,
  sample: quality.sample,
  result: quality.result,
  'result-set-aside': quality.resultSetAside,
  hold: quality.hold,
  parked: quality.parked,
  release: quality.release,
  waiver: quality.waiver,
  downgrade: quality.downgrade,
  treatment: quality.treatment,
  dose: quality.dose,
  relabel: quality.relabel,
  check: quality.check,
  'limits-chosen': limits.limitsChosen,
  'limit-typed': limits.limitTyped,
  taste: sense.taste,
  'store-added': life.storeAdded,
  roster: life.roster,
  'visit-berth': life.visitBerth,
  'visit-slip': life.visitSlip,
  'visit-depart': life.visitDepart,
  service: life.service,
  'unit-condition': life.unitCondition,
  'cabin-window': life.cabinWindow,
  'instrument-calibrated': instrument.instrumentCalibrated,
  'instrument-replaced': instrument.instrumentReplaced,
  'part-received': life.partReceived,
  'part-used': life.partUsed,
  'part-counted': life.partCounted,
  note: record.note,
  refused: record.refused,
  anomaly: record.anomaly,
  explanation: record.explanation,
  undo: record.undo,
  correction: record.correction,
  'duplicate-decision': record.duplicateDecision,
  'day-close': record.dayClose,
  'waiting-line': inbox.waitingLine,
  'waiting-line-settled': inbox.waitingLineSettled,
  'column-matching': inbox.columnMatching,
  'code-set': code.codeSet,
} as const;

export type Kind = keyof typeof kinds;
/** The fields of one kind. */
export type Body<K extends Kind> = z.output<(typeof kinds)[K]>;

/** Version of a kind's shape; a kind that is not named here is at 1. A change of shape brings a named migration. */
const versions: Partial<Record<Kind, number>> = {};

export function kindVersion(kind: Kind): number {
  return versions[kind] ?? 1;
}

export function isKind(name: string): name is Kind {
  return Object.hasOwn(kinds, name);
}

export const kindNames = Object.keys(kinds) as readonly Kind[];
