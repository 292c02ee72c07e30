// Dew point, water in the air, and whether a wall sweats.
import {
  cabinAir,
  dewPointC,
  humidityRatioOfVapour,
  moistVolumeM3PerKg,
  vapourPressurePa,
  wallDew,
} from '../../../ground/physics/index.ts';
import { type Answer, yes } from '../../answer.ts';
import { AIR, CABIN, CABIN_VOLUME, HUMIDITY, OXYGEN } from '../cabin-specs.ts';
import type { Calculator, Reckoned, Result, Saying } from '../calculator.ts';
import { Filled, type FromBook, fillCabin } from '../from-book.ts';
import type { Input, Inputs } from '../inputs.ts';
import { PA_PER_KPA } from '../si-factors.ts';

export const dewpoint: Calculator = {
  name: 'dewpoint',
  inputs: [
    AIR,
    HUMIDITY,
    CABIN,
    OXYGEN,
    CABIN_VOLUME,
    { name: 'wall', dimension: 'temperature', unit: 'degC', optional: true },
  ],
  method: 'moist-air',
  cautions: [],
  fill,
  reckon,
};

const G_PER_KG = 1000;

/** The air of a cabin as the inputs tell it. */
export function airOf(inputs: Inputs): ReturnType<typeof cabinAir> {
  const oxygen = inputs.maybe('oxygen');
  return cabinAir({
    pressurePa: PA_PER_KPA * inputs.number('cabin'),
    ...(oxygen !== null && { oxygenShare: oxygen / 100 }),
  });
}

function reckon(inputs: Inputs): Reckoned {
  const air = airOf(inputs);
  const airC = inputs.number('air');
  const humidity = inputs.number('humidity') / 100;
  const vapourPa = vapourPressurePa(air, airC, humidity);
  const ratio = humidityRatioOfVapour(air, vapourPa);
  const dewC = dewPointC(air, vapourPa);
  const results: Result[] = [
    { name: 'dew-point', value: dewC, unit: 'degC' },
    { name: 'vapour-pressure', value: vapourPa / PA_PER_KPA, unit: 'kPa' },
    { name: 'humidity-ratio', value: G_PER_KG * ratio, unit: 'g/kg' },
  ];
  const cabinM3 = inputs.maybe('cabin-volume');
  if (cabinM3 !== null) {
    const vapourKg = (cabinM3 / moistVolumeM3PerKg(air, airC, ratio)) * ratio;
    results.push(
      { name: 'vapour', value: vapourKg, unit: 'kg' },
      { name: 'vapour-per-percent', value: (G_PER_KG * vapourKg) / inputs.number('humidity'), unit: 'g' },
    );
  }
  return { results, sayings: wallSayings(inputs, dewC) };
}

function wallSayings(inputs: Inputs, dewC: number): readonly Saying[] {
  const wallC = inputs.maybe('wall');
  if (wallC === null) return [];
  const { verdict, aboveDewPointK } = wallDew({ wallC, dewPointC: dewC });
  return [{ key: `wall-${verdict}`, data: { byK: aboveDewPointK } }];
}

function fill(book: FromBook): Answer<readonly Input[]> {
  const filled = new Filled();
  fillCabin(filled, book);
  return yes(filled.inputs);
}
