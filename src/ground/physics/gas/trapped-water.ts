// The pressure of water that is shut in a rigid line and warms. Material for a caution: never shut a full line at both ends.
import { stayWithin } from '../stay-within.ts';

/** Volume expansion of water near 25 °C, 1/K. */
const EXPANSION_PER_K = 2.6e-4;
/** Compressibility of water near 25 °C, 1/Pa. */
const COMPRESSIBILITY_PER_PA = 4.5e-10;
const MOST_K = 10;

/**
 * The rise of pressure of water shut in a rigid line that warms near 25 °C: Δp = β/κ ΔT, about 0.58 MPa for each kelvin.
 *
 * A hose gives way and rises less; how much less is not known here. Both constants are from memory, so no figure of this
 * goes into a caution unless the outpost's file carries it.
 * @param warmingK K, 0 to 10, from 20 °C to 30 °C
 * @returns Pa
 * @throws OutsideRange beyond that range and for NaN
 * @source crc-water (from memory)
 * @example trappedWaterRisePa(1) // 577777.7…
 */
export function trappedWaterRisePa(warmingK: number): number {
  stayWithin({
    quantity: 'warming of shut-in water near 25 °C',
    value: warmingK,
    unit: 'K',
    low: 0,
    high: MOST_K,
    source: 'crc-water',
  });
  return (EXPANSION_PER_K / COMPRESSIBILITY_PER_PA) * warmingK;
}
