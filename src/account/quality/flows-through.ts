// Stores that a unit fills as it runs: their water is never the same for long.
import type { OutpostIndex } from '../../outpost/index.ts';

export function flowsThrough({ outpost }: OutpostIndex, store: string): boolean {
  return outpost.units.some(({ feeds }) => 'store' in feeds && feeds.store === store);
}
