// What the tables of the properties of water are held against.
import {
  ambientViscosityPaS,
  latentHeatJPerKg,
  liquidDensityKgPerM3,
  liquidEnergyJPerKg,
  liquidEnthalpyJPerKg,
  liquidEntropyJPerKgK,
  liquidHeatCapacityJPerKgK,
  liquidSoundMPerS,
  liquidViscosityPaS,
  liquidVolumeM3PerKg,
  saturatedAuxiliaryJPerKg,
  saturatedPressurePa,
  saturatedSlopePaPerK,
  saturatedSteamDensityKgPerM3,
  saturatedSteamEnthalpyJPerKg,
  saturatedWaterDensityKgPerM3,
  saturatedWaterEnthalpyJPerKg,
  saturationPressurePa,
  saturationTemperatureK,
  viscosityPaS,
} from '../../src/ground/physics/index.ts';
import { kell1975KgPerM3 } from '../reference/kell-1975.ts';
import type { Subject } from './subject.ts';

type OfState = (temperatureK: number, pressurePa: number) => number;

/** In the units of the release: kilojoules and megapascals. */
const liquid: Readonly<Record<string, OfState>> = {
  v: liquidVolumeM3PerKg,
  u: (temperatureK, pressurePa) => liquidEnergyJPerKg(temperatureK, pressurePa) / 1000,
  h: (temperatureK, pressurePa) => liquidEnthalpyJPerKg(temperatureK, pressurePa) / 1000,
  s: (temperatureK, pressurePa) => liquidEntropyJPerKgK(temperatureK, pressurePa) / 1000,
  cp: (temperatureK, pressurePa) => liquidHeatCapacityJPerKgK(temperatureK, pressurePa) / 1000,
  w: liquidSoundMPerS,
  rho: liquidDensityKgPerM3,
  mu: (temperatureK, pressurePa) => liquidViscosityPaS(temperatureK, pressurePa) * 1e6,
};

const saturated: Readonly<Record<string, (temperatureK: number) => number>> = {
  p: saturatedPressurePa,
  dp: saturatedSlopePaPerK,
  rl: saturatedWaterDensityKgPerM3,
  rv: saturatedSteamDensityKgPerM3,
  al: saturatedAuxiliaryJPerKg,
  hl: saturatedWaterEnthalpyJPerKg,
  hv: saturatedSteamEnthalpyJPerKg,
};

const missing = (): number => Number.NaN;

export const PHYSICS_WATER: Readonly<Record<string, Subject>> = {
  ambientViscosity: (temperatureK = '') => ambientViscosityPaS(Number(temperatureK)) * 1e6,
  boilingTemperature: (pressureMPa = '') => saturationTemperatureK(Number(pressureMPa) * 1e6),
  boilingWater: (property = '', temperatureK = '') =>
    (liquid[property] ?? missing)(Number(temperatureK), saturationPressurePa(Number(temperatureK))),
  kell1975: (temperatureC = '') => kell1975KgPerM3(Number(temperatureC)),
  latentHeat: (temperatureC = '') => latentHeatJPerKg(Number(temperatureC) + 273.15) / 1000,
  liquidWater: (property = '', temperatureK = '', pressureMPa = '') =>
    (liquid[property] ?? missing)(Number(temperatureK), Number(pressureMPa) * 1e6),
  saturatedWater: (property = '', temperatureK = '') =>
    (saturated[property] ?? missing)(Number(temperatureK)),
  viscosity: (temperatureK = '', densityKgPerM3 = '') =>
    viscosityPaS(Number(temperatureK), Number(densityKgPerM3)) * 1e6,
};
