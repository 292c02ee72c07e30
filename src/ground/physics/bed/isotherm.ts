// How much a sorbent holds against a concentration, once they are in balance.
import { pow } from '../../maths/index.ts';
import { stayAboveZero, stayAtLeastZero } from '../stay-within.ts';

/**
 * Langmuir: q = q_m b c / (1 + b c). One layer of places, all alike.
 * @param sorbent `mostKgPerKg` kg/kg and `affinityM3PerKg` m³/kg, above 0; `concentrationKgPerM3` kg/m³, from 0
 * @returns kg/kg, below `mostKgPerKg`
 * @throws OutsideRange outside those ranges and for NaN
 * @source isotherms
 * @example langmuirKgPerKg({ mostKgPerKg: 0.2, affinityM3PerKg: 50, concentrationKgPerM3: 0.02 }) // 0.1
 */
export function langmuirKgPerKg(sorbent: {
  readonly mostKgPerKg: number;
  readonly affinityM3PerKg: number;
  readonly concentrationKgPerM3: number;
}): number {
  const { mostKgPerKg, affinityM3PerKg, concentrationKgPerM3 } = sorbent;
  stayAboveZero({
    quantity: 'most that the sorbent holds',
    value: mostKgPerKg,
    unit: 'kg/kg',
    source: 'isotherms',
  });
  checkAffinity(affinityM3PerKg);
  checkConcentration(concentrationKgPerM3);
  const filling = affinityM3PerKg * concentrationKgPerM3;
  return (mostKgPerKg * filling) / (1 + filling);
}

/**
 * The separation factor of a Langmuir sorbent, R = 1 / (1 + b c₀): 0 takes up everything to the last, 1 is a straight line.
 * @param sorbent `affinityM3PerKg` m³/kg, above 0; `feedKgPerM3` kg/m³, from 0
 * @returns 0 to 1
 * @throws OutsideRange outside those ranges and for NaN
 * @source isotherms
 * @example separationFactor({ affinityM3PerKg: 50, feedKgPerM3: 0.08 }) // 0.2
 */
export function separationFactor(sorbent: {
  readonly affinityM3PerKg: number;
  readonly feedKgPerM3: number;
}): number {
  checkAffinity(sorbent.affinityM3PerKg);
  checkConcentration(sorbent.feedKgPerM3);
  return 1 / (1 + sorbent.affinityM3PerKg * sorbent.feedKgPerM3);
}

/**
 * Freundlich: q = K (c / c₁)^(1/n) with c₁ = 1 kg/m³, so that K is what it holds at that concentration. Without a most; a
 * description within the measured range alone.
 * @param sorbent `atOneKgPerKg` K, kg/kg, above 0; `exponent` 1/n, above 0; `concentrationKgPerM3` kg/m³, from 0
 * @returns kg/kg
 * @throws OutsideRange outside those ranges and for NaN
 * @source isotherms
 * @example freundlichKgPerKg({ atOneKgPerKg: 0.4, exponent: 0.5, concentrationKgPerM3: 0.01 }) // 0.04
 */
export function freundlichKgPerKg(sorbent: {
  readonly atOneKgPerKg: number;
  readonly exponent: number;
  readonly concentrationKgPerM3: number;
}): number {
  const { atOneKgPerKg, exponent, concentrationKgPerM3 } = sorbent;
  stayAboveZero({
    quantity: 'what it holds at 1 kg/m³',
    value: atOneKgPerKg,
    unit: 'kg/kg',
    source: 'isotherms',
  });
  stayAboveZero({ quantity: 'exponent', value: exponent, unit: '(a number)', source: 'isotherms' });
  checkConcentration(concentrationKgPerM3);
  return atOneKgPerKg * pow(concentrationKgPerM3, exponent);
}

function checkAffinity(value: number): void {
  stayAboveZero({ quantity: 'affinity of the sorbent', value, unit: 'm³/kg', source: 'isotherms' });
}

function checkConcentration(value: number): void {
  stayAtLeastZero({ quantity: 'concentration', value, unit: 'kg/m³', source: 'isotherms' });
}
