// The line on which water boils: its pressure at a temperature, and its temperature at a pressure.
import { OutsideRange } from '../outside-range.ts';

const n1 = 0.11670521452767e4;
const n2 = -0.72421316703206e6;
const n3 = -0.17073846940092e2;
const n4 = 0.1202082470247e5;
const n5 = -0.32325550322333e7;
const n6 = 0.1491510861353e2;
const n7 = -0.48232657361591e4;
const n8 = 0.40511340542057e6;
const n9 = -0.23855557567849;
const n10 = 0.65017534844798e3;

const LOWEST_K = 273.15;
const CRITICAL_K = 647.096;
const LOWEST_PA = 611.213;
const CRITICAL_PA = 22.064e6;
const SOURCE = 'iapws-if97';

/**
 * The saturation pressure of pure water.
 *
 * p = (2C / (−B + √(B² − 4AC)))⁴ MPa, with ϑ = T + n₉/(T − n₁₀), A = ϑ² + n₁ϑ + n₂, B = n₃ϑ² + n₄ϑ + n₅, C = n₆ϑ² + n₇ϑ + n₈.
 *
 * @param temperatureK K, 273.15 to 647.096
 * @returns Pa
 * @throws OutsideRange outside that range and for NaN
 * @source iapws-if97 (region 4, equation 30)
 * @example saturationPressurePa(300) // 3536.589…
 */
export function saturationPressurePa(temperatureK: number): number {
  if (!(temperatureK >= LOWEST_K && temperatureK <= CRITICAL_K))
    throw new OutsideRange({
      quantity: 'temperature of boiling water',
      value: temperatureK,
      unit: 'K',
      low: LOWEST_K,
      high: CRITICAL_K,
      source: SOURCE,
    });
  const theta = temperatureK + n9 / (temperatureK - n10);
  const a = theta * theta + n1 * theta + n2;
  const b = n3 * theta * theta + n4 * theta + n5;
  const c = n6 * theta * theta + n7 * theta + n8;
  const root = (2 * c) / (-b + Math.sqrt(b * b - 4 * a * c));
  const square = root * root;
  return square * square * 1e6;
}

/**
 * The temperature at which pure water boils.
 *
 * T = (n₁₀ + D − √((n₁₀ + D)² − 4 (n₉ + n₁₀ D))) / 2 with D = 2G / (−F − √(F² − 4EG)), β = (p / MPa)^¼, E = β² + n₃β + n₆,
 * F = n₁β² + n₄β + n₇, G = n₂β² + n₅β + n₈: the same equation as that of the pressure, solved for T.
 *
 * @param pressurePa Pa, 611.213 (0 °C) to 22.064 MPa
 * @returns K
 * @throws OutsideRange outside that range and for NaN
 * @source iapws-if97 (region 4, equation 31)
 * @example saturationTemperatureK(0.1e6) // 372.755919…
 */
export function saturationTemperatureK(pressurePa: number): number {
  if (!(pressurePa >= LOWEST_PA && pressurePa <= CRITICAL_PA))
    throw new OutsideRange({
      quantity: 'pressure of boiling water',
      value: pressurePa,
      unit: 'Pa',
      low: LOWEST_PA,
      high: CRITICAL_PA,
      source: SOURCE,
    });
  const square = Math.sqrt(pressurePa / 1e6);
  const beta = Math.sqrt(square);
  const e = square + n3 * beta + n6;
  const f = n1 * square + n4 * beta + n7;
  const g = n2 * square + n5 * beta + n8;
  const d = (2 * g) / (-f - Math.sqrt(f * f - 4 * e * g));
  const sum = n10 + d;
  return (sum - Math.sqrt(sum * sum - 4 * (n9 + n10 * d))) / 2;
}
