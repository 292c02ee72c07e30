// The pressure of water vapour over ice.
import { exp, log } from '../../maths/index.ts';
import { OutsideRange } from '../outside-range.ts';

const TRIPLE_K = 273.16;
const TRIPLE_PA = 611.657;
const LOWEST_K = 223.15;
const SOURCE = 'iapws-melting';

const a1 = -21.2144006;
const a2 = 27.3203819;
const a3 = -6.1059813;
const b1 = 0.333333333e-2;
const b2 = 1.20666667;
const b3 = 1.70333333;

/** θ^b by the logarithm of θ: θ is near 1, so no digit is lost. */
function logarithmOfRatio(temperatureK: number): number {
  const theta = temperatureK / TRIPLE_K;
  const l = log(theta);
  return (a1 * exp(b1 * l) + a2 * exp(b2 * l) + a3 * exp(b3 * l)) / theta;
}

/**
 * The sublimation pressure of ice: ln(p / p_t) = Σ a_i θ^b_i / θ, θ = T / 273.16 K, p_t = 611.657 Pa.
 * @param temperatureK K, 223.15 to 273.16: the release holds from 50 K on, this product has no use below −50 °C
 * @returns Pa
 * @throws OutsideRange outside that range and for NaN
 * @source iapws-melting (equation 6)
 * @example iceVapourPressurePa(230) // 8.94735
 */
export function iceVapourPressurePa(temperatureK: number): number {
  if (!(temperatureK >= LOWEST_K && temperatureK <= TRIPLE_K))
    throw new OutsideRange({
      quantity: 'temperature of ice',
      value: temperatureK,
      unit: 'K',
      low: LOWEST_K,
      high: TRIPLE_K,
      source: SOURCE,
    });
  return TRIPLE_PA * exp(logarithmOfRatio(temperatureK));
}

/** From the heat of sublimation over the gas constant, K: the slope of ln p against 1/T, good to a few per cent. */
const SLOPE_K = 6140;
const LOWEST_PA = 3.94;
/** Three steps from anywhere in the range come to the last bits; the rest are for safety. */
const MOST_STEPS = 20;

/**
 * The frost point: the temperature at which ice has this vapour pressure. Newton's steps on ln p against 1/T, which is
 * nearly a straight line.
 * @param pressurePa Pa, 3.94 to 611.657
 * @returns K
 * @throws OutsideRange outside that range and for NaN
 * @source iapws-melting (equation 6, solved for T)
 * @example frostPointK(8.94735) // 230.0000
 */
export function frostPointK(pressurePa: number): number {
  if (!(pressurePa >= LOWEST_PA && pressurePa <= TRIPLE_PA))
    throw new OutsideRange({
      quantity: 'vapour pressure over ice',
      value: pressurePa,
      unit: 'Pa',
      low: LOWEST_PA,
      high: TRIPLE_PA,
      source: SOURCE,
    });
  const wanted = log(pressurePa / TRIPLE_PA);
  let reciprocal = 1 / TRIPLE_K - wanted / SLOPE_K;
  for (let step = 0; step < MOST_STEPS; step += 1) {
    const miss = logarithmOfRatio(1 / reciprocal) - wanted;
    reciprocal += miss / SLOPE_K;
    if (Math.abs(miss) < 1e-14) break;
  }
  return Math.min(TRIPLE_K, 1 / reciprocal);
}
