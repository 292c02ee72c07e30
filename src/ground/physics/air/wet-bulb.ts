// The wet-bulb temperature: how cold a wet wick gets in moving air.
import { rootBetween } from '../../maths/index.ts';
import { OutsideRange } from '../outside-range.ts';
import type { CabinAir } from './cabin-air.ts';
import { dewPointC, humidityRatio, saturatedVapourPa, vapourOfHumidityRatio } from './moist-air.ts';

const SOURCE = 'ashrae-fundamentals';
const LATENT_J_PER_KG = 2_501_000;
const ICE_LATENT_J_PER_KG = 2_830_000;
const VAPOUR_J_PER_KG_K = 1860;
const WATER_J_PER_KG_K = 4186;
const ICE_J_PER_KG_K = 2100;
/** Below this a wick freezes. */
const ICE_BELOW_C = 0;

/**
 * The humidity ratio that a dry and a wet thermometer tell:
 * W = ((2501 − 2.326 t*) W_s* − c_p (t − t*)) / (2501 + 1.86 t − 4.186 t*), over an iced wick
 * W = ((2830 − 0.24 t*) W_s* − c_p (t − t*)) / (2830 + 1.86 t − 2.1 t*).
 * @param temperatures `dryC` °C, −20 to 60 · `wetC` °C, −20 to `dryC`
 * @returns kg/kg; at least 0, air cannot be drier than dry
 * @throws OutsideRange outside those ranges, for NaN, and where the wet one is colder than dry air makes it
 * @source ashrae-fundamentals (chapter 1, equations 33 and 35)
 * @example humidityRatioOfWetBulb(handbookAir(95_461), { dryC: 30, wetC: 25 }) // 0.019225
 */
export function humidityRatioOfWetBulb(
  air: CabinAir,
  temperatures: { readonly dryC: number; readonly wetC: number },
): number {
  const { dryC, wetC } = temperatures;
  // Both ends are looked at: a wet bulb is never warmer than the air.
  saturatedVapourPa(air, dryC);
  if (!(wetC <= dryC))
    throw new OutsideRange({
      quantity: 'wet-bulb temperature',
      value: wetC,
      unit: '°C',
      low: -20,
      high: dryC,
      source: SOURCE,
    });
  const ratio = ratioAt(air, dryC, wetC);
  // A last bit below 0 is rounding.
  if (!(ratio >= -1e-12))
    throw new OutsideRange({
      quantity: 'humidity ratio that the two thermometers tell',
      value: ratio,
      unit: 'kg/kg',
      low: 0,
      high: humidityRatio(air, dryC, 1),
      source: SOURCE,
    });
  return Math.max(0, ratio);
}

/** May come out below 0. */
function ratioAt(air: CabinAir, dryC: number, wetC: number): number {
  const saturated = humidityRatio(air, wetC, 1);
  const sensible = air.gas.heatCapacityJPerKgK * (dryC - wetC);
  return wetC >= ICE_BELOW_C
    ? ((LATENT_J_PER_KG - (WATER_J_PER_KG_K - VAPOUR_J_PER_KG_K) * wetC) * saturated - sensible) /
        (LATENT_J_PER_KG + VAPOUR_J_PER_KG_K * dryC - WATER_J_PER_KG_K * wetC)
    : ((ICE_LATENT_J_PER_KG - (ICE_J_PER_KG_K - VAPOUR_J_PER_KG_K) * wetC) * saturated - sensible) /
        (ICE_LATENT_J_PER_KG + VAPOUR_J_PER_KG_K * dryC - ICE_J_PER_KG_K * wetC);
}

/**
 * The wet-bulb temperature of air: the equation above solved for t*.
 * @param temperatureC °C, −20 to 60
 * @param ratio kg/kg, 0 to saturation
 * @returns °C, between the dew point and the temperature of the air
 * @throws OutsideRange outside those ranges, for NaN, and where it would lie below −20 °C
 * @source ashrae-fundamentals (chapter 1, equations 33 and 35)
 * @example wetBulbC(handbookAir(101_325), 40, 0.0064) // 20.0
 */
export function wetBulbC(air: CabinAir, temperatureC: number, ratio: number): number {
  const saturated = humidityRatio(air, temperatureC, 1);
  if (!(ratio >= 0 && ratio <= saturated * (1 + 1e-12)))
    throw new OutsideRange({
      quantity: 'humidity ratio',
      value: ratio,
      unit: 'kg/kg',
      low: 0,
      high: saturated,
      source: SOURCE,
    });
  const of = (wetC: number): number => ratioAt(air, temperatureC, wetC) - ratio;
  if (of(temperatureC) <= 0) return temperatureC;
  const lowest = -20;
  if (of(lowest) >= 0)
    throw new OutsideRange({
      quantity: 'wet-bulb temperature of this air',
      value: lowest,
      unit: '°C',
      low: lowest,
      high: temperatureC,
      source: SOURCE,
    });
  return rootBetween(of, { low: lowest, high: temperatureC }, 1e-15);
}

/** The dew point of air of a humidity ratio, °C. @see dewPointC */
export function dewPointOfRatioC(air: CabinAir, ratio: number): number {
  return dewPointC(air, vapourOfHumidityRatio(air, ratio));
}
