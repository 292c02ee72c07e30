// Water and steam side by side on the line on which they boil: pressure and its slope, densities, enthalpies, latent heat.
import { exp } from '../../maths/index.ts';
import { OutsideRange } from '../outside-range.ts';

const CRITICAL_K = 647.096;
const CRITICAL_PA = 22.064e6;
const CRITICAL_KG_PER_M3 = 322;
const LOWEST_K = 273.16;

const a1 = -7.85951783;
const a2 = 1.84408259;
const a3 = -11.7866497;
const a4 = 22.6807411;
const a5 = -15.9618719;
const a6 = 1.80122502;

/** 1 − T / T_c, of which all is made; refuses what is off the line. */
function tauOf(temperatureK: number): number {
  if (!(temperatureK >= LOWEST_K && temperatureK <= CRITICAL_K))
    throw new OutsideRange({
      quantity: 'temperature of saturated water',
      value: temperatureK,
      unit: 'K',
      low: LOWEST_K,
      high: CRITICAL_K,
      source: 'iapws-saturation',
    });
  return 1 - temperatureK / CRITICAL_K;
}

/**
 * The cube root of 0 to 1 by Newton's steps from a nearby power that square roots give. That of ground/maths is right to
 * the last bit and leaves pairs of numbers on the heap; here neither is wanted.
 */
function cubeRoot(tau: number): number {
  if (tau === 0) return 0;
  const fourth = Math.sqrt(Math.sqrt(tau));
  const sixteenth = Math.sqrt(Math.sqrt(fourth));
  let root = fourth * sixteenth * Math.sqrt(Math.sqrt(sixteenth));
  for (let step = 0; step < 5; step += 1) root -= (root - tau / (root * root)) / 3;
  return root;
}

/** A whole power by multiplication. */
function whole(x: number, power: number): number {
  let product = 1;
  let square = x;
  for (let rest = power; rest > 0; rest >>= 1) {
    if ((rest & 1) === 1) product *= square;
    square *= square;
  }
  return product;
}

/**
 * The pressure of saturated water: ln(p / p_c) = (T_c / T) Σ a_i τ^e, e = 1, 1.5, 3, 3.5, 4, 7.5, τ = 1 − T / T_c.
 *
 * It goes with the latent heat below and agrees with `saturationPressurePa` to 0.02 %; take that one elsewhere.
 * @param temperatureK K, 273.16 to 647.096
 * @returns Pa
 * @throws OutsideRange outside that range and for NaN
 * @source iapws-saturation (equation 1)
 * @example saturatedPressurePa(373.1243) // 101325.0
 */
export function saturatedPressurePa(temperatureK: number): number {
  const tau = tauOf(temperatureK);
  const root = Math.sqrt(tau);
  const cube = tau * tau * tau;
  const sum = tau * (a1 + a2 * root) + cube * (a3 + a4 * root + a5 * tau) + a6 * cube * cube * tau * root;
  return CRITICAL_PA * exp((CRITICAL_K / temperatureK) * sum);
}

/**
 * How fast that pressure rises: dp/dT = −(p / T) (ln(p / p_c) + Σ a_i e τ^(e − 1)).
 * @param temperatureK K, 273.16 to 647.096
 * @returns Pa/K
 * @throws OutsideRange outside that range and for NaN
 * @source iapws-saturation (equation 1, differentiated)
 * @example saturatedSlopePaPerK(273.16) // 44.436693
 */
export function saturatedSlopePaPerK(temperatureK: number): number {
  const tau = tauOf(temperatureK);
  const root = Math.sqrt(tau);
  const square = tau * tau;
  const cube = square * tau;
  const sum = tau * (a1 + a2 * root) + cube * (a3 + a4 * root + a5 * tau) + a6 * cube * cube * tau * root;
  const logarithm = (CRITICAL_K / temperatureK) * sum;
  const slope =
    a1 + 1.5 * a2 * root + square * (3 * a3 + 3.5 * a4 * root + 4 * a5 * tau) + 7.5 * a6 * cube * cube * root;
  return (-CRITICAL_PA * exp(logarithm) * (logarithm + slope)) / temperatureK;
}

/**
 * The density of the water on that line: ρ′ = ρ_c (1 + Σ b τ^e), e = 1/3, 2/3, 5/3, 16/3, 43/3, 110/3.
 * @param temperatureK K, 273.16 to 647.096
 * @returns kg/m³
 * @throws OutsideRange outside that range and for NaN
 * @source iapws-saturation (equation 2)
 * @example saturatedWaterDensityKgPerM3(373.1243) // 958.365
 */
export function saturatedWaterDensityKgPerM3(temperatureK: number): number {
  return waterDensity(cubeRoot(tauOf(temperatureK)));
}

function waterDensity(third: number): number {
  return (
    CRITICAL_KG_PER_M3 *
    (1 +
      1.99274064 * third +
      1.09965342 * third * third -
      0.510839303 * whole(third, 5) -
      1.75493479 * whole(third, 16) -
      45.5170352 * whole(third, 43) -
      6.7469445e5 * whole(third, 110))
  );
}

/**
 * The density of the steam on that line: ln(ρ″ / ρ_c) = Σ c τ^e, e = 2/6, 4/6, 8/6, 18/6, 37/6, 71/6.
 * @param temperatureK K, 273.16 to 647.096
 * @returns kg/m³
 * @throws OutsideRange outside that range and for NaN
 * @source iapws-saturation (equation 3)
 * @example saturatedSteamDensityKgPerM3(373.1243) // 0.597586
 */
export function saturatedSteamDensityKgPerM3(temperatureK: number): number {
  return steamDensity(cubeRoot(tauOf(temperatureK)));
}

function steamDensity(third: number): number {
  const sixth = Math.sqrt(third);
  const sum =
    -2.0315024 * third -
    2.6830294 * third * third -
    5.38626492 * whole(third, 4) -
    17.2991605 * whole(third, 9) -
    44.7586581 * whole(sixth, 37) -
    63.9201063 * whole(sixth, 71);
  return CRITICAL_KG_PER_M3 * exp(sum);
}

/**
 * The auxiliary quantity of the enthalpies: α = 1000 (d_α + d₁θ^−19 + d₂θ + d₃θ^4.5 + d₄θ^5 + d₅θ^54.5), θ = T / T_c.
 * @param temperatureK K, 273.16 to 647.096
 * @returns J/kg; not an enthalpy by itself
 * @throws OutsideRange outside that range and for NaN
 * @source iapws-saturation (equation 4)
 * @example saturatedAuxiliaryJPerKg(273.16) // -11.529101
 */
export function saturatedAuxiliaryJPerKg(temperatureK: number): number {
  const theta = 1 - tauOf(temperatureK);
  const root = Math.sqrt(theta);
  const fourth = whole(theta, 4);
  return (
    1000 *
    (-1135.905627715 -
      5.65134998e-8 / whole(theta, 19) +
      2690.66631 * theta +
      127.287297 * fourth * root -
      135.003439 * fourth * theta +
      0.981825814 * whole(theta, 54) * root)
  );
}

/**
 * The enthalpy of the water on that line: h′ = α + (T / ρ′) dp/dT.
 * @param temperatureK K, 273.16 to 647.096
 * @returns J/kg
 * @throws OutsideRange outside that range and for NaN
 * @source iapws-saturation (equation 6)
 * @example saturatedWaterEnthalpyJPerKg(373.1243) // 419.05e3
 */
export function saturatedWaterEnthalpyJPerKg(temperatureK: number): number {
  return (
    saturatedAuxiliaryJPerKg(temperatureK) +
    (temperatureK * saturatedSlopePaPerK(temperatureK)) / saturatedWaterDensityKgPerM3(temperatureK)
  );
}

/**
 * The enthalpy of the steam on that line: h″ = α + (T / ρ″) dp/dT.
 * @param temperatureK K, 273.16 to 647.096
 * @returns J/kg
 * @throws OutsideRange outside that range and for NaN
 * @source iapws-saturation (equation 7)
 * @example saturatedSteamEnthalpyJPerKg(373.1243) // 2675.7e3
 */
export function saturatedSteamEnthalpyJPerKg(temperatureK: number): number {
  return (
    saturatedAuxiliaryJPerKg(temperatureK) +
    (temperatureK * saturatedSlopePaPerK(temperatureK)) / saturatedSteamDensityKgPerM3(temperatureK)
  );
}

/**
 * The heat that turns a kilogram of water into steam: h″ − h′ = T (dp/dT) (1/ρ″ − 1/ρ′), after Clapeyron.
 * @param temperatureK K, 273.16 to 647.096; 0 °C is just below
 * @returns J/kg
 * @throws OutsideRange outside that range and for NaN
 * @source iapws-saturation (equations 1 to 3)
 * @example latentHeatJPerKg(298.15) // 2441.89e3
 */
export function latentHeatJPerKg(temperatureK: number): number {
  const third = cubeRoot(tauOf(temperatureK));
  return (
    temperatureK * saturatedSlopePaPerK(temperatureK) * (1 / steamDensity(third) - 1 / waterDensity(third))
  );
}
