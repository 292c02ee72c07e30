// How hard water is: its calcium and magnesium, told as calcium carbonate.
import { toldAsCalciumCarbonate } from './bases.ts';
import { checkConcentration } from './mixing.ts';

/**
 * Hardness as calcium carbonate: 2.497 Ca + 4.118 Mg.
 *
 * Strontium, iron and other ions of two charges are left out. 1 mmol/L of both together is 100.09 mg/L.
 * @param water `calciumKgPerM3` and `magnesiumKgPerM3` kg/m³, from 0
 * @returns kg/m³ as CaCO₃
 * @throws OutsideRange for values below zero and NaN
 * @source standard-methods (2340 B)
 * @example hardnessKgPerM3({ calciumKgPerM3: 0.05, magnesiumKgPerM3: 0.01 }) * 1000 // 166.0 mg/L
 */
export function hardnessKgPerM3(water: {
  readonly calciumKgPerM3: number;
  readonly magnesiumKgPerM3: number;
}): number {
  const { calciumKgPerM3, magnesiumKgPerM3 } = water;
  checkConcentration('calcium', calciumKgPerM3);
  checkConcentration('magnesium', magnesiumKgPerM3);
  return (
    toldAsCalciumCarbonate({ value: calciumKgPerM3, ion: 'Ca', charge: 2 }) +
    toldAsCalciumCarbonate({ value: magnesiumKgPerM3, ion: 'Mg', charge: 2 })
  );
}
