// What every store holds an append against before it writes: the heads have not moved, no number is left out, no id comes twice.
import { HeadMoved, headOf, IdTaken, type KeptEntry } from './port.ts';
import { FIRST_SEAL, type Head } from './seal.ts';

/**
 * Holds entries that ask to be appended against the heads of the book. Ids that the book has already are the store's to find.
 * @throws HeadMoved when a head is not the expected one
 * @throws IdTaken when two of the entries have the same id
 * @throws Error when a number does not follow: that is a fault of the caller, not of the data
 */
export function holdAppend(
  heads: readonly Head[],
  entries: readonly KeptEntry[],
  expectedHeads: readonly Head[],
): void {
  for (const expected of expectedHeads) {
    const head = headOf(heads, expected.site, FIRST_SEAL);
    if (head.number !== expected.number || head.seal !== expected.seal) throw new HeadMoved(expected.site);
  }
  const ids = new Set<string>();
  const next = new Map<string, number>();
  for (const entry of entries) {
    if (ids.has(entry.id)) throw new IdTaken(entry.id);
    ids.add(entry.id);
    const wanted = next.get(entry.site) ?? headOf(heads, entry.site, FIRST_SEAL).number + 1;
    if (entry.number !== wanted)
      throw new Error(`number ${entry.number} of ${entry.site} does not follow: ${wanted} is next`);
    next.set(entry.site, wanted + 1);
  }
}
