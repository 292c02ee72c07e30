// The door of ground/physics: what other rooms may use.
export type { AirState } from './air/air-state.ts';
export { airState, boilingPointC } from './air/air-state.ts';
export type { CabinAir } from './air/cabin-air.ts';
export { cabinAir, enhancementFactor, handbookAir } from './air/cabin-air.ts';
export type { DryGas } from './air/dry-gas.ts';
export { DRY_AIR, oxygenNitrogen } from './air/dry-gas.ts';
export { hylandWexlerPa } from './air/hyland-wexler.ts';
export {
  dewPointC,
  humidityRatio,
  humidityRatioOfVapour,
  moistDensityKgPerM3,
  moistEnthalpyJPerKg,
  moistVolumeM3PerKg,
  relativeHumidity,
  saturatedVapourPa,
  temperatureOfEnthalpyC,
  vapourOfHumidityRatio,
  vapourPressurePa,
} from './air/moist-air.ts';
export { frostPointK, iceVapourPressurePa } from './air/saturation-over-ice.ts';
export { standardPressurePa } from './air/standard-pressure.ts';
export { vapourDensityKgPerM3 } from './air/vapour-density.ts';
export { vapourSaturationC, vapourSaturationPa } from './air/vapour-saturation.ts';
export type { WallDew, WallVerdict } from './air/wall-dew.ts';
export { wallDew } from './air/wall-dew.ts';
export { dewPointOfRatioC, humidityRatioOfWetBulb, wetBulbC } from './air/wet-bulb.ts';
export type { Exchanged, Total } from './bed/capacity.ts';
export {
  bedVolumes,
  emptyBedContactS,
  exchangerThroughputM3,
  firstToEnd,
  sorbentThroughputM3,
  stoichiometricTimeS,
} from './bed/capacity.ts';
export type { PatternBed, Resistance } from './bed/constant-pattern.ts';
export { patternBreakthrough, patternThroughput } from './bed/constant-pattern.ts';
export { freundlichKgPerKg, langmuirKgPerKg, separationFactor } from './bed/isotherm.ts';
export type { BedChain, ChainBed, ChainStep } from './bed/lead-and-lag.ts';
export { chainAfter, swappedChain, volumeToLimitM3 } from './bed/lead-and-lag.ts';
export type { BohartAdamsBed, LogisticBed, SorbentRun } from './bed/logistic.ts';
export {
  bohartAdams,
  bohartAdamsTimeS,
  logisticBreakthrough,
  logisticOfBohartAdams,
  logisticOfThomas,
  logisticTimeS,
  thomasOfLogistic,
} from './bed/logistic.ts';
export type { CurvePoint, UnusedBed } from './bed/unused-bed.ts';
export { breakTimeOfLengthS, takenUpKgPerKg, unusedBed, unusedLengthM } from './bed/unused-bed.ts';
export type { BypassOutcome } from './condenser/bypass.ts';
export { apparatusDewPointC, bypassAtFlow, bypassCoil, bypassFactor } from './condenser/bypass.ts';
export type { BypassFit, CoilReading, Known } from './condenser/bypass-fit.ts';
export { fitBypass } from './condenser/bypass-fit.ts';
export type { CabinHumidity, CabinHumidityAfter } from './condenser/cabin-humidity.ts';
export { cabinHumidityAfter, exerciseSweatKg } from './condenser/cabin-humidity.ts';
export type { BalanceSide, Coil, CoilAir, CoilOutcome } from './condenser/coil.ts';
export { coilBalance } from './condenser/coil.ts';
export type { EffectiveSurfaceOutcome } from './condenser/effective-surface.ts';
export { counterflowEffectiveness, effectiveSurfaceCoil } from './condenser/effective-surface.ts';
export type { CondensatePart, ExpectedCondensate, Shortfall } from './condenser/expected-condensate.ts';
export { condensateShortfall, expectedCondensate, shortfallSum } from './condenser/expected-condensate.ts';
export type { SegmentedOutcome } from './condenser/segmented-coil.ts';
export { segmentedCoil } from './condenser/segmented-coil.ts';
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
export type { BlowDownGauged, BlowDownInput, BlowDownTold } from './gauging/blow-down-gauging.ts';
export { gaugeByBlowDown } from './gauging/blow-down-gauging.ts';
export type { Charge, ChargeAsked, Rating } from './gauging/charge.ts';
export { chargeVerdict, endPressurePa, tankAfterFallPa } from './gauging/charge.ts';
export type { Combined, CombinedGauging, GaugingToCombine } from './gauging/combine-gaugings.ts';
export { combineGaugings } from './gauging/combine-gaugings.ts';
export type { BudgetShare } from './gauging/doubt-budget.ts';
export { doubtBudget } from './gauging/doubt-budget.ts';
export type { InjectionForeseen } from './gauging/foreseen-injection.ts';
export { foreseenInjection } from './gauging/foreseen-injection.ts';
export type {
  InjectionDrawn,
  InjectionGauged,
  InjectionGroup,
  InjectionInput,
  InjectionReading,
  InjectionReadings,
  InjectionTerm,
  InjectionTold,
} from './gauging/gas-injection.ts';
export { gasVolumeByInjectionM3, gaugeByInjection, injectionByDraws } from './gauging/gas-injection.ts';
export { dissolvedShare, saturatedVapour, settlingTerm } from './gauging/gas-terms.ts';
export type {
  GaugingForeseen,
  GaugingJudged,
  StoreKnown,
  UselessBecause,
  WayOfGauging,
  WorthOfGauging,
} from './gauging/gauging-worth.ts';
export { doubtAfterGauging, judgeGauging, worthOfGaugings } from './gauging/gauging-worth.ts';
export {
  frameMassKg,
  massBesideFrameKg,
  springStiffnessNPerM,
  swingingMassKg,
  swingPeriodS,
} from './gauging/oscillation.ts';
export type {
  CalibratedBalance,
  KnownSwing,
  Weighed,
  WeighingInput,
  WeighingTold,
} from './gauging/oscillation-weighing.ts';
export { calibratedBalance, weighByOscillation } from './gauging/oscillation-weighing.ts';
export type { StrokeInput, StrokesDrawn, StrokesTold } from './gauging/stroke-count.ts';
export { volumeByStrokes } from './gauging/stroke-count.ts';
export type { TankGroup, TankReading, TankTerm } from './gauging/tank-gas.ts';
export type {
  DisplacementGauged,
  DisplacementInput,
  DisplacementTold,
} from './gauging/volume-displacement.ts';
export { ADIABATIC_EXPONENT, gaugeByDisplacement } from './gauging/volume-displacement.ts';
export type { BoilingMargin, EnthalpyOf } from './heat/enthalpy.ts';
export { boilingMargin, plainEnthalpy, waterEnthalpyAt } from './heat/enthalpy.ts';
export type { Freeze, Thaw } from './heat/freeze-and-thaw.ts';
export { freeze, thaw } from './heat/freeze-and-thaw.ts';
export type { Heated, Heater, Warming } from './heat/heating.ts';
export { heating, heatToWarmJ, standbyLossW, temperatureAfterC } from './heat/heating.ts';
export type { ColdWater, ColdWaterAfter } from './heat/ice.ts';
export {
  coldWaterAfter,
  freezingGrowth,
  iceDensityKgPerM3,
  iceEnthalpyJPerKg,
  MELTING_HEAT_J_PER_KG,
} from './heat/ice.ts';
export type { WarmWater } from './heat/mixed-temperature.ts';
export { mixedTemperatureC, thermalGrowth } from './heat/mixed-temperature.ts';
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
