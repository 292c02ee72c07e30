// The work, the heat and the time of a compressor that fills a tank from the cabin.
import { expm1, log } from '../../maths/index.ts';
import { mustBeAbove0, mustBeAtLeast0, mustBeExponent } from './gas-range.ts';

/** The ratio of heat capacities of a gas of single atoms: no compression is steeper. */
const STEEPEST = 5 / 3;

/** Gas that is compressed; pressures absolute. */
export interface Compression {
  readonly inletPa: number;
  readonly outletPa: number;
  /** 1 for constant temperature, 1.4 for air without heat to the walls, 1.2 to 1.35 for small machines (common practice). */
  readonly exponent: number;
}

/**
 * The work of compressing gas in steady flow, in relation to its p V at the inlet: n/(n−1) [(p₂/p₁)^((n−1)/n) − 1], and
 * ln(p₂/p₁) where n is 1.
 *
 * Times p₁ V₁ it is the work in J, times R T₁ the work in J/kg, times p₁ and the free flow the power in W.
 * @param compression pressures in Pa, absolute; the outlet's at least the inlet's; exponent 1 to 5/3
 * @returns a pure number
 * @throws OutsideRange beyond those ranges and for NaN
 * @source cengel-boles (section 7-11)
 * @example compressionWork({ inletPa: 100e3, outletPa: 900e3, exponent: 1.3 }) // 2.8617
 */
export function compressionWork({ inletPa, outletPa, exponent }: Compression): number {
  mustBeAbove0('pressure at the inlet', inletPa, 'Pa');
  mustBeAbove0('pressure at the outlet', outletPa, 'Pa');
  mustBeAtLeast0('pressure at the outlet over the inlet', outletPa - inletPa, 'Pa');
  mustBeExponent(exponent, STEEPEST);
  const rise = log(outletPa / inletPa);
  const power = (exponent - 1) / exponent;
  // expm1(a x) / a goes to x as a goes to 0, without a difference of nearly equal numbers on the way.
  return power === 0 ? rise : expm1(power * rise) / power;
}

/**
 * The temperature of gas as it leaves a compressor: T₂ = T₁ (p₂/p₁)^((n−1)/n). Let it cool before a gauging by gas.
 * @param compression as for `compressionWork`
 * @param inletK K, above 0
 * @returns K
 * @throws OutsideRange beyond those ranges and for NaN
 * @source cengel-boles (section 7-11)
 * @example outletTemperatureK({ inletPa: 101_325, outletPa: 151_987.5, exponent: 1.4 }, 295.15) // 331.4
 */
export function outletTemperatureK(compression: Compression, inletK: number): number {
  mustBeAbove0('temperature at the inlet', inletK, 'K');
  const power = (compression.exponent - 1) / compression.exponent;
  return inletK * (1 + power * compressionWork(compression));
}

/**
 * The work of compressing in two stages with the gas cooled back between them, in relation to p V at the inlet: twice that
 * of one stage to √(p₁ p₂), where the sum is least.
 * @param compression as for `compressionWork`
 * @returns a pure number
 * @throws OutsideRange beyond those ranges and for NaN
 * @source cengel-boles (section 7-11)
 * @example twoStageWork({ inletPa: 100e3, outletPa: 900e3, exponent: 1.3 }) // 2.5009
 */
export function twoStageWork({ inletPa, outletPa, exponent }: Compression): number {
  mustBeAbove0('pressure at the inlet', inletPa, 'Pa');
  mustBeAbove0('pressure at the outlet', outletPa, 'Pa');
  const betweenPa = Math.sqrt(inletPa) * Math.sqrt(outletPa);
  return 2 * compressionWork({ inletPa, outletPa: betweenPa, exponent });
}

export interface CompressorRun {
  readonly seconds: number;
  /** The least work, at constant temperature. */
  readonly isothermalJ: number;
  /** The work on the gas with the exponent given. */
  readonly workJ: number;
  /** What the shaft or the plug gives for it. */
  readonly drawnJ: number;
  /** All of it is in the cabin as heat once the gas is as warm as the cabin again. */
  readonly heatJ: number;
  readonly meanPowerW: number;
  readonly outletK: number;
}

/**
 * The run of a compressor for an amount of free air: time, work, power drawn, heat into the cabin, outlet temperature.
 * @param run `freeAirM3` m³ at inlet pressure, above 0; `freeFlowM3PerS` what the machine takes in, above 0; pressures in Pa,
 * absolute; `exponent` 1 to 5/3; `inletK` K; `efficiency` work on the gas over what is drawn, above 0 to 1
 * @returns s, J, W, K
 * @throws OutsideRange beyond those ranges and for NaN
 * @source cengel-boles (section 7-11)
 * @example compressorRun({ freeAirM3: 0.3, freeFlowM3PerS: 1e-4, inletPa: 101_325, outletPa: 151_987.5, exponent: 1.3, inletK: 295.15, efficiency: 0.5 }).isothermalJ // 12325.1
 */
export function compressorRun(
  run: Compression & {
    readonly freeAirM3: number;
    readonly freeFlowM3PerS: number;
    readonly inletK: number;
    readonly efficiency: number;
  },
): CompressorRun {
  const { freeAirM3, freeFlowM3PerS, inletPa, efficiency } = run;
  mustBeAbove0('free air', freeAirM3, 'm³');
  mustBeAbove0('flow of free air', freeFlowM3PerS, 'm³/s');
  mustBeAbove0('efficiency', efficiency, '');
  mustBeAtLeast0('what an efficiency leaves of 1', 1 - efficiency, '');
  const pressureVolumeJ = inletPa * freeAirM3;
  const workJ = pressureVolumeJ * compressionWork(run);
  const drawnJ = workJ / efficiency;
  const seconds = freeAirM3 / freeFlowM3PerS;
  return {
    seconds,
    isothermalJ: pressureVolumeJ * compressionWork({ ...run, exponent: 1 }),
    workJ,
    drawnJ,
    heatJ: drawnJ,
    meanPowerW: drawnJ / seconds,
    outletK: outletTemperatureK(run, run.inletK),
  };
}
