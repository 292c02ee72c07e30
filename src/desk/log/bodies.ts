// From a request to the body of an entry, for the movements and readings that have a command of their own.
import type { Body, Kind } from '../../book/index.ts';
import { parseNumber } from '../../ground/units/index.ts';
import type { Instrument, Use } from '../../outpost/index.ts';
import { type Answer, no, yes } from '../answer.ts';
import { deskFinding } from '../desk-finding.ts';
import { type Context, findEnd, findName, findStore, readAmount } from './context.ts';
import type { LogRequest } from './request.ts';

/** A kind with its body. */
export type Made = { [K in Kind]: { readonly kind: K; readonly body: Body<K> } }[Kind];

type Of<What extends LogRequest['what']> = Extract<LogRequest, { what: What }>;

/** The counter that stands before a unit. */
export function counterOf({ fold }: Context, unit: string): Instrument | undefined {
  return fold.index.outpost.instruments.find(
    (instrument) => instrument.meters === unit && instrument.route !== undefined,
  );
}

/** The unit through which a use draws its water, by the outpost's plumbing. */
function unitOfUse({ fold }: Context, use: Use): string | null {
  const tapUses: readonly Use[] = ['drink', 'food', 'hygiene'];
  const unit = fold.index.outpost.units.find((each) => {
    if (each.kind === 'dispenser') return tapUses.includes(use);
    return (each.kind === 'flush' || each.kind === 'electrolyser') && each.use === use;
  });
  return unit?.id ?? null;
}

/** Where used water goes. */
function sinkOfUse({ fold }: Context, use: Use): string {
  if (use === 'drink' || use === 'food' || use === 'hygiene' || use === 'medical') return 'people';
  if (use === 'electrolyser') return 'electrolyser';
  if (use === 'spill-air' || use === 'plants' || use === 'animals') return 'cabin air';
  if (use === 'spill-lost') return 'lost';
  const wastePort = fold.index.outpost.ports.find(
    (port) => fold.index.grades.get(port.takes)?.terminal === true,
  );
  if (use === 'flush' && wastePort !== undefined && fold.storeOn(wastePort.id) !== null) return wastePort.id;
  return 'outside';
}

export function drinkBody(context: Context, request: Of<'drink'>): Answer<Made> {
  return useBody(context, { ...request, what: 'use', use: 'drink' });
}

export function useBody(context: Context, request: Of<'use'>): Answer<Made> {
  const from = request.from === undefined ? unitOfUse(context, request.use) : request.from;
  if (from === null)
    return no(
      'bad input',
      deskFinding(
        'field-needed',
        { field: 'from', received: null, expected: 'a store or a unit' },
        { where: { field: 'from' } },
      ),
    );
  const end = findEnd(context, from);
  if (!end.ok) return end;
  const counter = counterOf(context, end.value);
  const amount = readAmount(context, request.amount, { field: 'amount', counter });
  if (!amount.ok) return amount;
  return yes({
    kind: 'movement',
    body: {
      from: end.value,
      to: sinkOfUse(context, request.use),
      amount: amount.value,
      use: request.use,
      ...(request.person !== undefined && { person: request.person }),
      ...(counter !== undefined && amount.value.raw.unit === counter.unit && { instrument: counter.id }),
    },
  });
}

export function fillBody(context: Context, request: Of<'fill'>): Answer<Made> {
  const store = findStore(context, request.store);
  if (!store.ok) return store;
  const state = context.fold.stores.get(store.value);
  const fillL = state?.facts.fillMg == null ? null : state.facts.fillMg / context.fold.mgPerL;
  const text = request.amount ?? (fillL === null ? undefined : `${fillL} L`);
  if (text === undefined)
    return no(
      'bad input',
      deskFinding(
        'field-needed',
        { field: 'amount', received: null, expected: 'an amount with its unit' },
        { where: { field: 'amount' } },
      ),
    );
  return moveBody(context, { ...request, what: 'move', amount: text, to: store.value });
}

/** No end named: the water goes to, or comes from, the place for what nobody placed. */
export function moveBody(context: Context, request: Of<'move'>): Answer<Made> {
  const from = findEnd(context, request.from ?? 'unplaced');
  if (!from.ok) return from;
  const to = findEnd(context, request.to ?? 'unplaced');
  if (!to.ok) return to;
  if (from.value === to.value) {
    return no(
      'bad input',
      deskFinding(
        'field-needed',
        { field: 'to', received: to.value, expected: 'another place than it comes from' },
        { where: { field: 'to' } },
      ),
    );
  }
  const amount = readAmount(context, request.amount, {
    field: 'amount',
    counter: counterOf(context, from.value),
  });
  if (!amount.ok) return amount;
  const hose =
    request.hose === undefined
      ? yes(undefined)
      : findName('hose', request.hose, [...context.fold.index.hoses.keys()]);
  if (!hose.ok) return hose;
  const also = alsoRead(context, request.also ?? []);
  if (!also.ok) return also;
  return yes({
    kind: 'movement',
    body: {
      from: from.value,
      to: to.value,
      amount: amount.value,
      ...(hose.value !== undefined && { hose: hose.value }),
      ...(request.method !== undefined && { method: request.method }),
      ...(also.value.length > 0 && { alsoRead: also.value }),
    },
  });
}

/** `weight difference=20.3L+-0.2`: the same water by other means, each named by an instrument or by a word. */
function alsoRead(
  context: Context,
  texts: readonly string[],
): Answer<NonNullable<Body<'movement'>['alsoRead']>> {
  const read: NonNullable<Body<'movement'>['alsoRead']> = [];
  for (const text of texts) {
    const sign = text.indexOf('=');
    const [means, amountText] = [text.slice(0, sign).trim(), text.slice(sign + 1)];
    if (sign < 1 || means === '') {
      const expected = 'means and amount, as in "weight difference=20.3L+-0.2"';
      return no(
        'bad input',
        deskFinding(
          'field-needed',
          { field: 'also', received: text, expected },
          { where: { field: 'also' } },
        ),
      );
    }
    const counter = context.fold.index.instruments.get(means);
    const amount = readAmount(context, amountText, { field: 'also', counter });
    if (!amount.ok) return amount;
    read.push({
      amount: amount.value,
      ...(counter === undefined ? { method: means } : { instrument: means }),
    });
  }
  return yes(read);
}

export function makeBody(context: Context, request: Of<'make'>): Answer<Made> {
  return moveBody(context, { ...request, what: 'move', from: request.from ?? 'outside' });
}

/** `-` stands for a reading that was planned and not done. */
export function readingBody(context: Context, request: Of<'weigh' | 'gauge'>): Answer<Made> {
  const store = findStore(context, request.store);
  if (!store.ok) return store;
  const gauge = context.fold.index.stores.get(store.value)?.gauge;
  const instrument = gauge === undefined ? {} : { instrument: gauge };
  if (request.amount.trim() === '-')
    return yes({ kind: request.what, body: { store: store.value, amount: null, ...instrument } });
  const amount = readAmount(context, request.amount, { field: 'amount' });
  if (!amount.ok) return amount;
  return yes({ kind: request.what, body: { store: store.value, amount: amount.value, ...instrument } });
}

export function emptyBody(context: Context, request: Of<'empty'>): Answer<Made> {
  const store = findStore(context, request.store);
  if (!store.ok) return store;
  const residual =
    request.residual === undefined
      ? yes(undefined)
      : readAmount(context, request.residual, { field: 'residual' });
  if (!residual.ok) return residual;
  const counters = readCounters(context, request.counters ?? {});
  if (!counters.ok) return counters;
  const port = context.fold.portOf(store.value);
  return yes({
    kind: 'declared-empty',
    body: {
      store: store.value,
      ...(port !== null && { port }),
      ...(residual.value !== undefined && { residual: residual.value }),
      ...(request.flowStopped !== undefined && { flowStopped: request.flowStopped }),
      counters: counters.value,
    },
  });
}

export function fullBody(context: Context, request: Of<'full'>): Answer<Made> {
  const store = findStore(context, request.store);
  if (!store.ok) return store;
  const written = context.fold.index.stores.get(store.value);
  const fullL = written?.fullAtL ?? written?.fillL;
  const text = request.amount ?? (fullL === undefined ? undefined : `${fullL} L`);
  if (text === undefined)
    return no(
      'bad input',
      deskFinding(
        'field-needed',
        { field: 'amount', received: null, expected: 'an amount with its unit' },
        { where: { field: 'amount' } },
      ),
    );
  const amount = readAmount(context, text, { field: 'amount' });
  return amount.ok
    ? yes({ kind: 'declared-full', body: { store: store.value, amount: amount.value } })
    : amount;
}

export function hookupBody(context: Context, request: Of<'hookup'>): Answer<Made> {
  const store = findStore(context, request.store);
  if (!store.ok) return store;
  const port = findName('port', request.port, [...context.fold.ports.keys()]);
  return port.ok ? yes({ kind: 'hookup', body: { store: store.value, port: port.value } }) : port;
}

export function relabelBody(context: Context, request: Of<'relabel'>): Answer<Made> {
  const store = findStore(context, request.store);
  if (!store.ok) return store;
  const grade = findName('grade', request.grade, [...context.fold.index.grades.keys()]);
  if (!grade.ok) return grade;
  const fromLabel = context.fold.stores.get(store.value)?.grade ?? 'none';
  return yes({
    kind: 'relabel',
    body: {
      store: store.value,
      fromLabel,
      toGrade: grade.value,
      twoPersons: context.moment.second !== undefined,
      ...(request.photo !== undefined && { photo: request.photo }),
    },
  });
}

/** Counter readings as typed: `-` is no reading, never zero. */
export function readCounters(
  context: Context,
  typed: Readonly<Record<string, string>>,
): Answer<{ instrument: string; value: number | null }[]> {
  const readings: { instrument: string; value: number | null }[] = [];
  for (const [name, text] of Object.entries(typed)) {
    const id = findName('instrument', name, [...context.fold.index.instruments.keys()]);
    if (!id.ok) return id;
    const value = readCounter(context, id.value, text);
    if (!value.ok) return value;
    readings.push({ instrument: id.value, value: value.value });
  }
  return yes(readings);
}

function readCounter(context: Context, id: string, text: string): Answer<number | null> {
  if (text.trim() === '-') return yes(null);
  const instrument = context.fold.index.instruments.get(id);
  const read = readNumber(text, { field: id, unit: instrument?.unit ?? '' });
  if (read.ok || instrument === undefined) return read;
  // Among nine meters the finding has to name the one that it is about.
  return {
    ...read,
    findings: read.findings.map((finding) => ({
      ...finding,
      data: { ...finding.data, meter: instrument.name },
    })),
  };
}

/** A counter's number; its own unit may stand behind it. */
function readNumber(text: string, how: { readonly field: string; readonly unit: string }): Answer<number> {
  const trimmed = text.trim();
  const number = how.unit !== '' && trimmed.endsWith(how.unit) ? trimmed.slice(0, -how.unit.length) : trimmed;
  const read = parseNumber(number, { where: { field: how.field } });
  return read.ok ? yes(read.value) : no('bad input', read.finding);
}
