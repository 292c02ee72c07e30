// Runs every example of docs/methods/water-properties.md.
import { type Given, runExamplesOf } from '../../../../tests/docs/page-examples.ts';
import {
  liquidDensityKgPerM3,
  liquidEnthalpyJPerKg,
  liquidHeatCapacityJPerKgK,
  liquidSoundMPerS,
} from './liquid-water.ts';
import { latentHeatJPerKg } from './saturated-water.ts';
import { saturationTemperatureK } from './saturation.ts';
import { liquidViscosityPaS } from './viscosity.ts';

const ICE_POINT_K = 273.15;
const stateOf = (given: Given) =>
  [given.number('celsius') + ICE_POINT_K, given.number('kPa') * 1000] as const;

runExamplesOf('water-properties.md', 10, {
  density: (given) => `${liquidDensityKgPerM3(...stateOf(given)).toFixed(3)} kg/m³`,
  heat: (given) => {
    const [from, to, pressurePa] = [given.number('from'), given.number('to'), given.number('kPa') * 1000];
    const at = (temperatureC: number) => liquidEnthalpyJPerKg(temperatureC + ICE_POINT_K, pressurePa);
    return `${((at(to) - at(from)) / 1000).toFixed(2)} kJ/kg`;
  },
  capacity: (given) => `${(liquidHeatCapacityJPerKgK(...stateOf(given)) / 1000).toFixed(4)} kJ/(kg K)`,
  sound: (given) => `${liquidSoundMPerS(...stateOf(given)).toFixed(1)} m/s`,
  viscosity: (given) => `${(liquidViscosityPaS(...stateOf(given)) * 1e6).toFixed(1)} µPa s`,
  latent: (given) => `${(latentHeatJPerKg(given.number('celsius') + ICE_POINT_K) / 1000).toFixed(2)} kJ/kg`,
  boils: (given) => `${(saturationTemperatureK(given.number('kPa') * 1000) - ICE_POINT_K).toFixed(2)} °C`,
});
