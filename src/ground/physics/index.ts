// The door of ground/physics: what other rooms may use.
export { vapourDensityKgPerM3 } from './moist-air.ts';
export { saturationPressurePa } from './saturation.ts';
export { litresToMilligrams, milligramsToLitres, waterDensityKgPerM3 } from './water-density.ts';
