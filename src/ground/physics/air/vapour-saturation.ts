// The one engine of the product for saturated vapour: over water the industrial formulation, over ice the sublimation line.
import { saturationPressurePa, saturationTemperatureK } from '../water/saturation.ts';
import { frostPointK, iceVapourPressurePa } from './saturation-over-ice.ts';

const ICE_POINT_K = 273.15;
const TRIPLE_K = 273.16;
const TRIPLE_PA = 611.657;

/**
 * The pressure of pure vapour that is saturated: over ice up to 0.01 °C, over water from there on.
 *
 * Water has the same line here as where it boils, so that a dew point and a boiling margin can never disagree, and that line
 * can be solved for the temperature in closed form. It lies within 0.03 % of Hyland and Wexler's.
 * @param temperatureC °C, −50 to 373.946
 * @returns Pa
 * @throws OutsideRange outside that range and for NaN
 * @source iapws-if97 (equation 30); iapws-melting (equation 6)
 * @example vapourSaturationPa(25) // 3169.75
 */
export function vapourSaturationPa(temperatureC: number): number {
  const temperatureK = temperatureC + ICE_POINT_K;
  return temperatureK < TRIPLE_K ? iceVapourPressurePa(temperatureK) : saturationPressurePa(temperatureK);
}

/**
 * The temperature at which vapour of a pressure is saturated: a dew point above 0.01 °C, a frost point below.
 * @param pressurePa Pa, 3.94 to 22.064e6
 * @returns °C
 * @throws OutsideRange outside that range and for NaN
 * @source iapws-if97 (equation 31); iapws-melting (equation 6, solved for T)
 * @example vapourSaturationC(3169.747) // 25.000
 */
export function vapourSaturationC(pressurePa: number): number {
  const temperatureK = pressurePa < TRIPLE_PA ? frostPointK(pressurePa) : saturationTemperatureK(pressurePa);
  return temperatureK - ICE_POINT_K;
}
