// The viscosity of water, liquid and steam, and a short form for liquid water at the pressure of a cabin.
import { exp, pow } from '../../maths/index.ts';
import { OutsideRange } from '../outside-range.ts';
import { liquidDensityKgPerM3 } from './liquid-water.ts';
import { VISCOSITY_TERMS } from './viscosity-table.ts';

const CRITICAL_K = 647.096;
const CRITICAL_KG_PER_M3 = 322;
const LOWEST_K = 273.15;
const HIGHEST_K = 1173.15;
const HIGHEST_KG_PER_M3 = 1200;

/**
 * The dynamic viscosity of water: µ = µ₀(T) µ₁(T, ρ), without the critical term.
 *
 * µ₀ = 100 √T̄ / Σ H_i / T̄^i and µ₁ = exp(ρ̄ Σ_i (1/T̄ − 1)^i Σ_j H_ij (ρ̄ − 1)^j), in µPa s, T̄ = T / 647.096 K and
 * ρ̄ = ρ / 322 kg/m³. The critical term that is left out is 1 except close to the critical point (645.91 to 650.77 K and 245.8
 * to 405.3 kg/m³, from memory). Uncertainty for liquid water at a cabin's pressure about 1 %.
 *
 * @param temperatureK K, 273.15 to 1173.15
 * @param densityKgPerM3 kg/m³, 0 to 1200: the densest state of the release's own check table
 * @returns Pa s
 * @throws OutsideRange outside those ranges and for NaN
 * @source iapws-viscosity (equations 10 to 12, tables 1 and 2)
 * @example viscosityPaS(298.15, 998) // 889.735100e-6
 */
export function viscosityPaS(temperatureK: number, densityKgPerM3: number): number {
  holdRange(temperatureK, densityKgPerM3);
  const reciprocal = CRITICAL_K / temperatureK;
  const x = reciprocal - 1;
  const density = densityKgPerM3 / CRITICAL_KG_PER_M3;
  const y = density - 1;
  const dilute = 1.67752 + reciprocal * (2.20462 + reciprocal * (0.6366564 + reciprocal * -0.241605));
  let sum = 0;
  // The terms stand by power of x in rows of seven powers of y: Horner's way in both.
  for (let row = 5; row >= 0; row -= 1) {
    let ofDensity = 0;
    for (let column = 6; column >= 0; column -= 1)
      ofDensity = ofDensity * y + (VISCOSITY_TERMS[7 * row + column] as number);
    sum = sum * x + ofDensity;
  }
  return (1e-4 * exp(density * sum)) / (Math.sqrt(reciprocal) * dilute);
}

function holdRange(temperatureK: number, densityKgPerM3: number): void {
  if (!(temperatureK >= LOWEST_K && temperatureK <= HIGHEST_K))
    throw new OutsideRange({
      quantity: 'temperature of water whose viscosity is asked',
      value: temperatureK,
      unit: 'K',
      low: LOWEST_K,
      high: HIGHEST_K,
      source: 'iapws-viscosity',
    });
  if (!(densityKgPerM3 >= 0 && densityKgPerM3 <= HIGHEST_KG_PER_M3))
    throw new OutsideRange({
      quantity: 'density of water whose viscosity is asked',
      value: densityKgPerM3,
      unit: 'kg/m³',
      low: 0,
      high: HIGHEST_KG_PER_M3,
      source: 'iapws-viscosity',
    });
}

/**
 * The dynamic viscosity of liquid water at a temperature and a pressure: `viscosityPaS` at the density of region 1.
 * @param temperatureK K, 273.15 to 623.15
 * @param pressurePa Pa, from the saturation pressure of that temperature to 100 MPa
 * @returns Pa s
 * @throws OutsideRange outside those ranges and for NaN
 * @source iapws-viscosity (equations 10 to 12); iapws-if97 (region 1)
 * @example liquidViscosityPaS(298.15, 101325) // 890.02e-6
 */
export function liquidViscosityPaS(temperatureK: number, pressurePa: number): number {
  return viscosityPaS(temperatureK, liquidDensityKgPerM3(temperatureK, pressurePa));
}

/**
 * The dynamic viscosity of liquid water at 0.1 MPa: µ = 280.68 t^−1.9 + 511.45 t^−7.7 + 61.131 t^−19.6 + 0.45903 t^−40 µPa s,
 * t = T / 300 K. Holds also for supercooled water; pressures up to 0.3 MPa change nothing that counts.
 * @param temperatureK K, 253.15 to 383.15
 * @returns Pa s
 * @throws OutsideRange outside that range and for NaN
 * @source iapws-liquid-01 (equation 7)
 * @example ambientViscosityPaS(298.15) // 889.996774e-6
 */
export function ambientViscosityPaS(temperatureK: number): number {
  if (!(temperatureK >= 253.15 && temperatureK <= 383.15))
    throw new OutsideRange({
      quantity: 'temperature of liquid water at 0.1 MPa',
      value: temperatureK,
      unit: 'K',
      low: 253.15,
      high: 383.15,
      source: 'iapws-liquid-01',
    });
  const t = temperatureK / 300;
  const sum = 280.68 * pow(t, -1.9) + 511.45 * pow(t, -7.7) + 61.131 * pow(t, -19.6) + 0.45903 * pow(t, -40);
  return sum * 1e-6;
}
