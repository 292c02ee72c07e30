// The door of ground/physics: what other rooms may use.
export { vapourDensityKgPerM3 } from './air/vapour-density.ts';
export type { RangeLeft } from './outside-range.ts';
export { OPEN_END, OutsideRange } from './outside-range.ts';
export { saturationPressurePa } from './water/saturation.ts';
export { litresToMilligrams, milligramsToLitres, waterDensityKgPerM3 } from './water/water-density.ts';
