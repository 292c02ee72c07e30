// Runs every example of docs/methods/moist-air.md.
import { type Given, runExamplesOf } from '../../../../tests/docs/page-examples.ts';
import { airState, boilingPointC } from './air-state.ts';
import { cabinAir, handbookAir } from './cabin-air.ts';
import { humidityRatio } from './moist-air.ts';
import { wallDew } from './wall-dew.ts';

const pressureOf = (given: Given): number => given.number('kPa') * 1000;
const stateOf = (given: Given, air = cabinAir({ pressurePa: pressureOf(given) })) =>
  airState(air, {
    temperatureC: given.number('celsius'),
    relativeHumidity: given.number('humidity'),
  });
const grams = (ratio: number, digits: number): string => `${(ratio * 1000).toFixed(digits)} g/kg`;

runExamplesOf('moist-air.md', 12, {
  dew: (given) => `${stateOf(given).dewPointC.toFixed(1)} °C`,
  ratio: (given) => grams(stateOf(given).humidityRatio, 2),
  oxygen: (given) => {
    const air = cabinAir({ pressurePa: pressureOf(given), oxygenShare: given.number('share') });
    return grams(stateOf(given, air).humidityRatio, 2);
  },
  vapour: (given) => `${(stateOf(given).vapourKgPerM3 * given.number('cubicMetres')).toFixed(3)} kg`,
  'wet-bulb': (given) => `${stateOf(given).wetBulbC?.toFixed(1)} °C`,
  handbook: (given) =>
    grams(
      humidityRatio(handbookAir(pressureOf(given)), given.number('celsius'), given.number('humidity')),
      3,
    ),
  boils: (given) => `${boilingPointC(pressureOf(given)).toFixed(1)} °C`,
  wall: (given) => {
    const { verdict, aboveDewPointK } = wallDew({
      wallC: given.number('celsius'),
      dewPointC: given.number('dew'),
    });
    const side = aboveDewPointK < 0 ? 'below' : 'above';
    return `${verdict}, ${Math.abs(aboveDewPointK).toFixed(1)} K ${side} the dew point`;
  },
});
