// What a reading of conductivity tells: at 25 °C, as a range of dissolved solids, and against an analysis.
import { stayAboveZero, stayAtLeastZero, stayWithin } from '../stay-within.ts';

/** 1/K. @source standard-methods (2510) */
const RISE_PER_K = 0.0191;
const COLDEST_C = 15;
const WARMEST_C = 30;
/** mg/L for each µS/cm, a common range. @source trade-practice */
const LEAST_SOLIDS = 0.5;
const MOST_SOLIDS = 0.7;
const KG_PER_M3_OF_MG_PER_L_PER_US_PER_CM = 1e-3 * 1e4;
const TELLS_APART = 3;

/**
 * A reading brought to 25 °C: κ₂₅ = κ_t / (1 + 0.0191 (t − 25)).
 *
 * Within 0.3 % on a potassium chloride standard; waters of other ions differ a little. A meter that compensates by itself has
 * done it already.
 * @param reading `conductivitySPerM` S/m, from 0; `temperatureC` °C, 15 to 30
 * @returns S/m
 * @throws OutsideRange outside those ranges and for NaN
 * @source standard-methods (2510)
 * @example conductivityAt25SPerM({ conductivitySPerM: 0.114145, temperatureC: 15 }) // 0.14109
 */
export function conductivityAt25SPerM(reading: {
  readonly conductivitySPerM: number;
  readonly temperatureC: number;
}): number {
  const { conductivitySPerM, temperatureC } = reading;
  checkConductivity(conductivitySPerM);
  const given = { quantity: 'temperature of the water', value: temperatureC, unit: '°C' };
  stayWithin({ ...given, low: COLDEST_C, high: WARMEST_C, source: 'standard-methods' });
  return conductivitySPerM / (1 + RISE_PER_K * (temperatureC - 25));
}

/**
 * Dissolved solids from a conductivity: 0.5 to 0.7 mg/L for each µS/cm. A range, never a figure: what counts is which ions.
 * @param conductivitySPerM S/m at 25 °C, from 0
 * @returns kg/m³, from and to
 * @throws OutsideRange below zero and for NaN
 * @source trade-practice
 * @example dissolvedSolidsKgPerM3(0.02).highKgPerM3 // 0.14
 */
export function dissolvedSolidsKgPerM3(conductivitySPerM: number): {
  readonly lowKgPerM3: number;
  readonly highKgPerM3: number;
} {
  checkConductivity(conductivitySPerM);
  const kgPerM3 = KG_PER_M3_OF_MG_PER_L_PER_US_PER_CM * conductivitySPerM;
  return { lowKgPerM3: LEAST_SOLIDS * kgPerM3, highKgPerM3: MOST_SOLIDS * kgPerM3 };
}

export interface ReadingAgainstIons {
  /** Reading less what the ions conduct, S/m. */
  readonly differenceSPerM: number;
  /** One standard deviation of that difference. */
  readonly uSPerM: number;
  /** Difference in its own u. */
  readonly inU: number;
  /** Whether they differ by more than three u: an ion is missing in the analysis, or the meter is off. */
  readonly differ: boolean;
}

/**
 * Whether a reading and an analysis tell of the same water: |κ − κ_ions| / u above 3 says no, with u² = u_κ² + u_ions².
 * @param both `reading` and `ions`, each a value in S/m at 25 °C, from 0, with its u in S/m; at least one u above 0
 * @throws OutsideRange outside those ranges and for NaN
 * @source gum (5.1.2); trade-practice (three)
 * @example readingAgainstIons({ reading: { value: 0.0092, u: 0.0001 }, ions: { value: 0.0086, u: 0.00017 } }).inU // 3.04
 */
export function readingAgainstIons(both: {
  readonly reading: { readonly value: number; readonly u: number };
  readonly ions: { readonly value: number; readonly u: number };
}): ReadingAgainstIons {
  const { reading, ions } = both;
  for (const { value, u } of [reading, ions]) {
    checkConductivity(value);
    stayAtLeastZero({ quantity: 'u of a conductivity', value: u, unit: 'S/m', source: 'gum' });
  }
  const uSPerM = Math.sqrt(reading.u * reading.u + ions.u * ions.u);
  stayAboveZero({ quantity: 'u of the difference', value: uSPerM, unit: 'S/m', source: 'gum' });
  const differenceSPerM = reading.value - ions.value;
  const inU = differenceSPerM / uSPerM;
  return { differenceSPerM, uSPerM, inU, differ: Math.abs(inU) > TELLS_APART };
}

function checkConductivity(value: number): void {
  stayAtLeastZero({ quantity: 'conductivity', value, unit: 'S/m', source: 'standard-methods' });
}
