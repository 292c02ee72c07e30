// A coil's bypass factor learned from readings of the outpost's own condenser, with its doubt.
import { exp, log } from '../../maths/index.ts';
import type { CabinAir } from '../air/cabin-air.ts';
import { humidityRatio } from '../air/moist-air.ts';
import { OPEN_END, OutsideRange } from '../outside-range.ts';
import { stayAboveZero, stayAtLeastZero, stayWithin } from '../stay-within.ts';

const SOURCE = 'carrier-bypass';

/** A value with one standard deviation. */
export interface Known {
  readonly value: number;
  readonly u: number;
}

/** What was read of a condenser that had run evenly for a while. */
export interface CoilReading {
  readonly air: CabinAir;
  readonly temperatureC: Known;
  /** 0 to 1. */
  readonly relativeHumidity: Known;
  /** Of the coil's surface, or of the coolant where it comes in. */
  readonly coilC: Known;
  /** Dry gas, kg/s. */
  readonly airFlowKgPerS: Known;
  /** What it gave in that time, kg/s. */
  readonly condensateKgPerS: Known;
}

export interface BypassFit {
  /** At the reference flow. */
  readonly bypass: number;
  readonly u: number;
  readonly flowKgPerS: number;
  /** N_o = UA_o / (m c_p) at the reference flow, of which BF = e^(−N_o). */
  readonly transferUnits: number;
  readonly transferUnitsU: number;
  /** Each reading's own transfer units at the reference flow. */
  readonly each: readonly Known[];
  /** Sum of squares of the misses over their doubts; its expected value is one less than the readings. */
  readonly chiSquare: number;
}

/**
 * The bypass factor of a coil from one or several readings of its condensate:
 * BF_i = 1 − m_cond / (m_a (W − W_coil)), N_i = −ln BF_i (m_i / m_ref), N = Σ w N_i / Σ w with w = 1 / u².
 *
 * Each reading's u is propagated from its five inputs (central differences, inputs independent). If the readings scatter by
 * more than their doubts, u is widened by √(χ² / (n − 1)).
 * @param readings one or more · `flowKgPerS` the reference flow, above 0
 * @throws OutsideRange without readings, and for a reading whose coil gave no water or more than the air can have left
 * @source carrier-bypass; gum (5.1.2); birge-1932
 * @example fitBypass([reading], 0.04).bypass // 0.201
 */
export function fitBypass(readings: readonly CoilReading[], flowKgPerS: number): BypassFit {
  const count = readings.length;
  stayWithin({ quantity: 'readings', value: count, unit: '', low: 1, high: OPEN_END, source: SOURCE });
  stayAboveZero({ quantity: 'reference flow of dry gas', value: flowKgPerS, unit: 'kg/s', source: SOURCE });
  const each = readings.map((reading) => unitsOf(reading, flowKgPerS));
  const weights = each.map(({ u }) => 1 / (u * u));
  const sum = weights.reduce((total, weight) => total + weight, 0);
  const units = each.reduce((total, { value }, at) => total + value * (weights[at] ?? 0), 0) / sum;
  const chiSquare = each.reduce(
    (total, { value }, at) => total + (value - units) * (value - units) * (weights[at] ?? 0),
    0,
  );
  const scatter = each.length > 1 ? Math.max(1, chiSquare / (each.length - 1)) : 1;
  const unitsU = Math.sqrt(scatter / sum);
  const bypass = exp(-units);
  return {
    bypass,
    u: bypass * unitsU,
    flowKgPerS,
    transferUnits: units,
    transferUnitsU: unitsU,
    each,
    chiSquare,
  };
}

type Inputs = readonly [
  temperatureC: number,
  humidity: number,
  coilC: number,
  flow: number,
  condensate: number,
];

function unitsOf(reading: CoilReading, referenceKgPerS: number): Known {
  const known = [
    reading.temperatureC,
    reading.relativeHumidity,
    reading.coilC,
    reading.airFlowKgPerS,
    reading.condensateKgPerS,
  ];
  const at = (moved: number, by: number): Inputs =>
    known.map(({ value }, place) => (place === moved ? value + by : value)) as unknown as Inputs;
  const of = (inputs: Inputs): number => transferUnits(reading.air, inputs, referenceKgPerS);
  const variance = known.reduce((total, { u }, place) => {
    stayAtLeastZero({ quantity: 'doubt of a reading', value: u, unit: '', source: 'gum' });
    if (u === 0) return total;
    const step = 1e-3 * u;
    const slope = (of(at(place, step)) - of(at(place, -step))) / (2 * step);
    return total + slope * slope * u * u;
  }, 0);
  // A reading without any doubt could not be weighed against others.
  stayAboveZero({ quantity: 'variance of the transfer units', value: variance, unit: '', source: 'gum' });
  return { value: of(at(-1, 0)), u: Math.sqrt(variance) };
}

function transferUnits(air: CabinAir, inputs: Inputs, referenceKgPerS: number): number {
  const [temperatureC, humidity, coilC, flowKgPerS, condensateKgPerS] = inputs;
  const carried = flowKgPerS * (humidityRatio(air, temperatureC, humidity) - humidityRatio(air, coilC, 1));
  const bypass = 1 - condensateKgPerS / carried;
  // A coil takes something out of the air, and never all that saturation at its own temperature would leave.
  const isTaken = carried > 0 && bypass > 0 && bypass < 1;
  if (!isTaken)
    throw new OutsideRange({
      quantity: `condensate of a coil of ${coilC} °C out of this air`,
      value: condensateKgPerS,
      unit: 'kg/s',
      low: 0,
      high: Math.max(0, carried),
      lowIsOpen: true,
      source: SOURCE,
    });
  return (-log(bypass) * flowKgPerS) / referenceKgPerS;
}
