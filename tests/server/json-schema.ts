// A small reader of JSON Schema for tests: the description is held against real answers by other code than the one that wrote it.

type Schema = Readonly<Record<string, unknown>>;

/** Places where a value does not fit, with what was wanted there; empty where it fits. Keywords that are not known here are an error. */
export function misfits(
  schema: Schema,
  value: unknown,
  root: Schema = schema,
  place = '',
): readonly string[] {
  const unknown = Object.keys(schema).find((key) => !(key in KEYWORDS) && !SILENT.has(key));
  if (unknown !== undefined) throw new Error(`the keyword ${unknown} at ${place} is not known to this test`);
  return Object.entries(KEYWORDS).flatMap(([key, judge]) =>
    key in schema ? judge({ wanted: schema[key], schema, value, root, place }) : [],
  );
}

interface Judged {
  readonly wanted: unknown;
  readonly schema: Schema;
  readonly value: unknown;
  readonly root: Schema;
  readonly place: string;
}
type Judge = (judged: Judged) => readonly string[];

/** They say something to readers and nothing about a value. */
const SILENT = new Set([
  '$defs',
  'description',
  'id',
  '$id',
  'title',
  'examples',
  'default',
  'contentEncoding',
  'format',
  'propertyNames',
]);

const fails = (isWrong: boolean, { place, wanted, value }: Judged, key: string): readonly string[] =>
  isWrong
    ? [`${place || '/'}: ${key} ${JSON.stringify(wanted)}, received ${JSON.stringify(value)?.slice(0, 60)}`]
    : [];

const isObject = (value: unknown): value is Readonly<Record<string, unknown>> =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

const ofType: Readonly<Record<string, (value: unknown) => boolean>> = {
  object: isObject,
  array: Array.isArray,
  string: (value) => typeof value === 'string',
  number: (value) => typeof value === 'number',
  integer: Number.isInteger,
  boolean: (value) => typeof value === 'boolean',
  null: (value) => value === null,
};

const inner = ({ root, place }: Judged, schema: unknown, value: unknown, key: string) =>
  misfits(schema as Schema, value, root, `${place}/${key}`);

const KEYWORDS: Readonly<Record<string, Judge>> = {
  $ref: (judged) => {
    const name = String(judged.wanted).replace(/^#\/\$defs\//, '');
    const definition = (judged.root['$defs'] as Record<string, Schema> | undefined)?.[name];
    if (definition === undefined) return [`${judged.place}: nothing stands at ${judged.wanted}`];
    return misfits(definition, judged.value, judged.root, judged.place);
  },
  type: (judged) => {
    const types = [judged.wanted].flat() as string[];
    return fails(!types.some((type) => ofType[type]?.(judged.value) === true), judged, 'type');
  },
  const: (judged) => fails(judged.value !== judged.wanted, judged, 'const'),
  enum: (judged) => fails(!(judged.wanted as unknown[]).includes(judged.value), judged, 'enum'),
  anyOf: (judged) => oneFits(judged),
  oneOf: (judged) => oneFits(judged),
  allOf: (judged) =>
    (judged.wanted as Schema[]).flatMap((each) => misfits(each, judged.value, judged.root, judged.place)),
  properties: (judged) => {
    if (!isObject(judged.value)) return [];
    const { value } = judged;
    return Object.entries(judged.wanted as Record<string, Schema>).flatMap(([key, schema]) =>
      Object.hasOwn(value, key) ? inner(judged, schema, value[key], key) : [],
    );
  },
  required: (judged) => {
    const { value, wanted } = judged;
    if (!isObject(value)) return [];
    return (wanted as string[]).flatMap((key) =>
      fails(!Object.hasOwn(value, key), { ...judged, wanted: key }, 'required'),
    );
  },
  additionalProperties: (judged) => {
    const { value, wanted, schema } = judged;
    if (!isObject(value)) return [];
    const known = Object.keys((schema['properties'] ?? {}) as object);
    const others = Object.keys(value).filter((key) => !known.includes(key));
    if (wanted === false) return others.map((key) => `${judged.place}: "${key}" is not described`);
    return others.flatMap((key) => inner(judged, wanted === true ? {} : wanted, value[key], key));
  },
  items: (judged) =>
    Array.isArray(judged.value)
      ? judged.value.flatMap((each, k) => inner(judged, judged.wanted, each, `${k}`))
      : [],
  pattern: (judged) =>
    fails(
      typeof judged.value === 'string' && !new RegExp(String(judged.wanted), 'u').test(judged.value),
      judged,
      'pattern',
    ),
  minLength: (judged) => fails(lengthOf(judged) < (judged.wanted as number), judged, 'minLength'),
  maxLength: (judged) => fails(lengthOf(judged, 0) > (judged.wanted as number), judged, 'maxLength'),
  minItems: (judged) =>
    fails(Array.isArray(judged.value) && judged.value.length < (judged.wanted as number), judged, 'minItems'),
  maxItems: (judged) =>
    fails(Array.isArray(judged.value) && judged.value.length > (judged.wanted as number), judged, 'maxItems'),
  minimum: (judged) =>
    fails(typeof judged.value === 'number' && judged.value < (judged.wanted as number), judged, 'minimum'),
  maximum: (judged) =>
    fails(typeof judged.value === 'number' && judged.value > (judged.wanted as number), judged, 'maximum'),
  exclusiveMinimum: (judged) =>
    fails(
      typeof judged.value === 'number' && judged.value <= (judged.wanted as number),
      judged,
      'exclusiveMinimum',
    ),
};

function lengthOf({ value }: Judged, otherwise = Number.POSITIVE_INFINITY): number {
  return typeof value === 'string' ? [...value].length : otherwise;
}

function oneFits(judged: Judged): readonly string[] {
  const all = (judged.wanted as Schema[]).map((each) =>
    misfits(each, judged.value, judged.root, judged.place),
  );
  return all.some((each) => each.length === 0)
    ? []
    : (all.sort((a, b) => a.length - b.length)[0] ?? ['no choice']);
}
