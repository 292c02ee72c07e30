// English for entries that say what a store holds: the opening, and every reading of a content.
import type { Body } from '../../../../book/index.ts';
import { counted, saidTime, saidValue } from '../said.ts';
import { type EntryContext, joined, saidBareMass, saidContent, saidReadings } from './context.ts';

export function opening(body: Body<'opening'>, context: EntryContext): string {
  const { stores, ports, counters, visits } = body;
  const totalMg = stores.reduce((sum, store) => sum + store.amount.massMg, 0);
  return joined(
    `opening as of ${saidTime(body.asOfMs, context.dayRule)}: ${saidBareMass(totalMg, context)} in ${counted(stores.length, 'store')}`,
    counted(body.peopleAboard, 'person', 'people'),
    ports.length > 0 && `${counted(ports.length, 'port')} in use`,
    saidReadings(counters, context),
    visits.length > 0 && `${counted(visits.length, 'visit')} known`,
  );
}

export function weigh(body: Body<'weigh'>, context: EntryContext): string {
  return contentReading('weigh', body, context);
}

export function gauge(body: Body<'gauge'>, context: EntryContext): string {
  return contentReading('gauge', body, context);
}

function contentReading(verb: string, body: Body<'weigh'>, context: EntryContext): string {
  const { store, amount, method, instrument } = body;
  const how = method ?? instrument;
  if (amount === null) return `${verb} ${store}: planned and not done`;
  return joined(`${verb} ${store}: ${saidContent(amount, context)}`, how !== undefined && `by ${how}`);
}

export function pvt(body: Body<'pvt'>, context: EntryContext): string {
  const from = (before: number, after: number) =>
    `${saidValue(before, '')} to ${saidValue(after, 'kPa')} abs`;
  return joined(
    `gauge ${body.store} by gas: ${saidContent(body.amount, context)}`,
    `bottle ${from(body.bottleBeforeKPaAbs, body.bottleAfterKPaAbs)}`,
    `tank ${from(body.tankBeforeKPaAbs, body.tankAfterKPaAbs)}`,
    body.bookBeforeMg !== undefined && `keeper's book before it ${saidBareMass(body.bookBeforeMg, context)}`,
  );
}

export function declaredEmpty(body: Body<'declared-empty'>, context: EntryContext): string {
  const { store, port, residual, flowStopped, bookMg, counters } = body;
  return joined(
    `declared empty: ${store}`,
    residual !== undefined && `${saidContent(residual, context)} left`,
    flowStopped === false && 'the flow had not stopped',
    flowStopped === true && 'the flow had stopped by itself',
    port !== undefined && `off ${port}`,
    bookMg !== undefined && `keeper's book ${saidBareMass(bookMg, context)}`,
    saidReadings(counters, context),
  );
}

export function declaredFull(body: Body<'declared-full'>, context: EntryContext): string {
  const { store, amount, port } = body;
  return joined(
    `declared full: ${store}, ${saidContent(amount, context)}`,
    port !== undefined && `off ${port}`,
  );
}

export function stockCount(body: Body<'stock-count'>, context: EntryContext): string {
  const read = body.readings.filter((reading) => reading.amount !== null);
  const left = body.readings.length - read.length;
  const said = read.map(({ store, amount }) =>
    amount === null ? '' : `${store} ${saidContent(amount, context)}`,
  );
  const notRead = left === 0 ? '' : `${counted(left, 'store')} not read`;
  return joined(`stock count ${body.count}, ${counted(read.length, 'store')}: ${said.join(', ')}`, notRead);
}
