// Valves and couplings: the flow that they let through for a pressure, in series, and where they choke.
import { stayAboveZero, stayWithin } from '../stay-within.ts';

/** Kv is for water of this density, per bar, in m³/h. */
const REFERENCE_KG_PER_M3 = 1000;
const PA_PER_BAR = 1e5;
const S_PER_H = 3600;
/** US gallon, minute and pound per square inch against cubic metre, hour and bar: exact factors. */
const CV_PER_KV = (S_PER_H / 60 / 60 / 60) * (1 / 0.003785411784) * Math.sqrt(6894.757293168361 / PA_PER_BAR);
/** The critical pressure of water. */
const WATER_CRITICAL_PA = 22.064e6;

/**
 * Cv of a valve whose Kv is known: Cv = 1.156 Kv.
 * @param kv m³/h of water at 1 bar, above 0
 * @returns US gallons a minute at 1 psi
 * @throws OutsideRange for a Kv that is not above 0
 * @source iec-60534 (definitions; the factor follows from those of gallon and psi)
 * @example cvOfKv(1) // 1.1560992…
 */
export function cvOfKv(kv: number): number {
  mustBeAbove0('flow coefficient Kv', kv, 'm³/h');
  return kv * CV_PER_KV;
}

/**
 * Kv of a valve whose Cv is known: Kv = Cv / 1.156.
 * @param cv US gallons of water a minute at 1 psi, above 0
 * @returns m³/h at 1 bar
 * @throws OutsideRange for a Cv that is not above 0
 * @source iec-60534
 * @example kvOfCv(1.1560992283536566) // 1
 */
export function kvOfCv(cv: number): number {
  mustBeAbove0('flow coefficient Cv', cv, 'US gal/min');
  return cv / CV_PER_KV;
}

/**
 * The Kv of several couplings one after the other: 1/Kv² = Σ 1/Kv_i².
 * @param kvs m³/h at 1 bar, each above 0
 * @returns m³/h at 1 bar; Infinity for none
 * @throws OutsideRange for a Kv that is not above 0
 * @source iec-60534 (from the definition of Kv)
 * @example kvInSeries([0.6, 0.6]) // 0.4242640687119285
 */
export function kvInSeries(kvs: readonly number[]): number {
  let sum = 0;
  for (const kv of kvs) {
    mustBeAbove0('flow coefficient Kv', kv, 'm³/h');
    sum += 1 / (kv * kv);
  }
  return 1 / Math.sqrt(sum);
}

/**
 * The Kv that lets a flow through for a pressure drop, turbulent and not choked: Kv = Q √(ρ/1000 / Δp).
 * @param flow `flowM3PerS` m³/s; `dropPa` Pa, above 0; `densityKgPerM3` kg/m³, above 0
 * @returns m³/h at 1 bar
 * @throws OutsideRange for a figure that is not above 0
 * @source iec-60534 (equation 1 without the factors for fittings and viscosity)
 * @example kvForFlow({ flowM3PerS: 0.1, dropPa: 460e3, densityKgPerM3: 965.4 }) // 164.92…
 */
export function kvForFlow(flow: { flowM3PerS: number; dropPa: number; densityKgPerM3: number }): number {
  mustBeAbove0('flow', flow.flowM3PerS, 'm³/s');
  mustBeAbove0('pressure drop', flow.dropPa, 'Pa');
  mustBeAbove0('density', flow.densityKgPerM3, 'kg/m³');
  const relative = flow.densityKgPerM3 / REFERENCE_KG_PER_M3;
  return flow.flowM3PerS * S_PER_H * Math.sqrt(relative / (flow.dropPa / PA_PER_BAR));
}

/**
 * The loss coefficient K, on the velocity in a bore, of a coupling with a Kv: Δp = K ρ V²/2 with K = 200 (3600 A / Kv)².
 * @param kv m³/h at 1 bar, above 0
 * @param boreM m, above 0
 * @returns K, without unit; 0 for an infinite Kv
 * @source iec-60534 (definition of Kv)
 * @example lossOfKv(0.6, 0.008) // 18.19…
 */
export function lossOfKv(kv: number, boreM: number): number {
  const throughput = (S_PER_H * Math.PI * boreM * boreM) / 4 / kv;
  return ((2 * PA_PER_BAR) / REFERENCE_KG_PER_M3) * throughput * throughput;
}

/** What stands before a valve in which water might flash into steam. */
export interface BeforeValve {
  /** Absolute pressure before the valve. */
  readonly inletPa: number;
  /** Saturation pressure of the water at its temperature. */
  readonly vapourPa: number;
  /** Pressure recovery factor F_L of the valve, above 0 to 1; 0.9 is usual for a globe valve, 0.6 for a ball valve. */
  readonly recovery: number;
  /** Critical pressure; that of water if not given. */
  readonly criticalPa?: number;
}

/**
 * The pressure drop at which a valve chokes: Δp = F_L² (p₁ − F_F p_v), F_F = 0.96 − 0.28 √(p_v / p_c). More drop brings no
 * more flow.
 * @param valve pressures in Pa, absolute and above 0, the vapour's below the critical one; `recovery` above 0 to 1
 * @returns Pa
 * @throws OutsideRange beyond those ranges
 * @source iec-60534 (equations 3 and 4)
 * @example chokingDropPa({ inletPa: 680e3, vapourPa: 70.1e3, criticalPa: 22.12e6, recovery: 0.6 }) // 220971
 */
export function chokingDropPa(valve: BeforeValve): number {
  const { inletPa, vapourPa, recovery, criticalPa = WATER_CRITICAL_PA } = valve;
  mustBeAbove0('pressure before the valve', inletPa, 'Pa');
  mustBeWithin('vapour pressure', vapourPa, 'Pa', criticalPa);
  mustBeWithin('pressure recovery factor', recovery, '', 1);
  const ratio = 0.96 - 0.28 * Math.sqrt(vapourPa / criticalPa);
  return recovery * recovery * (inletPa - ratio * vapourPa);
}

const SOURCE = 'iec-60534';

function mustBeAbove0(quantity: string, value: number, unit: string): void {
  stayAboveZero({ quantity, value, unit, source: SOURCE });
}

function mustBeWithin(quantity: string, value: number, unit: string, high: number): void {
  stayWithin({ quantity, value, unit, low: 0, lowIsOpen: true, high, source: SOURCE });
}
