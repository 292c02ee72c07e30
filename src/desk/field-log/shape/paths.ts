// Ways through a line and through its shape: the value there, what a keeper would call the place, and what the shape says of it.
import * as z from 'zod';
import { shown } from './shown.ts';

export type Path = readonly PropertyKey[];

export function valueAt(root: unknown, path: Path): unknown {
  let value = root;
  for (const step of path) {
    if (typeof value !== 'object' || value === null || !Object.hasOwn(value, step)) return undefined;
    value = (value as Record<PropertyKey, unknown>)[step];
  }
  return value;
}

/**
 * Items that have an id are called by it, others are counted from 1, as people do.
 * @example fieldOf(['stores', 3, 'capacity_L'], line) // 'stores[C-02].capacity_L'
 */
export function fieldOf(path: Path, root: unknown): string {
  let field = '';
  let value = root;
  for (const step of path) {
    value = valueAt(value, [step]);
    if (typeof step !== 'number') field += field === '' ? shown(step) : `.${shown(step)}`;
    else {
      const id = valueAt(value, ['id']) ?? valueAt(value, ['vehicle']);
      field += `[${typeof id === 'string' ? shown(id) : step + 1}]`;
    }
  }
  return field;
}

/** Keys that the shape knows at a path: what the nearest ones are chosen from. */
export function keysAt(root: unknown, path: Path): string[] {
  return schemasAt(root, path).flatMap((schema) =>
    schema instanceof z.ZodObject ? Object.keys(schema.shape) : [],
  );
}

/** Keys of one branch of the union at a path. */
export function branchKeys(root: unknown, path: Path, branch: number): string[] {
  const schema = schemasAt(root, path)[branch];
  return schema instanceof z.ZodObject ? Object.keys(schema.shape) : [];
}

/** Whether "not read" may stand there. */
export function mayBeNull(root: unknown, path: Path): boolean {
  const key = String(path.at(-1));
  return schemasAt(root, path.slice(0, -1)).some((schema) => {
    const field = schema instanceof z.ZodObject ? schema.shape[key] : undefined;
    return (field instanceof z.ZodExactOptional ? field.unwrap() : field) instanceof z.ZodNullable;
  });
}

/** The shape at a path; of a union every branch that has it. */
function schemasAt(root: unknown, path: Path): unknown[] {
  const schema = unwrapped(root);
  if (schema instanceof z.ZodUnion) return schema.options.flatMap((option) => schemasAt(option, path));
  const [step, ...rest] = path;
  if (step === undefined) return [schema];
  if (schema instanceof z.ZodArray) return schemasAt(schema.element, rest);
  if (schema instanceof z.ZodObject) return schemasAt(schema.shape[String(step)], rest);
  return [];
}

function unwrapped(schema: unknown): unknown {
  let inner = schema;
  while (inner instanceof z.ZodExactOptional || inner instanceof z.ZodNullable) inner = inner.unwrap();
  return inner;
}
