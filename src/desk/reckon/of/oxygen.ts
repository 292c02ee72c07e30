// How much water the oxygen of a crew takes, and what the electrolyser draws and gives off.
import { oxygenByElectrolysis } from '../../../ground/physics/index.ts';
import { type Answer, yes } from '../../answer.ts';
import type { Calculator, Reckoned } from '../calculator.ts';
import { Filled, type FromBook } from '../from-book.ts';
import type { Input, Inputs } from '../inputs.ts';

export const oxygen: Calculator = {
  name: 'oxygen',
  inputs: [
    { name: 'people', dimension: 'plain', unit: '' },
    {
      name: 'need',
      dimension: 'mass-flow',
      unit: 'kg/d',
      positive: true,
      otherwise: { value: 0.84, u95: 0.17, why: 'oxygen-each' },
    },
    {
      name: 'share',
      dimension: 'fraction',
      unit: '%',
      otherwise: { value: 100, u95: null, why: 'all-of-water' },
    },
    {
      name: 'cells',
      dimension: 'plain',
      unit: '',
      positive: true,
      otherwise: { value: 1, u95: null, why: 'one-cell' },
    },
    {
      name: 'cell-voltage',
      dimension: 'voltage',
      unit: 'V',
      positive: true,
      otherwise: { value: 1.9, u95: 0.2, why: 'usual-cell' },
    },
    {
      name: 'current-efficiency',
      dimension: 'fraction',
      unit: '%',
      positive: true,
      otherwise: { value: 97, u95: 4, why: 'usual-cell' },
    },
    { name: 'purged', dimension: 'fraction', unit: '%', otherwise: { value: 0, u95: null, why: 'no-purge' } },
  ],
  method: 'electrolysis',
  cautions: ['oxygen-and-hydrogen'],
  fill,
  reckon,
};

const J_PER_KWH = 3.6e6;

function reckon(inputs: Inputs): Reckoned {
  const made = oxygenByElectrolysis({
    people: inputs.number('people'),
    oxygenKgPerPersonDay: inputs.number('need'),
    shareOfWater: inputs.number('share') / 100,
    cells: inputs.number('cells'),
    cellVoltageV: inputs.number('cell-voltage'),
    currentEfficiency: inputs.number('current-efficiency') / 100,
    purgedShare: inputs.number('purged') / 100,
  });
  return {
    results: [
      { name: 'water-for-oxygen', value: made.waterKgPerDay, unit: 'kg/d' },
      { name: 'oxygen-made', value: made.oxygenKgPerDay, unit: 'kg/d' },
      { name: 'hydrogen-made', value: made.hydrogenKgPerDay, unit: 'kg/d' },
      { name: 'bottled-oxygen', value: made.bottledOxygenKgPerDay, unit: 'kg/d' },
      { name: 'current', value: made.currentA, unit: 'A' },
      { name: 'power', value: made.powerW, unit: 'W' },
      { name: 'heat', value: made.heatW, unit: 'W' },
      { name: 'energy-of-oxygen', value: made.energyJPerKgOxygen / J_PER_KWH, unit: 'kWh/kg' },
    ],
    sayings: made.heatW < 0 ? [{ key: 'stack-cools', data: {} }] : [],
  };
}

function fill({ position }: FromBook): Answer<readonly Input[]> {
  const filled = new Filled();
  filled.fromBook('people', position.peopleAboard, { unit: '', key: 'people-aboard', entries: [] });
  return yes(filled.inputs);
}
