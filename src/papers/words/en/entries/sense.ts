// What people tasted or smelled, in one line.
import type { Body } from '../../../../book/index.ts';
import { joined } from './context.ts';

export function taste({ store, point, words, who, strength }: Body<'taste'>): string {
  return joined(
    `taste or odour at ${store ?? point ?? 'no place told'}: ${words}`,
    strength !== undefined && `strength ${strength} of 5`,
    who !== undefined && `by ${who}`,
  );
}
