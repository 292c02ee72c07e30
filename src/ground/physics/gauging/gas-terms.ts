// Terms of a gauging's budget that no gauge reads: vapour, gas that dissolves, gas that has not settled.
import { type Doubted, exp } from '../../maths/index.ts';
import { stayAboveZero, stayAtLeastZero, stayWithin } from '../stay-within.ts';
import { saturationPressurePa } from '../water/saturation.ts';
import { ADIABATIC_EXPONENT } from './volume-displacement.ts';

/**
 * The vapour over the water of a tank, with the doubt that its temperature makes: the gas is saturated.
 *
 * p_v = p_s(T), u = (p_s(T + u) − p_s(T − u)) / 2. Behind a dry bladder there is none: leave the term out.
 * @param waterK K, 273.15 to 647.096, with its u
 * @returns Pa
 * @throws RangeError outside that range
 * @source iapws-if97 (region 4)
 * @example saturatedVapour({ value: 297.15, u: 0.1 }).u // 17.9
 */
export function saturatedVapour({ value, u }: Doubted): Doubted {
  const slope = (saturationPressurePa(value + u) - saturationPressurePa(value - u)) / 2;
  return { value: saturationPressurePa(value), u: slope };
}

/** Both ends of what may be, and nothing known of what lies between. */
function betweenZeroAnd(most: number): Doubted {
  return { value: most / 2, u: most / (2 * Math.sqrt(3)), shape: 'rectangular' };
}

/**
 * The share of an injected gas that water takes in, for `lostShare` of a gauging without a bladder: from nothing to all that
 * would dissolve in the end, all alike.
 *
 * In the end α V_w / (V_g + α V_w): water holds α V_w p of gas where the room above it holds V_g p.
 * @param from `gasM3` and `waterM3` m³ as expected, above 0 and from 0; `bunsen` α, m³ of gas in a m³ of water: 0.017 for air at
 *   25 °C (from memory), more in cold water
 * @returns a share
 * @throws OutsideRange outside those ranges and for NaN
 * @source bunsen
 * @example dissolvedShare({ gasM3: 0.04, waterM3: 0.17, bunsen: 0.017 }).value // 0.034: between 0 and 6.7 %
 */
export function dissolvedShare({
  gasM3,
  waterM3,
  bunsen,
}: {
  readonly gasM3: number;
  readonly waterM3: number;
  readonly bunsen: number;
}): Doubted {
  const source = 'bunsen';
  stayAboveZero({ quantity: 'volume of the gas', value: gasM3, unit: 'm³', source });
  stayAtLeastZero({ quantity: 'volume of the water', value: waterM3, unit: 'm³', source });
  stayWithin({ quantity: 'solubility of the gas', value: bunsen, unit: 'm³/m³', low: 0, high: 0.1, source });
  return betweenZeroAnd((bunsen * waterM3) / (gasM3 + bunsen * waterM3));
}

/**
 * How much warmer than its thermometer the tank's gas may still be, for `unsettledK`: from nothing to what is left of the
 * warming by a sudden charge.
 *
 * Charged at once and without heat to the walls, the gas would be at T p₂ / (p₁ + (p₂ − p₁)/1.4); of that rise e^(−t/τ) is left.
 * @param from absolute pressures before and after, Pa; `gasK` K before; `waitS` s; `timeConstantS` τ of the tank's gas, s: from
 *   your own cooling curve, minutes where a bladder is near
 * @returns K
 * @throws OutsideRange for pressures not above 0 or falling, temperatures outside 200 to 400 K, times below 0, and NaN
 * @source charging-balance
 * @example settlingTerm({ tankBeforePa: 101.28e3, tankAfterPa: 124.43e3, gasK: 295, waitS: 1200, timeConstantS: 300 }).value // 0.15
 */
export function settlingTerm(from: {
  readonly tankBeforePa: number;
  readonly tankAfterPa: number;
  readonly gasK: number;
  readonly waitS: number;
  readonly timeConstantS: number;
}): Doubted {
  const { tankBeforePa, tankAfterPa, gasK, waitS, timeConstantS } = from;
  const source = 'charging-balance';
  stayAboveZero({ quantity: 'tank pressure before', value: tankBeforePa, unit: 'Pa', source });
  stayAtLeastZero({
    quantity: 'rise of the tank pressure',
    value: tankAfterPa - tankBeforePa,
    unit: 'Pa',
    source,
  });
  stayWithin({ quantity: 'temperature of the gas', value: gasK, unit: 'K', low: 200, high: 400, source });
  stayAtLeastZero({ quantity: 'wait', value: waitS, unit: 's', source });
  stayAboveZero({ quantity: 'time constant of the gas', value: timeConstantS, unit: 's', source });
  const charged = tankBeforePa + (tankAfterPa - tankBeforePa) / ADIABATIC_EXPONENT;
  const warmingK = gasK * (tankAfterPa / charged - 1);
  return betweenZeroAnd(warmingK * exp(-waitS / timeConstantS));
}
