// What a line of hose and couplings is, and the water in it.
import { stayAboveZero, stayAtLeastZero } from '../stay-within.ts';

const SOURCE = 'white-fluid';

export interface HoseLine {
  /** m, 0 or more. */
  readonly lengthM: number;
  /** Inner diameter in m, above 0. */
  readonly boreM: number;
  /** Height of the wall's roughness in m; 1.5 µm for smooth plastic is common practice. */
  readonly roughnessM: number;
  /** Sum of the loss coefficients of bends, entrance and exit, on the velocity in the bore. */
  readonly minorLoss: number;
  /** Kv of each coupling and valve in the line, m³/h at 1 bar. */
  readonly couplingsKv: readonly number[];
  /** Diameter of the coil in which the hose lies, from middle to middle, in m; not given for a straight one. */
  readonly coilDiameterM?: number;
}

export interface FlowingWater {
  readonly densityKgPerM3: number;
  readonly viscosityPaS: number;
}

/**
 * How much water stands in a line: V = π D² L / 4. It stays there when a push ends, until the line is blown out.
 * @param line `lengthM` m, `boreM` m
 * @returns m³
 * @throws OutsideRange for a length below 0 or a bore that is not above 0
 * @source geometry of a cylinder
 * @example lineVolumeM3({ lengthM: 6, boreM: 0.008 }) // 0.00030159…
 */
export function lineVolumeM3(line: { readonly lengthM: number; readonly boreM: number }): number {
  mustBeTube(line);
  return (Math.PI * line.boreM * line.boreM * line.lengthM) / 4;
}

/** @throws OutsideRange for a figure of line or water that is no size */
export function mustBeSoundLine(line: HoseLine, water: FlowingWater): void {
  mustBeTube(line);
  stayAtLeastZero({ quantity: 'sum of loss coefficients', value: line.minorLoss, unit: '', source: SOURCE });
  stayAboveZero({
    quantity: 'density of the water',
    value: water.densityKgPerM3,
    unit: 'kg/m³',
    source: SOURCE,
  });
  stayAboveZero({
    quantity: 'viscosity of the water',
    value: water.viscosityPaS,
    unit: 'Pa s',
    source: SOURCE,
  });
  if (line.coilDiameterM !== undefined)
    stayAboveZero({ quantity: 'diameter of the coil', value: line.coilDiameterM, unit: 'm', source: SOURCE });
}

function mustBeTube({ lengthM, boreM }: { readonly lengthM: number; readonly boreM: number }): void {
  stayAtLeastZero({ quantity: 'length of the hose', value: lengthM, unit: 'm', source: SOURCE });
  stayAboveZero({ quantity: 'bore of the hose', value: boreM, unit: 'm', source: SOURCE });
}
