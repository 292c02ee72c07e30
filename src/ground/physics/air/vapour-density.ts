// How much water the air of a cabin carries.
import { saturationPressurePa } from '../water/saturation.ts';

/** Specific gas constant of water vapour, J/(kg K). @source iapws-if97 (section 2) */
const GAS_CONSTANT_J_PER_KG_K = 461.526;
const ICE_POINT_K = 273.15;

/**
 * The density of water vapour in air: ρ = φ p_s(T) / (R T), as an ideal gas.
 *
 * The enhancement factor of air at 1 bar, about 1.004, and the deviation from an ideal gas, below 0.1 % here, are left out:
 * both are far below the doubt of a humidity reading.
 *
 * @param air `relativeHumidity` 0 to 1, `temperatureC` °C, 0 to 60
 * @returns kg/m³
 * @throws RangeError outside those ranges and for NaN
 * @source iapws-if97 (saturation); ideal gas law
 * @example vapourDensityKgPerM3({ relativeHumidity: 0.5, temperatureC: 22 }) // 0.00971
 */
export function vapourDensityKgPerM3(air: { relativeHumidity: number; temperatureC: number }): number {
  const { relativeHumidity, temperatureC } = air;
  if (!(relativeHumidity >= 0 && relativeHumidity <= 1))
    throw new RangeError(`a relative humidity lies between 0 and 1, not at ${relativeHumidity}`);
  if (!(temperatureC >= 0 && temperatureC <= 60))
    throw new RangeError(`moist air is known here from 0 to 60 °C, not at ${temperatureC}`);
  const temperatureK = temperatureC + ICE_POINT_K;
  return (relativeHumidity * saturationPressurePa(temperatureK)) / (GAS_CONSTANT_J_PER_KG_K * temperatureK);
}
