// Properties of liquid water at any temperature and pressure of the trade: volume, enthalpy, entropy, heat capacity, sound.
import { OutsideRange } from '../outside-range.ts';
import { layPowers, seriesOf, sumOf } from './region-1-series.ts';
import { saturationPressurePa } from './saturation.ts';

/** Specific gas constant of water, J/(kg K). @source iapws-if97 (equation 1) */
const R_J_PER_KG_K = 461.526;
const REDUCING_PRESSURE_PA = 16.53e6;
const REDUCING_TEMPERATURE_K = 1386;
const LOWEST_K = 273.15;
const HIGHEST_K = 623.15;
const HIGHEST_PA = 100e6;
const SOURCE = 'iapws-if97';

const gamma = seriesOf({ byPressure: 0, byTemperature: 0 });
const gammaP = seriesOf({ byPressure: 1, byTemperature: 0 });
const gammaPP = seriesOf({ byPressure: 2, byTemperature: 0 });
const gammaT = seriesOf({ byPressure: 0, byTemperature: 1 });
const gammaTT = seriesOf({ byPressure: 0, byTemperature: 2 });
const gammaPT = seriesOf({ byPressure: 1, byTemperature: 1 });

/** Refuses what is not liquid water of region 1; else lays the powers for the sums. */
function layLiquid(temperatureK: number, pressurePa: number): void {
  if (!(temperatureK >= LOWEST_K && temperatureK <= HIGHEST_K))
    throw new OutsideRange({
      quantity: 'temperature of liquid water',
      value: temperatureK,
      unit: 'K',
      low: LOWEST_K,
      high: HIGHEST_K,
      source: SOURCE,
    });
  const lowestPa = saturationPressurePa(temperatureK);
  if (!(pressurePa >= lowestPa && pressurePa <= HIGHEST_PA))
    throw new OutsideRange({
      quantity: `pressure of liquid water at ${temperatureK} K`,
      value: pressurePa,
      unit: 'Pa',
      low: lowestPa,
      high: HIGHEST_PA,
      source: SOURCE,
    });
  layPowers(temperatureK, pressurePa);
}

/**
 * The volume of a kilogram of liquid water: v = π γ_π R T / p.
 *
 * Pure, air-free water. Its uncertainty is about 0.001 % at the pressures of an outpost (from memory).
 * @param temperatureK K, 273.15 to 623.15
 * @param pressurePa Pa, from the saturation pressure of that temperature to 100 MPa
 * @returns m³/kg
 * @throws OutsideRange outside those ranges and for NaN
 * @source iapws-if97 (region 1, equation 7 and table 3)
 * @example liquidVolumeM3PerKg(300, 3e6) // 0.00100215168
 */
export function liquidVolumeM3PerKg(temperatureK: number, pressurePa: number): number {
  layLiquid(temperatureK, pressurePa);
  return (sumOf(gammaP) * R_J_PER_KG_K * temperatureK) / REDUCING_PRESSURE_PA;
}

/**
 * The density of liquid water, 1 / v.
 *
 * For counting litres between 0 and 40 °C take `waterDensityKgPerM3`, which is surer there; this one is for hot water and
 * for pressure.
 * @param temperatureK K, 273.15 to 623.15
 * @param pressurePa Pa, from the saturation pressure of that temperature to 100 MPa
 * @returns kg/m³
 * @throws OutsideRange outside those ranges and for NaN
 * @source iapws-if97 (region 1, equation 7 and table 3)
 * @example liquidDensityKgPerM3(298.15, 101325) // 997.0480
 */
export function liquidDensityKgPerM3(temperatureK: number, pressurePa: number): number {
  return 1 / liquidVolumeM3PerKg(temperatureK, pressurePa);
}

/**
 * The enthalpy of liquid water: h = τ γ_τ R T, 0 near the triple point.
 * @param temperatureK K, 273.15 to 623.15
 * @param pressurePa Pa, from the saturation pressure of that temperature to 100 MPa
 * @returns J/kg
 * @throws OutsideRange outside those ranges and for NaN
 * @source iapws-if97 (region 1, equation 7 and table 3)
 * @example liquidEnthalpyJPerKg(300, 3e6) // 115331.273
 */
export function liquidEnthalpyJPerKg(temperatureK: number, pressurePa: number): number {
  layLiquid(temperatureK, pressurePa);
  return sumOf(gammaT) * R_J_PER_KG_K * REDUCING_TEMPERATURE_K;
}

/**
 * The internal energy of liquid water: u = (τ γ_τ − π γ_π) R T.
 * @param temperatureK K, 273.15 to 623.15
 * @param pressurePa Pa, from the saturation pressure of that temperature to 100 MPa
 * @returns J/kg
 * @throws OutsideRange outside those ranges and for NaN
 * @source iapws-if97 (region 1, equation 7 and table 3)
 * @example liquidEnergyJPerKg(300, 3e6) // 112324.818
 */
export function liquidEnergyJPerKg(temperatureK: number, pressurePa: number): number {
  layLiquid(temperatureK, pressurePa);
  const pressurePart = (pressurePa / REDUCING_PRESSURE_PA) * sumOf(gammaP) * temperatureK;
  return R_J_PER_KG_K * (REDUCING_TEMPERATURE_K * sumOf(gammaT) - pressurePart);
}

/**
 * The entropy of liquid water: s = (τ γ_τ − γ) R, 0 near the triple point.
 * @param temperatureK K, 273.15 to 623.15
 * @param pressurePa Pa, from the saturation pressure of that temperature to 100 MPa
 * @returns J/(kg K)
 * @throws OutsideRange outside those ranges and for NaN
 * @source iapws-if97 (region 1, equation 7 and table 3)
 * @example liquidEntropyJPerKgK(300, 3e6) // 392.294792
 */
export function liquidEntropyJPerKgK(temperatureK: number, pressurePa: number): number {
  layLiquid(temperatureK, pressurePa);
  return R_J_PER_KG_K * ((REDUCING_TEMPERATURE_K / temperatureK) * sumOf(gammaT) - sumOf(gamma));
}

/**
 * The heat capacity of liquid water at constant pressure: c_p = −τ² γ_ττ R.
 *
 * For a heating take the difference of two enthalpies, not c_p times a difference of temperatures.
 * @param temperatureK K, 273.15 to 623.15
 * @param pressurePa Pa, from the saturation pressure of that temperature to 100 MPa
 * @returns J/(kg K)
 * @throws OutsideRange outside those ranges and for NaN
 * @source iapws-if97 (region 1, equation 7 and table 3)
 * @example liquidHeatCapacityJPerKgK(300, 3e6) // 4173.01218
 */
export function liquidHeatCapacityJPerKgK(temperatureK: number, pressurePa: number): number {
  layLiquid(temperatureK, pressurePa);
  const tau = REDUCING_TEMPERATURE_K / temperatureK;
  return -tau * tau * sumOf(gammaTT) * R_J_PER_KG_K;
}

/**
 * The speed of sound in liquid water: w² = γ_π² R T / ((γ_π − τ γ_πτ)² / (τ² γ_ττ) − γ_ππ).
 * @param temperatureK K, 273.15 to 623.15
 * @param pressurePa Pa, from the saturation pressure of that temperature to 100 MPa
 * @returns m/s
 * @throws OutsideRange outside those ranges and for NaN
 * @source iapws-if97 (region 1, equation 7 and table 3)
 * @example liquidSoundMPerS(300, 3e6) // 1507.73921
 */
export function liquidSoundMPerS(temperatureK: number, pressurePa: number): number {
  layLiquid(temperatureK, pressurePa);
  const tau = REDUCING_TEMPERATURE_K / temperatureK;
  const slope = sumOf(gammaP);
  const mixed = slope - tau * sumOf(gammaPT);
  const stiffness = (mixed * mixed) / (tau * tau * sumOf(gammaTT)) - sumOf(gammaPP);
  return Math.sqrt((slope * slope * R_J_PER_KG_K * temperatureK) / stiffness);
}
