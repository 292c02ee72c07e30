// What a volume of compressed gas could set free at once.
import { expm1, log } from '../../maths/index.ts';
import { mustBeAbove0, mustBeAtLeast0 } from './gas-range.ts';

const OF_AIR = 1.4;

/**
 * The energy that gas gives when it expands suddenly to the pressure around it: E = p V/(k−1) [1 − (p_a/p)^((k−1)/k)], k 1.4.
 *
 * Material for a caution: it says how hard a vessel could burst, never that one will not.
 * @param gas `pressurePa` and `aroundPa` in Pa, absolute and above 0, the first at least the second; `gasM3` m³, 0 or more
 * @returns J
 * @throws OutsideRange beyond those ranges and for NaN
 * @source brode-baker (isentropic expansion, from memory)
 * @example storedEnergyJ({ pressurePa: 152e3, aroundPa: 101_325, gasM3: 0.21 }) // 8730.88…
 */
export function storedEnergyJ(gas: {
  readonly pressurePa: number;
  readonly aroundPa: number;
  readonly gasM3: number;
}): number {
  const { pressurePa, aroundPa, gasM3 } = gas;
  mustBeAbove0('pressure of the gas', pressurePa, 'Pa');
  mustBeAbove0('pressure around', aroundPa, 'Pa');
  mustBeAtLeast0('pressure of the gas over that around', pressurePa - aroundPa, 'Pa');
  mustBeAtLeast0('volume of the gas', gasM3, 'm³');
  const power = (OF_AIR - 1) / OF_AIR;
  return ((pressurePa * gasM3) / (OF_AIR - 1)) * (0 - expm1(power * log(aroundPa / pressurePa)));
}
