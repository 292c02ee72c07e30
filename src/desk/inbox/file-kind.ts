// Whether a file is a table, or one of the formats of our own: told by how it begins, never by its name.
import { objectInLine } from '../../book/index.ts';

/** Letters that are looked at: the first line of a log of our own may be long, and its beginning tells enough. */
export const LETTERS_LOOKED_AT = 4_000_000;

/** A field log and an export begin with an object that names what they are; what is no JSON is left to those who read logs. */
export function isTable(beginning: string): boolean {
  const first = beginning
    .replace(/^\ufeff/, '')
    .trimStart()
    .slice(0, LETTERS_LOOKED_AT)
    .split('\n', 1)[0];
  if (first === undefined || !first.startsWith('{')) return true;
  const value = objectInLine(first);
  if (value === null || Object.keys(value).length === 0) return false;
  const isOfOurs =
    'format' in value || 'entry' in value || ('t' in value && ('id' in value || 'kind' in value));
  return !isOfOurs && !('kind' in value && 'id' in value) && Object.values(value).every(isPlain);
}

function isPlain(value: unknown): boolean {
  return value === null || typeof value !== 'object';
}
