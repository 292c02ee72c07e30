// Water about its freezing point: how much of it is ice, how warm it is and how much room it takes, after so much heat.
import { OutsideRange } from '../outside-range.ts';
import { stayAboveZero, stayShare, stayWithin } from '../stay-within.ts';
import { liquidVolumeM3PerKg } from '../water/liquid-water.ts';

const SOURCE = 'iapws-ice';
const COLDEST_C = -40;
/** Up to here the heat capacity of cold water counts as one figure. */
const WARMEST_C = 30;
const ICE_POINT_K = 273.15;
const AMBIENT_PA = 101_325;

/** The heat that melts a kilogram of ice at 0 °C and 1 atm. @source iapws-ice */
export const MELTING_HEAT_J_PER_KG = 333_427;
/** Of water between 0 and 30 °C, within 0.5 %. @source iapws-if97 */
export const COLD_WATER_J_PER_KG_K = 4191;

/**
 * The heat in ice, against ice at 0 °C: 2096.7 t + 3.652 t²; the heat capacity falls by 7.3 J/(kg K) for each degree.
 * @param temperatureC °C, −40 to 0
 * @returns J/kg, 0 or below
 * @throws OutsideRange outside that range and for NaN
 * @source iapws-ice (our fit, within 0.05 %)
 * @example iceEnthalpyJPerKg(-20) // -40473
 */
export function iceEnthalpyJPerKg(temperatureC: number): number {
  stayCold(temperatureC);
  return (2096.7 + 3.652 * temperatureC) * temperatureC;
}

/**
 * The density of ice at 1 atm: 916.72 − 0.147 t − 0.00024 t².
 * @param temperatureC °C, −40 to 0
 * @returns kg/m³
 * @throws OutsideRange outside that range and for NaN
 * @source iapws-ice (our fit, within 0.01 kg/m³)
 * @example iceDensityKgPerM3(0) // 916.72
 */
export function iceDensityKgPerM3(temperatureC: number): number {
  stayCold(temperatureC);
  return 916.72 - (0.147 + 0.00024 * temperatureC) * temperatureC;
}

/**
 * How much water grows when it freezes at 0 °C: ρ_water / ρ_ice − 1. A full rigid line or vessel bursts of it.
 * @returns share of the volume of the water
 * @source iapws-ice, iapws-if97
 * @example freezingGrowth() // 0.0907
 */
export function freezingGrowth(): number {
  return 1 / (liquidVolumeM3PerKg(ICE_POINT_K, AMBIENT_PA) * iceDensityKgPerM3(0)) - 1;
}

export interface ColdWater {
  readonly massKg: number;
  /** °C, −40 to 30. Below 0 all of it is ice, above it none. */
  readonly temperatureC: number;
  /** The share that is ice; at 0 °C anything from 0 to 1. */
  readonly iceShare: number;
}

export interface ColdWaterAfter extends ColdWater {
  readonly iceKg: number;
  /** What can be drawn: the liquid part alone. */
  readonly liquidKg: number;
  readonly volumeM3: number;
}

/**
 * Water and ice after so much heat came in (or went out, below zero): the ice warms to 0 °C, melts there, and then the water warms.
 *
 * In balance all through: no supercooling, and no ice that floats in warm water.
 * @param water `massKg` kg, above 0; `temperatureC` °C, −40 to 30; `iceShare` 1 below 0 °C, 0 above it, anything from 0 to 1 at it
 * @param heatJ J
 * @returns the state, with what is ice, what is liquid, and the room that both take
 * @throws OutsideRange outside those ranges, for NaN, and where the heat leads out of −40 to 30 °C
 * @source iapws-ice, iapws-if97
 * @example coldWaterAfter({ massKg: 20, temperatureC: -10, iceShare: 1 }, 3e6).liquidKg // 7.76
 */
export function coldWaterAfter(water: ColdWater, heatJ: number): ColdWaterAfter {
  const { massKg } = water;
  const enthalpy = enthalpyJPerKg(water) + heatJ / massKg;
  const { temperatureC, iceShare } = stateAt(enthalpy);
  const iceKg = massKg * iceShare;
  const liquidKg = massKg - iceKg;
  const iceM3 = iceKg === 0 ? 0 : iceKg / iceDensityKgPerM3(Math.min(temperatureC, 0));
  const liquidM3 = liquidKg * liquidVolumeM3PerKg(Math.max(temperatureC, 0) + ICE_POINT_K, AMBIENT_PA);
  return { massKg, temperatureC, iceShare, iceKg, liquidKg, volumeM3: iceM3 + liquidM3 };
}

/** Against liquid water at 0 °C. */
export function enthalpyJPerKg({ massKg, temperatureC, iceShare }: ColdWater): number {
  stayAboveZero({ quantity: 'mass of water and ice', value: massKg, unit: 'kg', source: SOURCE });
  stayShare({ quantity: 'share that is ice', value: iceShare, source: SOURCE });
  stayNearFreezing(temperatureC);
  const must = temperatureC < 0 ? 1 : temperatureC > 0 ? 0 : iceShare;
  if (iceShare !== must)
    throw new OutsideRange({
      quantity: `share that is ice at ${temperatureC} °C`,
      value: iceShare,
      unit: 'of 1',
      low: must,
      high: must,
      source: SOURCE,
    });
  if (temperatureC < 0) return iceEnthalpyJPerKg(temperatureC) - MELTING_HEAT_J_PER_KG;
  return COLD_WATER_J_PER_KG_K * temperatureC - iceShare * MELTING_HEAT_J_PER_KG;
}

function stateAt(enthalpy: number): { temperatureC: number; iceShare: number } {
  if (enthalpy > 0) {
    const temperatureC = enthalpy / COLD_WATER_J_PER_KG_K;
    stayNearFreezing(temperatureC);
    return { temperatureC, iceShare: 0 };
  }
  if (enthalpy >= -MELTING_HEAT_J_PER_KG)
    return { temperatureC: 0, iceShare: Math.abs(enthalpy) / MELTING_HEAT_J_PER_KG };
  // The root of 3.652 t² + 2096.7 t = h that lies at 0 for h = 0.
  const h = enthalpy + MELTING_HEAT_J_PER_KG;
  const temperatureC = (2 * h) / (2096.7 + Math.sqrt(2096.7 * 2096.7 + 4 * 3.652 * h));
  stayNearFreezing(temperatureC);
  return { temperatureC, iceShare: 1 };
}

function stayNearFreezing(value: number): void {
  const given = { quantity: 'temperature of water about freezing', value, unit: '°C' };
  stayWithin({ ...given, low: COLDEST_C, high: WARMEST_C, source: SOURCE });
}

function stayCold(value: number): void {
  stayWithin({ quantity: 'temperature of ice', value, unit: '°C', low: COLDEST_C, high: 0, source: SOURCE });
}
