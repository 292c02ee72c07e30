// How much water a stack splits at a current, and how much oxygen and hydrogen comes of it.
import { FARADAY_C_PER_MOL, molarMassKgPerMol } from '../molar.ts';
import { OPEN_END } from '../outside-range.ts';
import { stayAtLeastZero, stayShareAboveZero, stayWithin } from '../stay-within.ts';

const OXYGEN_KG_PER_MOL = molarMassKgPerMol('O2');
const HYDROGEN_KG_PER_MOL = molarMassKgPerMol('H2');
const WATER_KG_PER_MOL = molarMassKgPerMol('H2O');
/** Four electrons pass for each molecule of oxygen. */
const CHARGE_C_PER_MOL_OXYGEN = 4 * FARADAY_C_PER_MOL;

export interface Stack {
  /** Cells in series: each of them carries the whole current. */
  readonly cells: number;
  /** Current efficiency: the share of the current whose gases leave apart; above 0, up to 1. Common practice 0.9 to 0.99. */
  readonly currentEfficiency: number;
}

export interface ElectrolysisRates {
  readonly oxygenKgPerS: number;
  readonly hydrogenKgPerS: number;
  /** Water that is gone: what recombines inside the cell is water again and not counted. */
  readonly waterKgPerS: number;
}

/**
 * What a stack splits and makes: ṅ(O₂) = η N I / 4F, twice as much hydrogen, twice as much water.
 *
 * Steady; the gases leave dry. Vapour that they carry, and purges, are a loss of their own (`oxygenByElectrolysis`).
 * @param stack `cells` from 1, `currentEfficiency` above 0 up to 1, `currentA` A, from 0
 * @returns kg/s, with water = oxygen + hydrogen
 * @throws OutsideRange outside those ranges and for NaN
 * @source faraday
 * @example electrolysisRates({ cells: 10, currentA: 32, currentEfficiency: 0.97 }).oxygenKgPerS * 86400 // 2.2235 kg a day
 */
export function electrolysisRates(stack: Stack & { readonly currentA: number }): ElectrolysisRates {
  const { cells, currentA, currentEfficiency } = stack;
  checkStack(stack);
  stayAtLeastZero({ quantity: 'current', value: currentA, unit: 'A', source: 'faraday' });
  const oxygenMolPerS = (currentEfficiency * cells * currentA) / CHARGE_C_PER_MOL_OXYGEN;
  return {
    oxygenKgPerS: oxygenMolPerS * OXYGEN_KG_PER_MOL,
    hydrogenKgPerS: 2 * oxygenMolPerS * HYDROGEN_KG_PER_MOL,
    waterKgPerS: 2 * oxygenMolPerS * WATER_KG_PER_MOL,
  };
}

/**
 * The current that makes so much oxygen: I = 4F ṁ / (M η N). The inverse of `electrolysisRates`.
 * @param stack `cells` from 1, `currentEfficiency` above 0 up to 1, `oxygenKgPerS` kg/s, from 0
 * @returns A
 * @throws OutsideRange outside those ranges and for NaN
 * @source faraday
 * @example currentForOxygenA({ cells: 1, currentEfficiency: 1, oxygenKgPerS: 0.84 / 86400 }) // 117.26
 */
export function currentForOxygenA(stack: Stack & { readonly oxygenKgPerS: number }): number {
  const { cells, currentEfficiency, oxygenKgPerS } = stack;
  checkStack(stack);
  stayAtLeastZero({ quantity: 'oxygen wanted', value: oxygenKgPerS, unit: 'kg/s', source: 'faraday' });
  return (CHARGE_C_PER_MOL_OXYGEN * oxygenKgPerS) / (OXYGEN_KG_PER_MOL * currentEfficiency * cells);
}

/**
 * The water in so much oxygen: m(H₂O) = 2 M(H₂O) / M(O₂) × m(O₂), 1.126 kg for a kilogram.
 * @param oxygenKg kg
 * @returns kg
 * @source faraday (stoichiometry)
 * @example waterForOxygenKg(0.84) // 0.9458
 */
export function waterForOxygenKg(oxygenKg: number): number {
  return (2 * WATER_KG_PER_MOL * oxygenKg) / OXYGEN_KG_PER_MOL;
}

/**
 * The oxygen in so much water: the inverse of `waterForOxygenKg`, 0.888 kg of a kilogram.
 * @param waterKg kg
 * @returns kg
 * @source faraday (stoichiometry)
 * @example oxygenFromWaterKg(1) // 0.8881
 */
export function oxygenFromWaterKg(waterKg: number): number {
  return (OXYGEN_KG_PER_MOL * waterKg) / (2 * WATER_KG_PER_MOL);
}

export function checkStack({ cells, currentEfficiency }: Stack): void {
  stayWithin({
    quantity: 'number of cells',
    value: cells,
    unit: 'cells',
    low: 1,
    high: OPEN_END,
    source: 'faraday',
  });
  stayShareAboveZero({ quantity: 'current efficiency', value: currentEfficiency, source: 'faraday' });
}
