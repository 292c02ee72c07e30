// The free enthalpy of liquid water and its slopes, as sums of the terms of region 1 without a power function.
import { REGION_1_TERMS } from './region-1-table.ts';

/** γ, or a derivative of it: its terms with the factors that differentiation brings, those that vanish left out. */
export interface Series {
  readonly factors: Float64Array;
  /** Places in `pressurePowers` and `temperaturePowers`. */
  readonly ofPressure: Uint8Array;
  readonly ofTemperature: Uint8Array;
}

const FIRST_TEMPERATURE_POWER = -43;
const LAST_TEMPERATURE_POWER = 17;
const LAST_PRESSURE_POWER = 32;
const REDUCING_PRESSURE_PA = 16.53e6;
const REDUCING_TEMPERATURE_K = 1386;

// Laid anew before every sum; nothing of them outlives a call, and no call leaves an object behind.
const pressurePowers = new Float64Array(LAST_PRESSURE_POWER + 1);
const temperaturePowers = new Float64Array(LAST_TEMPERATURE_POWER - FIRST_TEMPERATURE_POWER + 1);

/**
 * The series of ∂γ, differentiated so often by π and by τ.
 * @source iapws-if97 (table 4)
 */
export function seriesOf(times: { readonly byPressure: number; readonly byTemperature: number }): Series {
  const { byPressure, byTemperature } = times;
  // (7.1 − π) falls as π grows: each differentiation by π turns the sign.
  const sign = byPressure % 2 === 0 ? 1 : -1;
  const terms = REGION_1_TERMS.map(({ I, J, n }) => ({
    factor: sign * n * falling(I, byPressure) * falling(J, byTemperature),
    ofPressure: I - byPressure,
    ofTemperature: J - byTemperature - FIRST_TEMPERATURE_POWER,
  })).filter(({ factor }) => factor !== 0);
  return {
    factors: Float64Array.from(terms, ({ factor }) => factor),
    ofPressure: Uint8Array.from(terms, ({ ofPressure }) => ofPressure),
    ofTemperature: Uint8Array.from(terms, ({ ofTemperature }) => ofTemperature),
  };
}

/** k (k − 1) … over so many factors. */
function falling(k: number, count: number): number {
  let product = 1;
  for (let step = 0; step < count; step += 1) product *= k - step;
  return product;
}

/** Lays the powers for a state, for every sum that follows. */
export function layPowers(temperatureK: number, pressurePa: number): void {
  const y = 7.1 - pressurePa / REDUCING_PRESSURE_PA;
  const x = REDUCING_TEMPERATURE_K / temperatureK - 1.222;
  pressurePowers[0] = 1;
  for (let power = 1; power <= LAST_PRESSURE_POWER; power += 1)
    pressurePowers[power] = (pressurePowers[power - 1] as number) * y;
  const zero = -FIRST_TEMPERATURE_POWER;
  temperaturePowers[zero] = 1;
  for (let power = 1; power <= LAST_TEMPERATURE_POWER; power += 1)
    temperaturePowers[zero + power] = (temperaturePowers[zero + power - 1] as number) * x;
  const reciprocal = 1 / x;
  for (let power = 1; power <= zero; power += 1)
    temperaturePowers[zero - power] = (temperaturePowers[zero - power + 1] as number) * reciprocal;
}

/** The sum of a series at the state whose powers are laid. */
export function sumOf(series: Series): number {
  const { factors, ofPressure, ofTemperature } = series;
  let sum = 0;
  for (let term = factors.length - 1; term >= 0; term -= 1)
    sum +=
      (factors[term] as number) *
      (pressurePowers[ofPressure[term] as number] as number) *
      (temperaturePowers[ofTemperature[term] as number] as number);
  return sum;
}
