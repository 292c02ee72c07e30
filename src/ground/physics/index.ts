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
export { massShare, toldAs, toldAsCalciumCarbonate } from './solution/bases.ts';
export type { IonAmount, IonsConduct } from './solution/conductivity.ts';
export {
  conductivityOfIons,
  onsagerSM2PerMol,
  pureWaterConductivitySPerM,
  WATER_WITH_AIR_S_PER_M,
} from './solution/conductivity.ts';
export type { ReadingAgainstIons } from './solution/conductivity-reading.ts';
export {
  conductivityAt25SPerM,
  dissolvedSolidsKgPerM3,
  readingAgainstIons,
} from './solution/conductivity-reading.ts';
export type { Dosed, DosedWithStock, DoseVerdict } from './solution/dose.ts';
export { resultOfStock, saltForTarget, slipOfTen, stockForTarget, waterToDiluteM3 } from './solution/dose.ts';
export { hardnessKgPerM3 } from './solution/hardness.ts';
export type { Ion, IonName } from './solution/ions.ts';
export { IONS, ionMolPerM3 } from './solution/ions.ts';
export type { Mixture, Solution, Washout } from './solution/mixing.ts';
export { mixedSolution, volumesToWashOut, washedOutKgPerM3 } from './solution/mixing.ts';
export type { FittedLoss, Sampled, WallLoss } from './solution/silver.ts';
export {
  biocideLeftKgPerM3,
  chargeForSilverC,
  silverDissolvedKg,
  timeForBiocideS,
  wallLossFromSamples,
} from './solution/silver.ts';
export { saturationPressurePa } from './water/saturation.ts';
export { litresToMilligrams, milligramsToLitres, waterDensityKgPerM3 } from './water/water-density.ts';
