// The day line: the meters of the outpost, what was read of them, and what was not.
import type { CounterReading } from '../../book/index.ts';
import { dayOf } from '../../ground/units/index.ts';
import type { Instrument } from '../../outpost/index.ts';
import { type Answer, yes } from '../answer.ts';
import { type Made, readCounters } from './bodies.ts';
import type { Context } from './context.ts';
import type { LogRequest } from './request.ts';

/** Instruments that a day line asks for: counters, and room readings that a field log knows. */
export function dayInstruments(instruments: readonly Instrument[]): readonly Instrument[] {
  return instruments.filter((instrument) => {
    if (instrument.measures === 'flow')
      return instrument.reading === 'sinceLine' || instrument.reading === 'runningTotal';
    return instrument.reading === 'spot' && instrument.logField !== undefined;
  });
}

/** An instrument that was not typed is not read: that is kept as such, and is never zero. */
export function dayBody(
  context: Context,
  request: Extract<LogRequest, { what: 'day' }>,
  happenedAtMs: number,
): Answer<Made> {
  const { fold } = context;
  const typed = readCounters(context, request.readings);
  if (!typed.ok) return typed;
  const values = new Map(typed.value.map((reading) => [reading.instrument, reading.value]));
  const readings: CounterReading[] = dayInstruments(fold.index.outpost.instruments).map(({ id }) => ({
    instrument: id,
    value: values.get(id) ?? null,
  }));
  const day = request.day ?? dayOf(happenedAtMs, fold.dayRule);
  return yes({
    kind: 'day-line',
    body: { day, peopleAboard: request.peopleAboard ?? fold.peopleAboard, readings },
  });
}
