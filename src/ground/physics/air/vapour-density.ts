// How much water the air of a cabin carries.
import { OutsideRange } from '../outside-range.ts';
import { saturationPressurePa } from '../water/saturation.ts';

/** Specific gas constant of water vapour, J/(kg K). @source iapws-if97 (section 2) */
const GAS_CONSTANT_J_PER_KG_K = 461.526;
const ICE_POINT_K = 273.15;

/**
 * The density of water vapour in air: ρ = φ p_s(T) / (R T), as an ideal gas.
 *
 * It needs no pressure of the cabin, and so stands for the balance of the air in the account. The enhancement factor, 1.004 at
 * 1 bar, and the deviation from an ideal gas, below 0.1 % here, are left out: both are far below the doubt of a humidity
 * reading. Where the pressure is known, `airState` has them inside.
 *
 * @param air `relativeHumidity` 0 to 1, `temperatureC` °C, 0 to 60
 * @returns kg/m³
 * @throws OutsideRange outside those ranges and for NaN
 * @source iapws-if97 (saturation); ideal gas law
 * @example vapourDensityKgPerM3({ relativeHumidity: 0.5, temperatureC: 22 }) // 0.00971
 */
export function vapourDensityKgPerM3(air: { relativeHumidity: number; temperatureC: number }): number {
  const { relativeHumidity, temperatureC } = air;
  if (!(relativeHumidity >= 0 && relativeHumidity <= 1))
    throw outside('relative humidity', relativeHumidity, { unit: '', high: 1 });
  if (!(temperatureC >= 0 && temperatureC <= 60))
    throw outside('temperature of the air', temperatureC, { unit: '°C', high: 60 });
  const temperatureK = temperatureC + ICE_POINT_K;
  return (relativeHumidity * saturationPressurePa(temperatureK)) / (GAS_CONSTANT_J_PER_KG_K * temperatureK);
}

function outside(quantity: string, value: number, end: { readonly unit: string; readonly high: number }) {
  return new OutsideRange({ quantity, value, ...end, low: 0, source: 'iapws-if97' });
}
