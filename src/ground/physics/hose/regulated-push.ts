// How long a push takes that a regulator keeps at one pressure.
import { stayAboveZero, stayAtLeastZero } from '../stay-within.ts';
import { type FlowingWater, type HoseLine, lineVolumeM3 } from './hose-line.ts';
import { LineFlow } from './line-flow.ts';
import { type FlowInLine, flowInLine } from './pressure-drop.ts';

const SOURCE = 'white-fluid';

export interface RegulatedPush extends FlowInLine {
  readonly seconds: number;
  /** What stands in the hose when the flow is stopped: it left the source and has not arrived. */
  readonly inLineM3: number;
}

/**
 * The flow that a constant pressure drives through a line, and its parts: Q solves Δp_line(Q) = Δp.
 * @param line lengths in m, Kv in m³/h
 * @param water `densityKgPerM3` kg/m³, `viscosityPaS` Pa s
 * @param drivingPa Pa, above 0: gas over the water, less the pressure at the other end, less the column between them
 * @returns flow in m³/s with velocity, Reynolds number, regime, friction factor and the pressure that each part takes
 * @throws OutsideRange for a line, water or pressure beyond the ranges, and for a line that holds nothing back
 * @source white-fluid (chapter 6), colebrook-1939, iec-60534; a coiled hose by schmidt-1967
 * @example pushFlow(
 *   { lengthM: 6, boreM: 0.008, roughnessM: 1.5e-6, minorLoss: 3, couplingsKv: [0.6, 0.6] },
 *   { densityKgPerM3: 997.05, viscosityPaS: 8.9e-4 },
 *   50_662.5,
 * ).flowM3PerS // 6.4378e-5
 */
export function pushFlow(line: HoseLine, water: FlowingWater, drivingPa: number): FlowInLine {
  return flowDriven(new LineFlow(line, water), drivingPa);
}

function flowDriven(prepared: LineFlow, drivingPa: number): FlowInLine {
  mustDrive(drivingPa);
  mustHoldBack(prepared);
  const reynolds = prepared.reynoldsBy(drivingPa);
  return flowInLine(prepared, reynolds, prepared.frictionFound);
}

/**
 * How long a regulated push takes for a volume: t = V / Q. Nothing at the other end grows with what has arrived.
 * @param push `line`, `water`; `drivingPa` Pa, above 0; `volumeM3` m³ to arrive, 0 or more, through a line that is full
 * @returns seconds, the flow with its parts, and what stays in the hose
 * @throws OutsideRange as `pushFlow`, and for a volume below 0
 * @source white-fluid (chapter 6), colebrook-1939, iec-60534
 * @example regulatedPush({
 *   line: { lengthM: 6, boreM: 0.008, roughnessM: 1.5e-6, minorLoss: 3, couplingsKv: [0.6, 0.6] },
 *   water: { densityKgPerM3: 997.05, viscosityPaS: 8.9e-4 },
 *   drivingPa: 50_662.5,
 *   volumeM3: 0.022,
 * }).seconds // 341.7
 */
export function regulatedPush(push: {
  readonly line: HoseLine;
  readonly water: FlowingWater;
  readonly drivingPa: number;
  readonly volumeM3: number;
}): RegulatedPush {
  mustBeVolume(push.volumeM3);
  const flow = pushFlow(push.line, push.water, push.drivingPa);
  return { ...flow, seconds: push.volumeM3 / flow.flowM3PerS, inLineM3: lineVolumeM3(push.line) };
}

/** @throws OutsideRange if the pressure does not drive the water */
export function mustDrive(drivingPa: number): void {
  stayAboveZero({ quantity: 'pressure that drives the water', value: drivingPa, unit: 'Pa', source: SOURCE });
}

/** @throws RangeError for a line without length, bends and couplings: through it any pressure would drive any flow */
export function mustHoldBack(prepared: LineFlow): void {
  if (prepared.isOpen) throw new RangeError('a line without length, bends and couplings holds nothing back');
}

/** @throws OutsideRange for a volume below 0 or without end */
export function mustBeVolume(volumeM3: number): void {
  stayAtLeastZero({ quantity: 'volume to be pushed', value: volumeM3, unit: 'm³', source: SOURCE });
}
