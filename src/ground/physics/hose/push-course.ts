// A push whose pressure changes on the way: gas that expands behind the water, a bag that stretches before it, a level that falls.
import { DormandPrince, rootBetween } from '../../maths/index.ts';
import { expandedVolumeM3, mustBeClosedGas, pressureAt } from '../gas/gas-expansion.ts';
import { mustBeAbove0, mustBeAtLeast0 } from '../gas/gas-range.ts';
import type { FlowingWater, HoseLine } from './hose-line.ts';
import { LineFlow } from './line-flow.ts';
import { mustBeVolume, mustDrive, mustHoldBack } from './regulated-push.ts';

/** What stands behind the water; pressures are absolute. */
export type PushSource =
  /** A regulator keeps the gas at one pressure. */
  | { readonly kind: 'regulated'; readonly pressurePa: number }
  /** A closed amount of gas expands: p Vⁿ stays the same. n is 1 for a slow push with warm walls, 1.4 for a sudden one. */
  | {
      readonly kind: 'blow-down';
      readonly pressurePa: number;
      readonly gasM3: number;
      readonly exponent: number;
    };

export interface Push {
  readonly line: HoseLine;
  readonly water: FlowingWater;
  readonly source: PushSource;
  /** Absolute pressure at the other end when the push begins: cabin, or cabin and column. */
  readonly againstPa: number;
  /** By how much that grows with each cubic metre that arrives: an elastic bag, or a level that changes under gravity (ρ g / A). */
  readonly risePaPerM3?: number;
  /** What arrives before the growth begins: the slack of a bag. */
  readonly slackM3?: number;
}

export type PushOutcome =
  | { readonly arrives: true; readonly seconds: number; readonly endDrivingPa: number }
  /** The pressures are in balance before. */
  | { readonly arrives: false; readonly reachableM3: number };

/** A balance is approached ever more slowly; this close to it a volume counts as out of reach. */
const NEAR_BALANCE = 1e-12;
const RULES = { relativeError: 1e-10, absoluteError: 1e-15 };

/**
 * The pressure that drives the water after so much has arrived: source − (against + rise × what is beyond the slack).
 * @param push pressures in Pa, absolute
 * @param arrivedM3 m³, 0 or more
 * @returns Pa; 0 or below where nothing flows
 * @source boyle-polytropic (closed gas); linear bag
 * @example drivingPa({
 *   line: { lengthM: 6, boreM: 0.008, roughnessM: 1.5e-6, minorLoss: 3, couplingsKv: [0.16, 0.16] },
 *   water: { densityKgPerM3: 997.8, viscosityPaS: 9.54e-4 },
 *   source: { kind: 'regulated', pressurePa: 151_987.5 },
 *   againstPa: 101_325,
 * }, 0) // 50662.5
 */
export function drivingPa(push: Push, arrivedM3: number): number {
  mustBeSoundPush(push);
  mustBeAtLeast0('volume that has arrived', arrivedM3, 'm³');
  return driving(push, arrivedM3);
}

/** `drivingPa` without a look at its figures: it makes nothing new. */
function driving({ source, againstPa, risePaPerM3 = 0, slackM3 = 0 }: Push, arrivedM3: number): number {
  const behindPa =
    source.kind === 'regulated' ? source.pressurePa : pressureAt(source, source.gasM3 + arrivedM3);
  return behindPa - againstPa - risePaPerM3 * Math.max(0, arrivedM3 - slackM3);
}

function mustBeSoundPush({ source, againstPa, risePaPerM3 = 0, slackM3 = 0 }: Push): void {
  if (source.kind === 'regulated') mustBeAbove0('pressure behind the water', source.pressurePa, 'Pa');
  else mustBeClosedGas(source);
  mustBeAbove0('pressure at the other end', againstPa, 'Pa');
  mustBeAtLeast0('growth of the pressure at the other end', risePaPerM3, 'Pa/m³');
  mustBeAtLeast0('slack of the bag', slackM3, 'm³');
}

/**
 * How much can arrive before the pressures are in balance; what is beyond it can never be pushed out in this way.
 *
 * For gas alone V = V₀ ((p₀/p)^(1/n) − 1); with a bag it is looked for by Brent's method.
 * @returns m³; 0 if nothing flows; Infinity for a regulator without a bag
 * @throws OutsideRange for gas without pressure or volume, and for an exponent outside 1 to 1.4
 * @source boyle-polytropic
 * @example reachableM3({
 *   line: { lengthM: 6, boreM: 0.008, roughnessM: 1.5e-6, minorLoss: 3, couplingsKv: [0.16, 0.16] },
 *   water: { densityKgPerM3: 997.8, viscosityPaS: 9.54e-4 },
 *   source: { kind: 'blow-down', pressurePa: 150e3, gasM3: 0.05, exponent: 1 },
 *   againstPa: 101_325,
 * }) // 0.024019…
 */
export function reachableM3(push: Push): number {
  const { source, againstPa, risePaPerM3 = 0, slackM3 = 0 } = push;
  const startPa = drivingPa(push, 0);
  if (!(startPa > 0)) return 0;
  const byGasM3 =
    source.kind === 'regulated'
      ? Number.POSITIVE_INFINITY
      : expandedVolumeM3(source, againstPa) - source.gasM3;
  if (risePaPerM3 === 0) return byGasM3;
  const byBagM3 = slackM3 + startPa / risePaPerM3;
  const high = Math.min(byGasM3, byBagM3);
  if (source.kind === 'regulated' || driving(push, high) >= 0) return high;
  return rootBetween((arrivedM3) => driving(push, arrivedM3), { low: 0, high });
}

/**
 * How long a push takes until a volume has arrived: dV/dt = Q(Δp(V)), integrated until V is reached.
 * @param push pressures in Pa, absolute; `exponent` 1 to 1.4; `risePaPerM3` Pa/m³, 0 or more
 * @param volumeM3 m³, 0 or more
 * @returns seconds and the pressure that is left, or how much is within reach if the volume is not
 * @throws OutsideRange beyond the ranges; RangeError for a line that holds nothing back
 * @source white-fluid (chapter 6), boyle-polytropic; integrated by dormand-prince-1980
 * @example pushTime({
 *   line: { lengthM: 6, boreM: 0.008, roughnessM: 1.5e-6, minorLoss: 3, couplingsKv: [0.16, 0.16] },
 *   water: { densityKgPerM3: 997.8, viscosityPaS: 9.54e-4 },
 *   source: { kind: 'blow-down', pressurePa: 150e3, gasM3: 0.05, exponent: 1 },
 *   againstPa: 101_325,
 * }, 0.03) // { arrives: false, reachableM3: 0.024019… }
 */
export function pushTime(push: Push, volumeM3: number): PushOutcome {
  mustBeVolume(volumeM3);
  const limitM3 = reachableM3(push);
  if (volumeM3 > 0 && volumeM3 >= limitM3 * (1 - NEAR_BALANCE))
    return { arrives: false, reachableM3: limitM3 };
  const state = new Float64Array([0]);
  const run = courseOf(push).run(
    state,
    { from: 0, to: Number.POSITIVE_INFINITY },
    (_t, arrived) => volumeM3 - (arrived[0] as number),
  );
  return { arrives: true, seconds: run.t, endDrivingPa: driving(push, volumeM3) };
}

/**
 * How much has arrived after a time.
 * @param push as for `pushTime`
 * @param seconds s, 0 or more
 * @returns m³
 * @throws OutsideRange beyond the ranges; RangeError for a time below 0 or a line that holds nothing back
 * @source white-fluid (chapter 6), boyle-polytropic; integrated by dormand-prince-1980
 * @example pushedAfter({
 *   line: { lengthM: 6, boreM: 0.008, roughnessM: 1.5e-6, minorLoss: 3, couplingsKv: [0.16, 0.16] },
 *   water: { densityKgPerM3: 997.8, viscosityPaS: 9.54e-4 },
 *   source: { kind: 'blow-down', pressurePa: 150e3, gasM3: 0.05, exponent: 1 },
 *   againstPa: 101_325,
 * }, 300) // 0.0058112
 */
export function pushedAfter(push: Push, seconds: number): number {
  const state = new Float64Array([0]);
  courseOf(push).run(state, { from: 0, to: seconds });
  return state[0] as number;
}

function courseOf(push: Push): DormandPrince {
  mustDrive(drivingPa(push, 0));
  const line = new LineFlow(push.line, push.water);
  mustHoldBack(line);
  return new DormandPrince(
    1,
    (_t, arrived, slope) => {
      // A trial may look beyond the balance: there nothing flows.
      slope[0] = line.drivenBy(driving(push, arrived[0] as number));
    },
    RULES,
  );
}
