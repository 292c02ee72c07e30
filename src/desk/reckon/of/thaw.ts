// How long ice takes to thaw at a heater, or water to freeze in the cold.
import { freeze, freezingGrowth, thaw as thawing } from '../../../ground/physics/index.ts';
import type { Calculator, Reckoned, RefusedBy, Result, Saying } from '../calculator.ts';
import type { Inputs } from '../inputs.ts';
import { J_PER_KJ, S_PER_H } from '../si-factors.ts';
import { HEATER } from './heat.ts';

export const thaw: Calculator = {
  name: 'thaw',
  inputs: [
    { name: 'mass', dimension: 'mass', unit: 'kg', positive: true },
    { name: 'begin', dimension: 'temperature', unit: 'degC' },
    {
      name: 'end',
      dimension: 'temperature',
      unit: 'degC',
      otherwise: { value: 5, u95: null, why: 'just-liquid' },
    },
    {
      name: 'ice',
      dimension: 'fraction',
      unit: '%',
      most: 100,
      otherwise: { value: 100, u95: null, why: 'all-ice' },
    },
    ...HEATER.map((spec) => (spec.name === 'power' ? { ...spec, optional: true as const } : spec)),
    {
      name: 'around',
      dimension: 'temperature',
      unit: 'degC',
      otherwise: { value: 22, u95: null, why: 'room-warm' },
    },
  ],
  method: 'freeze-and-thaw',
  cautions: ['trapped-water'],
  refuse: notTold,
  reckon,
};

/** Ice needs a heater, and how soon water freezes hangs on what it loses. */
function notTold(inputs: Inputs): RefusedBy | null {
  const field = isWater(inputs) ? 'loss' : 'power';
  return (inputs.maybe(field) ?? 0) > 0 ? null : { rule: `${field}-not-told`, data: {}, field };
}

function isWater(inputs: Inputs): boolean {
  return inputs.number('begin') > 0;
}

function reckon(inputs: Inputs): Reckoned {
  return isWater(inputs) ? freezing(inputs) : thawed(inputs);
}

function thawed(inputs: Inputs): Reckoned {
  const beginC = inputs.number('begin');
  const massKg = inputs.number('mass');
  const asked = thawing({
    ice: { massKg, temperatureC: beginC, iceShare: beginC < 0 ? 1 : inputs.number('ice') / 100 },
    toC: inputs.number('end'),
    powerW: inputs.number('power'),
    efficiency: inputs.number('efficiency') / 100,
    lossWPerK: inputs.number('loss'),
    aroundC: inputs.number('around'),
  });
  const results: Result[] = [];
  if (asked.meltedAfterS !== null)
    results.push({ name: 'melted-after', value: asked.meltedAfterS / S_PER_H, unit: 'h' });
  if (asked.warmAfterS !== null)
    results.push({ name: 'warm-after', value: asked.warmAfterS / S_PER_H, unit: 'h' });
  results.push({
    name: 'heat-needed',
    value: (asked.warmIceJ + asked.meltJ + asked.warmWaterJ) / J_PER_KJ,
    unit: 'kJ',
  });
  const sayings: Saying[] = asked.meltedAfterS === null ? [{ key: 'never-thaws', data: {} }] : [];
  return { results, sayings: [...sayings, { key: 'only-liquid-counts', data: {} }] };
}

function freezing(inputs: Inputs): Reckoned {
  const asked = freeze({
    massKg: inputs.number('mass'),
    fromC: inputs.number('begin'),
    vesselJPerK: 0,
    lossWPerK: inputs.number('loss'),
    aroundC: inputs.number('around'),
  });
  if (asked === null) return { results: [], sayings: [{ key: 'never-freezes', data: {} }] };
  return {
    results: [
      { name: 'freezing-after', value: asked.atFreezingAfterS / S_PER_H, unit: 'h', limit: 'early' },
      { name: 'frozen-after', value: asked.frozenAfterS / S_PER_H, unit: 'h' },
      { name: 'grows', value: 100 * freezingGrowth(), unit: '%', exact: true },
    ],
    sayings: [],
  };
}
