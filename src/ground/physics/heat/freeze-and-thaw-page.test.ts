// Runs every example of docs/methods/freeze-and-thaw.md.
import { type Given, runExamplesOf } from '../../../../tests/docs/page-examples.ts';
import { freeze, thaw } from './freeze-and-thaw.ts';
import { coldWaterAfter, freezingGrowth } from './ice.ts';

const hours = (timeS: number | null): string => (timeS === null ? 'never' : `${(timeS / 3600).toFixed(2)} h`);
const waterOf = (given: Given) => ({
  massKg: given.number('kg'),
  temperatureC: given.number('from'),
  iceShare: given.number('ice'),
});

runExamplesOf('freeze-and-thaw.md', 10, {
  thaw: (given) => {
    const { meltedAfterS, warmAfterS } = thaw({
      ice: waterOf(given),
      toC: given.number('to'),
      powerW: given.number('W'),
      efficiency: given.number('efficiency'),
      lossWPerK: given.number('lossWPerK'),
      aroundC: given.number('around'),
    });
    return `melted ${hours(meltedAfterS)}, warm ${hours(warmAfterS)}`;
  },
  freeze: (given) => {
    const found = freeze({
      massKg: given.number('kg'),
      fromC: given.number('from'),
      vesselJPerK: 0,
      lossWPerK: given.number('lossWPerK'),
      aroundC: given.number('around'),
    });
    if (found === null) return 'never';
    return `first ice after ${hours(found.atFreezingAfterS)}, all after ${hours(found.frozenAfterS)}`;
  },
  after: (given) => {
    const { temperatureC, liquidKg, volumeM3 } = coldWaterAfter(waterOf(given), given.number('MJ') * 1e6);
    return `${temperatureC.toFixed(1)} °C, ${liquidKg.toFixed(2)} kg to draw, ${(volumeM3 * 1000).toFixed(2)} L in all`;
  },
  growth: () => `${(freezingGrowth() * 100).toFixed(2)} %`,
});
