// What holds the water back at a given flow: friction, bends, couplings and height.
import { stayAboveZero } from '../stay-within.ts';
import type { FlowRegime } from './friction-law.ts';
import type { FlowingWater, HoseLine } from './hose-line.ts';
import { LineFlow } from './line-flow.ts';

/** A flow in a line, and the pressure that each part of the line takes. */
export interface FlowInLine {
  readonly flowM3PerS: number;
  readonly velocityMPerS: number;
  readonly reynolds: number;
  readonly regime: FlowRegime;
  readonly frictionFactor: number;
  readonly frictionPa: number;
  readonly minorPa: number;
  readonly couplingsPa: number;
  readonly totalPa: number;
}

/**
 * The pressure that a flow takes: Δp = (f L/D + ΣK) ρ V²/2, and for the couplings Δp = ρ/1000 (Q/Kv)² bar.
 * @param line lengths in m, Kv in m³/h; `roughnessM` at most a twentieth of the bore
 * @param water `densityKgPerM3` kg/m³, `viscosityPaS` Pa s, at the temperature of the water
 * @param flowM3PerS m³/s, above 0
 * @returns the parts in Pa; 'transitional' where no law is known and a smooth joint stands in
 * @throws OutsideRange for a line, water or flow beyond the ranges of the sources
 * @source white-fluid (chapter 6), colebrook-1939, iec-60534; a coiled hose by schmidt-1967
 * @example lineDrop(
 *   { lengthM: 6, boreM: 0.008, roughnessM: 1.5e-6, minorLoss: 3, couplingsKv: [0.6, 0.6] },
 *   { densityKgPerM3: 997.05, viscosityPaS: 8.9e-4 },
 *   6.4378e-5,
 * ).totalPa // 50662
 */
export function lineDrop(line: HoseLine, water: FlowingWater, flowM3PerS: number): FlowInLine {
  const prepared = new LineFlow(line, water);
  stayAboveZero({ quantity: 'flow', value: flowM3PerS, unit: 'm³/s', source: 'white-fluid' });
  const reynolds = prepared.reynoldsOf(flowM3PerS);
  return flowInLine(prepared, reynolds, prepared.frictionAt(reynolds));
}

/** The parts of a flow whose Reynolds number and friction factor are known. */
export function flowInLine(line: LineFlow, reynolds: number, frictionFactor: number): FlowInLine {
  const dynamicPa = line.unitPa * reynolds * reynolds;
  const frictionPa = frictionFactor * line.lengthOverBore * dynamicPa;
  const minorPa = line.minorLoss * dynamicPa;
  const couplingsPa = line.couplingsLoss * dynamicPa;
  return {
    flowM3PerS: line.flowAt(reynolds),
    velocityMPerS: line.velocityAt(reynolds),
    reynolds,
    regime: line.friction.regimeAt(reynolds),
    frictionFactor,
    frictionPa,
    minorPa,
    couplingsPa,
    totalPa: frictionPa + minorPa + couplingsPa,
  };
}

/**
 * The pressure of a column of water: p = ρ g Δz. It holds a push up a slope back, and helps one down.
 * @param column `riseM` m from source to receiver, below 0 for a fall; `gravityMPerS2` m/s², 0 in free fall
 * @returns Pa to be taken from what drives the water
 * @throws RangeError for what is not finite
 * @source hydrostatics
 * @example columnPa({ densityKgPerM3: 998, riseM: 2, gravityMPerS2: 1.62 }) // 3233.52
 */
export function columnPa(column: {
  readonly densityKgPerM3: number;
  readonly riseM: number;
  readonly gravityMPerS2: number;
}): number {
  const pressurePa = column.densityKgPerM3 * column.gravityMPerS2 * column.riseM;
  if (!Number.isFinite(pressurePa)) throw new RangeError('a column of water needs three finite figures');
  return pressurePa;
}
