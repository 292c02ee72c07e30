// Silver: how much an electrode gives, and how fast walls take it; how fast is for samples to say, no figure is shipped.
import { exp, log } from '../../maths/index.ts';
import { FARADAY_C_PER_MOL, molarMassKgPerMol } from '../molar.ts';
import { OutsideRange } from '../outside-range.ts';
import { stayAboveZero, stayAtLeastZero, stayShareAboveZero } from '../stay-within.ts';

const SILVER_KG_PER_MOL = molarMassKgPerMol('Ag');

/**
 * The silver that a current dissolves: m = M η I t / F, 4.025 g for an ampere and hour.
 *
 * Pure silver follows the law; alloys give less. Chloride takes free silver out of the water again.
 * @param run `chargeC` C (ampere seconds), from 0; `currentEfficiency` above 0 up to 1, from a test of the outpost's own unit
 * @returns kg
 * @throws OutsideRange outside those ranges and for NaN
 * @source faraday; walraven-2015
 * @example silverDissolvedKg({ chargeC: 3600, currentEfficiency: 1 }) * 1000 // 4.0247 g
 */
export function silverDissolvedKg(run: {
  readonly chargeC: number;
  readonly currentEfficiency: number;
}): number {
  const { chargeC, currentEfficiency } = run;
  stayAtLeastZero({ quantity: 'charge', value: chargeC, unit: 'C', source: 'faraday' });
  stayShareAboveZero({ quantity: 'current efficiency', value: currentEfficiency, source: 'faraday' });
  return (SILVER_KG_PER_MOL * currentEfficiency * chargeC) / FARADAY_C_PER_MOL;
}

/**
 * The charge that dissolves so much silver: Q = m F / (M η). The inverse of `silverDissolvedKg`.
 * @param wanted `silverKg` kg, from 0; `currentEfficiency` above 0 up to 1
 * @returns C (ampere seconds)
 * @throws OutsideRange outside those ranges and for NaN
 * @source faraday; walraven-2015
 * @example chargeForSilverC({ silverKg: 4e-6, currentEfficiency: 0.9 }) // 3.975
 */
export function chargeForSilverC(wanted: {
  readonly silverKg: number;
  readonly currentEfficiency: number;
}): number {
  const { silverKg, currentEfficiency } = wanted;
  stayAtLeastZero({ quantity: 'silver wanted', value: silverKg, unit: 'kg', source: 'faraday' });
  stayShareAboveZero({ quantity: 'current efficiency', value: currentEfficiency, source: 'faraday' });
  return (silverKg * FARADAY_C_PER_MOL) / (SILVER_KG_PER_MOL * currentEfficiency);
}

/** How fast a wall takes silver, and how much wall there is. */
export interface WallLoss {
  /** m/s, of the wetted material: from two samples of the outpost (`wallLossFromSamples`), never from a default. */
  readonly lossMPerS: number;
  /** Wetted area for each volume of water, 1/m. */
  readonly areaPerVolumePerM: number;
}

/**
 * What is left of a biocide after a time on walls: c = c₀ e^(−k (A/V) t).
 *
 * First order: for walls that have been wetted for weeks. A fresh wall takes faster at first and then less (a second order).
 * @param stood `fromKgPerM3` kg/m³, from 0; `lossMPerS` m/s, from 0; `areaPerVolumePerM` 1/m, above 0; `timeS` s, from 0
 * @returns kg/m³
 * @throws OutsideRange outside those ranges and for NaN
 * @source first-order-loss
 * @example biocideLeftKgPerM3({ fromKgPerM3: 2e-4, lossMPerS: 2.5e-8, areaPerVolumePerM: 14, timeS: 86400 * 30 }) * 1000 // 0.0807 mg/L
 */
export function biocideLeftKgPerM3(
  stood: WallLoss & { readonly fromKgPerM3: number; readonly timeS: number },
): number {
  const { fromKgPerM3, timeS } = stood;
  checkLoss(stood);
  stayAtLeastZero({
    quantity: 'concentration at first',
    value: fromKgPerM3,
    unit: 'kg/m³',
    source: 'first-order-loss',
  });
  stayAtLeastZero({ quantity: 'time', value: timeS, unit: 's', source: 'first-order-loss' });
  return fromKgPerM3 * exp(-stood.lossMPerS * stood.areaPerVolumePerM * timeS);
}

/**
 * How long a biocide lasts: t = ln(c₀ / c) / (k A/V). Infinite where nothing is lost.
 * @param stood `fromKgPerM3` and `toKgPerM3` kg/m³, above 0, the second not above the first; `lossMPerS`, `areaPerVolumePerM`
 * @returns s
 * @throws OutsideRange outside those ranges and for NaN
 * @source first-order-loss
 * @example timeForBiocideS({ fromKgPerM3: 2e-4, toKgPerM3: 5e-5, lossMPerS: 0.03 / 86400, areaPerVolumePerM: 1 }) / 86400 // 46.2 days
 */
export function timeForBiocideS(
  stood: WallLoss & { readonly fromKgPerM3: number; readonly toKgPerM3: number },
): number {
  const { fromKgPerM3, toKgPerM3 } = stood;
  checkLoss(stood);
  checkFall(fromKgPerM3, toKgPerM3);
  const perS = stood.lossMPerS * stood.areaPerVolumePerM;
  return fromKgPerM3 === toKgPerM3 ? 0 : log(fromKgPerM3 / toKgPerM3) / perS;
}

export interface Sampled {
  readonly value: number;
  /** One standard deviation. */
  readonly u: number;
}

export interface FittedLoss extends WallLoss {
  /** One standard deviation of the loss. */
  readonly uMPerS: number;
}

/**
 * How fast a wall takes a biocide, from two samples: k = ln(c₁ / c₂) / ((A/V) t), u(k) = √((u₁/c₁)² + (u₂/c₂)²) / ((A/V) t).
 *
 * Below zero where the second sample is the higher; then its ± tells that the two do not differ, or that something else went on.
 * @param samples `first` and `second` concentrations in kg/m³, above 0, each with its u from 0; `timeS` s between them, above 0;
 *   `areaPerVolumePerM` 1/m, above 0
 * @throws OutsideRange outside those ranges and for NaN
 * @source first-order-loss; gum (5.1.2)
 * @example wallLossFromSamples({ first: { value: 2e-4, u: 1e-5 }, second: { value: 1.4e-4, u: 1e-5 }, timeS: 86400 * 10,
 *   areaPerVolumePerM: 14 }).lossMPerS * 1e8 // 2.949
 */
export function wallLossFromSamples(samples: {
  readonly first: Sampled;
  readonly second: Sampled;
  readonly timeS: number;
  readonly areaPerVolumePerM: number;
}): FittedLoss {
  const { first, second, timeS, areaPerVolumePerM } = samples;
  for (const { value, u } of [first, second]) {
    stayAboveZero({
      quantity: 'concentration of a sample',
      value,
      unit: 'kg/m³',
      source: 'first-order-loss',
    });
    stayAtLeastZero({ quantity: 'u of a sample', value: u, unit: 'kg/m³', source: 'gum' });
  }
  stayAboveZero({
    quantity: 'time between the samples',
    value: timeS,
    unit: 's',
    source: 'first-order-loss',
  });
  checkArea(areaPerVolumePerM);
  const firstShare = first.u / first.value;
  const secondShare = second.u / second.value;
  const contact = areaPerVolumePerM * timeS;
  return {
    lossMPerS: log(first.value / second.value) / contact,
    uMPerS: Math.sqrt(firstShare * firstShare + secondShare * secondShare) / contact,
    areaPerVolumePerM,
  };
}

function checkLoss({ lossMPerS, areaPerVolumePerM }: WallLoss): void {
  stayAtLeastZero({
    quantity: 'loss to the wall',
    value: lossMPerS,
    unit: 'm/s',
    source: 'first-order-loss',
  });
  checkArea(areaPerVolumePerM);
}

function checkArea(areaPerVolumePerM: number): void {
  const given = { quantity: 'wetted area for the volume', value: areaPerVolumePerM, unit: '1/m' };
  stayAboveZero({ ...given, source: 'first-order-loss' });
}

function checkFall(from: number, to: number): void {
  for (const value of [from, to])
    stayAboveZero({ quantity: 'concentration', value, unit: 'kg/m³', source: 'first-order-loss' });
  if (to > from)
    throw new OutsideRange({
      quantity: 'concentration that a loss leads to',
      value: to,
      unit: 'kg/m³',
      low: 0,
      lowIsOpen: true,
      high: from,
      source: 'first-order-loss',
    });
}
