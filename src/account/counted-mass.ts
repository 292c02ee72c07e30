// What one count of an instrument weighs.
import type { Instrument } from '../outpost/index.ts';
import { type Fold, MG_PER_KG } from './fold.ts';

/** Milligrams in one count, in the instrument's own unit: kilograms weigh the same everywhere, litres by the outpost's density. */
export function mgPerCount(
  fold: Pick<Fold, 'mgPerL'>,
  instrument: Pick<Instrument, 'unit' | 'litresPerCount'>,
): number {
  return instrument.unit === 'kg' ? MG_PER_KG : (instrument.litresPerCount ?? 1) * fold.mgPerL;
}
