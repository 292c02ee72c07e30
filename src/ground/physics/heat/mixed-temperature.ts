// How warm water is when hot and cold are poured together, and how much more room hot water wants.
import { rootBetween } from '../../maths/index.ts';
import { stayAboveZero, stayAtLeastZero } from '../stay-within.ts';
import { liquidVolumeM3PerKg } from '../water/liquid-water.ts';
import type { EnthalpyOf } from './enthalpy.ts';

const ICE_POINT_K = 273.15;
/** A billionth of a degree, as heat in a kilogram. */
const NEAR_J_PER_KG = 4e-6;

export interface WarmWater {
  readonly massKg: number;
  readonly temperatureC: number;
}

/**
 * The temperature of water that is poured together: Σ m h(T) before is M h(T) after, in a vessel that takes its part.
 * @param poured `parts` each of a mass in kg, from 0, and a temperature in °C, not all of them empty; `enthalpy` such as
 *   `waterEnthalpyAt(101325)`; `vessel` what it takes, J/K from 0, and how warm it was
 * @returns °C
 * @throws OutsideRange outside those ranges, for NaN, and for water that would boil
 * @source textbook-heat; iapws-if97 by the enthalpy
 * @example mixedTemperatureC({ parts: [{ massKg: 1, temperatureC: 80 }, { massKg: 2, temperatureC: 20 }],
 *   enthalpy: waterEnthalpyAt(101325), vessel: { heatCapacityJPerK: 0, temperatureC: 20 } }) // 40.01
 */
export function mixedTemperatureC(poured: {
  readonly parts: readonly WarmWater[];
  readonly enthalpy: EnthalpyOf;
  readonly vessel: { readonly heatCapacityJPerK: number; readonly temperatureC: number };
}): number {
  const { parts, enthalpy, vessel } = poured;
  const { massKg, heatJ } = gathered(parts, enthalpy);
  const capacity = vessel.heatCapacityJPerK;
  stayAtLeastZero({
    quantity: 'heat capacity of the vessel',
    value: capacity,
    unit: 'J/K',
    source: 'textbook-heat',
  });
  const temperatures = [
    ...parts.map(({ temperatureC }) => temperatureC),
    ...(capacity > 0 ? [vessel.temperatureC] : []),
  ];
  const lowC = Math.min(...temperatures);
  const highC = Math.max(...temperatures);
  const tooMuchJ = (temperatureC: number): number =>
    massKg * enthalpy(temperatureC) + capacity * (temperatureC - vessel.temperatureC) - heatJ;
  // One temperature before is the temperature after; its two ends would not enclose anything.
  if (!(lowC < highC) || tooMuchJ(highC) <= 0) return highC;
  if (tooMuchJ(lowC) >= 0) return lowC;
  return rootBetween(tooMuchJ, { low: lowC, high: highC }, NEAR_J_PER_KG * massKg);
}

function gathered(parts: readonly WarmWater[], enthalpy: EnthalpyOf) {
  let massKg = 0;
  let heatJ = 0;
  for (const part of parts) {
    stayAtLeastZero({
      quantity: 'mass of the water',
      value: part.massKg,
      unit: 'kg',
      source: 'textbook-heat',
    });
    massKg += part.massKg;
    heatJ += part.massKg * enthalpy(part.temperatureC);
  }
  stayAboveZero({ quantity: 'mass that is poured', value: massKg, unit: 'kg', source: 'textbook-heat' });
  return { massKg, heatJ };
}

/**
 * How much water grows when it is warmed, as a share of what it was: v(T₂) / v(T₁) − 1.
 *
 * In a full closed vessel that growth has nowhere to go: leave it room, or a relief. Below 4 °C warming makes it shrink.
 * @param water `fromC` and `toC` °C, 0 to the boiling point; `pressurePa` Pa
 * @returns share of the volume at first; below zero it shrinks
 * @throws OutsideRange outside those ranges and for NaN
 * @source iapws-if97 (region 1)
 * @example thermalGrowth({ fromC: 20, toC: 80, pressurePa: 101325 }) // 0.0272
 */
export function thermalGrowth(water: {
  readonly fromC: number;
  readonly toC: number;
  readonly pressurePa: number;
}): number {
  const volume = (temperatureC: number): number =>
    liquidVolumeM3PerKg(temperatureC + ICE_POINT_K, water.pressurePa);
  return volume(water.toC) / volume(water.fromC) - 1;
}
