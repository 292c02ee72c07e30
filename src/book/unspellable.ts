// Finds what canonical JSON cannot say: a shape lets any text and any depth through, a seal does not.
import { DEEPEST_NESTING } from './canonical.ts';

export interface Unspellable {
  /** Keys down to the place, joined by points. */
  readonly field: string;
  readonly wanted: 'whole-characters' | 'less-nesting';
}

/** The first thing that has no canonical spelling, or null. Numbers are the shape's to check. */
export function findUnspellable(value: unknown, field = '', depth = 0): Unspellable | null {
  if (typeof value === 'string') return value.isWellFormed() ? null : { field, wanted: 'whole-characters' };
  if (typeof value !== 'object' || value === null) return null;
  if (depth >= DEEPEST_NESTING) return { field, wanted: 'less-nesting' };
  for (const key in value) {
    const place = field === '' ? key : `${field}.${key}`;
    if (!key.isWellFormed()) return { field: place.toWellFormed(), wanted: 'whole-characters' };
    const found = findUnspellable((value as Record<string, unknown>)[key], place, depth + 1);
    if (found !== null) return found;
  }
  return null;
}
