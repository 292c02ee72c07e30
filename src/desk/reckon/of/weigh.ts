// Mass by how long a swing on a spring takes, on a fixed frame or on one that floats.
import { massBesideFrameKg, swingingMassKg } from '../../../ground/physics/index.ts';
import type { Calculator, Reckoned, Result } from '../calculator.ts';
import type { InputSpec, QuantitySpec } from '../input-spec.ts';
import type { Inputs } from '../inputs.ts';

const mass = (name: string, more: Partial<QuantitySpec>): QuantitySpec => ({
  name,
  dimension: 'mass',
  unit: 'kg',
  ...more,
});

const INPUTS: readonly InputSpec[] = [
  { name: 'period', dimension: 'time', unit: 's', positive: true },
  { name: 'stiffness', dimension: 'stiffness', unit: 'N/m', positive: true },
  mass('carriage', { otherwise: { value: 0, u95: null, why: 'no-carriage' } }),
  mass('empty', { otherwise: { value: 0, u95: null, why: 'no-container' } }),
  mass('frame', { positive: true, optional: true }),
  {
    name: 'density',
    dimension: 'plain',
    unit: 'kg/L',
    positive: true,
    otherwise: { value: 0.998, u95: 0.002, why: 'room-dense' },
  },
  {
    name: 'slosh',
    dimension: 'plain',
    unit: '',
    hidden: true,
    otherwise: { value: 0, u95: 0.01, why: 'slosh' },
  },
];

export const weigh: Calculator = {
  name: 'weigh',
  inputs: INPUTS,
  method: 'weighing-by-oscillation',
  cautions: ['moving-mass'],
  reckon,
};

function reckon(inputs: Inputs): Reckoned {
  const feltKg = swingingMassKg(inputs.number('stiffness'), inputs.number('period'));
  const frameKg = inputs.maybe('frame');
  const swingingKg = frameKg === null ? feltKg : massBesideFrameKg({ reducedKg: feltKg, frameKg });
  const beside = inputs.number('carriage') + inputs.number('empty');
  // Water that does not swing with its container is felt less: that share is in doubt, not known.
  const waterKg = (swingingKg - beside) * (1 + inputs.number('slosh'));
  const results: Result[] = [
    { name: 'water-mass', value: waterKg, unit: 'kg' },
    { name: 'water-volume', value: waterKg / inputs.number('density'), unit: 'L' },
    { name: 'swinging', value: swingingKg, unit: 'kg' },
  ];
  const sayings =
    frameKg === null
      ? [{ key: 'frame-fixed', data: {} }]
      : [{ key: 'frame-floats', data: { moreKg: swingingKg - feltKg } }];
  return { results, sayings: waterKg < 0 ? [{ key: 'less-than-empty', data: {} }, ...sayings] : sayings };
}
