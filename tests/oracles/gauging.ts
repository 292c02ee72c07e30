// Gaugings with random inputs, some of which go together, against python3-uncertainties: values, doubts and sensitivities.
import { type Chance, type Doubted, propagate } from '../../src/ground/maths/index.ts';
import {
  combineGaugings,
  gaugeByBlowDown,
  gaugeByInjection,
  volumeByStrokes,
  weighByOscillation,
} from '../../src/ground/physics/index.ts';
import { between, type Oracle } from './oracle.ts';

const script = 'propagation_values.py';
const because = 'one law of propagation, by dual numbers here and by symbolic slopes there';

/** Values and doubts of one gauging, in the order of its names. */
interface Drawn extends Record<string, readonly number[]> {
  readonly values: readonly number[];
  readonly doubts: readonly number[];
}

function drawnOf(
  chance: Chance,
  ranges: readonly (readonly [low: number, high: number, u: number])[],
): Drawn {
  return {
    values: ranges.map(([low, high]) => between(chance, low, high)),
    doubts: ranges.map(([, , u]) => u * between(chance, 0.1, 1)),
  };
}

function toldBy<Name extends string>(
  names: readonly Name[],
  { values, doubts }: Drawn,
): Record<Name, Doubted> {
  const told = {} as Record<Name, Doubted>;
  names.forEach((name, at) => {
    told[name] = { value: values[at]!, u: doubts[at]! };
  });
  return told;
}

const INJECTION = [
  ...(['tankM3', 'bottleM3', 'bottleBeforePa', 'bottleAfterPa', 'bottleBeforeK', 'bottleAfterK'] as const),
  ...(['tankBeforePa', 'tankAfterPa', 'tankBeforeK', 'tankAfterK', 'vapourPa', 'lostShare'] as const),
  ...(['tankGaugeGain', 'bottleGaugeOffsetPa', 'complianceM3PerPa'] as const),
] as const;

const injection: Oracle<Drawn> = {
  subject: 'gauging by gas injection',
  against: 'python3-uncertainties',
  answers: { script, ask: 'injection' },
  count: 300,
  point: (chance) =>
    drawnOf(chance, [
      ...([
        [0.15, 0.25, 2e-3],
        [0.002, 0.01, 2e-5],
        [500e3, 900e3, 500],
        [300e3, 450e3, 500],
      ] as const),
      ...([
        [285, 300, 0.5],
        [285, 300, 0.5],
        [95e3, 120e3, 200],
        [150e3, 200e3, 200],
      ] as const),
      ...([
        [285, 300, 0.5],
        [285, 300, 0.5],
        [0, 3000, 50],
        [0, 0.05, 0.02],
      ] as const),
      ...([
        [-1e-3, 1e-3, 1e-3],
        [-300, 300, 300],
        [0, 1e-9, 1e-9],
      ] as const),
    ]),
  ours: (point) => {
    const { waterM3, gasM3 } = gaugeByInjection(toldBy(INJECTION, point));
    return [waterM3.value, waterM3.u, gasM3.value, gasM3.u];
  },
  tolerance: { rel: 1e-11 },
  because,
  control: {
    is: 'a gauging that forgets the doubt of the tank',
    wrong: (point) => {
      const told = toldBy(INJECTION, point);
      const { waterM3, gasM3 } = gaugeByInjection({ ...told, tankM3: { ...told.tankM3, u: 0 } });
      return [waterM3.value, waterM3.u, gasM3.value, gasM3.u];
    },
  },
};

const BLOW_DOWN = [
  ...(['tankM3', 'drawnM3', 'tankBeforePa', 'tankAfterPa', 'tankBeforeK', 'tankAfterK', 'vapourPa'] as const),
] as const;

const blowDown: Oracle<Drawn> = {
  subject: 'gauging by blow-down',
  against: 'python3-uncertainties',
  answers: { script, ask: 'blowDown' },
  count: 150,
  point: (chance) =>
    drawnOf(chance, [
      ...([
        [0.15, 0.25, 2e-3],
        [0.002, 0.01, 5e-5],
        [150e3, 200e3, 200],
        [95e3, 120e3, 200],
      ] as const),
      ...([
        [285, 300, 0.5],
        [285, 300, 0.5],
        [0, 3000, 50],
      ] as const),
    ]),
  ours: (point) => {
    const { waterM3, gasM3 } = gaugeByBlowDown(toldBy(BLOW_DOWN, point));
    return [waterM3.value, waterM3.u, gasM3.value, gasM3.u];
  },
  tolerance: { rel: 1e-11 },
  because,
  control: {
    is: 'a draw whose doubt is twice what was told',
    wrong: (point) => {
      const told = toldBy(BLOW_DOWN, point);
      const { waterM3, gasM3 } = gaugeByBlowDown({
        ...told,
        drawnM3: { ...told.drawnM3, u: 2 * told.drawnM3.u },
      });
      return [waterM3.value, waterM3.u, gasM3.value, gasM3.u];
    },
  },
};

const WEIGHING = ['periodS', 'stiffnessNPerM', 'carriageKg', 'tareKg', 'frameKg', 'slosh'] as const;

interface Weighing extends Drawn {
  /** Of spring and carriage. */
  readonly r: readonly number[];
}

function weighed(point: Weighing, r: number): readonly number[] {
  const { contentKg } = weighByOscillation({
    ...toldBy(WEIGHING, point),
    correlations: [{ of: ['stiffnessNPerM', 'carriageKg'], r }],
  });
  return [contentKg.value, contentKg.u, ...contentKg.parts.map(({ sensitivity }) => sensitivity)];
}

const weighing: Oracle<Weighing> = {
  subject: 'weighing by oscillation, spring and tray together',
  against: 'python3-uncertainties, correlated_values',
  answers: { script, ask: 'weighing' },
  count: 250,
  point: (chance) => ({
    ...drawnOf(chance, [
      ...([
        [1.45, 2.3, 1e-3],
        [590, 620, 3],
        [5, 15, 0.2],
        [0.5, 1.5, 0.05],
        [500, 4000, 100],
      ] as const),
      ...([[-0.01, 0.01, 0.03]] as const),
    ]),
    r: [between(chance, -0.95, 0.95)],
  }),
  ours: (point) => weighed(point, point.r[0]!),
  tolerance: { rel: 1e-9 },
  because: 'the other program takes the root of the covariance by its eigenvalues, which rounds',
  control: { is: 'spring and tray taken as independent', wrong: (point) => weighed(point, 0) },
};

interface Product extends Drawn {
  /** Correlations of the first input with the second, the first with the third, the second with the third. */
  readonly r: readonly number[];
}

function produced({ values, doubts, r }: Product, sign: number): readonly number[] {
  const names = ['a', 'b', 'c'] as const;
  const { value, u } = propagate({
    inputs: toldBy(names, { values, doubts }),
    correlations: [
      { of: ['a', 'b'], r: sign * r[0]! },
      { of: ['a', 'c'], r: sign * r[1]! },
      { of: ['b', 'c'], r: sign * r[2]! },
    ],
    formula: (on, { a, b, c }) =>
      on.plus(on.times(a, on.exp(on.scaled(b, -1))), on.over(on.squareRoot(c), on.log(on.shifted(a, 2)))),
  });
  return [value, u];
}

const formula: Oracle<Product> = {
  subject: 'a formula of three inputs that go together',
  against: 'python3-uncertainties, correlated_values',
  answers: { script, ask: 'formula' },
  count: 250,
  point: (chance) => {
    // Of three errors that share one: such correlations can stand together.
    const loads = [0, 1, 2].map(() => between(chance, -0.9, 0.9));
    return {
      ...drawnOf(chance, [
        [0.5, 4, 0.2],
        [0.1, 2, 0.2],
        [1, 9, 0.5],
      ]),
      r: [loads[0]! * loads[1]!, loads[0]! * loads[2]!, loads[1]! * loads[2]!],
    };
  },
  ours: (point) => produced(point, 1),
  tolerance: { rel: 1e-9 },
  because: 'the other program takes the root of the covariance by its eigenvalues, which rounds',
  control: { is: 'every correlation with the other sign', wrong: (point) => produced(point, -1) },
};

const strokes: Oracle<Drawn> = {
  subject: 'counted strokes',
  against: 'python3-uncertainties',
  answers: { script, ask: 'strokes' },
  count: 100,
  point: (chance) =>
    drawnOf(chance, [
      [10, 5000, 5],
      [-0.02, 0.02, 0.02],
      [20e-6, 60e-6, 0.03],
    ]),
  ours: ({ values: [count, bias, strokeM3], doubts: [uCount, uBias, scatter] }) => {
    const { drawnM3 } = volumeByStrokes({
      ...{ count: { value: count!, u: uCount! }, calibration: { value: bias!, u: uBias! } },
      ...{ strokeM3: strokeM3!, strokeScatter: scatter! },
    });
    return [drawnM3.value, drawnM3.u];
  },
  tolerance: { rel: 1e-11 },
  because,
  control: {
    is: 'a scatter that does not average out',
    wrong: ({ values: [count, bias, strokeM3], doubts: [uCount, uBias, scatter] }) => {
      const { drawnM3 } = volumeByStrokes({
        ...{
          count: { value: count!, u: uCount! },
          calibration: { value: bias!, u: Math.hypot(uBias!, scatter!) },
        },
        ...{ strokeM3: strokeM3!, strokeScatter: 0 },
      });
      return [drawnM3.value, drawnM3.u];
    },
  },
};

interface Together extends Drawn {
  /** What one shared error moves each gauging by. */
  readonly shell: readonly number[];
}

function combined({ values, doubts, shell }: Together, share: number): readonly number[] {
  const { value, u, chiSquare } = combineGaugings(
    values.map((each, at) => ({
      ...{ of: String(at), value: each, u: doubts[at]! },
      shared: { shell: share * shell[at]! },
    })),
  );
  return [value, u, chiSquare];
}

const combining: Oracle<Together> = {
  subject: 'gaugings combined with the error that they share',
  against: 'numpy, inverse of the covariance',
  answers: { script, ask: 'combined' },
  count: 150,
  point: (chance) => ({
    ...drawnOf(chance, [
      [168, 176, 2],
      [168, 176, 2],
      [168, 176, 2],
      [168, 176, 2],
    ]),
    shell: [0, 1, 2, 3].map(() => between(chance, 0, 1)),
  }),
  ours: (point) => combined(point, 1),
  tolerance: { rel: 1e-8 },
  because: 'Cholesky’s factor here, an inverse there',
  control: { is: 'the shared error left out', wrong: (point) => combined(point, 0) },
};

export const GAUGING_ORACLES: readonly Oracle[] = [
  ...[injection, blowDown, weighing, formula, strokes, combining],
];
