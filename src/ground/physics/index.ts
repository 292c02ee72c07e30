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
export { atomsOf, FARADAY_C_PER_MOL, molarMassKgPerMol } from './molar.ts';
export type { RangeLeft } from './outside-range.ts';
export { OPEN_END, OutsideRange } from './outside-range.ts';
export { saturationPressurePa } from './water/saturation.ts';
export { litresToMilligrams, milligramsToLitres, waterDensityKgPerM3 } from './water/water-density.ts';
