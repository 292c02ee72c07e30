// A wet coil in one step: effectiveness and transfer units, the saturation line taken straight up to the effective surface.
import { exp, expm1, rootBetween } from '../../maths/index.ts';
import { humidityRatio, moistEnthalpyJPerKg } from '../air/moist-air.ts';
import { stayAtLeastZero } from '../stay-within.ts';
import {
  type Coil,
  type CoilOutcome,
  holdCoil,
  moistCapacityJPerKgK,
  saturatedEnthalpyJPerKg,
  WATER_J_PER_KG_K,
} from './coil.ts';

export interface EffectiveSurfaceOutcome extends CoilOutcome {
  /** Of the coil as one surface; where it is not below the dew point, the coil is dry. */
  readonly surfaceC: number;
  readonly isWet: boolean;
  readonly effectiveness: number;
  readonly transferUnits: number;
  /** Ratio of the capacity flows. */
  readonly capacityRatio: number;
}

/**
 * How much of the greatest possible exchange a counterflow exchanger reaches:
 * ε = (1 − e^(−N(1 − C))) / (1 − C e^(−N(1 − C))), and N / (1 + N) for C = 1.
 * @param exchanger `transferUnits` N, from 0 on · `capacityRatio` C, from 0 on
 * @returns 0 to 1
 * @throws OutsideRange below 0 and for NaN
 * @source kays-london (counterflow)
 * @example counterflowEffectiveness({ transferUnits: 2, capacityRatio: 0.5 }) // 0.7746
 */
export function counterflowEffectiveness(exchanger: {
  readonly transferUnits: number;
  readonly capacityRatio: number;
}): number {
  const { transferUnits, capacityRatio } = exchanger;
  const source = 'kays-london';
  stayAtLeastZero({ quantity: 'transfer units', value: transferUnits, unit: '', source });
  stayAtLeastZero({ quantity: 'ratio of the capacity flows', value: capacityRatio, unit: '', source });
  if (capacityRatio === 1) return transferUnits / (1 + transferUnits);
  // Divided through by the greater term, so that nothing is lost near a ratio of 1 and nothing overflows above it.
  const apart = Math.abs(1 - capacityRatio);
  const gained = -expm1(-transferUnits * apart);
  return gained / (apart + Math.min(1, capacityRatio) * gained);
}

/**
 * A coil in counterflow with one effective surface.
 *
 * c_s = (h_s(T_s,e) − h_s(T_w,i)) / (T_s,e − T_w,i), m* = m_a c_s / (m_w c_w), UA* = (UA_o / c_pm) / (1 + c_s UA_o / (c_pm UA_i)),
 * N* = UA* / m_a, Q = ε(N*, m*) m_a (h_a,i − h_s(T_w,i)); h_s,e = h_a,i − (Q / m_a) / (1 − e^(−N_o)),
 * T_a,o = T_s,e + (T_a,i − T_s,e) e^(−N_o), N_o = UA_o / (m_a c_pm); T_s,e is sought until both agree. Where it is not below the dew
 * point the coil is reckoned dry.
 *
 * The usual form takes c_s between the temperatures of the coolant and puts up to 17 % too much water; taken to the effective
 * surface it is within about 2 % of the cells of `segmentedCoil` where the whole coil is wet. A coil that is partly dry, take by cells.
 * @param coil see `Coil`; temperatures −20 to 60 °C
 * @throws OutsideRange where a temperature leaves the range of moist air, for flows and conductances that are not above 0, and
 *   for a coolant that is not colder than the air
 * @source braun-1989; c_s to the effective surface is ours, held against the cells
 * @example effectiveSurfaceCoil(coil).heatW // 646.4
 */
export function effectiveSurfaceCoil(coil: Coil): EffectiveSurfaceOutcome {
  holdCoil(coil, 'braun-1989');
  const dry = dryCoil(coil);
  const { air, airIn, coolantInC } = coil;
  // The coil stays dry where even its coldest end does: there the air is coolest and the coolant comes in.
  if (humidityRatio(air, dry.surfaceC, 1) >= airIn.humidityRatio) return dry;
  const missAt = (surfaceC: number): number => surfaceC - wetSurfaceC(coil, surfaceC);
  const span = airIn.temperatureC - coolantInC;
  const ends = { low: coolantInC + 1e-6 * span, high: airIn.temperatureC };
  if (!(missAt(ends.low) < 0)) return wetOutcome(coil, ends.low);
  return wetOutcome(coil, rootBetween(missAt, ends, 1e-9));
}

interface WetExchange {
  readonly effectiveness: number;
  readonly transferUnits: number;
  readonly capacityRatio: number;
  readonly heatW: number;
  /** N_o. */
  readonly outerUnits: number;
  readonly enthalpyInJPerKg: number;
}

function wetExchange(coil: Coil, surfaceC: number): WetExchange {
  const { air, airIn, airFlowKgPerS, coolantInC, outerWPerK, innerWPerK } = coil;
  const capacity = moistCapacityJPerKgK(air, airIn.humidityRatio);
  const atCoolant = saturatedEnthalpyJPerKg(air, coolantInC);
  const perDegree = (saturatedEnthalpyJPerKg(air, surfaceC) - atCoolant) / (surfaceC - coolantInC);
  const coolantWPerK = coil.coolantFlowKgPerS * (coil.coolantJPerKgK ?? WATER_J_PER_KG_K);
  const outer = outerWPerK / capacity;
  const transferUnits = outer / (1 + (perDegree * outer) / innerWPerK) / airFlowKgPerS;
  const capacityRatio = (airFlowKgPerS * perDegree) / coolantWPerK;
  const effectiveness = counterflowEffectiveness({ transferUnits, capacityRatio });
  const enthalpyInJPerKg = moistEnthalpyJPerKg(air, airIn.temperatureC, airIn.humidityRatio);
  const heatW = effectiveness * airFlowKgPerS * (enthalpyInJPerKg - atCoolant);
  return {
    effectiveness,
    transferUnits,
    capacityRatio,
    heatW,
    outerUnits: outer / airFlowKgPerS,
    enthalpyInJPerKg,
  };
}

/** The effective surface that follows from the heat that an assumed one gives. */
function wetSurfaceC(coil: Coil, surfaceC: number): number {
  const { heatW, outerUnits, enthalpyInJPerKg } = wetExchange(coil, surfaceC);
  const enthalpy = enthalpyInJPerKg - heatW / coil.airFlowKgPerS / -expm1(-outerUnits);
  return saturatedOfEnthalpyC(coil, enthalpy);
}

/** The temperature at which saturated air has an enthalpy, within the temperatures of the coil. */
function saturatedOfEnthalpyC({ air, airIn, coolantInC }: Coil, enthalpyJPerKg: number): number {
  const of = (temperatureC: number): number => saturatedEnthalpyJPerKg(air, temperatureC) - enthalpyJPerKg;
  if (of(coolantInC) >= 0) return coolantInC;
  if (of(airIn.temperatureC) < 0) return airIn.temperatureC;
  return rootBetween(of, { low: coolantInC, high: airIn.temperatureC }, 1e-7);
}

function wetOutcome(coil: Coil, surfaceC: number): EffectiveSurfaceOutcome {
  const { effectiveness, transferUnits, capacityRatio, heatW, outerUnits, enthalpyInJPerKg } = wetExchange(
    coil,
    surfaceC,
  );
  const { airIn, airFlowKgPerS, air } = coil;
  const temperatureC = surfaceC + (airIn.temperatureC - surfaceC) * exp(-outerUnits);
  const enthalpyOut = enthalpyInJPerKg - heatW / airFlowKgPerS;
  const dryEnthalpy = moistEnthalpyJPerKg(air, temperatureC, 0);
  const perRatio = moistEnthalpyJPerKg(air, temperatureC, 1) - dryEnthalpy;
  // Air cannot leave with more water than it brought.
  const ratioOut = Math.min(airIn.humidityRatio, (enthalpyOut - dryEnthalpy) / perRatio);
  return {
    heatW,
    condensateKgPerS: airFlowKgPerS * (airIn.humidityRatio - ratioOut),
    airOut: { temperatureC, humidityRatio: ratioOut },
    coolantOutC: coolantOutC(coil, heatW),
    surfaceC,
    isWet: true,
    effectiveness,
    transferUnits,
    capacityRatio,
  };
}

function coolantOutC(coil: Coil, heatW: number): number {
  return coil.coolantInC + heatW / (coil.coolantFlowKgPerS * (coil.coolantJPerKgK ?? WATER_J_PER_KG_K));
}

function dryCoil(coil: Coil): EffectiveSurfaceOutcome {
  const { air, airIn, airFlowKgPerS, coolantInC, outerWPerK, innerWPerK } = coil;
  const airWPerK = airFlowKgPerS * moistCapacityJPerKgK(air, airIn.humidityRatio);
  const coolantWPerK = coil.coolantFlowKgPerS * (coil.coolantJPerKgK ?? WATER_J_PER_KG_K);
  const conductance = (outerWPerK * innerWPerK) / (outerWPerK + innerWPerK);
  const [least, most] = [Math.min(airWPerK, coolantWPerK), Math.max(airWPerK, coolantWPerK)];
  const transferUnits = conductance / least;
  const capacityRatio = least / most;
  const effectiveness = counterflowEffectiveness({ transferUnits, capacityRatio });
  const heatW = effectiveness * least * (airIn.temperatureC - coolantInC);
  const temperatureC = airIn.temperatureC - heatW / airWPerK;
  return {
    heatW,
    condensateKgPerS: 0,
    airOut: { temperatureC, humidityRatio: airIn.humidityRatio },
    coolantOutC: coolantOutC(coil, heatW),
    surfaceC: (outerWPerK * temperatureC + innerWPerK * coolantInC) / (outerWPerK + innerWPerK),
    isWet: false,
    effectiveness,
    transferUnits,
    capacityRatio,
  };
}
