// Stress in the wall of a vessel under pressure. Material for a caution: a maker's rating counts, never a stress alone.
import { stayAboveZero, stayAtLeastZero, stayWithin } from '../stay-within.ts';

/** A wall under pressure; the pressure is gauge, against what surrounds the vessel. */
export interface VesselWall {
  readonly gaugePa: number;
  /** Of the middle of the wall; with the inner radius the stress comes out 5 % low at a tenth of the radius. */
  readonly radiusM: number;
  readonly wallM: number;
}

export interface WallStress {
  /** Around a cylinder: p r/t. */
  readonly hoopPa: number;
  /** Along a cylinder: p r/2t. */
  readonly axialPa: number;
  /** In a sphere: p r/2t. */
  readonly spherePa: number;
}

const SOURCE = 'hibbeler';
/** Beyond it the thick form is asked for; a tenth is the usual rule. */
const THICKEST = 0.125;

/**
 * Stress in a thin wall: hoop p r/t, along the axis and in a sphere p r/2t.
 * @param wall `gaugePa` Pa, 0 or more, against the local surroundings (outside in a vacuum the full pressure counts);
 * `radiusM`, `wallM` m, above 0, the wall at most an eighth of the radius
 * @returns Pa
 * @throws OutsideRange for a thicker wall, a pressure below 0 and NaN
 * @source hibbeler (section 8.1)
 * @example thinWallStress({ gaugePa: 2.8e6, radiusM: 0.6, wallM: 0.012 }).hoopPa // 140000000
 */
export function thinWallStress({ gaugePa, radiusM, wallM }: VesselWall): WallStress {
  mustBeGauge(gaugePa);
  const share = wallM / radiusM;
  stayAboveZero({ quantity: 'radius of the wall', value: radiusM, unit: 'm', source: SOURCE });
  stayWithin({
    quantity: 'wall over radius',
    value: share,
    unit: '',
    low: 0,
    lowIsOpen: true,
    high: THICKEST,
    source: SOURCE,
  });
  const hoopPa = gaugePa / share;
  return { hoopPa, axialPa: hoopPa / 2, spherePa: hoopPa / 2 };
}

/**
 * The greatest hoop stress in a cylinder of any thickness, at its inner face: p (r_o² + r_i²)/(r_o² − r_i²).
 * @param wall `gaugePa` Pa, 0 or more; `innerM` and `outerM` m, the second above the first
 * @returns Pa
 * @throws OutsideRange for radii in the wrong order, a pressure below 0 and NaN
 * @source hibbeler (equations of Lamé, from memory)
 * @example thickWallHoopPa({ gaugePa: 1, innerM: 1, outerM: 1.1 }) // 10.5238…
 */
export function thickWallHoopPa(wall: {
  readonly gaugePa: number;
  readonly innerM: number;
  readonly outerM: number;
}): number {
  const { gaugePa, innerM, outerM } = wall;
  mustBeGauge(gaugePa);
  stayAboveZero({ quantity: 'inner radius', value: innerM, unit: 'm', source: SOURCE });
  stayAboveZero({ quantity: 'wall', value: outerM - innerM, unit: 'm', source: SOURCE });
  return (gaugePa * (outerM * outerM + innerM * innerM)) / ((outerM - innerM) * (outerM + innerM));
}

function mustBeGauge(gaugePa: number): void {
  stayAtLeastZero({
    quantity: 'pressure in the vessel over that around',
    value: gaugePa,
    unit: 'Pa',
    source: SOURCE,
  });
}
