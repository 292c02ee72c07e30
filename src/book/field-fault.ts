// What a field should have been, as plain data: the schema's own sentences never reach a person.
import type * as z from 'zod';
import type { FindingData } from '../ground/units/index.ts';

/** What was wanted of a field; the papers have a phrase for each. */
export type Wanted =
  | 'text'
  | 'number'
  | 'whole-number'
  | 'yes-no'
  | 'list'
  | 'section'
  | 'at-least'
  | 'at-most'
  | 'more-than'
  | 'longer'
  | 'shorter'
  | 'one-of'
  | 'form'
  | 'whole-characters'
  | 'less-nesting'
  | 'other';

const TYPES: Readonly<Record<string, Wanted>> = {
  string: 'text',
  number: 'number',
  int: 'whole-number',
  boolean: 'yes-no',
  array: 'list',
  object: 'section',
  record: 'section',
};

/** What a schema asked for and did not get. */
export function wantedBy(issue: z.core.$ZodIssue): FindingData {
  switch (issue.code) {
    case 'invalid_type':
      return { wanted: TYPES[issue.expected] ?? 'other' };
    case 'too_small':
      if (isCounted(issue.origin)) return { wanted: 'longer', limit: plain(issue.minimum) };
      return { wanted: issue.inclusive === false ? 'more-than' : 'at-least', limit: plain(issue.minimum) };
    case 'too_big':
      return { wanted: isCounted(issue.origin) ? 'shorter' : 'at-most', limit: plain(issue.maximum) };
    case 'invalid_value':
      return { wanted: 'one-of', values: issue.values.map(String).slice(0, 60) };
    case 'invalid_format':
      return { wanted: 'form' };
    case 'invalid_union':
      return 'options' in issue && Array.isArray(issue.options)
        ? { wanted: 'one-of', values: issue.options.map(String).slice(0, 60) }
        : { wanted: 'other' };
    default:
      return { wanted: 'other' };
  }
}

function isCounted(origin: string): boolean {
  return origin === 'string' || origin === 'array';
}

function plain(limit: number | bigint): string | number {
  return typeof limit === 'number' ? limit : limit.toString();
}

/** What stands at a path, shortly, as it would be written; null where nothing stands. */
export function receivedAt(value: unknown, path: readonly PropertyKey[]): string | null {
  let at = value;
  for (const key of path) {
    if (typeof at !== 'object' || at === null || !Object.hasOwn(at, key)) return null;
    at = (at as Record<PropertyKey, unknown>)[key];
  }
  if (typeof at === 'number' || at === undefined) return at === undefined ? null : `${at}`;
  if (typeof at === 'object' && at !== null) return Array.isArray(at) ? 'a list' : 'a section';
  return JSON.stringify(at).toWellFormed().slice(0, 60);
}
