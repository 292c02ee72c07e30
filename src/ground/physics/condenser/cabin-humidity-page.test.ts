// Runs every example of docs/methods/cabin-humidity.md but those of the practice outpost, which the account runs.
import { type Given, runExamplesOf } from '../../../../tests/docs/page-examples.ts';
import { cabinAir } from '../air/cabin-air.ts';
import { humidityRatio, moistVolumeM3PerKg, relativeHumidity } from '../air/moist-air.ts';
import { cabinHumidityAfter, exerciseSweatKg } from './cabin-humidity.ts';
import { condensateShortfall, expectedCondensate, shortfallSum } from './expected-condensate.ts';

const air = cabinAir({ pressurePa: 101_200 });
const CABIN_C = 22;
const start = humidityRatio(air, CABIN_C, 0.48);
const cabinOf = (given: Given) => ({
  dryGasKg: 180 / moistVolumeM3PerKg(air, CABIN_C, start),
  humidityRatio: start,
  gainKgPerS: 7.2 / 86_400,
  coilFlowKgPerS: given.number('coil'),
  coilRatio: humidityRatio(air, 6, 1),
  leakKgPerS: 0,
});
const percentOf = (ratio: number): string => `${(100 * relativeHumidity(air, CABIN_C, ratio)).toFixed(1)} %`;
/** A value and its u. */
const known = (given: Given, name: string) => {
  const [kg = Number.NaN, u = Number.NaN] = given.list(name);
  return { name, kg, u };
};

runExamplesOf('cabin-humidity.md', 8, {
  after: (given) => {
    const after = cabinHumidityAfter(cabinOf(given), given.number('hours') * 3600);
    return `${percentOf(after.humidityRatio)}, ${after.condensateKg.toFixed(2)} kg collected`;
  },
  resting: (given) => {
    const { restingRatio, timeConstantS } = cabinHumidityAfter(cabinOf(given), 0);
    return `${percentOf(restingRatio)}, reached to 1/e in ${(timeConstantS / 3600).toFixed(1)} h`;
  },
  exercise: (given) => {
    const sweat = exerciseSweatKg({
      metabolicW: given.number('watts'),
      efficiency: given.number('efficiency'),
      dryLossW: given.number('dry'),
      seconds: given.number('hours') * 3600,
    });
    return `${sweat.toFixed(3)} kg`;
  },
  expected: (given) => {
    const { kg, u } = expectedCondensate([known(given, 'people'), known(given, 'air')]);
    return `${kg.toFixed(1)} kg, u ${u.toFixed(2)}`;
  },
  missing: (given) => {
    const { kg, u95 } = condensateShortfall(known(given, 'expected'), known(given, 'collected'));
    return `${kg.toFixed(1)} ± ${u95.toFixed(1)} kg`;
  },
  sum: (given) => {
    const [doubts, sharedU] = [given.list('u'), given.number('shared')];
    const days = given.list('kg').map((kg, at) => ({ kg, u: doubts[at] ?? Number.NaN, sharedU }));
    const { kg, u95 } = shortfallSum(days);
    return `${kg.toFixed(1)} ± ${u95.toFixed(1)} kg`;
  },
});
