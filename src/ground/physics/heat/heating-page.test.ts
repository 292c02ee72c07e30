// Runs every example of docs/methods/heating.md.
import { type Given, runExamplesOf } from '../../../../tests/docs/page-examples.ts';
import { boilingMargin, waterEnthalpyAt } from './enthalpy.ts';
import { heating, heatToWarmJ, standbyLossW, temperatureAfterC } from './heating.ts';
import { COLD_WATER_J_PER_KG_K } from './ice.ts';
import { mixedTemperatureC, thermalGrowth } from './mixed-temperature.ts';
import { scaldTimeS } from './scald.ts';

const pressureOf = (given: Given): number => given.number('kPa') * 1000;
const warmingOf = (given: Given) => ({
  massKg: given.number('kg'),
  fromC: given.number('from'),
  toC: given.number('to'),
  enthalpy: waterEnthalpyAt(pressureOf(given)),
  vesselJPerK: 0,
});

runExamplesOf('heating.md', 15, {
  heat: (given) => `${(heatToWarmJ(warmingOf(given)) / 1000).toFixed(2)} kJ`,
  time: (given) => {
    const { timeS, highestC } = heating({
      ...warmingOf(given),
      powerW: given.number('W'),
      efficiency: given.number('efficiency'),
      lossWPerK: given.number('lossWPerK'),
      aroundC: given.number('around'),
    });
    return timeS === null
      ? `never; ${highestC?.toFixed(1)} °C at the most`
      : `${(timeS / 60).toFixed(1)} min`;
  },
  standby: (given) => {
    const held = { heldC: given.number('held'), aroundC: given.number('around') };
    return `${standbyLossW({ ...held, lossWPerK: given.number('lossWPerK') }).toFixed(0)} W`;
  },
  cooled: (given) => {
    const after = temperatureAfterC({
      capacityJPerK: given.number('kg') * COLD_WATER_J_PER_KG_K,
      gainedW: 0,
      lossWPerK: given.number('lossWPerK'),
      fromC: given.number('from'),
      aroundC: given.number('around'),
      timeS: given.number('minutes') * 60,
    });
    return `${after.toFixed(1)} °C`;
  },
  mixed: (given) => {
    const celsius = given.list('celsius');
    const parts = given.list('kg').map((massKg, at) => ({ massKg, temperatureC: celsius[at] ?? Number.NaN }));
    const vessel = { heatCapacityJPerK: 0, temperatureC: 20 };
    const mixed = mixedTemperatureC({ parts, enthalpy: waterEnthalpyAt(pressureOf(given)), vessel });
    return `${mixed.toFixed(1)} °C`;
  },
  boils: (given) => {
    const water = { temperatureC: given.number('celsius'), pressurePa: pressureOf(given) };
    const { boilsAtC, marginK } = boilingMargin(water);
    return `at ${boilsAtC.toFixed(1)} °C, ${marginK.toFixed(1)} degrees away`;
  },
  growth: (given) => {
    const water = { fromC: given.number('from'), toC: given.number('to'), pressurePa: pressureOf(given) };
    return `${(thermalGrowth(water) * 100).toFixed(1)} %`;
  },
  scald: (given) => `${scaldTimeS(given.number('celsius')).toFixed(0)} s`,
});
