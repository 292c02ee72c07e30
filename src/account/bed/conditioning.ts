// Results of one sample against one another: what the ions conduct against the meter, calcium and magnesium against hardness.
import {
  conductivityOfIons,
  hardnessKgPerM3,
  IONS,
  type IonAmount,
  type IonName,
  ionMolPerM3,
  OutsideRange,
  readingAgainstIons,
} from '../../ground/physics/index.ts';

/** A figure of a sample. */
export interface SampleFigure {
  readonly parameter: string;
  readonly value: number;
  readonly unit: string;
  readonly below: boolean;
}

export interface Contradiction {
  readonly of: 'conductivity' | 'hardness';
  readonly measured: number;
  readonly expected: number;
  /** One standard deviation of the difference. */
  readonly u: number;
  readonly unit: string;
  /** Difference in its own u: beyond 3 the two cannot be of one water. */
  readonly inU: number;
  /** Every ion is there; else what is expected is the least that those which are there conduct. */
  readonly isWhole: boolean;
}

const ION_OF: Readonly<Record<string, IonName>> = {
  calcium: 'Ca',
  magnesium: 'Mg',
  sodium: 'Na',
  potassium: 'K',
  silver: 'Ag',
  ammonium: 'NH4',
  chloride: 'Cl',
  'hydrogen carbonate': 'HCO3',
  bicarbonate: 'HCO3',
  sulfate: 'SO4',
  nitrate: 'NO3',
  iodide: 'I',
  fluoride: 'F',
};
/** What an analysis of ions is known to, part of its value, one standard deviation. Ours, no source. */
const ANALYSIS_U = 0.05;
/** What a meter of conductivity is known to, part of its reading, one standard deviation. Ours, no source. */
const METER_U = 0.03;
/** An analysis whose charges close to this is taken as whole. @source trade-practice */
const CLOSES = 0.1;
const TELLS_APART = 3;
const S_PER_M_OF_US_PER_CM = 1e-4;
const KG_PER_M3_OF_MG_PER_L = 1e-3;
/** Of calcium carbonate, kg/mol. @source iupac-weights */
const CACO3_KG_PER_MOL = 0.10009;

/**
 * What contradicts itself among the figures of one sample: |κ − κ_ions| / u above 3, or hardness against calcium and magnesium.
 *
 * Where the charges of the analysis do not close, the missing side is taken as the ion that conducts least: then only a meter that
 * shows less than that is a contradiction.
 * @param figures of one sample, as they were told; what is not in mg/L or µS/cm, or below a detection limit, is left out
 * @source robinson-stokes, standard-methods (2340 B), gum (5.1.2); trade-practice (three)
 * @example contradictions([{ parameter: 'chloride', value: 71, unit: 'mg/L', below: false }, { parameter: 'conductivity', value: 60, unit: 'µS/cm', below: false }])
 */
export function contradictions(figures: readonly SampleFigure[]): readonly Contradiction[] {
  const told = figures.filter(({ below }) => !below);
  return [conductivityOf(told), hardnessOf(told)].flatMap((found) => found ?? []);
}

function figureOf(figures: readonly SampleFigure[], parameter: string, unit: string): number | null {
  return figures.find((one) => one.parameter.toLowerCase() === parameter && one.unit === unit)?.value ?? null;
}

function conductivityOf(figures: readonly SampleFigure[]): Contradiction | null {
  const reading = figureOf(figures, 'conductivity', 'µS/cm');
  const ions = ionsOf(figures);
  if (reading === null || ions.length === 0) return null;
  try {
    const { ions: balanced, isWhole } = balancedIons(ions);
    const { conductivitySPerM, uSPerM } = conductivityOfIons(balanced);
    const analysisU = ANALYSIS_U * conductivitySPerM;
    const value = reading * S_PER_M_OF_US_PER_CM;
    const compared = readingAgainstIons({
      reading: { value, u: METER_U * value },
      ions: { value: conductivitySPerM, u: Math.sqrt(uSPerM * uSPerM + analysisU * analysisU) },
    });
    if (!compared.differ || (!isWhole && compared.inU > 0)) return null;
    const inUnit = (sPerM: number): number => sPerM / S_PER_M_OF_US_PER_CM;
    return {
      of: 'conductivity',
      measured: reading,
      expected: inUnit(conductivitySPerM),
      u: inUnit(compared.uSPerM),
      unit: 'µS/cm',
      inU: compared.inU,
      isWhole,
    };
  } catch (error) {
    // Stronger than the law of dilute water: it says nothing there.
    if (error instanceof OutsideRange) return null;
    throw error;
  }
}

function ionsOf(figures: readonly SampleFigure[]): readonly IonAmount[] {
  const ions = figures.flatMap(({ parameter, value, unit }): IonAmount[] => {
    const ion = ION_OF[parameter.toLowerCase()];
    if (ion === undefined || unit !== 'mg/L' || value === 0) return [];
    return [{ ion, molPerM3: ionMolPerM3({ ion, kgPerM3: value * KG_PER_M3_OF_MG_PER_L }) }];
  });
  const hardness = figureOf(figures, 'hardness', 'mg/L');
  // Hardness alone is taken as calcium, which conducts about as magnesium does.
  if (hardness === null || hardness === 0 || ions.some(({ ion }) => ion === 'Ca' || ion === 'Mg'))
    return ions;
  return [...ions, { ion: 'Ca', molPerM3: (hardness * KG_PER_M3_OF_MG_PER_L) / CACO3_KG_PER_MOL }];
}

/** Sodium and hydrogen carbonate conduct least of their kind among the usual ions. */
function balancedIons(ions: readonly IonAmount[]): { ions: readonly IonAmount[]; isWhole: boolean } {
  const charges = (sign: 1 | -1): number =>
    ions.reduce((sum, { ion, molPerM3 }) => sum + Math.max(0, sign * IONS[ion].charge) * molPerM3, 0);
  const [cations, anions] = [charges(1), charges(-1)];
  const lacks = cations - anions;
  const isWhole = Math.abs(lacks) <= CLOSES * (cations + anions);
  const filler: IonAmount = { ion: lacks > 0 ? 'HCO3' : 'Na', molPerM3: Math.abs(lacks) };
  return { ions: lacks === 0 ? ions : [...ions, filler], isWhole };
}

function hardnessOf(figures: readonly SampleFigure[]): Contradiction | null {
  const measured = figureOf(figures, 'hardness', 'mg/L');
  const calcium = figureOf(figures, 'calcium', 'mg/L');
  const magnesium = figureOf(figures, 'magnesium', 'mg/L');
  if (measured === null || calcium === null || magnesium === null) return null;
  const expected =
    hardnessKgPerM3({
      calciumKgPerM3: calcium * KG_PER_M3_OF_MG_PER_L,
      magnesiumKgPerM3: magnesium * KG_PER_M3_OF_MG_PER_L,
    }) / KG_PER_M3_OF_MG_PER_L;
  const u = ANALYSIS_U * Math.sqrt(measured * measured + expected * expected);
  if (u === 0) return null;
  const inU = (measured - expected) / u;
  if (Math.abs(inU) <= TELLS_APART) return null;
  return { of: 'hardness', measured, expected, u, unit: 'mg/L', inU, isWhole: true };
}
