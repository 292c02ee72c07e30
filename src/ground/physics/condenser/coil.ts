// A cooling coil: what goes in, what comes out, and the balance of heat and water over it.
import type { CabinAir } from '../air/cabin-air.ts';
import { humidityRatio, moistEnthalpyJPerKg } from '../air/moist-air.ts';
import { stayAboveZero, stayWithin } from '../stay-within.ts';

/** Air by its temperature and its kilograms of vapour to a kilogram of dry gas. */
export interface CoilAir {
  readonly temperatureC: number;
  readonly humidityRatio: number;
}

/** A coil with air on one side and a coolant in counterflow on the other. */
export interface Coil {
  readonly air: CabinAir;
  readonly airIn: CoilAir;
  /** Dry gas, kg/s. */
  readonly airFlowKgPerS: number;
  readonly coolantInC: number;
  readonly coolantFlowKgPerS: number;
  /** Of the coolant; absent: that of water, 4186. */
  readonly coolantJPerKgK?: number;
  /** Conductance between the air and the surface while it is dry, W/K. */
  readonly outerWPerK: number;
  /** Conductance between the surface and the coolant, wall included, W/K. */
  readonly innerWPerK: number;
}

export interface CoilOutcome {
  /** What the coolant takes up. */
  readonly heatW: number;
  readonly condensateKgPerS: number;
  readonly airOut: CoilAir;
  readonly coolantOutC: number;
}

export const WATER_J_PER_KG_K = 4186;

/** Refuses flows and conductances that are not above 0, a coolant that does not cool, and air beyond its saturation. */
export function holdCoil(coil: Coil, source: string): void {
  const { air, airIn, airFlowKgPerS, coolantInC, coolantFlowKgPerS, outerWPerK, innerWPerK } = coil;
  stayAboveZero({ quantity: 'flow of dry gas', value: airFlowKgPerS, unit: 'kg/s', source });
  stayAboveZero({ quantity: 'flow of the coolant', value: coolantFlowKgPerS, unit: 'kg/s', source });
  stayAboveZero({ quantity: 'conductance on the side of the air', value: outerWPerK, unit: 'W/K', source });
  stayAboveZero({
    quantity: 'conductance on the side of the coolant',
    value: innerWPerK,
    unit: 'W/K',
    source,
  });
  const capacity = coil.coolantJPerKgK ?? WATER_J_PER_KG_K;
  stayAboveZero({ quantity: 'heat capacity of the coolant', value: capacity, unit: 'J/(kg K)', source });
  const saturated = humidityRatio(air, airIn.temperatureC, 1);
  const high = saturated * (1 + SATURATED_WITHIN);
  stayWithin({
    quantity: 'humidity ratio of the air',
    value: airIn.humidityRatio,
    unit: 'kg/kg',
    low: 0,
    high,
    source,
  });
  const warmest = airIn.temperatureC - LEAST_COOLING_K;
  stayWithin({
    quantity: 'temperature of the coolant',
    value: coolantInC,
    unit: '°C',
    low: -20,
    high: warmest,
    source,
  });
}

/** A humidity ratio that was reckoned from saturation may be above it in its last digits. */
const SATURATED_WITHIN = 1e-9;
/** A coil cools. */
const LEAST_COOLING_K = 1e-6;

/** Enthalpy of saturated air, J/kg of dry gas. */
export function saturatedEnthalpyJPerKg(air: CabinAir, temperatureC: number): number {
  return moistEnthalpyJPerKg(air, temperatureC, humidityRatio(air, temperatureC, 1));
}

/** Heat capacity of moist air, for a kilogram of dry gas: c_pm = c_p + 1860 W. */
export function moistCapacityJPerKgK(air: CabinAir, ratio: number): number {
  return air.gas.heatCapacityJPerKgK + 1860 * ratio;
}

/** Air on one side of a balance, per kilogram of dry gas. */
export interface BalanceSide {
  readonly enthalpyJPerKg: number;
  readonly humidityRatio: number;
}

/**
 * Heat and water taken out of an air stream: m_cond = m_a (W₁ − W₂), Q = m_a (h₁ − h₂) − m_cond h_w.
 * @param balance `airFlowKgPerS` of dry gas · the two sides · `condensateJPerKg` enthalpy of the water that leaves
 * @returns W and kg/s; below 0 where heat or water went in
 * @source ashrae-fundamentals (chapter 1, moist air cooling and dehumidification)
 * @example coilBalance({ airFlowKgPerS: 2, in: { enthalpyJPerKg: 110e3, humidityRatio: 0.029 },
 *   out: { enthalpyJPerKg: 19e3, humidityRatio: 0.0055 }, condensateJPerKg: 20_970 }).heatW // 181_014
 */
export function coilBalance(balance: {
  readonly airFlowKgPerS: number;
  readonly in: BalanceSide;
  readonly out: BalanceSide;
  readonly condensateJPerKg: number;
}): { readonly heatW: number; readonly condensateKgPerS: number } {
  const { airFlowKgPerS, condensateJPerKg } = balance;
  const condensateKgPerS = airFlowKgPerS * (balance.in.humidityRatio - balance.out.humidityRatio);
  const taken = airFlowKgPerS * (balance.in.enthalpyJPerKg - balance.out.enthalpyJPerKg);
  return { heatW: taken - condensateKgPerS * condensateJPerKg, condensateKgPerS };
}
