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
export type { CabinChange, CabinPush, Receiver } from './gas/cabin-pressure.ts';
export { cabinChange } from './gas/cabin-pressure.ts';
export type { Compression, CompressorRun } from './gas/compressor.ts';
export { compressionWork, compressorRun, outletTemperatureK, twoStageWork } from './gas/compressor.ts';
export type { AirPush, FreeAir } from './gas/free-air.ts';
export { freeAir } from './gas/free-air.ts';
export type { ClosedGas } from './gas/gas-expansion.ts';
export { expandedPa, expandedVolumeM3 } from './gas/gas-expansion.ts';
export { storedEnergyJ } from './gas/stored-energy.ts';
export { trappedWaterRisePa } from './gas/trapped-water.ts';
export type { VesselWall, WallStress } from './gas/wall-stress.ts';
export { thickWallHoopPa, thinWallStress } from './gas/wall-stress.ts';
export type { BlowDown, QuadraticBlowDown } from './hose/blow-down.ts';
export { blowDown, quadraticBlowDownSeconds } from './hose/blow-down.ts';
export { coilCriticalReynolds, laminarCoilFactor, turbulentCoilFactor } from './hose/coil.ts';
export type { BeforeValve } from './hose/coupling.ts';
export { chokingDropPa, cvOfKv, kvForFlow, kvInSeries, kvOfCv, lossOfKv } from './hose/coupling.ts';
export type { FlowVerdict } from './hose/flow-verdict.ts';
export { flowVerdict } from './hose/flow-verdict.ts';
export { colebrookFriction, haalandFriction, laminarFriction, serghidesFriction } from './hose/friction.ts';
export type { FlowRegime, HoseWall } from './hose/friction-law.ts';
export { frictionFactor } from './hose/friction-law.ts';
export type { HoseCoefficient, HosePrior, HoseRun } from './hose/hose-coefficient.ts';
export { HOSE_PRIOR, hoseCoefficient } from './hose/hose-coefficient.ts';
export type { FlowingWater, HoseLine } from './hose/hose-line.ts';
export { lineVolumeM3 } from './hose/hose-line.ts';
export type { PushDanger, TimeBand } from './hose/limit-times.ts';
export { limitSeconds, pushBand } from './hose/limit-times.ts';
export type { FlowInLine } from './hose/pressure-drop.ts';
export { columnPa, lineDrop } from './hose/pressure-drop.ts';
export type { Push, PushOutcome, PushSource } from './hose/push-course.ts';
export { drivingPa, pushedAfter, pushTime, reachableM3 } from './hose/push-course.ts';
export type { RegulatedPush } from './hose/regulated-push.ts';
export { pushFlow, regulatedPush } from './hose/regulated-push.ts';
export type { NeverPushedOut } from './hose/remainder.ts';
export { neverPushedOut } from './hose/remainder.ts';
export { atomsOf, FARADAY_C_PER_MOL, molarMassKgPerMol } from './molar.ts';
export type { RangeLeft } from './outside-range.ts';
export { OPEN_END, OutsideRange } from './outside-range.ts';
export { saturationPressurePa } from './water/saturation.ts';
export { litresToMilligrams, milligramsToLitres, waterDensityKgPerM3 } from './water/water-density.ts';
