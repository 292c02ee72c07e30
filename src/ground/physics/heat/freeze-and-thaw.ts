// How long water takes to freeze in the cold, and ice to thaw at a heater; or that it never does.
import { log } from '../../maths/index.ts';
import { stayAboveZero, stayAtLeastZero, stayShareAboveZero, stayWithin } from '../stay-within.ts';
import {
  COLD_WATER_J_PER_KG_K,
  type ColdWater,
  enthalpyJPerKg,
  iceEnthalpyJPerKg,
  MELTING_HEAT_J_PER_KG,
} from './ice.ts';

const SOURCE = 'textbook-heat';

export interface Thaw {
  /** From where it is to ice at 0 °C, to all liquid at 0 °C, and to the temperature wanted: the heat of each step. */
  readonly warmIceJ: number;
  readonly meltJ: number;
  readonly warmWaterJ: number;
  /** Null where the heater does not get it that far. */
  readonly meltedAfterS: number | null;
  readonly warmAfterS: number | null;
}

/**
 * How long ice takes to thaw: t = (m ∫c dT + m L + m c (T₂ − 0)) / (η P − UA (T − T_a)), step by step.
 *
 * Each step is taken with the loss at its warmer end, so the time is the late end: heat is shared through the whole, which ice
 * around a heater does not do at once.
 * @param asked `ice` as in `coldWaterAfter`; `toC` °C, 0 to 30; `powerW` W, above 0; `efficiency` above 0 up to 1; `lossWPerK`
 *   W/K, from 0; `aroundC` °C, −90 to 60
 * @returns heats in J, times in s; a time is null where loss eats the whole power
 * @throws OutsideRange outside those ranges and for NaN
 * @source textbook-heat; iapws-ice
 * @example thaw({ ice: { massKg: 20, temperatureC: -10, iceShare: 1 }, toC: 5, powerW: 500, efficiency: 0.9, lossWPerK: 2,
 *   aroundC: -20 }).meltedAfterS / 3600 // 4.80 h
 */
export function thaw(asked: {
  readonly ice: ColdWater;
  readonly toC: number;
  readonly powerW: number;
  readonly efficiency: number;
  readonly lossWPerK: number;
  readonly aroundC: number;
}): Thaw {
  const { ice, toC, powerW, efficiency, lossWPerK, aroundC } = asked;
  stayWithin({
    quantity: 'temperature to thaw to',
    value: toC,
    unit: '°C',
    low: 0,
    high: 30,
    source: SOURCE,
  });
  stayAboveZero({ quantity: 'power of the heater', value: powerW, unit: 'W', source: SOURCE });
  stayShareAboveZero({ quantity: 'share of the power that warms', value: efficiency, source: SOURCE });
  checkSurroundings({ lossWPerK, aroundC, highest: 60 });
  const { warmIceJ, meltJ, warmWaterJ } = stepsOf(ice, toC);
  const netW = (atC: number): number => efficiency * powerW - lossWPerK * (atC - aroundC);
  const meltedAfterS = timeFor(warmIceJ + meltJ, netW(0));
  const lastS = timeFor(warmWaterJ, netW(toC));
  const warmAfterS = meltedAfterS === null || lastS === null ? null : meltedAfterS + lastS;
  return { warmIceJ, meltJ, warmWaterJ, meltedAfterS, warmAfterS };
}

function stepsOf(ice: ColdWater, toC: number) {
  const missing = Math.max(0, COLD_WATER_J_PER_KG_K * toC - enthalpyJPerKg(ice)) * ice.massKg;
  const warmIceJ = ice.temperatureC < 0 ? -iceEnthalpyJPerKg(ice.temperatureC) * ice.massKg : 0;
  const meltJ = ice.iceShare * MELTING_HEAT_J_PER_KG * ice.massKg;
  return { warmIceJ, meltJ, warmWaterJ: missing - warmIceJ - meltJ };
}

function timeFor(heatJ: number, netW: number): number | null {
  if (heatJ <= 0) return 0;
  return netW > 0 ? heatJ / netW : null;
}

export interface Freeze {
  /** Until it stands at 0 °C and the first ice may form. */
  readonly atFreezingAfterS: number;
  /** Until all of it is ice. */
  readonly frozenAfterS: number;
  /** Heat that leaves a second while it freezes. */
  readonly freezingW: number;
}

/**
 * How long water takes to freeze in the cold: to 0 °C in (C / UA) ln((T₁ − T_a) / (0 − T_a)), then m L / (UA (0 − T_a)).
 *
 * The early end: ice on the wall keeps the rest warm, and water may stand some degrees below 0 °C before the first ice. Null where
 * the surroundings are not below 0 °C: it never freezes.
 * @param asked `massKg` kg, above 0; `fromC` °C, 0 to 30; `vesselJPerK` J/K, from 0; `lossWPerK` W/K, above 0; `aroundC` °C, −90 to 30
 * @throws OutsideRange outside those ranges and for NaN
 * @source textbook-heat; iapws-ice
 * @example freeze({ massKg: 20, fromC: 5, vesselJPerK: 0, lossWPerK: 2, aroundC: -20 }).atFreezingAfterS / 3600 // 2.60 h
 */
export function freeze(asked: {
  readonly massKg: number;
  readonly fromC: number;
  readonly vesselJPerK: number;
  readonly lossWPerK: number;
  readonly aroundC: number;
}): Freeze | null {
  const { massKg, fromC, vesselJPerK, lossWPerK, aroundC } = asked;
  stayAboveZero({ quantity: 'mass of the water', value: massKg, unit: 'kg', source: SOURCE });
  stayWithin({
    quantity: 'temperature of the water',
    value: fromC,
    unit: '°C',
    low: 0,
    high: 30,
    source: SOURCE,
  });
  stayAtLeastZero({
    quantity: 'heat capacity of the vessel',
    value: vesselJPerK,
    unit: 'J/K',
    source: SOURCE,
  });
  stayAboveZero({ quantity: 'loss of heat', value: lossWPerK, unit: 'W/K', source: SOURCE });
  checkSurroundings({ lossWPerK, aroundC, highest: 30 });
  if (aroundC >= 0) return null;
  const capacityJPerK = massKg * COLD_WATER_J_PER_KG_K + vesselJPerK;
  const freezingW = lossWPerK * -aroundC;
  const atFreezingAfterS = (capacityJPerK / lossWPerK) * log((fromC - aroundC) / -aroundC);
  return {
    atFreezingAfterS,
    frozenAfterS: atFreezingAfterS + (massKg * MELTING_HEAT_J_PER_KG) / freezingW,
    freezingW,
  };
}

function checkSurroundings(around: { lossWPerK: number; aroundC: number; highest: number }): void {
  const { lossWPerK, aroundC, highest } = around;
  stayAtLeastZero({ quantity: 'loss of heat', value: lossWPerK, unit: 'W/K', source: SOURCE });
  stayWithin({
    quantity: 'temperature around',
    value: aroundC,
    unit: '°C',
    low: -90,
    high: highest,
    source: SOURCE,
  });
}
