// A cooling coil: what goes in, what comes out, and the balance of heat and water over it.
import type { CabinAir } from '../air/cabin-air.ts';
import { humidityRatio, moistEnthalpyJPerKg } from '../air/moist-air.ts';

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

/** Refuses flows and conductances that are no numbers above 0. */
export function holdCoil(coil: Coil): void {
  const { airFlowKgPerS, coolantFlowKgPerS, outerWPerK, innerWPerK } = coil;
  const capacity = coil.coolantJPerKgK ?? WATER_J_PER_KG_K;
  for (const [name, value] of Object.entries({
    airFlowKgPerS,
    coolantFlowKgPerS,
    outerWPerK,
    innerWPerK,
    capacity,
  }))
    if (!(value > 0 && value < Number.POSITIVE_INFINITY))
      throw new RangeError(`a coil needs a ${name} above 0, not ${value}`);
  if (!(coil.coolantInC < coil.airIn.temperatureC))
    throw new RangeError(
      `a coil cools: its coolant of ${coil.coolantInC} °C must be colder than the air of ${coil.airIn.temperatureC} °C`,
    );
  const most = humidityRatio(coil.air, coil.airIn.temperatureC, 1);
  if (!(coil.airIn.humidityRatio >= 0 && coil.airIn.humidityRatio <= most * (1 + 1e-9)))
    throw new RangeError(
      `air of ${coil.airIn.temperatureC} °C carries 0 to ${most} kg/kg, not ${coil.airIn.humidityRatio}`,
    );
}

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
 * @example coilBalance({ airFlowKgPerS: 2, in: …, out: …, condensateJPerKg: 20_970 })
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
