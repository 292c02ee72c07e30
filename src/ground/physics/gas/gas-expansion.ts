// A closed amount of gas that grows: its pressure, and how far it pushes.
import { pow } from '../../maths/index.ts';
import { mustBeAbove0, mustBeExponent } from './gas-range.ts';

const OF_AIR = 1.4;

/** A closed amount of gas at the start, and how warm its walls keep it: 1 (warm, slow) to 1.4 (no heat, sudden). */
export interface ClosedGas {
  /** Absolute, Pa. */
  readonly pressurePa: number;
  readonly gasM3: number;
  readonly exponent: number;
}

/**
 * The pressure of a closed gas at another volume: p = p₀ (V₀/V)ⁿ.
 * @param gas pressure absolute in Pa and volume in m³ at the start, both above 0; exponent 1 to 1.4
 * @param volumeM3 m³, above 0
 * @returns Pa, absolute
 * @throws OutsideRange beyond those ranges and for NaN
 * @source boyle-polytropic
 * @example expandedPa({ pressurePa: 150e3, gasM3: 0.05, exponent: 1 }, 0.1) // 75000
 */
export function expandedPa(gas: ClosedGas, volumeM3: number): number {
  mustBeClosedGas(gas);
  mustBeAbove0('volume to which the gas grows', volumeM3, 'm³');
  return pressureAt(gas, volumeM3);
}

/** `expandedPa` without a look at its figures, for a course that looked at them once. */
export function pressureAt({ pressurePa, gasM3, exponent }: ClosedGas, volumeM3: number): number {
  const ratio = gasM3 / volumeM3;
  return pressurePa * (exponent === 1 ? ratio : pow(ratio, exponent));
}

/**
 * The volume at which a closed gas has another pressure: V = V₀ (p₀/p)^(1/n). V − V₀ is what it can push out.
 * @param gas as for `expandedPa`
 * @param againstPa Pa, absolute, above 0
 * @returns m³
 * @throws OutsideRange beyond those ranges and for NaN
 * @source boyle-polytropic
 * @example expandedVolumeM3({ pressurePa: 150e3, gasM3: 0.05, exponent: 1 }, 100e3) // 0.075
 */
export function expandedVolumeM3(gas: ClosedGas, againstPa: number): number {
  mustBeClosedGas(gas);
  mustBeAbove0('pressure at the other end', againstPa, 'Pa');
  const ratio = gas.pressurePa / againstPa;
  return gas.gasM3 * (gas.exponent === 1 ? ratio : pow(ratio, 1 / gas.exponent));
}

/** @throws OutsideRange for gas without pressure or volume, and for an exponent outside 1 to 1.4 */
export function mustBeClosedGas({ pressurePa, gasM3, exponent }: ClosedGas): void {
  mustBeAbove0('pressure of the gas', pressurePa, 'Pa');
  mustBeAbove0('volume of the gas', gasM3, 'm³');
  mustBeExponent(exponent, OF_AIR);
}
