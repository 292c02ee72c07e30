// The door of ground/physics: what other rooms may use.
export { litresToMilligrams, milligramsToLitres, waterDensityKgPerM3 } from './water-density.ts';
