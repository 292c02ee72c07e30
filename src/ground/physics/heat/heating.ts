// How long water takes to get hot, with what is lost on the way; or that it never does.
import { exp, log1p } from '../../maths/index.ts';
import { OutsideRange } from '../outside-range.ts';
import { stayAboveZero, stayAtLeastZero, stayShareAboveZero, stayWithin } from '../stay-within.ts';
import type { EnthalpyOf } from './enthalpy.ts';

const SOURCE = 'textbook-heat';
const COLDEST_C = -90;
const HOTTEST_C = 400;

export interface Warming {
  readonly massKg: number;
  readonly fromC: number;
  readonly toC: number;
  readonly enthalpy: EnthalpyOf;
  /** What warms along with the water: mass times heat capacity of the vessel, J/K. */
  readonly vesselJPerK: number;
}

/**
 * The heat that warms water and its vessel: E = m (h(T₂) − h(T₁)) + C_v (T₂ − T₁).
 * @param warming `massKg` kg, from 0; `fromC` not above `toC`, °C; `enthalpy` such as `waterEnthalpyAt(101325)`;
 *   `vesselJPerK` J/K, from 0
 * @returns J
 * @throws OutsideRange outside those ranges, for NaN, and where the water would boil
 * @source iapws-if97 by the enthalpy; textbook-heat
 * @example heatToWarmJ({ massKg: 2, fromC: 20, toC: 80, enthalpy: waterEnthalpyAt(101325), vesselJPerK: 0 }) / 1000 // 502.0 kJ
 */
export function heatToWarmJ(warming: Warming): number {
  const { massKg, fromC, toC, enthalpy, vesselJPerK } = warming;
  stayAtLeastZero({ quantity: 'mass of the water', value: massKg, unit: 'kg', source: SOURCE });
  stayAtLeastZero({
    quantity: 'heat capacity of the vessel',
    value: vesselJPerK,
    unit: 'J/K',
    source: SOURCE,
  });
  if (!(fromC <= toC))
    throw new OutsideRange({
      quantity: 'temperature to warm to, no colder than the water is',
      value: toC,
      unit: '°C',
      low: fromC,
      high: HOTTEST_C,
      source: SOURCE,
    });
  return massKg * (enthalpy(toC) - enthalpy(fromC)) + vesselJPerK * (toC - fromC);
}

/** What warms a vessel and what it loses. */
export interface Heater {
  /** What the heater draws. */
  readonly powerW: number;
  /** The share of that power that reaches water and vessel; losses of the vessel are counted apart. */
  readonly efficiency: number;
  /** What a degree over the surroundings loses, UA, W/K. */
  readonly lossWPerK: number;
  readonly aroundC: number;
}

export interface Heated {
  readonly heatJ: number;
  /** Where the heater would bring it in the end; null where nothing is lost and it would boil. */
  readonly highestC: number | null;
  /** What holding it there costs. */
  readonly standbyW: number;
  /** Null where the heater never gets there. */
  readonly timeS: number | null;
  /** What the heater draws until then. */
  readonly electricJ: number | null;
}

/**
 * How long a heater takes: without loss t = E / (η P); with it dT/dt = (η P − UA (T − T_a)) / C, so that
 * t = (C / UA) ln((T_∞ − T₁) / (T_∞ − T₂)) with T_∞ = T_a + η P / UA.
 *
 * C is the mean over the way, E / (T₂ − T₁): the heat capacity of water changes by half a percent on it. Where T_∞ is not above
 * T₂ the water never gets there, and `timeS` is null.
 * @param asked a `Warming` and a `Heater`: `powerW` W, above 0; `efficiency` above 0 up to 1; `lossWPerK` W/K, from 0; `aroundC`
 *   °C, −90 to 400
 * @throws OutsideRange outside those ranges, for NaN, and where the water would boil
 * @source textbook-heat; iapws-if97 by the enthalpy
 * @example heating({ massKg: 2, fromC: 20, toC: 80, enthalpy: waterEnthalpyAt(101325), vesselJPerK: 0, powerW: 750,
 *   efficiency: 0.85, lossWPerK: 0, aroundC: 22 }).timeS / 60 // 13.1 min
 */
export function heating(asked: Warming & Heater): Heated {
  const { fromC, toC, powerW, efficiency, lossWPerK, aroundC } = asked;
  checkHeater(asked);
  const heatJ = heatToWarmJ(asked);
  const gainedW = efficiency * powerW;
  const highestC = lossWPerK === 0 ? null : aroundC + gainedW / lossWPerK;
  const standbyW = standbyLossW({ lossWPerK, heldC: toC, aroundC });
  const timeS = timeToWarmS({ heatJ, riseK: toC - fromC, toC, gainedW, lossWPerK, highestC });
  return { heatJ, highestC, standbyW, timeS, electricJ: timeS === null ? null : timeS * powerW };
}

interface Way {
  readonly heatJ: number;
  readonly riseK: number;
  readonly toC: number;
  readonly gainedW: number;
  readonly lossWPerK: number;
  readonly highestC: number | null;
}

function timeToWarmS({ heatJ, riseK, toC, gainedW, lossWPerK, highestC }: Way): number | null {
  if (highestC === null) return heatJ / gainedW;
  if (riseK === 0) return 0;
  const leftK = highestC - toC;
  // At the highest temperature itself it never quite arrives.
  return leftK > 0 ? (heatJ / riseK / lossWPerK) * log1p(riseK / leftK) : null;
}

/**
 * Where a vessel stands after a time: T = T_∞ − (T_∞ − T₀) e^(−UA t / C) with T_∞ = T_a + Q̇ / UA; warming or cooling.
 * @param vessel `capacityJPerK` J/K of water and vessel, above 0; `gainedW` W that reach it, from 0; `lossWPerK` W/K, from 0;
 *   `fromC` and `aroundC` °C, −90 to 400; `timeS` s, from 0
 * @returns °C; without a loss it rises in a straight line
 * @throws OutsideRange outside those ranges and for NaN
 * @source textbook-heat
 * @example temperatureAfterC({ capacityJPerK: 8360, gainedW: 0, lossWPerK: 2, fromC: 80, aroundC: 22, timeS: 3600 }) // 46.5
 */
export function temperatureAfterC(vessel: {
  readonly capacityJPerK: number;
  readonly gainedW: number;
  readonly lossWPerK: number;
  readonly fromC: number;
  readonly aroundC: number;
  readonly timeS: number;
}): number {
  const { capacityJPerK, gainedW, lossWPerK, fromC, aroundC, timeS } = vessel;
  stayAboveZero({ quantity: 'heat capacity', value: capacityJPerK, unit: 'J/K', source: SOURCE });
  stayAtLeastZero({ quantity: 'power that reaches the vessel', value: gainedW, unit: 'W', source: SOURCE });
  stayAtLeastZero({ quantity: 'time', value: timeS, unit: 's', source: SOURCE });
  checkTemperature('temperature at first', fromC);
  checkLoss({ lossWPerK, aroundC });
  if (lossWPerK === 0) return fromC + (gainedW * timeS) / capacityJPerK;
  const endC = aroundC + gainedW / lossWPerK;
  return endC - (endC - fromC) * exp((-lossWPerK * timeS) / capacityJPerK);
}

/**
 * What holding a vessel warm costs: UA (T − T_a). Below zero the surroundings warm it.
 * @param held `lossWPerK` W/K, from 0; `heldC` and `aroundC` °C, −90 to 400
 * @returns W
 * @throws OutsideRange outside those ranges and for NaN
 * @source textbook-heat
 * @example standbyLossW({ lossWPerK: 1.5, heldC: 80, aroundC: 22 }) // 87
 */
export function standbyLossW(held: {
  readonly lossWPerK: number;
  readonly heldC: number;
  readonly aroundC: number;
}): number {
  checkLoss(held);
  checkTemperature('temperature that is held', held.heldC);
  return held.lossWPerK * (held.heldC - held.aroundC);
}

function checkHeater(heater: Heater): void {
  stayAboveZero({ quantity: 'power of the heater', value: heater.powerW, unit: 'W', source: SOURCE });
  stayShareAboveZero({ quantity: 'share of the power that warms', value: heater.efficiency, source: SOURCE });
  checkLoss(heater);
}

function checkLoss({ lossWPerK, aroundC }: Pick<Heater, 'lossWPerK' | 'aroundC'>): void {
  stayAtLeastZero({ quantity: 'loss of heat', value: lossWPerK, unit: 'W/K', source: SOURCE });
  checkTemperature('temperature around', aroundC);
}

function checkTemperature(quantity: string, value: number): void {
  stayWithin({ quantity, value, unit: '°C', low: COLDEST_C, high: HOTTEST_C, source: SOURCE });
}
