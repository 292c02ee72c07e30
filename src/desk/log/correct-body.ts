// From a correction as it is asked for to its body: the old one with its amount, or some of its readings, told anew.
import { type AnyEntry, amend, amendmentsOf, type CounterReading, entryOf } from '../../book/index.ts';
import { type Answer, no, yes } from '../answer.ts';
import { deskFinding } from '../desk-finding.ts';
import { type Made, readCounters } from './bodies.ts';
import { type Context, findEntry, readAmount } from './context.ts';
import { amountFieldOf, hasReadings } from './correctable.ts';
import type { LogRequest } from './request.ts';

type Request = Extract<LogRequest, { what: 'correct' }>;
type Body = Readonly<Record<string, unknown>>;

export async function correctBody(context: Context, request: Request): Promise<Answer<Made>> {
  const found = await findEntry(context.desk, request.entry);
  if (!found.ok) return found;
  const made = entryOf(found.value);
  // A second correction goes on from what the first one says.
  const entry = amend(made, await amendmentsOf(context.desk.port, {})) ?? made;
  const body = hasReadings(entry)
    ? readingsAnew(context, entry, request)
    : amountAnew(context, entry, request);
  if (!body.ok) return body;
  const { reason } = request;
  return yes({ kind: 'correction', body: { target: entry.id, reason, body: body.value } });
}

function amountAnew(context: Context, entry: AnyEntry, { value }: Request): Answer<Body> {
  const field = amountFieldOf(entry);
  if (field === null) {
    const data = {
      kind: entry.kind,
      ref: `${entry.site} ${entry.number}`,
      entryNo: `${entry.site}:${entry.number}`,
    };
    return no('bad input', deskFinding('not-correctable', data, { where: { entry: entry.id } }));
  }
  if (value === undefined) return no('bad input', missing('value', 'the right amount, with its unit'));
  const amount = readAmount(context, value, { field: 'value', counter: counterOf(context, entry) });
  return amount.ok ? yes({ ...(entry.body as Body), [field]: amount.value }) : amount;
}

function counterOf({ fold }: Context, entry: AnyEntry) {
  return entry.kind === 'movement' && entry.body.instrument !== undefined
    ? fold.index.instruments.get(entry.body.instrument)
    : undefined;
}

function readingsAnew(context: Context, entry: AnyEntry, { readings = {} }: Request): Answer<Body> {
  if (Object.keys(readings).length === 0) {
    const expected = 'the readings that were wrong, as in --set strokes=455; or undo it and enter it anew';
    return no('bad input', missing('readings', expected));
  }
  const typed = readCounters(context, readings);
  if (!typed.ok) return typed;
  const body = entry.body as Body & { readonly readings: readonly CounterReading[] };
  const anew = new Map(typed.value.map((reading) => [reading.instrument, reading]));
  const kept = body.readings.map((reading) => anew.get(reading.instrument) ?? reading);
  const had = new Set(body.readings.map(({ instrument }) => instrument));
  return yes({
    ...body,
    readings: [...kept, ...typed.value.filter(({ instrument }) => !had.has(instrument))],
  });
}

function missing(field: string, expected: string) {
  return deskFinding('field-needed', { field, received: null, expected }, { where: { field } });
}
