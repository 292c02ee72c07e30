// From what a person tells of an entry, field by field or in a file, to the body of its kind.
import type * as z from 'zod';
import { type Amount, isKind, readDraft } from '../../book/index.ts';
import { type Finding, parseNumber, parseQuantity, parseWhen } from '../../ground/units/index.ts';
import { type Answer, no, yes } from '../answer.ts';
import { codeFinding } from '../codes/code-finding.ts';
import { deskFinding } from '../desk-finding.ts';
import type { Made } from './bodies.ts';
import { type Context, readAmount } from './context.ts';
import { fieldName, namesOfKey, pairOf, shapeOf, type Taken, taken, unwrapped } from './kind-form.ts';
import { nameFor, type Place } from './told-names.ts';

export type Told = Readonly<Record<string, unknown>>;

/** Reads the fields that were told: texts are read by the shape of their field, what is typed already is left as it is. */
export function toldBody(context: Context, kind: string, told: Told): Answer<Made> {
  if (!isKind(kind)) {
    const read = readDraft({ kind });
    return read.ok ? no('bad input') : no('bad input', ...read.findings);
  }
  if (kind === 'code-set') return no('wrong use', codeFinding('code-by-hand'));
  const shape = shapeOf(kind);
  const missing = Object.entries(shape).filter(
    ([key, each]) => unwrapped(each).needed && !isTold(told, key, Object.keys(shape)),
  );
  if (missing.length > 0) {
    const names = missing.map(([key]) => fieldName(key, Object.keys(shape)));
    const findings = names.map((field) =>
      deskFinding(
        'field-needed',
        { field, received: null, expected: `the field "${field}"` },
        { where: { field } },
      ),
    );
    return no('wrong use', ...findings);
  }
  const body = readFields(context, shape, told, { kind, key: '', field: '' });
  if (!body.ok) return body;
  const made = { kind, body: body.value } as Made;
  const doubtful = withoutDoubt(made);
  return doubtful.length === 0 ? yes(made) : no('bad input', ...doubtful);
}

/** A stock whose ± nobody tells would count as exact for ever; only nothing is known exactly. */
function withoutDoubt(made: Made): readonly Finding[] {
  const stores: unknown = made.kind === 'opening' ? made.body.stores : [];
  if (!Array.isArray(stores)) return [];
  return stores.flatMap(({ amount }: { amount?: Partial<Amount> }, k) => {
    if (amount?.raw === undefined || amount.massMg === 0 || amount.uMg !== undefined) return [];
    const received = `${amount.raw.value} ${amount.raw.unit}`;
    const field = `stores[${k}].amount`;
    const expected = `an amount with its ±, for example ${received}+-5`;
    return [deskFinding('field-needed', { field, received, expected }, { where: { field } })];
  });
}

function isTold(told: Told, key: string, keys: readonly string[]): boolean {
  return namesOfKey(key, keys).some((name) => Object.hasOwn(told, name));
}

/** A field that the shape does not know goes through as it is: the check of the whole entry names it. */
function readFields(
  context: Context,
  shape: Readonly<Record<string, z.ZodType>>,
  told: Told,
  place: Place,
): Answer<Record<string, unknown>> {
  const keys = Object.keys(shape);
  const byName = new Map(keys.flatMap((key) => namesOfKey(key, keys).map((name) => [name, key] as const)));
  const body: Record<string, unknown> = {};
  for (const [key, each] of Object.entries(shape)) {
    if (each.def.type === 'array' && !unwrapped(each).needed) body[key] = [];
  }
  for (const [name, value] of Object.entries(told)) {
    const key = byName.get(name);
    if (key === undefined) {
      body[name] = value;
      continue;
    }
    const read = readValue(context, shape[key] as z.ZodType, value, {
      ...place,
      key,
      field: place.field === '' ? name : `${place.field}.${name}`,
    });
    if (!read.ok) return read;
    body[key] = read.value;
  }
  return yes(body);
}

function readValue(context: Context, shape: z.ZodType, value: unknown, place: Place): Answer<unknown> {
  const { inner, mayBeNull } = unwrapped(shape);
  if (mayBeNull && (value === null || value === '-')) return yes(null);
  const wanted = taken(place.key, inner);
  if (wanted.what === 'list') return readList(context, wanted.of, value, place);
  if (wanted.what === 'object') {
    return isObject(value) ? readFields(context, wanted.fields, value, place) : yes(value);
  }
  // A bare number has no unit: it is read as the text that it is, and the unit is asked for.
  if (wanted.what === 'amount' && typeof value === 'number')
    return readText(context, wanted, `${value}`, place);
  return typeof value === 'string' ? readText(context, wanted, value, place) : yes(value);
}

function isObject(value: unknown): value is Told {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}

function readList(context: Context, of: z.ZodType, value: unknown, place: Place): Answer<unknown> {
  const items = typeof value === 'string' ? itemsOf(of, value, place) : yes(value);
  if (!items.ok || !Array.isArray(items.value)) return items;
  const list: unknown[] = [];
  for (const [k, item] of items.value.entries()) {
    const read = readValue(context, of, item, { ...place, field: `${place.field}[${k}]` });
    if (!read.ok) return read;
    list.push(read.value);
  }
  return yes(list);
}

/** `C-05,C-06`, or `strokes=455,product=6.9`: a comma inside a number is followed by no name. */
function itemsOf(of: z.ZodType, text: string, place: Place): Answer<readonly unknown[]> {
  const wanted = taken(place.key, of);
  if (wanted.what !== 'object')
    return yes(
      text
        .split(',')
        .map((item) => item.trim())
        .filter((item) => item !== ''),
    );
  const pair = pairOf(wanted.fields);
  if (pair === null) return no('bad input', misfit(place, text, 'a list, in a file'));
  const items: unknown[] = [];
  for (const part of text.split(/,(?=[^,=]+=)/)) {
    const at = part.indexOf('=');
    if (at < 1) return no('bad input', misfit(place, part, 'NAME=VALUE'));
    const [name, told] = [part.slice(0, at).trim(), part.slice(at + 1).trim()];
    items.push(
      pair.unit ? { [pair.name]: name, ...measured(told) } : { [pair.name]: name, [pair.value]: told },
    );
  }
  return yes(items);
}

/** `3.1 uS/cm`, `<0.05 mg/L`: the number stays a text, which is read with the other fields. */
function measured(text: string): { value: string; unit?: string; below?: true } {
  const match = /^(<)?\s*([-+\u2212]?\d(?:[\d.,]*\d)?(?:[eE][-+]?\d+)?)\s*(\S.*)?$/.exec(text);
  if (match === null) return { value: text };
  const [, below, value = '', unit] = match;
  return { value, ...(unit !== undefined && { unit }), ...(below !== undefined && { below: true as const }) };
}

function readText(context: Context, wanted: Taken, text: string, place: Place): Answer<unknown> {
  const { field } = place;
  switch (wanted.what) {
    case 'amount':
      return readAmount(context, text, { field });
    case 'mass': {
      const amount = readAmount(context, text, { field });
      return amount.ok ? yes(amount.value.massMg) : amount;
    }
    case 'time':
      return readTime(context, text, field);
    case 'number':
      return readNumber(text, wanted.unit, field);
    case 'share':
      return readShare(text, field);
    case 'yes or no':
      return text === 'yes' || text === 'no'
        ? yes(text === 'yes')
        : no('bad input', misfit(place, text, 'yes or no'));
    case 'text':
      return nameFor(context, place, text);
    default:
      return yes(text);
  }
}

function readTime({ fold, moment, presentMs }: Context, text: string, field: string): Answer<number> {
  const read = parseWhen(text, {
    nowUtcMs: presentMs,
    offsetMin: moment.offsetMin,
    rule: fold.dayRule,
    where: { field },
  });
  return read.ok ? yes(read.instant.utcMs) : no('bad input', read.finding);
}

/** A day may be told as `D46`. */
function readNumber(text: string, unit: string, field: string): Answer<number> {
  if (unit === '') {
    const read = parseNumber(/^D\d+$/.test(text) ? text.slice(1) : text, { where: { field } });
    return read.ok ? yes(read.value) : no('bad input', read.finding);
  }
  const read = parseQuantity(text, { units: [unit], defaultUnit: unit, where: { field } });
  return read.ok ? yes(read.quantity.value) : no('bad input', read.finding);
}

/** `0.01`, or `1%`. */
function readShare(text: string, field: string): Answer<number> {
  if (!text.trim().endsWith('%')) return readNumber(text, '', field);
  const percent = readNumber(text, '%', field);
  return percent.ok ? yes(percent.value / 100) : percent;
}

function misfit({ field }: Place, received: string, expected: string) {
  return deskFinding(
    'field-needed',
    { field, received: received.slice(0, 60), expected },
    { where: { field } },
  );
}
