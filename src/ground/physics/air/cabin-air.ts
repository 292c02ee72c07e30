// The air of a cabin at its own pressure: what is fixed for all its states.
import { OutsideRange } from '../outside-range.ts';
import { DRY_AIR, type DryGas, oxygenNitrogen } from './dry-gas.ts';
import { hylandWexlerPa } from './hyland-wexler.ts';
import { vapourSaturationPa } from './vapour-saturation.ts';

const LOWEST_PA = 50_000;
const HIGHEST_PA = 110_000;

/** Made once, then handed to every function of moist air. */
export interface CabinAir {
  readonly pressurePa: number;
  readonly gas: DryGas;
  /** By so much saturated vapour among other gas is denser than alone; 1 when switched off. */
  readonly enhancement: number;
  /** Saturation pressure of pure vapour by °C. */
  readonly saturationPa: (temperatureC: number) => number;
}

/**
 * The enhancement factor of moist air: f = 1.0007 + 3.46e-6 p, p in hPa.
 *
 * Other gas presses a little more vapour out of water. It improves the humidity of saturation from 0.5 % too low to 0.1 %.
 * Over ice Buck has 0.03 % more, less than the factor's own doubt: one factor for both keeps the line whole at 0.01 °C.
 * @param pressurePa Pa, 50 000 to 110 000
 * @throws OutsideRange outside that range and for NaN
 * @source buck-1981 (table 2)
 * @example enhancementFactor(101_325) // 1.0042
 */
export function enhancementFactor(pressurePa: number): number {
  return 1.0007 + 3.46e-8 * heldPressure(pressurePa);
}

function heldPressure(pressurePa: number): number {
  if (pressurePa >= LOWEST_PA && pressurePa <= HIGHEST_PA) return pressurePa;
  throw new OutsideRange({
    quantity: 'pressure of the cabin',
    value: pressurePa,
    unit: 'Pa',
    low: LOWEST_PA,
    high: HIGHEST_PA,
    source: 'buck-1981',
  });
}

/**
 * What moist air at a cabin's pressure is reckoned with.
 * @param cabin `pressurePa` Pa, 50 000 to 110 000 · `oxygenShare` of a gas of oxygen and nitrogen, 0 to 1; absent: ordinary air ·
 *   `enhanced` false leaves the enhancement factor out
 * @throws OutsideRange outside those ranges and for NaN
 * @source buck-1981; ashrae-fundamentals (chapter 1)
 * @example cabinAir({ pressurePa: 70_000, oxygenShare: 0.3 }).gas.vapourRatio // 0.61677
 */
export function cabinAir(cabin: {
  readonly pressurePa: number;
  readonly oxygenShare?: number;
  readonly enhanced?: boolean;
}): CabinAir {
  const { pressurePa, oxygenShare, enhanced = true } = cabin;
  const factor = enhancementFactor(pressurePa);
  return Object.freeze({
    pressurePa,
    gas: oxygenShare === undefined ? DRY_AIR : oxygenNitrogen(oxygenShare),
    enhancement: enhanced ? factor : 1,
    saturationPa: vapourSaturationPa,
  });
}

/**
 * Ordinary air as the handbooks’ tables reckon it: Hyland and Wexler's saturation, no enhancement factor. For comparing only.
 * @param pressurePa Pa, 50 000 to 110 000
 * @throws OutsideRange outside that range and for NaN
 * @source ashrae-fundamentals (chapter 1)
 * @example handbookAir(101_325).enhancement // 1
 */
export function handbookAir(pressurePa: number): CabinAir {
  return Object.freeze({
    ...cabinAir({ pressurePa, enhanced: false }),
    saturationPa: hylandWexlerPa,
  });
}
