// Ways to damage a file that no error is told of: flipped bits, zeroed sectors, pages in the wrong place, a lost end.
import { type Chance, chooseFrom } from '../contract/made-up-entries.ts';

export type DamageKind = 'bit flip' | 'zeroed sector' | 'misplaced page' | 'lost end';
export const DAMAGE_KINDS: readonly DamageKind[] = [
  'bit flip',
  'zeroed sector',
  'misplaced page',
  'lost end',
];

const PAGE = 4096;
const SECTOR = 512;

/** A damaged copy of a file, with what was done to it in words. */
export function damage(
  whole: Buffer,
  kind: DamageKind,
  chance: Chance,
): { readonly bytes: Buffer; readonly what: string } {
  const bytes = Buffer.from(whole);
  const below = (end: number) => Math.floor(chance() * end);
  if (kind === 'bit flip') {
    const at = below(bytes.length);
    const bit = below(8);
    bytes[at] = (bytes[at] as number) ^ (1 << bit);
    return { bytes, what: `bit ${bit} of byte ${at}` };
  }
  if (kind === 'zeroed sector') {
    const at = below(bytes.length / SECTOR) * SECTOR;
    bytes.fill(0, at, at + SECTOR);
    return { bytes, what: `sector at ${at}` };
  }
  if (kind === 'misplaced page') {
    const from = below(bytes.length / PAGE) * PAGE;
    const to = below(bytes.length / PAGE) * PAGE;
    whole.copy(bytes, to, from, from + PAGE);
    return { bytes, what: `page at ${from} written at ${to}` };
  }
  // Whole pages, whole sectors, or any length.
  const step = chooseFrom(chance, [PAGE, SECTOR, 1]);
  const length = below(bytes.length / step) * step;
  return { bytes: bytes.subarray(0, length), what: `${length} of ${bytes.length} bytes` };
}
