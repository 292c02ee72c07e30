// The density of pure water near room temperature, and the way between litres and milligrams at a stated density.
import { convertAtDensity, type Milligram, milligrams } from '../../units/index.ts';
import { OutsideRange } from '../outside-range.ts';

const shiftC = 3.983035;
const secondC = 301.797;
const dividerC2 = 522528.9;
const thirdC = 69.34881;
const greatestKgPerM3 = 999.97495;

/**
 * The density of air-free pure water at 101.325 kPa (CIPM 2001).
 *
 * ρ = 999.97495 × (1 - (t - 3.983035)² (t + 301.797) / (522528.9 (t + 69.34881))).
 *
 * Dissolved air lowers it by up to 0.005 kg/m3 (from memory), 50 kPa more raises it by about 23 millionths; neither is
 * corrected for, being far below the doubt of any reading here. Salts and biocide of drinking water count as nothing.
 *
 * @param temperatureC °C, 0 to 40.
 * @returns kg/m3; its standard uncertainty is about 0.001 kg/m3.
 * @throws OutsideRange outside 0 to 40 °C and for NaN: the equation is not carried on beyond its range.
 * @source tanaka-2001 (equation 1)
 * @example waterDensityKgPerM3(20) // 998.2067
 */
export function waterDensityKgPerM3(temperatureC: number): number {
  if (!(temperatureC >= 0 && temperatureC <= 40))
    throw new OutsideRange({
      quantity: 'temperature of the water',
      value: temperatureC,
      unit: '°C',
      low: 0,
      high: 40,
      source: 'tanaka-2001',
    });
  const fromGreatestC = temperatureC - shiftC;
  const lowering =
    (fromGreatestC * fromGreatestC * (temperatureC + secondC)) / (dividerC2 * (temperatureC + thirdC));
  return greatestKgPerM3 * (1 - lowering);
}

/**
 * The mass of a volume: m = V ρ, exact, then rounded to the nearest whole milligram (a half away from zero).
 *
 * @param volumeL L; also below zero, for a correction.
 * @param densityKgPerM3 kg/m3, above 0: the outpost's declared density, or `waterDensityKgPerM3` at the water's temperature.
 * @returns mg.
 * @throws RangeError if the volume is not finite, the density is not above 0, or the mass is beyond whole numbers.
 * @source si-brochure (the litre is 0.001 m3)
 * @example litresToMilligrams(1, 997.8) // 997800
 */
export function litresToMilligrams(volumeL: number, densityKgPerM3: number): Milligram {
  const massMg = convertAtDensity(volumeL, { from: 'L', to: 'mg', densityKgPerM3 });
  return milligrams(Math.sign(massMg) * Math.round(Math.abs(massMg)));
}

/**
 * The volume of a mass: V = m / ρ. A volume of whole hundredths of a millilitre comes back from its milligrams the same.
 *
 * @param massMg mg.
 * @param densityKgPerM3 kg/m3, above 0.
 * @returns L.
 * @throws RangeError if the mass is not finite or the density is not above 0.
 * @source si-brochure (the litre is 0.001 m3)
 * @example milligramsToLitres(milligrams(997_800), 997.8) // 1
 */
export function milligramsToLitres(massMg: number, densityKgPerM3: number): number {
  return convertAtDensity(massMg, { from: 'mg', to: 'L', densityKgPerM3 });
}
