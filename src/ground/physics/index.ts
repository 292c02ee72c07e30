// The door of ground/physics: what other rooms may use.
export { vapourDensityKgPerM3 } from './air/vapour-density.ts';
export type { CrewOxygen, CrewOxygenAsked } from './electrolysis/crew-oxygen.ts';
export { oxygenByElectrolysis } from './electrolysis/crew-oxygen.ts';
export type { ElectrolysisRates, Stack } from './electrolysis/rates.ts';
export {
  currentForOxygenA,
  electrolysisRates,
  oxygenFromWaterKg,
  waterForOxygenKg,
} from './electrolysis/rates.ts';
export type { RunningStack } from './electrolysis/voltages.ts';
export {
  electrolysisEnergyJPerKgOxygen,
  electrolysisHeatW,
  HYDROGEN_HEAT_J_PER_KG,
  HYDROGEN_HEAT_J_PER_NORMAL_M3,
  reversibleVoltageV,
  THERMONEUTRAL_VOLTAGE_V,
} from './electrolysis/voltages.ts';
export { atomsOf, FARADAY_C_PER_MOL, molarMassKgPerMol } from './molar.ts';
export type { RangeLeft } from './outside-range.ts';
export { OPEN_END, OutsideRange } from './outside-range.ts';
export { saturationPressurePa } from './water/saturation.ts';
export { litresToMilligrams, milligramsToLitres, waterDensityKgPerM3 } from './water/water-density.ts';
