// What comes of water poured together, and of water that flows through: concentrations by the balance of the dissolved mass.
import { exp, log } from '../../maths/index.ts';
import { OutsideRange } from '../outside-range.ts';
import { stayAboveZero, stayAtLeastZero } from '../stay-within.ts';

const SOURCE = 'mass-balance';

/** A volume of water with something dissolved in it. 1 mg/L is 0.001 kg/m³. */
export interface Solution {
  readonly volumeM3: number;
  readonly concentrationKgPerM3: number;
}

export interface Mixture extends Solution {
  /** What is dissolved in all of it. */
  readonly massKg: number;
}

/**
 * Solutions poured together: c = Σ c V / Σ V.
 *
 * Volumes add (for dilute water to a part in ten thousand), nothing reacts and nothing is lost to walls.
 * @param parts each with `volumeM3` m³, from 0, and `concentrationKgPerM3` kg/m³, from 0; not all of them empty
 * @returns volume, concentration and the dissolved mass
 * @throws OutsideRange for values below zero, NaN, or nothing to mix
 * @source mass-balance
 * @example mixedSolution([{ volumeM3: 0.02, concentrationKgPerM3: 2e-4 }, { volumeM3: 0.01, concentrationKgPerM3: 5e-5 }]).concentrationKgPerM3 // 0.00015
 */
export function mixedSolution(parts: readonly Solution[]): Mixture {
  let volumeM3 = 0;
  let massKg = 0;
  for (const part of parts) {
    checkSolution(part);
    volumeM3 += part.volumeM3;
    massKg += part.volumeM3 * part.concentrationKgPerM3;
  }
  stayAboveZero({ quantity: 'volume that is mixed', value: volumeM3, unit: 'm³', source: SOURCE });
  return { volumeM3, massKg, concentrationKgPerM3: massKg / volumeM3 };
}

/** What stands in a line or a vessel, and what flows in. */
export interface Washout {
  readonly atFirstKgPerM3: number;
  readonly inflowKgPerM3: number;
}

/**
 * What is left after so many volumes have gone through a vessel that is well stirred: c = c_in + (c₀ − c_in) e^(−n).
 *
 * A line in which the water moves as a plug is clean after one volume; a real line lies between the two.
 * @param washout `atFirstKgPerM3` and `inflowKgPerM3` kg/m³, from 0; `volumesThrough` how many times its content went through, from 0
 * @returns kg/m³
 * @throws OutsideRange for values below zero and NaN
 * @source mass-balance
 * @example washedOutKgPerM3({ atFirstKgPerM3: 0.2, inflowKgPerM3: 0, volumesThrough: 3 }) // 0.00996
 */
export function washedOutKgPerM3(washout: Washout & { readonly volumesThrough: number }): number {
  const { atFirstKgPerM3, inflowKgPerM3, volumesThrough } = washout;
  checkWashout(washout);
  stayAtLeastZero({
    quantity: 'volumes gone through',
    value: volumesThrough,
    unit: 'volumes',
    source: SOURCE,
  });
  return inflowKgPerM3 + (atFirstKgPerM3 - inflowKgPerM3) * exp(-volumesThrough);
}

/**
 * How many volumes bring a well-stirred vessel to a concentration: n = ln((c₀ − c_in) / (c − c_in)).
 * @param washout `atFirstKgPerM3` and `inflowKgPerM3` kg/m³, from 0; `wantedKgPerM3` between the two, the inflow's own not reached
 * @returns volumes
 * @throws OutsideRange where the wanted concentration is never passed, for values below zero and NaN
 * @source mass-balance
 * @example volumesToWashOut({ atFirstKgPerM3: 0.2, inflowKgPerM3: 0, wantedKgPerM3: 0.002 }) // 4.605
 */
export function volumesToWashOut(washout: Washout & { readonly wantedKgPerM3: number }): number {
  const { atFirstKgPerM3, inflowKgPerM3, wantedKgPerM3 } = washout;
  checkWashout(washout);
  const left = (wantedKgPerM3 - inflowKgPerM3) / (atFirstKgPerM3 - inflowKgPerM3);
  if (!(left > 0 && left <= 1))
    throw new OutsideRange({
      quantity: 'concentration wanted, that the inflow brings about',
      value: wantedKgPerM3,
      unit: 'kg/m³',
      low: Math.min(atFirstKgPerM3, inflowKgPerM3),
      high: Math.max(atFirstKgPerM3, inflowKgPerM3),
      source: SOURCE,
    });
  return log(1 / left);
}

export function checkSolution({ volumeM3, concentrationKgPerM3 }: Solution): void {
  stayAtLeastZero({ quantity: 'volume', value: volumeM3, unit: 'm³', source: SOURCE });
  checkConcentration('concentration', concentrationKgPerM3);
}

export function checkConcentration(quantity: string, value: number): void {
  stayAtLeastZero({ quantity, value, unit: 'kg/m³', source: SOURCE });
}

function checkWashout({ atFirstKgPerM3, inflowKgPerM3 }: Washout): void {
  checkConcentration('concentration at first', atFirstKgPerM3);
  checkConcentration('concentration of the inflow', inflowKgPerM3);
}
