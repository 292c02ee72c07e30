// English for entries that say that water moved, or that a counter was read.
import type { Body } from '../../../../book/index.ts';
import { listed, saidTime, saidValue } from '../said.ts';
import {
  type EntryContext,
  joined,
  saidAmount,
  saidBareMass,
  saidContent,
  saidGrade,
  saidReadings,
} from './context.ts';

type Use = NonNullable<Body<'movement'>['use']>;

/** What was done with water that was used: the verb, and the end of "use 1.2 L from C-05 …". */
const uses: Readonly<Record<Use, readonly [verb: string, end: string]>> = {
  drink: ['drink', ''],
  food: ['use', ' for food'],
  hygiene: ['use', ' for hygiene'],
  flush: ['use', ' for flushing'],
  electrolyser: ['use', ' for the electrolyser'],
  sample: ['use', ' as a sample'],
  'sample-flush': ['use', ' to flush before a sample'],
  suit: ['use', ' for a suit'],
  plants: ['use', ' for plants'],
  animals: ['use', ' for animals'],
  medical: ['use', ' for medical use'],
  'spill-air': ['spill', ' into the air'],
  'spill-lost': ['spill', ', lost'],
  vent: ['vent', ' to the outside'],
};

/** Who drank or used it is never shown. */
export function movement(body: Body<'movement'>, context: EntryContext): string {
  const { from, to, use, method, hose } = body;
  if (use !== undefined) {
    const [verb, end] = uses[use];
    return joined(
      `${verb} ${saidAmount(body.amount, context)} from ${from}${end}`,
      ...flowFacts(body, context),
    );
  }
  const how = method === undefined ? '' : ` by ${method}`;
  const what = hose === undefined ? 'move' : 'fill';
  const said = `${what} ${saidContent(body.amount, context)} from ${from} to ${to}${how}`;
  const also = (body.alsoRead ?? []).map(
    ({ amount, method, instrument }) =>
      `${saidContent(amount, context)} by ${method ?? instrument ?? 'another means'}`,
  );
  return joined(said, ...also, ...flowFacts(body, context));
}

type FlowFacts = Pick<
  Body<'movement'>,
  | 'startAtMs'
  | 'hose'
  | 'flowMinutes'
  | 'pushOverCabinKPa'
  | 'instrument'
  | 'grade'
  | 'receiverWas'
  | 'receiverWasEmptied'
>;

function flowFacts(body: FlowFacts, context: EntryContext): string[] {
  const { startAtMs, hose, flowMinutes, pushOverCabinKPa, instrument, grade } = body;
  const minutes = flowMinutes === undefined ? '' : ` in ${saidValue(flowMinutes, 'min')}`;
  const push = pushOverCabinKPa === undefined ? '' : ` at ${saidValue(pushOverCabinKPa, 'kPa')} over cabin`;
  return [
    startAtMs === undefined ? '' : `started ${saidTime(startAtMs, context.dayRule)}`,
    hose === undefined ? `${minutes}${push}`.trim() : `through ${hose}${minutes}${push}`,
    instrument === undefined ? '' : `read on ${instrument}`,
    grade === undefined ? '' : `${saidGrade(grade, context)} water`,
    saidReceiver(body, context),
  ];
}

function saidReceiver({ receiverWas, receiverWasEmptied }: FlowFacts, context: EntryContext): string {
  if (receiverWas !== undefined) {
    const emptied = receiverWasEmptied === true ? ', then emptied' : '';
    return `the receiver held ${saidGrade(receiverWas, context)} before${emptied}`;
  }
  return receiverWasEmptied === true ? 'the receiver was never used before' : '';
}

export function runStart(body: Body<'run-start'>, context: EntryContext): string {
  const planned = body.planned === undefined ? '' : `${saidContent(body.planned, context)} planned`;
  return joined(
    `run ${body.run} starts, from ${body.from} to ${body.to}`,
    planned,
    ...flowFacts(body, context),
  );
}

export function runPause(body: Body<'run-pause'>, context: EntryContext): string {
  const line = body.lineContentMg;
  const left = line === undefined ? '' : `${saidBareMass(line, context)} of it in the hose`;
  return joined(
    `run ${body.run} pauses${ends(body)}, ${saidContent(body.amount, context)} moved`,
    left,
    ...flowFacts(body, context),
  );
}

export function runResume(body: Body<'run-resume'>, context: EntryContext): string {
  return joined(`run ${body.run} goes on`, ...flowFacts(body, context));
}

export function runFinish(body: Body<'run-finish'>, context: EntryContext): string {
  const how = body.method === undefined ? '' : ` by ${body.method}`;
  const moved = `${saidContent(body.amount, context)} moved${how} since it last started`;
  return joined(`run ${body.run} ends${ends(body)}`, moved, ...flowFacts(body, context));
}

function ends({ from, to }: { readonly from?: string; readonly to?: string }): string {
  return `${from === undefined ? '' : ` from ${from}`}${to === undefined ? '' : ` to ${to}`}`;
}

export function push(body: Body<'push'>, context: EntryContext): string {
  const legs = (side: Body<'push'>['from']) =>
    listed(side.map(({ store, amount }) => `${store} ${saidContent(amount, context)}`));
  const how = body.method === undefined ? '' : ` by ${body.method}`;
  const said = `push ${saidContent(body.amount, context)}${how}: out of ${legs(body.from)} into ${legs(body.to)}`;
  return joined(said, ...flowFacts(body, context));
}

export function meter(body: Body<'meter'>, context: EntryContext): string {
  return `meters: ${saidReadings(body.readings, context)}`;
}

export function dayLine(body: Body<'day-line'>, context: EntryContext): string {
  const people = body.peopleAboard === 1 ? '1 person' : `${body.peopleAboard} people`;
  return joined(`day line D${body.day}: ${people}`, saidReadings(body.readings, context));
}

export function hookup(body: Body<'hookup'>): string {
  return `hook-up: ${body.store} on ${body.port}`;
}

export function sourceChange(body: Body<'source-change'>, context: EntryContext): string {
  const store = body.reserve ? `${body.store} of the reserve` : body.store;
  const said = `change of source: ${saidContent(body.amount, context)} of what ${body.counter} counts came from ${store}`;
  const since = `since ${saidTime(body.sinceMs, context.dayRule)}`;
  return joined(`${said} ${since}`, body.how !== undefined && `found by ${body.how}`);
}
