// How much heat is in water at a temperature: by the formulation of water, or by one heat capacity where a text has one.
import { OutsideRange } from '../outside-range.ts';
import { stayAboveZero } from '../stay-within.ts';
import { liquidEnthalpyJPerKg } from '../water/liquid-water.ts';
import { saturationTemperatureK } from '../water/saturation.ts';

const ICE_POINT_K = 273.15;

/** J/kg at °C; only differences count. */
export type EnthalpyOf = (temperatureC: number) => number;

/**
 * The enthalpy of liquid water at a cabin's pressure, as a function of its temperature.
 * @param pressurePa Pa, 611.3 Pa to 22 MPa
 * @returns J/kg at °C, from 0 °C to the boiling point at that pressure; beyond, the function throws an OutsideRange
 * @throws OutsideRange outside that range of pressure and for NaN
 * @source iapws-if97 (regions 1 and 4)
 * @example waterEnthalpyAt(101325)(80) - waterEnthalpyAt(101325)(20) // 250979
 */
export function waterEnthalpyAt(pressurePa: number): EnthalpyOf {
  const boilsAtC = boilingTemperatureC(pressurePa);
  return (temperatureC) => {
    if (!(temperatureC >= 0 && temperatureC <= boilsAtC))
      throw new OutsideRange({
        quantity: 'temperature of water that is not to boil',
        value: temperatureC,
        unit: '°C',
        low: 0,
        high: boilsAtC,
        source: 'iapws-if97',
      });
    return liquidEnthalpyJPerKg(temperatureC + ICE_POINT_K, pressurePa);
  };
}

/**
 * The enthalpy by one heat capacity, h = c t: for comparing with texts that take one.
 * @param heatCapacityJPerKgK J/(kg K), above 0
 * @throws OutsideRange for what is not above zero
 * @source textbook-heat
 * @example plainEnthalpy(4190)(100) // 419000
 */
export function plainEnthalpy(heatCapacityJPerKgK: number): EnthalpyOf {
  const given = { quantity: 'heat capacity', value: heatCapacityJPerKgK, unit: 'J/(kg K)' };
  stayAboveZero({ ...given, source: 'textbook-heat' });
  return (temperatureC) => heatCapacityJPerKgK * temperatureC;
}

export interface BoilingMargin {
  readonly boilsAtC: number;
  /** Degrees up to boiling; below zero it boils. */
  readonly marginK: number;
}

/**
 * How far water is from boiling at the cabin's pressure: T_s(p) − T. Hot water of sea level boils in a thin cabin.
 * @param water `temperatureC` °C; `pressurePa` Pa, of the water: the cabin's, unless it is held under pressure; 611.3 Pa to 22 MPa
 * @throws OutsideRange outside that range and for NaN
 * @source iapws-if97 (region 4, equation 31)
 * @example boilingMargin({ temperatureC: 80, pressurePa: 70e3 }).boilsAtC // 89.93
 */
export function boilingMargin(water: {
  readonly temperatureC: number;
  readonly pressurePa: number;
}): BoilingMargin {
  const { temperatureC, pressurePa } = water;
  if (!Number.isFinite(temperatureC)) throw new RangeError(`${temperatureC} °C is no temperature`);
  const boilsAtC = boilingTemperatureC(pressurePa);
  return { boilsAtC, marginK: boilsAtC - temperatureC };
}

function boilingTemperatureC(pressurePa: number): number {
  return saturationTemperatureK(pressurePa) - ICE_POINT_K;
}
