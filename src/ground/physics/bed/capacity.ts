// What a bed takes up before it is full: its throughput, its time, and which of its totals ends first.
import { stayAboveZero, stayAtLeastZero, stayShare, stayShareAboveZero } from '../stay-within.ts';

const SOURCE = 'mass-balance';

/**
 * How much water a bed of sorbent treats: V = η q M / c₀.
 * @param bed `capacityKgPerKg` what a kilogram of sorbent takes, kg/kg, above 0; `sorbentKg` kg, above 0; `usedShare` the share of
 *   that capacity which is used before the limit, above 0 up to 1; `feedKgPerM3` kg/m³ in the feed, above 0
 * @returns m³
 * @throws OutsideRange outside those ranges and for NaN
 * @source mass-balance
 * @example sorbentThroughputM3({ capacityKgPerKg: 0.05, sorbentKg: 2, usedShare: 0.7, feedKgPerM3: 0.03 }) // 2.33
 */
export function sorbentThroughputM3(bed: {
  readonly capacityKgPerKg: number;
  readonly sorbentKg: number;
  readonly usedShare: number;
  readonly feedKgPerM3: number;
}): number {
  const { capacityKgPerKg, sorbentKg, usedShare, feedKgPerM3 } = bed;
  checkSorbent(bed);
  stayShareAboveZero({ quantity: 'share of the capacity that is used', value: usedShare, source: SOURCE });
  return (usedShare * capacityKgPerKg * sorbentKg) / feedKgPerM3;
}

/**
 * The time in which a bed would be full if it took up everything until then: t = q M / (Q c₀) + ε V / Q.
 *
 * The second part is the water that stands in the bed. Half of a symmetric breakthrough lies before this time.
 * @param bed `capacityKgPerKg` kg/kg, `sorbentKg` kg, `feedKgPerM3` kg/m³ and `flowM3PerS` m³/s, above 0; `bedM3` m³, from 0;
 *   `voidShare` 0 to 1
 * @returns s
 * @throws OutsideRange outside those ranges and for NaN
 * @source mass-balance
 * @example stoichiometricTimeS({ capacityKgPerKg: 0.05, sorbentKg: 2, feedKgPerM3: 0.03, flowM3PerS: 1e-6, bedM3: 0.004, voidShare: 0.4 }) / 86400 // 38.60 days
 */
export function stoichiometricTimeS(bed: {
  readonly capacityKgPerKg: number;
  readonly sorbentKg: number;
  readonly feedKgPerM3: number;
  readonly flowM3PerS: number;
  readonly bedM3: number;
  readonly voidShare: number;
}): number {
  const { capacityKgPerKg, sorbentKg, feedKgPerM3, flowM3PerS, bedM3, voidShare } = bed;
  checkSorbent(bed);
  checkFlow(flowM3PerS);
  stayAtLeastZero({ quantity: 'volume of the bed', value: bedM3, unit: 'm³', source: SOURCE });
  stayShare({ quantity: 'share of the bed that is void', value: voidShare, source: SOURCE });
  return (capacityKgPerKg * sorbentKg) / (flowM3PerS * feedKgPerM3) + (voidShare * bedM3) / flowM3PerS;
}

/** What is exchanged: mol/m³ in the feed (mmol/L) and its charge number, without sign. */
export interface Exchanged {
  readonly molPerM3: number;
  readonly charge: number;
}

/**
 * How much water a bed of ion exchanger treats: V = C V_bed / Σ c z.
 *
 * For cations or for anions, each with the total of its own resin. The bed ends at the first ion that breaks through, which is the
 * one it holds least: this is the end of all of them together, and too late for that one.
 * @param bed `capacityEqPerM3` charges that a m³ of resin takes, mol/m³, above 0 (2 eq/L is 2000); `bedM3` m³, above 0; `ions` of
 *   the feed, at least one above 0
 * @returns m³
 * @throws OutsideRange outside those ranges and for NaN
 * @source mass-balance
 * @example exchangerThroughputM3({ capacityEqPerM3: 1900, bedM3: 0.002, ions: [{ molPerM3: 0.4, charge: 2 }, { molPerM3: 0.7, charge: 1 }] }) // 2.53
 */
export function exchangerThroughputM3(bed: {
  readonly capacityEqPerM3: number;
  readonly bedM3: number;
  readonly ions: readonly Exchanged[];
}): number {
  const { capacityEqPerM3, bedM3, ions } = bed;
  stayAboveZero({
    quantity: 'capacity of the resin',
    value: capacityEqPerM3,
    unit: 'mol/m³',
    source: SOURCE,
  });
  stayAboveZero({ quantity: 'volume of the bed', value: bedM3, unit: 'm³', source: SOURCE });
  let chargesPerM3 = 0;
  for (const { molPerM3, charge } of ions) {
    stayAtLeastZero({ quantity: 'ions in the feed', value: molPerM3, unit: 'mol/m³', source: SOURCE });
    stayAboveZero({ quantity: 'charge number', value: charge, unit: 'charges', source: SOURCE });
    chargesPerM3 += molPerM3 * charge;
  }
  stayAboveZero({ quantity: 'charges in the feed', value: chargesPerM3, unit: 'mol/m³', source: SOURCE });
  return (capacityEqPerM3 * bedM3) / chargesPerM3;
}

export interface Total {
  /** Such as cations, anions, organics. */
  readonly name: string;
  readonly throughputM3: number;
}

/**
 * Which of a bed's totals ends first: the bed is as good as its weakest.
 * @param totals at least one, each from 0 m³
 * @throws OutsideRange for a throughput below 0 or NaN; RangeError without any total
 * @source mass-balance
 * @example firstToEnd([{ name: 'cations', throughputM3: 2.5 }, { name: 'organics', throughputM3: 0.9 }]).throughputM3 // 0.9
 */
export function firstToEnd(totals: readonly Total[]): Total {
  let first: Total | undefined;
  for (const total of totals) {
    const given = { quantity: `throughput for ${total.name}`, value: total.throughputM3, unit: 'm³' };
    stayAtLeastZero({ ...given, source: SOURCE });
    if (first === undefined || total.throughputM3 < first.throughputM3) first = total;
  }
  if (first === undefined) throw new RangeError('a bed has at least one total that can end');
  return first;
}

/**
 * How long water is in a bed, counted as if the bed were empty: EBCT = V_bed / Q.
 * @param bed `bedM3` m³ and `flowM3PerS` m³/s, above 0
 * @returns s
 * @throws OutsideRange outside those ranges and for NaN
 * @source mass-balance
 * @example emptyBedContactS({ bedM3: 0.004, flowM3PerS: 1e-6 }) / 60 // 66.7 min
 */
export function emptyBedContactS(bed: { readonly bedM3: number; readonly flowM3PerS: number }): number {
  stayAboveZero({ quantity: 'volume of the bed', value: bed.bedM3, unit: 'm³', source: SOURCE });
  checkFlow(bed.flowM3PerS);
  return bed.bedM3 / bed.flowM3PerS;
}

/**
 * Throughput as bed volumes: V / V_bed.
 * @param run `throughputM3` m³, from 0; `bedM3` m³, above 0
 * @returns bed volumes
 * @throws OutsideRange outside those ranges and for NaN
 * @source mass-balance
 * @example bedVolumes({ throughputM3: 0.857, bedM3: 0.004 }) // 214.25
 */
export function bedVolumes(run: { readonly throughputM3: number; readonly bedM3: number }): number {
  stayAtLeastZero({ quantity: 'throughput', value: run.throughputM3, unit: 'm³', source: SOURCE });
  stayAboveZero({ quantity: 'volume of the bed', value: run.bedM3, unit: 'm³', source: SOURCE });
  return run.throughputM3 / run.bedM3;
}

export function checkFlow(flowM3PerS: number): void {
  stayAboveZero({ quantity: 'flow', value: flowM3PerS, unit: 'm³/s', source: SOURCE });
}

export function checkSorbent(bed: {
  readonly capacityKgPerKg: number;
  readonly sorbentKg: number;
  readonly feedKgPerM3: number;
}): void {
  stayAboveZero({
    quantity: 'capacity of the sorbent',
    value: bed.capacityKgPerKg,
    unit: 'kg/kg',
    source: SOURCE,
  });
  stayAboveZero({ quantity: 'mass of the sorbent', value: bed.sorbentKg, unit: 'kg', source: SOURCE });
  stayAboveZero({
    quantity: 'concentration in the feed',
    value: bed.feedKgPerM3,
    unit: 'kg/m³',
    source: SOURCE,
  });
}
