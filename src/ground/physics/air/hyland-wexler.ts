// The vapour pressure over water and over ice as the psychrometric tables of the handbooks reckon it.
import { exp, log } from '../../maths/index.ts';
import { OutsideRange } from '../outside-range.ts';

const TRIPLE_C = 0.01;
const LOWEST_C = -100;
const HIGHEST_C = 200;

/**
 * The saturation pressure after Hyland and Wexler: ln p = C₁/T + C₂ + C₃T + C₄T² + C₅T³ + C₆T⁴ + C₇ ln T over ice, and
 * ln p = C₈/T + C₉ + C₁₀T + C₁₁T² + C₁₂T³ + C₁₃ ln T over water.
 *
 * Only to compare with tables that are made with it; the product's own engine is `vapourSaturationPa`. The two agree to 0.03 %.
 * @param temperatureC °C, −100 to 0.01 over ice, above that to 200 over water
 * @returns Pa
 * @throws OutsideRange outside that range and for NaN
 * @source ashrae-fundamentals (chapter 1, equations 5 and 6); hyland-wexler-1983
 * @example hylandWexlerPa(25) // 3169.216
 */
export function hylandWexlerPa(temperatureC: number): number {
  if (!(temperatureC >= LOWEST_C && temperatureC <= HIGHEST_C))
    throw new OutsideRange({
      quantity: 'temperature of saturated air',
      value: temperatureC,
      unit: '°C',
      low: LOWEST_C,
      high: HIGHEST_C,
      source: 'hyland-wexler-1983',
    });
  const t = temperatureC + 273.15;
  return exp(temperatureC <= TRIPLE_C ? overIce(t) : overWater(t));
}

function overIce(t: number): number {
  const powers = -9.677843e-3 + t * (6.2215701e-7 + t * (2.0747825e-9 + t * -9.484024e-13));
  return -5.6745359e3 / t + 6.3925247 + t * powers + 4.1635019 * log(t);
}

function overWater(t: number): number {
  const powers = -4.8640239e-2 + t * (4.1764768e-5 + t * -1.4452093e-8);
  return -5.8002206e3 / t + 1.3914993 + t * powers + 6.5459673 * log(t);
}
