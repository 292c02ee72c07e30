// What water with known ions conducts at 25 °C, and whether a reading agrees with an analysis.
import { pow } from '../../maths/index.ts';
import { stayAboveZero, stayAtLeastZero, stayWithin } from '../stay-within.ts';
import { IONS, type IonName } from './ions.ts';

const SOURCE = 'robinson-stokes';
/** Permittivity and viscosity of water at 25 °C, the latter in poise as the equation has it. */
const PERMITTIVITY = 78.36;
const VISCOSITY_POISE = 0.008903;
const PERMITTIVITY_TEMPERATURE = PERMITTIVITY * 298.15;
const RELAXATION = 2.801e6 / (PERMITTIVITY_TEMPERATURE * Math.sqrt(PERMITTIVITY_TEMPERATURE));
const DRAG_S_CM2_PER_EQ = 41.25 / (VISCOSITY_POISE * Math.sqrt(PERMITTIVITY_TEMPERATURE));
const S_M2_PER_S_CM2 = 1e-4;
const MOL_PER_L_OF_MOL_PER_M3 = 1e-3;
/** The law of dilute water is carried on up to here: 0.6 % at its end for potassium chloride. */
const STRONGEST_MOL_PER_M3 = 10;
/** What a mixture of ions of several charges may be off, one standard deviation (common practice). */
const U_OF_A_MIXTURE = 0.02;

/** What pure water conducts at 25 °C once it is saturated with the carbon dioxide of ordinary air, S/m. @source crc-handbook */
export const WATER_WITH_AIR_S_PER_M = 1.1e-4;

/** At 25 °C. @source light-1984 */
const PK_OF_WATER = 13.995;

/**
 * What pure water conducts at 25 °C: its own ions, √K_w (λ_H + λ_OH).
 *
 * A reading below 0.055 µS/cm is a fault of the meter; one below about 1 is unlikely in water that has met air.
 * @returns S/m; 1 µS/cm is 0.0001 S/m
 * @source light-1984 (pK_w 13.995), crc-handbook
 * @example pureWaterConductivitySPerM() * 1e4 // 0.0551 µS/cm
 */
export function pureWaterConductivitySPerM(): number {
  const molPerM3 = pow(10, -PK_OF_WATER / 2) / MOL_PER_L_OF_MOL_PER_M3;
  return molPerM3 * (IONS.H.limitingSM2PerMol + IONS.OH.limitingSM2PerMol);
}

/**
 * What a salt of one charge to one conducts for each mole, in dilute water: Λ = Λ₀ − (60.2 + 0.229 Λ₀) √c (Onsager).
 *
 * Within 0.1 % up to 1 mmol/L and 0.6 % at 10 for potassium chloride.
 * @param salt `limitingSM2PerMol` Λ₀ of both ions, S m²/mol, above 0; `molPerM3` mol/m³ (mmol/L), 0 to 10
 * @returns S m²/mol
 * @throws OutsideRange outside those ranges and for NaN
 * @source onsager-1927
 * @example onsagerSM2PerMol({ limitingSM2PerMol: 149.79e-4, molPerM3: 1 }) * 1e4 // 146.80 S cm²/mol
 */
export function onsagerSM2PerMol(salt: {
  readonly limitingSM2PerMol: number;
  readonly molPerM3: number;
}): number {
  const { limitingSM2PerMol, molPerM3 } = salt;
  const given = { quantity: 'limiting conductivity', value: limitingSM2PerMol, unit: 'S m²/mol' };
  stayAboveZero({ ...given, source: 'onsager-1927' });
  stayDilute('concentration of the salt', molPerM3);
  const root = Math.sqrt(molPerM3 * MOL_PER_L_OF_MOL_PER_M3);
  return limitingSM2PerMol - (60.2 * S_M2_PER_S_CM2 + 0.229 * limitingSM2PerMol) * root;
}

export interface IonAmount {
  readonly ion: IonName;
  /** mol/m³, the same as mmol/L. */
  readonly molPerM3: number;
}

export interface IonsConduct {
  readonly conductivitySPerM: number;
  /** One standard deviation of the equation, without that of the analysis. */
  readonly uSPerM: number;
  /** What it would be if the ions did not hold one another back. */
  readonly apartSPerM: number;
  readonly ionicStrengthMolPerM3: number;
  /** (cations − anions) / (cations + anions), in charges: how well the analysis closes; within ± 0.05 is usual. */
  readonly chargeImbalance: number;
}

/**
 * What water conducts by its ions at 25 °C: κ = Σ c |z| λ, lowered by what they hold one another back, by the general form of
 * Onsager's law (Robinson and Stokes) with charges and conductivities averaged over the equivalents of a mixture.
 *
 * For one salt it is that law itself. A mixture is budgeted with a u of 2 %. Ions are taken as free: pairs and complexes at
 * these strengths are below that.
 * @param ions each `ion` a name of the table and `molPerM3` mol/m³, from 0; with cations and anions among them, up to an ionic
 *   strength of 10 mol/m³
 * @throws OutsideRange outside those ranges and for NaN
 * @source robinson-stokes (general form, from memory); crc-handbook (conductivities of ions)
 * @example conductivityOfIons([{ ion: 'Ca', molPerM3: 0.5 }, { ion: 'Cl', molPerM3: 1 }]).conductivitySPerM * 1e4 // 130.1 µS/cm
 */
export function conductivityOfIons(ions: readonly IonAmount[]): IonsConduct {
  const cations = meanOf(ions.filter(({ ion }) => IONS[ion].charge > 0));
  const anions = meanOf(ions.filter(({ ion }) => IONS[ion].charge < 0));
  stayAboveZero({ quantity: 'cations', value: cations.equivalents, unit: 'mol/m³', source: SOURCE });
  stayAboveZero({ quantity: 'anions', value: anions.equivalents, unit: 'mol/m³', source: SOURCE });
  const strength = (cations.equivalents * cations.charge + anions.equivalents * anions.charge) / 2;
  stayDilute('ionic strength', strength);
  const limiting = cations.limiting + anions.limiting;
  const held = heldBack({ cations, anions, limiting, strength });
  const apartSPerM = cations.equivalents * cations.limiting + anions.equivalents * anions.limiting;
  const conductivitySPerM = apartSPerM * (1 - held / limiting);
  return {
    conductivitySPerM,
    uSPerM: U_OF_A_MIXTURE * conductivitySPerM,
    apartSPerM,
    ionicStrengthMolPerM3: strength,
    chargeImbalance: (cations.equivalents - anions.equivalents) / (cations.equivalents + anions.equivalents),
  };
}

interface Mean {
  /** mol of charges in a m³. */
  readonly equivalents: number;
  /** Mean charge number, without sign, weighted so that the ionic strength comes out right. */
  readonly charge: number;
  readonly limiting: number;
}

function meanOf(ions: readonly IonAmount[]): Mean {
  let equivalents = 0;
  let charges = 0;
  let conducted = 0;
  for (const { ion, molPerM3 } of ions) {
    stayAtLeastZero({ quantity: `concentration of ${ion}`, value: molPerM3, unit: 'mol/m³', source: SOURCE });
    const charge = Math.abs(IONS[ion].charge);
    equivalents += molPerM3 * charge;
    charges += molPerM3 * charge * charge;
    conducted += molPerM3 * charge * IONS[ion].limitingSM2PerMol;
  }
  return { equivalents, charge: charges / equivalents, limiting: conducted / equivalents };
}

/** By how much Λ is below Λ₀, in S m²/mol. */
function heldBack(water: { cations: Mean; anions: Mean; limiting: number; strength: number }): number {
  const { cations, anions, limiting, strength } = water;
  const product = cations.charge * anions.charge;
  const sum = cations.charge + anions.charge;
  const q =
    ((product / sum) * limiting) / (anions.charge * cations.limiting + cations.charge * anions.limiting);
  const relaxation = (RELAXATION * product * q * limiting) / (1 + Math.sqrt(q));
  const drag = DRAG_S_CM2_PER_EQ * S_M2_PER_S_CM2 * sum;
  return (relaxation + drag) * Math.sqrt(strength * MOL_PER_L_OF_MOL_PER_M3);
}

function stayDilute(quantity: string, value: number): void {
  stayWithin({ quantity, value, unit: 'mol/m³', low: 0, high: STRONGEST_MOL_PER_M3, source: SOURCE });
}
