// The form of an entry kind: its fields, what each of them takes, and which are needed; read off the kind's own shape.
import * as z from 'zod';
import { isKind, type Kind, kindNames, kinds } from '../../book/index.ts';
import { type Answer, yes } from '../answer.ts';
import { findName } from './context.ts';

export interface KindField {
  /** As a person names it: `until`, `capacity`, `tank-volume`. */
  readonly name: string;
  /** Key in the body of the entry. */
  readonly key: string;
  /** What it takes, in words. */
  readonly takes: string;
  readonly needed: boolean;
}

/** What a value of a shape is, for reading it from a text. */
export type Taken =
  | { readonly what: 'amount' | 'mass' | 'time' | 'share' | 'yes or no' | 'text' }
  | { readonly what: 'number'; readonly whole: boolean; readonly unit: string }
  | { readonly what: 'word'; readonly words: readonly string[] }
  | { readonly what: 'list'; readonly of: z.ZodType }
  | { readonly what: 'object'; readonly fields: Readonly<Record<string, z.ZodType>> };

/** Kinds that are entered by a command of their own; the others are entered field by field. */
export const COMMAND_OF_KIND: Partial<Record<Kind, string>> = {
  outpost: 'book outpost',
  'day-line': 'log day',
  hookup: 'log hookup',
  weigh: 'log weigh',
  gauge: 'log gauge',
  'declared-empty': 'log empty',
  'declared-full': 'log full',
  relabel: 'log relabel',
  'store-added': 'store add',
  undo: 'log undo',
  correction: 'log correct',
  'duplicate-decision': 'log decide',
  'day-close': 'book close',
  'limits-chosen': 'quality limits choose',
  'limit-typed': 'quality limits type',
  'waiting-line': 'import',
  'waiting-line-settled': 'inbox take',
  'column-matching': 'import',
  'code-set': 'book code set',
};

export const formKinds: readonly Kind[] = kindNames.filter((kind) => COMMAND_OF_KIND[kind] === undefined);

/** What the names in some fields are names of. */
export type Named = 'store' | 'place' | 'port' | 'instrument' | 'hose' | 'grade';

export const NAMED_IN: Readonly<Record<string, Named>> = {
  store: 'store',
  stores: 'store',
  conditional: 'store',
  took: 'store',
  from: 'place',
  to: 'place',
  port: 'port',
  instrument: 'instrument',
  counter: 'instrument',
  hose: 'hose',
  grade: 'grade',
  toGrade: 'grade',
  fromGrade: 'grade',
};

const saidNamed: Readonly<Record<Named, string>> = {
  store: 'a store',
  place: 'a store, a port, a unit, people, outside',
  port: 'a port',
  instrument: 'an instrument',
  hose: 'a hose',
  grade: 'a grade',
};

/** Units that the names of keys end in, the longest first; the unit is left out of the name of the field. */
const unitOfEnding: readonly (readonly [ending: string, unit: string])[] = [
  ['MgPerDay', ''],
  ['MgPerL', 'mg/L'],
  ['KPaAbs', 'kPa'],
  ['KPa', 'kPa'],
  ['Minutes', 'min'],
  ['UL', 'L'],
  ['Day', ''],
  ['Ms', ''],
  ['Mg', ''],
  ['L', 'L'],
  ['C', '°C'],
];

export function kindForm(kind: Kind): readonly KindField[] {
  return Object.entries(shapeOf(kind)).map(([key, shape]) => {
    const { inner, needed } = unwrapped(shape);
    return {
      name: fieldName(key, Object.keys(shapeOf(kind))),
      key,
      takes: saidTaken(key, taken(key, inner)),
      needed,
    };
  });
}

/** Form of a kind by a typed name; null for a name that no kind has. */
export function formOf(name: string): readonly KindField[] | null {
  return isKind(name) ? kindForm(name) : null;
}

export function shapeOf(kind: Kind): Readonly<Record<string, z.ZodType>> {
  return kinds[kind].shape as Readonly<Record<string, z.ZodType>>;
}

/** `capacityL` is `capacity`; where two keys would have one name, both keep their endings. */
export function fieldName(key: string, keys: readonly string[]): string {
  return dashed(shortKey(key, keys));
}

/** What a key may be called: `tankVolumeL`, `tankVolume`, `tank-volume`. */
export function namesOfKey(key: string, keys: readonly string[]): readonly string[] {
  return [key, shortKey(key, keys), fieldName(key, keys)];
}

function shortKey(key: string, keys: readonly string[]): string {
  const short = withoutUnit(key);
  const isAlone = keys.filter((other) => withoutUnit(other) === short).length === 1;
  return isAlone ? short : key;
}

/** `flow` and `hold` alone would say something else than minutes. */
const TOLD_ENDING = 'Minutes';

function withoutUnit(key: string): string {
  const ending = endingOf(key);
  return ending === undefined || ending === TOLD_ENDING ? key : key.slice(0, -ending.length);
}

function endingOf(key: string): string | undefined {
  return unitOfEnding.find(([ending]) => key.endsWith(ending) && key.length > ending.length)?.[0];
}

function dashed(key: string): string {
  return key
    .replace('KPa', 'Kpa')
    .replace(/[A-Z]+(?=[A-Z][a-z]|$)|[A-Z]/g, (letters) => `-${letters}`)
    .toLowerCase();
}

export function unwrapped(shape: z.ZodType): {
  readonly inner: z.ZodType;
  readonly needed: boolean;
  readonly mayBeNull: boolean;
} {
  if (shape instanceof z.ZodExactOptional || shape instanceof z.ZodOptional) {
    return { ...unwrapped(shape.def.innerType as z.ZodType), needed: false };
  }
  if (shape instanceof z.ZodNullable) {
    return { ...unwrapped(shape.def.innerType as z.ZodType), mayBeNull: true };
  }
  // A list that may be empty needs not be told.
  const needed =
    !(shape instanceof z.ZodArray) ||
    (shape.def.checks ?? []).some((check) => check._zod.def.check === 'min_length');
  return { inner: shape, needed, mayBeNull: false };
}

export function taken(key: string, shape: z.ZodType): Taken {
  if (shape instanceof z.ZodArray) return { what: 'list', of: shape.def.element as z.ZodType };
  if (shape instanceof z.ZodObject) {
    const fields = shape.shape as Readonly<Record<string, z.ZodType>>;
    return 'massMg' in fields && 'raw' in fields ? { what: 'amount' } : { what: 'object', fields };
  }
  if (shape instanceof z.ZodBoolean) return { what: 'yes or no' };
  if (shape instanceof z.ZodEnum) return { what: 'word', words: shape.options.map(String) };
  if (!(shape instanceof z.ZodNumber)) return { what: 'text' };
  if (key.endsWith('Relative')) return { what: 'share' };
  const ending = endingOf(key);
  if (ending === 'Ms') return { what: 'time' };
  if (ending === 'Mg' || ending === 'MgPerDay') return { what: 'mass' };
  const unit = unitOfEnding.find(([each]) => each === ending)?.[1] ?? '';
  return { what: 'number', whole: shape instanceof z.ZodNumberFormat, unit };
}

function saidTaken(key: string, value: Taken): string {
  const named = NAMED_IN[key];
  switch (value.what) {
    case 'amount':
    case 'mass':
      return 'an amount with its unit';
    case 'time':
      return 'a time';
    case 'share':
      return `a share, as 0.01 or 1%${doubtOf(key)}`;
    case 'number':
      return `${value.whole ? 'a whole number' : 'a number'}${value.unit === '' ? '' : ` in ${value.unit}`}${doubtOf(key)}`;
    case 'word':
      return value.words.length > 8
        ? `one of ${value.words.slice(0, 6).join(', ')}, ...`
        : value.words.join(' or ');
    case 'list':
      return named === 'store' && value.of instanceof z.ZodString
        ? 'stores, with commas between'
        : saidList(value.of);
    case 'object':
      return 'an object, in a file only';
    case 'text':
      return named === undefined ? 'text' : saidNamed[named];
    default:
      return value.what;
  }
}

/** An entry keeps a doubt as one standard deviation, and so do certificates: it is no ±. */
function doubtOf(key: string): string {
  if (key === 'calibrationAbsolute') return ' in its own unit, one standard deviation';
  return key === 'calibrationRelative' ? ', one standard deviation' : '';
}

function saidList(of: z.ZodType): string {
  if (!(of instanceof z.ZodObject)) return 'names with commas between';
  const pair = pairOf(of.shape as Readonly<Record<string, z.ZodType>>);
  return pair === null ? 'a list, in a file only' : 'NAME=VALUE with commas between';
}

/** Keys of name and value, where an object of a list can be told as `NAME=VALUE`; null where it cannot. */
export function pairOf(
  fields: Readonly<Record<string, z.ZodType>>,
): { readonly name: string; readonly value: string; readonly unit: boolean } | null {
  const keys = Object.entries(fields)
    .filter(([, shape]) => unwrapped(shape).needed)
    .map(([key]) => key);
  const [name, value, unit] = keys;
  if (name === undefined || value === undefined) return null;
  if (keys.length === 3 && unit === 'unit' && value === 'value') return { name, value, unit: true };
  return keys.length === 2 ? { name, value, unit: false } : null;
}

/** Form of a kind by a typed name, or the nearest names. */
export function findForm(
  name: string,
): Answer<{ readonly kind: Kind; readonly fields: readonly KindField[] }> {
  const found = findName('kind', name, kindNames);
  if (!found.ok) return found;
  const kind = found.value as Kind;
  return yes({ kind, fields: kindForm(kind) });
}
