// One state of the cabin air with everything that follows from it.
import { saturationTemperatureK } from '../water/saturation.ts';
import type { CabinAir } from './cabin-air.ts';
import {
  dewPointC,
  humidityRatioOfVapour,
  moistDensityKgPerM3,
  moistEnthalpyJPerKg,
  moistVolumeM3PerKg,
  saturatedVapourPa,
  vapourPressurePa,
} from './moist-air.ts';
import { wetBulbC } from './wet-bulb.ts';

export interface AirState {
  readonly temperatureC: number;
  readonly relativeHumidity: number;
  readonly pressurePa: number;
  readonly enhancement: number;
  readonly saturatedPa: number;
  readonly vapourPa: number;
  /** kg of vapour to a kg of dry gas. */
  readonly humidityRatio: number;
  /** A frost point below 0.01 °C. */
  readonly dewPointC: number;
  /** Null where it lies below −20 °C. */
  readonly wetBulbC: number | null;
  readonly enthalpyJPerKg: number;
  readonly volumeM3PerKg: number;
  readonly densityKgPerM3: number;
  /** kg of vapour in a cubic metre of cabin. */
  readonly vapourKgPerM3: number;
}

/**
 * Everything about moist air of a temperature and a relative humidity: the functions of moist-air.ts one after another.
 * @param state `temperatureC` °C, −20 to 60 · `relativeHumidity` above 0 to 1
 * @throws OutsideRange outside those ranges, for NaN, and for air so dry that its frost point lies below −50 °C
 * @source as each of the functions
 * @example airState(cabinAir({ pressurePa: 101_200 }), { temperatureC: 22, relativeHumidity: 0.48 }).dewPointC // 10.5
 */
export function airState(
  air: CabinAir,
  state: { readonly temperatureC: number; readonly relativeHumidity: number },
): AirState {
  const { temperatureC, relativeHumidity } = state;
  const vapourPa = vapourPressurePa(air, temperatureC, relativeHumidity);
  const ratio = humidityRatioOfVapour(air, vapourPa);
  const volumeM3PerKg = moistVolumeM3PerKg(air, temperatureC, ratio);
  return {
    temperatureC,
    relativeHumidity,
    pressurePa: air.pressurePa,
    enhancement: air.enhancement,
    saturatedPa: saturatedVapourPa(air, temperatureC),
    vapourPa,
    humidityRatio: ratio,
    dewPointC: dewPointC(air, vapourPa),
    wetBulbC: wetBulbOrNull(air, temperatureC, ratio),
    enthalpyJPerKg: moistEnthalpyJPerKg(air, temperatureC, ratio),
    volumeM3PerKg,
    densityKgPerM3: moistDensityKgPerM3(air, temperatureC, ratio),
    vapourKgPerM3: ratio / volumeM3PerKg,
  };
}

/** Very cold dry air has its wet bulb beyond the range in which this product knows moist air. */
function wetBulbOrNull(air: CabinAir, temperatureC: number, ratio: number): number | null {
  const isKnown = temperatureC > -10;
  return isKnown ? wetBulbC(air, temperatureC, ratio) : null;
}

/**
 * The temperature at which water boils in the open at a cabin's pressure.
 * @param pressurePa Pa, 611.213 to 22.064e6
 * @returns °C
 * @throws OutsideRange outside that range and for NaN
 * @source iapws-if97 (region 4, equation 31)
 * @example boilingPointC(70_000) // 89.9
 */
export function boilingPointC(pressurePa: number): number {
  return saturationTemperatureK(pressurePa) - 273.15;
}
