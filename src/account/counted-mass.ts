// What one count of an instrument weighs.
import type { Instrument } from '../outpost/index.ts';
import { type Fold, MG_PER_KG } from './fold.ts';

/** Milligrams in one count, in the instrument's own unit: kilograms weigh the same everywhere, litres by the outpost's density. */
export function mgPerCount(
  fold: Pick<Fold, 'mgPerL' | 'litresPerCount'>,
  { id, unit, litresPerCount = 1 }: Pick<Instrument, 'id' | 'unit' | 'litresPerCount'>,
): number {
  return unit === 'kg' ? MG_PER_KG : (fold.litresPerCount.get(id) ?? litresPerCount) * fold.mgPerL;
}
