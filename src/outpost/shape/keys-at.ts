// Which keys the schema knows at a path: what "did you mean" is chosen from.
import * as z from 'zod';

type Path = readonly (string | number)[];

function unwrapped(schema: unknown): unknown {
  let inner = schema;
  while (inner instanceof z.ZodDefault || inner instanceof z.ZodExactOptional) inner = inner.unwrap();
  return inner;
}

/** The branch of a union that a value was meant for; the first if that cannot be told. */
function branchFor(schema: z.ZodUnion | z.ZodDiscriminatedUnion, value: unknown): unknown {
  const options = schema.options as readonly z.ZodObject[];
  const kind = (value as { kind?: unknown } | null | undefined)?.kind;
  const has = (option: z.ZodObject) => {
    const literal = option.shape['kind'];
    if (literal instanceof z.ZodLiteral) return literal.value === kind;
    const own = Object.keys(option.shape)[0];
    return typeof value === 'object' && value !== null && own !== undefined && Object.hasOwn(value, own);
  };
  return options.find(has) ?? options[0];
}

/** For the path of a `kind` that fits no branch: the kinds there are. */
function kindsOf(schema: unknown): readonly string[] {
  if (!(schema instanceof z.ZodDiscriminatedUnion)) return [];
  return (schema.options as readonly z.ZodObject[]).map((option) =>
    String((option.shape['kind'] as z.ZodLiteral).value),
  );
}

export function keysAt(path: Path, root: unknown, whole: z.ZodObject): readonly string[] {
  let schema: unknown = whole;
  let value = root;
  for (const step of path) {
    schema = unwrapped(schema);
    if (step === 'kind') return kindsOf(schema);
    if (schema instanceof z.ZodUnion) schema = unwrapped(branchFor(schema, value));
    if (schema instanceof z.ZodArray) schema = schema.element;
    else if (schema instanceof z.ZodObject) schema = (schema.shape as Record<string, unknown>)[step];
    value = (value as Record<string | number, unknown> | undefined)?.[step];
  }
  schema = unwrapped(schema);
  if (schema instanceof z.ZodUnion) schema = branchFor(schema, value);
  return schema instanceof z.ZodObject ? Object.keys(schema.shape) : [];
}
