// What comes of water poured together: volume, concentration and temperature.

import {
  liquidVolumeM3PerKg,
  mixedSolution,
  mixedTemperatureC,
  waterEnthalpyAt,
} from '../../../ground/physics/index.ts';
import type { Calculator, Reckoned, RefusedBy, Result } from '../calculator.ts';
import type { Inputs } from '../inputs.ts';
import { ICE_POINT_K, L_PER_M3 } from '../si-factors.ts';

export const mix: Calculator = {
  name: 'mix',
  inputs: [
    { name: 'volume', dimension: 'volume', unit: 'L', many: true, positive: true },
    { name: 'concentration', dimension: 'concentration', unit: 'mg/L', many: true, optional: true },
    { name: 'temperature', dimension: 'temperature', unit: 'degC', many: true, optional: true },
  ],
  method: 'solutions',
  cautions: ['hot-water'],
  refuse: unequalLists,
  reckon,
};

/** One concentration and one temperature for each volume, or none. */
function unequalLists(inputs: Inputs): RefusedBy | null {
  const volumes = inputs.list('volume').length;
  for (const name of ['concentration', 'temperature']) {
    const count = inputs.list(name).length;
    if (count > 0 && count !== volumes)
      return { rule: 'unequal-lists', field: name, data: { list: name, count, volumes } };
  }
  return null;
}

function reckon(inputs: Inputs): Reckoned {
  const volumes = inputs.list('volume');
  const concentrations = inputs.list('concentration');
  const temperatures = inputs.list('temperature');
  const results: Result[] = [];
  if (concentrations.length > 0) {
    const mixture = mixedSolution(
      volumes.map((volumeL, k) => ({
        volumeM3: volumeL / L_PER_M3,
        concentrationKgPerM3: (concentrations[k] ?? 0) / 1000,
      })),
    );
    results.push({ name: 'mixed-concentration', value: 1000 * mixture.concentrationKgPerM3, unit: 'mg/L' });
  }
  if (temperatures.length > 0)
    results.push({ name: 'mixed-temperature', value: mixedC(volumes, temperatures), unit: 'degC' });
  results.push({ name: 'mixed-volume', value: volumes.reduce((sum, each) => sum + each, 0), unit: 'L' });
  return { results, sayings: [{ key: 'grade-of-mix', data: {} }] };
}

/** Of the enthalpy only: 50 kPa more or less change it by a ten-thousandth. */
const PRESSURE_PA = 101_325;

function mixedC(volumes: readonly number[], temperatures: readonly number[]): number {
  const parts = volumes.map((volumeL, k) => {
    const temperatureC = temperatures[k] ?? 0;
    const densityKgPerM3 = 1 / liquidVolumeM3PerKg(temperatureC + ICE_POINT_K, PRESSURE_PA);
    return { massKg: (volumeL * densityKgPerM3) / L_PER_M3, temperatureC };
  });
  const vessel = { heatCapacityJPerK: 0, temperatureC: temperatures[0] ?? 0 };
  return mixedTemperatureC({ parts, enthalpy: waterEnthalpyAt(PRESSURE_PA), vessel });
}
