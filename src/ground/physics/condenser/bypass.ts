// The bypass factor: a coil as if so much of the air passed it by and the rest left saturated at one temperature.
import { exp, log, rootBetween } from '../../maths/index.ts';
import type { CabinAir } from '../air/cabin-air.ts';
import { humidityRatio, moistEnthalpyJPerKg } from '../air/moist-air.ts';
import { OutsideRange } from '../outside-range.ts';
import { stayAboveZero, stayShare } from '../stay-within.ts';
import type { CoilAir } from './coil.ts';

const SOURCE = 'carrier-bypass';

function holdBypass(bypass: number): number {
  stayShare({ quantity: 'bypass factor', value: bypass, source: SOURCE });
  return bypass;
}

function holdFlow(flowKgPerS: number): void {
  stayAboveZero({ quantity: 'flow of dry gas', value: flowKgPerS, unit: 'kg/s', source: SOURCE });
}

/**
 * The bypass factor from three enthalpies, or from three humidity ratios: BF = (x_out − x_coil) / (x_in − x_coil).
 * @param along the same quantity of the air that comes, of the air that leaves, and saturated at the coil's temperature
 * @returns 0 to 1
 * @throws OutsideRange where it comes out beyond 0 to 1: the three do not lie in order
 * @source carrier-bypass
 * @example bypassFactor({ in: 82.5, out: 47.5, coil: 36.6 }) // 0.2375
 */
export function bypassFactor(along: {
  readonly in: number;
  readonly out: number;
  readonly coil: number;
}): number {
  return holdBypass((along.out - along.coil) / (along.in - along.coil));
}

/**
 * The bypass factor of the same coil at another flow of air, its conductance unchanged: BF′ = BF^(m / m′).
 * @param change `bypass` 0 to 1 · `fromKgPerS`, `toKgPerS` above 0
 * @throws OutsideRange beyond those ranges and for NaN
 * @source carrier-bypass; from BF = e^(−N_o)
 * @example bypassAtFlow({ bypass: 0.2, fromKgPerS: 0.05, toKgPerS: 0.1 }) // 0.447
 */
export function bypassAtFlow(change: {
  readonly bypass: number;
  readonly fromKgPerS: number;
  readonly toKgPerS: number;
}): number {
  const { bypass, fromKgPerS, toKgPerS } = change;
  holdFlow(fromKgPerS);
  holdFlow(toKgPerS);
  return holdBypass(bypass) === 0 ? 0 : exp((log(bypass) * fromKgPerS) / toKgPerS);
}

/**
 * Where the line from the air that comes in through the air that leaves meets saturation: the apparatus dew point.
 * @param between the two states
 * @returns °C
 * @throws OutsideRange where nothing was dried, or where the line does not meet saturation above −20 °C
 * @source carrier-bypass
 * @example apparatusDewPointC(air, { in: { temperatureC: 25, humidityRatio: 0.0119 },
 *   out: { temperatureC: 12, humidityRatio: 0.0078 } }) // 6.86
 */
export function apparatusDewPointC(
  air: CabinAir,
  between: { readonly in: CoilAir; readonly out: CoilAir },
): number {
  const { in: from, out: to } = between;
  const slope = (from.humidityRatio - to.humidityRatio) / (from.temperatureC - to.temperatureC);
  const quantity = 'kg/kg that each degree of cooling took out of the air';
  stayAboveZero({ quantity, value: slope, unit: '1/K', source: SOURCE });
  const aboveLine = (temperatureC: number): number =>
    humidityRatio(air, temperatureC, 1) - to.humidityRatio - slope * (temperatureC - to.temperatureC);
  if (aboveLine(to.temperatureC) <= 0) return to.temperatureC;
  // Going down from the outlet, the first temperature at which saturation carries no more than the line.
  for (let highC = to.temperatureC; highC > -20; highC -= 0.5) {
    const lowC = Math.max(-20, highC - 0.5);
    if (aboveLine(lowC) < 0) return rootBetween(aboveLine, { low: lowC, high: highC }, 1e-13);
  }
  throw new OutsideRange({
    quantity: 'temperature at which the line through the two states meets saturation',
    value: -20,
    unit: '°C',
    low: -20,
    high: to.temperatureC,
    source: SOURCE,
  });
}

export interface BypassOutcome {
  readonly airOut: CoilAir;
  readonly condensateKgPerS: number;
  /** Taken out of the air; the heat that the condensate carries is inside. */
  readonly heatW: number;
}

/**
 * A coil by its bypass factor: what passes it by leaves as it came, the rest saturated at the coil's temperature.
 * W_out = W_coil + BF (W_in − W_coil) and alike for the temperature; no water where W_coil is not below W_in.
 * @param coil `bypass` 0 to 1 · `coilC` °C, −20 to 60 · `airFlowKgPerS` of dry gas, above 0
 * @throws OutsideRange beyond those ranges and for NaN
 * @source carrier-bypass
 * @example bypassCoil({ air, airIn, airFlowKgPerS: 0.04, coilC: 6, bypass: 0.2 }).heatW // 719.7
 */
export function bypassCoil(coil: {
  readonly air: CabinAir;
  readonly airIn: CoilAir;
  readonly airFlowKgPerS: number;
  readonly coilC: number;
  readonly bypass: number;
}): BypassOutcome {
  const { air, airIn, airFlowKgPerS, coilC } = coil;
  const bypass = holdBypass(coil.bypass);
  holdFlow(airFlowKgPerS);
  const ofCoil = Math.min(airIn.humidityRatio, humidityRatio(air, coilC, 1));
  const airOut = {
    temperatureC: coilC + bypass * (airIn.temperatureC - coilC),
    humidityRatio: ofCoil + bypass * (airIn.humidityRatio - ofCoil),
  };
  const enthalpy = (side: CoilAir): number => moistEnthalpyJPerKg(air, side.temperatureC, side.humidityRatio);
  return {
    airOut,
    condensateKgPerS: airFlowKgPerS * (airIn.humidityRatio - airOut.humidityRatio),
    heatW: airFlowKgPerS * (enthalpy(airIn) - enthalpy(airOut)),
  };
}
