// How much water a condenser takes out of the air, and how much the crew puts in.
import {
  bypassCoil,
  humidityRatio,
  moistVolumeM3PerKg,
  segmentedCoil,
} from '../../../ground/physics/index.ts';
import { type Answer, yes } from '../../answer.ts';
import { AIR, CABIN, HUMIDITY, OXYGEN } from '../cabin-specs.ts';
import type { Calculator, Reckoned, RefusedBy, Result, Saying } from '../calculator.ts';
import { Filled, type FromBook, fillCabin } from '../from-book.ts';
import type { Input, Inputs } from '../inputs.ts';
import { S_PER_DAY, S_PER_H } from '../si-factors.ts';
import { airOf } from './dewpoint.ts';

export const condense: Calculator = {
  name: 'condense',
  inputs: [
    AIR,
    HUMIDITY,
    CABIN,
    OXYGEN,
    { name: 'air-flow', dimension: 'flow', unit: 'm3/h', positive: true },
    { name: 'coolant', dimension: 'temperature', unit: 'degC' },
    { name: 'bypass', dimension: 'plain', unit: '', optional: true, most: 1 },
    { name: 'coolant-flow', dimension: 'mass-flow', unit: 'kg/h', positive: true, optional: true },
    { name: 'air-side', dimension: 'heat-loss', unit: 'W/K', positive: true, optional: true },
    { name: 'coolant-side', dimension: 'heat-loss', unit: 'W/K', positive: true, optional: true },
    { name: 'people', dimension: 'plain', unit: '', optional: true },
    {
      name: 'vapour-each',
      dimension: 'mass-flow',
      unit: 'kg/d',
      positive: true,
      otherwise: { value: 1.8, u95: 0.36, why: 'vapour-each' },
    },
  ],
  method: 'condenser',
  cautions: [],
  fill,
  refuse: coilNotTold,
  reckon,
};

/** Either the whole coil, or how much air misses it. */
function coilNotTold(inputs: Inputs): RefusedBy | null {
  const whole = ['coolant-flow', 'air-side', 'coolant-side'];
  const told = whole.filter((name) => inputs.has(name));
  if (told.length === whole.length || inputs.has('bypass')) return null;
  const missing = told.length === 0 ? ['bypass'] : whole.filter((name) => !told.includes(name));
  return { rule: 'coil-not-told', ...(missing[0] !== undefined && { field: missing[0] }), data: { missing } };
}

function reckon(inputs: Inputs): Reckoned {
  const air = airOf(inputs);
  const airC = inputs.number('air');
  const ratio = humidityRatio(air, airC, inputs.number('humidity') / 100);
  const volumeM3PerS = inputs.number('air-flow') / S_PER_H;
  const airFlowKgPerS = volumeM3PerS / moistVolumeM3PerKg(air, airC, ratio);
  const airIn = { temperatureC: airC, humidityRatio: ratio };
  const taken = inputs.has('bypass')
    ? bypassCoil({
        air,
        airIn,
        airFlowKgPerS,
        coilC: inputs.number('coolant'),
        bypass: inputs.number('bypass'),
      })
    : wholeCoil(inputs, { air, airIn, airFlowKgPerS });
  const takenKgPerDay = S_PER_DAY * taken.condensateKgPerS;
  const results: Result[] = [
    { name: 'condensate', value: takenKgPerDay, unit: 'kg/d' },
    { name: 'cooling', value: taken.heatW, unit: 'W' },
    { name: 'air-out', value: taken.airOut.temperatureC, unit: 'degC' },
  ];
  const sayings: Saying[] = takenKgPerDay > 0 ? [] : [{ key: 'coil-dry', data: {} }];
  const people = inputs.maybe('people');
  if (people !== null) {
    const givenKgPerDay = people * inputs.number('vapour-each');
    results.push({ name: 'crew-gives', value: givenKgPerDay, unit: 'kg/d' });
    sayings.push({ key: takenKgPerDay < givenKgPerDay ? 'humidity-rises' : 'humidity-falls', data: {} });
  }
  return { results, sayings };
}

function wholeCoil(
  inputs: Inputs,
  told: Pick<Parameters<typeof segmentedCoil>[0], 'air' | 'airIn' | 'airFlowKgPerS'>,
): ReturnType<typeof segmentedCoil> {
  return segmentedCoil({
    ...told,
    coolantInC: inputs.number('coolant'),
    coolantFlowKgPerS: inputs.number('coolant-flow') / S_PER_H,
    outerWPerK: inputs.number('air-side'),
    innerWPerK: inputs.number('coolant-side'),
  });
}

function fill(book: FromBook): Answer<readonly Input[]> {
  const filled = new Filled();
  fillCabin(filled, book);
  filled.fromBook('people', book.position.peopleAboard, { unit: '', key: 'people-aboard', entries: [] });
  return yes(filled.inputs);
}
