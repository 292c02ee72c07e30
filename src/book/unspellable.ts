// Finds what canonical JSON cannot say: a shape lets any text and any depth through, a seal does not.
import { DEEPEST_NESTING } from './canonical.ts';

export interface Unspellable {
  /** Keys down to the place, joined by points. */
  readonly field: string;
  readonly wanted: 'whole-characters' | 'less-nesting';
}

/** Nearly every text of a book is printable ASCII, and that is told fastest. */
const PLAIN = /^[ -~]*$/;

function isWhole(text: string): boolean {
  return PLAIN.test(text) || text.isWellFormed();
}

/** The first thing that has no canonical spelling, or null. Numbers are the shape's to check. */
export function findUnspellable(value: unknown, depth = 0): Unspellable | null {
  if (typeof value === 'string') return isWhole(value) ? null : { field: '', wanted: 'whole-characters' };
  if (typeof value !== 'object' || value === null) return null;
  if (depth >= DEEPEST_NESTING) return { field: '', wanted: 'less-nesting' };
  for (const key of Object.keys(value)) {
    if (!isWhole(key)) return { field: key.toWellFormed(), wanted: 'whole-characters' };
    const found = findUnspellable((value as Record<string, unknown>)[key], depth + 1);
    // The place is put together on the way out: nearly always there is none.
    if (found !== null) return { ...found, field: found.field === '' ? key : `${key}.${found.field}` };
  }
  return null;
}
