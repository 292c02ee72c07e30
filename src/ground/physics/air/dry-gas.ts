// The dry gas of a cabin: air, or a mixture of oxygen and nitrogen of any share.
import { OutsideRange } from '../outside-range.ts';

/** J/(mol K). @source codata-2018 */
const R_J_PER_MOL_K = 8.314462618;
const WATER_KG_PER_MOL = 0.018015268;

export interface DryGas {
  readonly molarMassKgPerMol: number;
  readonly gasConstantJPerKgK: number;
  /** Molar mass of water over that of the gas: 0.622 for air. */
  readonly vapourRatio: number;
  readonly heatCapacityJPerKgK: number;
}

function gasOf(molarMassKgPerMol: number, heatCapacityJPerKgK: number): DryGas {
  return Object.freeze({
    molarMassKgPerMol,
    gasConstantJPerKgK: R_J_PER_MOL_K / molarMassKgPerMol,
    vapourRatio: WATER_KG_PER_MOL / molarMassKgPerMol,
    heatCapacityJPerKgK,
  });
}

/** Dry air with the constants of the handbooks: 28.966 g/mol, 1006 J/(kg K). @source ashrae-fundamentals (chapter 1) */
export const DRY_AIR: DryGas = gasOf(0.028966, 1006);

const OXYGEN_KG_PER_MOL = 0.031998;
const NITROGEN_KG_PER_MOL = 0.028014;
/** At 25 °C; between −20 and 60 °C they change by less than 0.5 %. */
const OXYGEN_J_PER_MOL_K = 29.378;
const NITROGEN_J_PER_MOL_K = 29.124;

/**
 * A dry cabin gas of oxygen and nitrogen: M = x M_O₂ + (1 − x) M_N₂, R = 8.314463 / M, ε = M_w / M, c_p from the mole shares.
 *
 * For ordinary air take `DRY_AIR`: its argon makes it 0.4 % heavier than nitrogen with 21 % of oxygen.
 * @param oxygenShare share of the moles (of the partial pressures), 0 to 1
 * @throws OutsideRange outside 0 to 1 and for NaN
 * @source crc-handbook (molar masses, heat capacities)
 * @example oxygenNitrogen(0.34).vapourRatio // 0.6134
 */
export function oxygenNitrogen(oxygenShare: number): DryGas {
  if (!(oxygenShare >= 0 && oxygenShare <= 1))
    throw new OutsideRange({
      quantity: 'oxygen share of the dry gas',
      value: oxygenShare,
      unit: '',
      low: 0,
      high: 1,
      source: 'crc-handbook',
    });
  const molarMass = oxygenShare * OXYGEN_KG_PER_MOL + (1 - oxygenShare) * NITROGEN_KG_PER_MOL;
  const molarHeat = oxygenShare * OXYGEN_J_PER_MOL_K + (1 - oxygenShare) * NITROGEN_J_PER_MOL_K;
  return gasOf(molarMass, molarHeat / molarMass);
}
