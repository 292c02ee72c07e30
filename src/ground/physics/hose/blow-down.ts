// A push by gas that is shut off: between slow and sudden expansion, and the closed form for one law of flow.
import { asin } from '../../maths/index.ts';
import { stayAboveZero, stayWithin } from '../stay-within.ts';
import { type Push, type PushOutcome, pushTime } from './push-course.ts';

const SOURCE = 'boyle-polytropic';

/** Walls keep the gas warm: minutes, a thin bladder. */
const SLOW = 1;
/** No heat reaches the gas; the ratio of the heat capacities of air. */
const SUDDEN = 1.4;

export interface BlowDown {
  /** With an exponent of 1: the gas stays warm, the push is as fast and reaches as far as it can. */
  readonly slow: PushOutcome;
  /** With an exponent of 1.4: the gas cools, the push is slower and ends sooner. */
  readonly sudden: PushOutcome;
}

/**
 * How long a push takes when the gas behind the water is shut off and expands: both bounds, p V and p V^1.4 constant.
 * @param push as for `pushTime`, without a source; `gas` its absolute pressure in Pa and volume in m³ at the start
 * @param volumeM3 m³ to arrive
 * @returns the outcome at both bounds; the truth lies between them
 * @throws OutsideRange as `pushTime`
 * @source boyle-polytropic, white-fluid (chapter 6)
 * @example blowDown({ line, water, againstPa: 101_325, gas: { pressurePa: 150e3, gasM3: 0.05 } }, 0.01)
 */
export function blowDown(
  push: Omit<Push, 'source'> & { readonly gas: { readonly pressurePa: number; readonly gasM3: number } },
  volumeM3: number,
): BlowDown {
  const { gas, ...rest } = push;
  const outcome = (exponent: number): PushOutcome =>
    pushTime({ ...rest, source: { kind: 'blow-down', ...gas, exponent } }, volumeM3);
  return { slow: outcome(SLOW), sudden: outcome(SUDDEN) };
}

/** A blow-down at constant temperature through a line whose flow is Q = K √Δp. */
export interface QuadraticBlowDown {
  /** Absolute pressure of the gas at the start, Pa. */
  readonly pressurePa: number;
  readonly gasM3: number;
  /** Absolute pressure at the other end, Pa. */
  readonly againstPa: number;
  /** K in m³/(s Pa^½). */
  readonly flowPerRootPa: number;
}

/**
 * The time until the gas has grown to a volume, in closed form: t = C/(K p^1.5) [φ − sin φ cos φ] between the ends, with
 * sin²φ = V p/C, C = p₀ V₀ and p the pressure at the other end. A check for the integrated form.
 * @param push pressures in Pa, absolute; `gasM3` m³; K above 0
 * @param endM3 m³, from the start to C/p, where the pressures are in balance
 * @returns s
 * @throws OutsideRange for a volume beyond the balance or below the start
 * @source derived by integrating dV/dt = K √(C/V − p); agrees with the integrator of another program to nine digits
 * @example quadraticBlowDownSeconds(
 *   { pressurePa: 150e3, gasM3: 0.05, againstPa: 101_325, flowPerRootPa: 1e-4 / Math.sqrt(5e4) },
 *   0.069343994,
 * ) // 300.00000
 */
export function quadraticBlowDownSeconds(push: QuadraticBlowDown, endM3: number): number {
  const { pressurePa, gasM3, againstPa, flowPerRootPa } = push;
  for (const [quantity, value, unit] of [
    ['pressure of the gas', pressurePa, 'Pa'],
    ['volume of the gas', gasM3, 'm³'],
    ['pressure at the other end', againstPa, 'Pa'],
    ['flow for each root of a pascal', flowPerRootPa, 'm³/(s Pa^½)'],
  ] as const)
    stayAboveZero({ quantity, value, unit, source: SOURCE });
  const amount = pressurePa * gasM3;
  const high = amount / againstPa;
  stayWithin({
    quantity: 'volume to which the gas grows',
    value: endM3,
    unit: 'm³',
    low: gasM3,
    high,
    source: SOURCE,
  });
  const scale = amount / (flowPerRootPa * againstPa * Math.sqrt(againstPa));
  return scale * (swept(endM3 / high) - swept(gasM3 / high));
}

/** φ − sin φ cos φ for sin²φ. */
function swept(square: number): number {
  return asin(Math.sqrt(square)) - Math.sqrt(square * (1 - square));
}
