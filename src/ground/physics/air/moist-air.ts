// Moist air: vapour pressure, humidity ratio, relative humidity, dew point, enthalpy, volume; scalars in, a scalar out.
import { rootBetween } from '../../maths/index.ts';
import { OutsideRange } from '../outside-range.ts';
import type { CabinAir } from './cabin-air.ts';
import { vapourSaturationC, vapourSaturationPa } from './vapour-saturation.ts';

const LOWEST_C = -20;
const HIGHEST_C = 60;
const ICE_POINT_K = 273.15;
const SOURCE = 'ashrae-fundamentals';
/** Enthalpy of vapour: h_g = 2501 + 1.86 t kJ/kg. */
const VAPOUR_J_PER_KG = 2_501_000;
const VAPOUR_J_PER_KG_K = 1860;

function holdTemperature(temperatureC: number): void {
  if (!(temperatureC >= LOWEST_C && temperatureC <= HIGHEST_C))
    throw new OutsideRange({
      quantity: 'temperature of the air',
      value: temperatureC,
      unit: '°C',
      low: LOWEST_C,
      high: HIGHEST_C,
      source: SOURCE,
    });
}

function holdShare(relativeHumidity: number): void {
  if (!(relativeHumidity >= 0 && relativeHumidity <= 1))
    throw new OutsideRange({
      quantity: 'relative humidity',
      value: relativeHumidity,
      unit: '',
      low: 0,
      high: 1,
      source: SOURCE,
    });
}

function holdVapour(air: CabinAir, pressurePa: number): void {
  if (!(pressurePa >= 0 && pressurePa < air.pressurePa))
    throw new OutsideRange({
      quantity: 'vapour pressure',
      value: pressurePa,
      unit: 'Pa',
      low: 0,
      high: air.pressurePa,
      source: SOURCE,
    });
}

/**
 * The pressure of vapour in saturated air: p_s = f(p) p_ws(t).
 * @param temperatureC °C, −20 to 60; up to 0.01 over ice
 * @returns Pa
 * @throws OutsideRange outside that range and for NaN
 * @source iapws-if97; iapws-melting; buck-1981 (enhancement factor)
 * @example saturatedVapourPa(cabinAir({ pressurePa: 101_325 }), 25) // 3183.08
 */
export function saturatedVapourPa(air: CabinAir, temperatureC: number): number {
  holdTemperature(temperatureC);
  return air.enhancement * air.saturationPa(temperatureC);
}

/**
 * The vapour pressure of air of a relative humidity: p_w = φ p_s.
 * @param temperatureC °C, −20 to 60
 * @param relativeHumidity 0 to 1
 * @returns Pa
 * @throws OutsideRange outside those ranges and for NaN
 * @source ashrae-fundamentals (chapter 1, equation 12)
 * @example vapourPressurePa(air, 22, 0.5) // 1328.2
 */
export function vapourPressurePa(air: CabinAir, temperatureC: number, relativeHumidity: number): number {
  holdShare(relativeHumidity);
  return relativeHumidity * saturatedVapourPa(air, temperatureC);
}

/**
 * Kilograms of vapour to a kilogram of dry gas: W = ε p_w / (p − p_w).
 * @param vapourPa Pa, 0 to below the cabin's pressure
 * @returns kg/kg
 * @throws OutsideRange outside that range and for NaN
 * @source ashrae-fundamentals (chapter 1, equation 20)
 * @example humidityRatioOfVapour(handbookAir(95_461), 3169.7) // 0.0213604
 */
export function humidityRatioOfVapour(air: CabinAir, vapourPa: number): number {
  holdVapour(air, vapourPa);
  return (air.gas.vapourRatio * vapourPa) / (air.pressurePa - vapourPa);
}

/**
 * The same the other way: p_w = p W / (ε + W).
 * @param humidityRatio kg/kg, from 0 on
 * @returns Pa
 * @throws OutsideRange below 0 and for NaN
 * @source ashrae-fundamentals (chapter 1, equation 36)
 * @example vapourOfHumidityRatio(air, 0.01) // 1603.4
 */
export function vapourOfHumidityRatio(air: CabinAir, humidityRatio: number): number {
  holdRatio(humidityRatio);
  return (air.pressurePa * humidityRatio) / (air.gas.vapourRatio + humidityRatio);
}

function holdRatio(humidityRatio: number): void {
  if (!(humidityRatio >= 0 && humidityRatio < Number.POSITIVE_INFINITY))
    throw new OutsideRange({
      quantity: 'humidity ratio',
      value: humidityRatio,
      unit: 'kg/kg',
      low: 0,
      high: Number.POSITIVE_INFINITY,
      source: SOURCE,
    });
}

/**
 * The humidity ratio of air of a relative humidity.
 * @param temperatureC °C, −20 to 60
 * @param relativeHumidity 0 to 1
 * @returns kg/kg
 * @throws OutsideRange outside those ranges, for NaN, and where saturated vapour alone would have the cabin's pressure
 * @source ashrae-fundamentals (chapter 1, equations 12 and 20)
 * @example humidityRatio(air, 25, 1) // 0.020172
 */
export function humidityRatio(air: CabinAir, temperatureC: number, relativeHumidity: number): number {
  return humidityRatioOfVapour(air, vapourPressurePa(air, temperatureC, relativeHumidity));
}

/**
 * The relative humidity of air of a humidity ratio: φ = p_w / p_s; above 1 the air carries more than it can.
 * @param temperatureC °C, −20 to 60
 * @param ratio kg/kg, from 0 on
 * @throws OutsideRange outside those ranges and for NaN
 * @source ashrae-fundamentals (chapter 1, equations 12 and 36)
 * @example relativeHumidity(air, 22, 0.00826) // 0.500
 */
export function relativeHumidity(air: CabinAir, temperatureC: number, ratio: number): number {
  return vapourOfHumidityRatio(air, ratio) / saturatedVapourPa(air, temperatureC);
}

/**
 * The dew point: f(p) p_ws(t_d) = p_w solved for t_d; below 0.01 °C it is the frost point.
 * @param vapourPa Pa, 3.96 (frost at −50 °C) to below the cabin's pressure
 * @returns °C
 * @throws OutsideRange outside that range and for NaN
 * @source iapws-if97 (equation 31); iapws-melting; buck-1981
 * @example dewPointC(air, vapourPressurePa(air, 22, 0.5)) // 11.1
 */
export function dewPointC(air: CabinAir, vapourPa: number): number {
  holdVapour(air, vapourPa);
  const purePa = vapourPa / air.enhancement;
  const guessC = vapourSaturationC(purePa);
  return air.saturationPa === vapourSaturationPa ? guessC : polished(air, guessC, purePa);
}

/** Another engine's line lies so near that its root is found beside the own one. */
function polished(air: CabinAir, guessC: number, purePa: number): number {
  const of = (temperatureC: number): number => air.saturationPa(temperatureC) - purePa;
  return rootBetween(of, { low: guessC - 0.5, high: guessC + 0.5 }, 1e-10 * purePa);
}

/**
 * The enthalpy of moist air for a kilogram of dry gas: h = c_p t + W (2501 + 1.86 t) kJ/kg, 0 for dry gas and water at 0 °C.
 * @param temperatureC °C, −20 to 60
 * @param ratio kg/kg, from 0 on
 * @returns J/kg of dry gas
 * @throws OutsideRange outside those ranges and for NaN
 * @source ashrae-fundamentals (chapter 1, equation 30)
 * @example moistEnthalpyJPerKg(air, 30, 0.02) // 81_316
 */
export function moistEnthalpyJPerKg(air: CabinAir, temperatureC: number, ratio: number): number {
  holdTemperature(temperatureC);
  holdRatio(ratio);
  return (
    air.gas.heatCapacityJPerKgK * temperatureC + ratio * (VAPOUR_J_PER_KG + VAPOUR_J_PER_KG_K * temperatureC)
  );
}

/**
 * The temperature of moist air of an enthalpy: the same equation solved for t.
 * @param enthalpyJPerKg J/kg of dry gas
 * @param ratio kg/kg, from 0 on
 * @returns °C
 * @throws OutsideRange if the temperature comes out beyond −20 to 60 °C, and for NaN
 * @source ashrae-fundamentals (chapter 1, equation 30)
 * @example temperatureOfEnthalpyC(air, 81_316, 0.02) // 30
 */
export function temperatureOfEnthalpyC(air: CabinAir, enthalpyJPerKg: number, ratio: number): number {
  holdRatio(ratio);
  const temperatureC =
    (enthalpyJPerKg - ratio * VAPOUR_J_PER_KG) / (air.gas.heatCapacityJPerKgK + ratio * VAPOUR_J_PER_KG_K);
  holdTemperature(temperatureC);
  return temperatureC;
}

/**
 * The volume of moist air that holds a kilogram of dry gas: v = R T (1 + W / ε) / p.
 * @param temperatureC °C, −20 to 60
 * @param ratio kg/kg, from 0 on
 * @returns m³/kg of dry gas
 * @throws OutsideRange outside those ranges and for NaN
 * @source ashrae-fundamentals (chapter 1, equation 26)
 * @example moistVolumeM3PerKg(handbookAir(95_461), 30, 0.02) // 0.94086
 */
export function moistVolumeM3PerKg(air: CabinAir, temperatureC: number, ratio: number): number {
  holdTemperature(temperatureC);
  holdRatio(ratio);
  const { gasConstantJPerKgK, vapourRatio } = air.gas;
  return (gasConstantJPerKgK * (temperatureC + ICE_POINT_K) * (1 + ratio / vapourRatio)) / air.pressurePa;
}

/**
 * The density of moist air: (1 + W) / v.
 * @param temperatureC °C, −20 to 60
 * @param ratio kg/kg, from 0 on
 * @returns kg/m³
 * @throws OutsideRange outside those ranges and for NaN
 * @source ashrae-fundamentals (chapter 1, equation 11)
 * @example moistDensityKgPerM3(handbookAir(95_461), 30, 0.02) // 1.0841
 */
export function moistDensityKgPerM3(air: CabinAir, temperatureC: number, ratio: number): number {
  return (1 + ratio) / moistVolumeM3PerKg(air, temperatureC, ratio);
}
