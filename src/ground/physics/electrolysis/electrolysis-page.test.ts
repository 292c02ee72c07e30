// Runs every example of docs/methods/electrolysis.md.
import { type Given, runExamplesOf } from '../../../../tests/docs/page-examples.ts';
import { oxygenByElectrolysis } from './crew-oxygen.ts';
import { electrolysisRates, oxygenFromWaterKg, waterForOxygenKg } from './rates.ts';
import { electrolysisEnergyJPerKgOxygen, electrolysisHeatW, reversibleVoltageV } from './voltages.ts';

const stackOf = (given: Given) => ({
  cells: given.number('cells'),
  currentA: given.number('amperes'),
  currentEfficiency: given.number('efficiency'),
});

runExamplesOf('electrolysis.md', 10, {
  rates: (given) => {
    const { oxygenKgPerS, hydrogenKgPerS, waterKgPerS } = electrolysisRates(stackOf(given));
    const daily = [oxygenKgPerS, hydrogenKgPerS, waterKgPerS].map((rate) => (rate * 86_400).toFixed(3));
    return `${daily[0]} kg O2, ${daily[1]} kg H2, ${daily[2]} kg water a day`;
  },
  heat: (given) =>
    `${electrolysisHeatW({ ...stackOf(given), cellVoltageV: given.number('volts') }).toFixed(0)} W`,
  energy: (given) => {
    const cell = { cellVoltageV: given.number('volts'), currentEfficiency: given.number('efficiency') };
    return `${(electrolysisEnergyJPerKgOxygen(cell) / 3.6e6).toFixed(2)} kWh/kg`;
  },
  'least-voltage': (given) => `${reversibleVoltageV(given.number('celsius')).toFixed(3)} V`,
  'water-for': (given) => `${waterForOxygenKg(given.number('oxygenKg')).toFixed(4)} kg`,
  'oxygen-from': (given) => `${oxygenFromWaterKg(given.number('waterKg')).toFixed(4)} kg`,
  crew: (given) => {
    const found = oxygenByElectrolysis({
      people: given.number('people'),
      oxygenKgPerPersonDay: given.number('need'),
      shareOfWater: given.number('share'),
      cells: given.number('cells'),
      currentEfficiency: given.number('efficiency'),
      cellVoltageV: given.number('volts'),
      purgedShare: given.number('purged'),
    });
    const bottled = found.bottledOxygenKgPerDay.toFixed(2);
    return `${found.waterKgPerDay.toFixed(2)} kg water, ${bottled} kg bottled O2 a day; ${found.currentA.toFixed(1)} A, ${found.powerW.toFixed(0)} W, of them ${found.heatW.toFixed(0)} W heat`;
  },
});
