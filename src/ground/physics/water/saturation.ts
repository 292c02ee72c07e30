// The pressure at which water boils at a temperature.

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

/**
 * The saturation pressure of pure water.
 *
 * p = (2C / (−B + √(B² − 4AC)))⁴ MPa, with ϑ = T + n₉/(T − n₁₀), A = ϑ² + n₁ϑ + n₂, B = n₃ϑ² + n₄ϑ + n₅, C = n₆ϑ² + n₇ϑ + n₈.
 *
 * @param temperatureK K, 273.15 to 647.096
 * @returns Pa
 * @throws RangeError outside that range and for NaN
 * @source iapws-if97 (region 4, equation 30)
 * @example saturationPressurePa(300) // 3536.589…
 */
export function saturationPressurePa(temperatureK: number): number {
  if (!(temperatureK >= LOWEST_K && temperatureK <= CRITICAL_K)) {
    throw new RangeError(
      `saturation is known here from ${LOWEST_K} to ${CRITICAL_K} K, not at ${temperatureK}`,
    );
  }
  const theta = temperatureK + n9 / (temperatureK - n10);
  const a = theta * theta + n1 * theta + n2;
  const b = n3 * theta * theta + n4 * theta + n5;
  const c = n6 * theta * theta + n7 * theta + n8;
  const root = (2 * c) / (-b + Math.sqrt(b * b - 4 * a * c));
  const square = root * root;
  return square * square * 1e6;
}
