// Table of the ions of drinking water: formula, charge, and how well each conducts in water without others.
import { molarMassKgPerMol } from '../molar.ts';

export interface Ion {
  readonly formula: string;
  /** Charge number, with its sign. */
  readonly charge: number;
  /** Limiting conductivity of an equivalent at 25 °C, S m²/mol of charges. 1 S cm²/eq is 0.0001 of it. */
  readonly limitingSM2PerMol: number;
}

/** S cm²/eq at 25 °C. @source crc-handbook */
const TABLE = {
  H: ['H', 1, 349.65],
  Na: ['Na', 1, 50.08],
  K: ['K', 1, 73.48],
  Ca: ['Ca', 2, 59.47],
  Mg: ['Mg', 2, 53.0],
  Ag: ['Ag', 1, 61.9],
  NH4: ['NH4', 1, 73.5],
  OH: ['OH', -1, 198],
  Cl: ['Cl', -1, 76.31],
  HCO3: ['HCO3', -1, 44.5],
  SO4: ['SO4', -2, 80.0],
  NO3: ['NO3', -1, 71.42],
  I: ['I', -1, 76.8],
  F: ['F', -1, 55.4],
} as const;

export type IonName = keyof typeof TABLE;

export const IONS: Readonly<Record<IonName, Ion>> = Object.fromEntries(
  Object.entries(TABLE).map(([name, [formula, charge, limiting]]) => [
    name,
    { formula, charge, limitingSM2PerMol: limiting * 1e-4 },
  ]),
) as unknown as Readonly<Record<IonName, Ion>>;

/**
 * The amount of an ion in a mass of it: n = m / M, also for concentrations.
 * @param concentration `ion` a name of the table; `kgPerM3` kg/m³
 * @returns mol/m³ (mmol/L)
 * @source iupac-weights
 * @example ionMolPerM3({ ion: 'Ca', kgPerM3: 0.04 }) // 0.998
 */
export function ionMolPerM3(concentration: { readonly ion: IonName; readonly kgPerM3: number }): number {
  return concentration.kgPerM3 / molarMassKgPerMol(IONS[concentration.ion].formula);
}
