// The door of ground/physics: what other rooms may use.
export { vapourDensityKgPerM3 } from './air/vapour-density.ts';
export type { RangeLeft } from './outside-range.ts';
export { OPEN_END, OutsideRange } from './outside-range.ts';
export {
  liquidDensityKgPerM3,
  liquidEnergyJPerKg,
  liquidEnthalpyJPerKg,
  liquidEntropyJPerKgK,
  liquidHeatCapacityJPerKgK,
  liquidSoundMPerS,
  liquidVolumeM3PerKg,
} from './water/liquid-water.ts';
export {
  latentHeatJPerKg,
  saturatedAuxiliaryJPerKg,
  saturatedPressurePa,
  saturatedSlopePaPerK,
  saturatedSteamDensityKgPerM3,
  saturatedSteamEnthalpyJPerKg,
  saturatedWaterDensityKgPerM3,
  saturatedWaterEnthalpyJPerKg,
} from './water/saturated-water.ts';
export { saturationPressurePa, saturationTemperatureK } from './water/saturation.ts';
export { ambientViscosityPaS, liquidViscosityPaS, viscosityPaS } from './water/viscosity.ts';
export { litresToMilligrams, milligramsToLitres, waterDensityKgPerM3 } from './water/water-density.ts';
