// An entry in one line of English: what happened, without who and when, which stand in columns of their own.
import type { AnyDraft, Body, Draft, Kind, SecondPerson } from '../../../book/index.ts';
import * as code from './entries/code.ts';
import type { EntryContext } from './entries/context.ts';
import * as flow from './entries/flow.ts';
import * as inbox from './entries/inbox.ts';
import * as instrument from './entries/instrument.ts';
import * as life from './entries/life.ts';
import * as quality from './entries/quality.ts';
import * as reading from './entries/readings.ts';
import * as record from './entries/record.ts';
import * as sense from './entries/sense.ts';

/** A new kind of entry does not compile until it has its words here. */
const kindWords: { readonly [K in Kind]: (body: Body<K>, context: EntryContext) => string } = {
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
  'limits-chosen': quality.limitsChosen,
  'limit-typed': quality.limitTyped,
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
};

/**
 * One line for an entry or a draft: `fill 20.5 L from FA to C-05 by flow meter, through H-1 in 15.8 min`.
 * A second person stands with the word of how that was confirmed; a reason for keeping a fact against a rule stands last.
 */
export function entryInWords(entry: AnyDraft, context: EntryContext): string {
  return [
    saidBody(entry, context),
    saidSecond(entry.second),
    saidReason('kept because it had happened', entry.happened),
  ]
    .filter((part) => part !== '')
    .join('; ')
    .replace(/\s*[\r\n]+\s*/g, ' ');
}

function saidBody<K extends Kind>(entry: Draft<K>, context: EntryContext): string {
  return kindWords[entry.kind](entry.body, context);
}

function saidSecond(second: SecondPerson | undefined): string {
  return second === undefined ? '' : `second person ${second.office}, ${second.confirmation}`;
}

function saidReason(why: string, reason: string | undefined): string {
  return reason === undefined ? '' : `${why}: ${reason}`;
}
