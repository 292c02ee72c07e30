// Several means of one movement: fused as one batch of measurements would be, in any order, with conservation kept.
import { describe, expect, test } from 'vitest';
import { holm, litres, type Told } from '../../tests/journeys/told.ts';
import { element } from '../../tests/reference/dense.ts';
import {
  type Act,
  type FusedAct,
  type History,
  type Prior,
  solveAsBatch,
} from '../../tests/reference/history.ts';
import type { Body } from '../book/index.ts';
import { type Chance, seededChance } from '../ground/maths/index.ts';
import { errorKey } from './error-state.ts';

type Means = Pick<Body<'movement'>, 'amount' | 'instrument' | 'method'>;

const METERS = ['fill-meter', 'condensate', 'product'] as const;
const RELATIVE = { 'fill-meter': 0.01, condensate: 0.01, product: 0.005 } as const;

/** The doubt that an instrument's own random part brings: absolute litres, or a share. */
function randomOf(name: (typeof METERS)[number], massMg: number): number {
  if (name === 'fill-meter') return 0.12e6;
  return name === 'condensate' ? 0.05e6 : Math.round(0.006 * massMg);
}

/** A movement measured by one to four means: meters that share their errors, and weights with a doubt of their own. */
function measured(chance: Chance, trueL: number): { means: Means[]; kgs: Omit<Measure, 'calibration'>[] } {
  const count = 1 + chance.integerBelow(4);
  const means: Means[] = [];
  const kgs: Omit<Measure, 'calibration'>[] = [];
  for (let at = 0; at < count; at += 1) {
    const value = Math.round(1000 * trueL * (1 + 0.006 * chance.normal())) / 1000;
    if (chance.uniform() < 0.3) {
      means.push({ amount: litres(value, 0.15), method: `weight ${at}` });
      kgs.push({ massKg: value, uKg: 0.15, meter: null });
    } else {
      const meter = METERS[chance.integerBelow(METERS.length)]!;
      means.push({ amount: litres(value), instrument: meter });
      kgs.push({ massKg: value, uKg: randomOf(meter, Math.round(value * 1e6)) / 1e6, meter });
    }
  }
  return { means, kgs };
}

interface Measure {
  readonly massKg: number;
  readonly uKg: number;
  readonly meter: (typeof METERS)[number] | null;
}

const STORES = ['R1', 'C-01', 'C-02', 'C-03', 'C-04'] as const;
const PRIORS: readonly Prior[] = [
  [150, 3],
  [20, 0.25],
  [20, 0.25],
  [0, 0.05],
  [18, 0.25],
].map(([mean, u]) => ({ mean: mean!, variance: u! * u! }));

/** The same story told to the account and written as one batch of measurements. */
function story(seed: number): { told: Told; history: History<Act | FusedAct>; disagreements: number } {
  const chance = seededChance({ seed });
  // Nothing flows by itself while the story goes on, and no opening is watched: states are the stores and the meters.
  const told = holm();
  const acts: (Act | FusedAct)[] = [];
  const placeOfMeter = (name: (typeof METERS)[number] | null) =>
    name === null ? -1 : STORES.length + METERS.indexOf(name);
  for (let act = 0; act < 12; act += 1) {
    const [from, to] = [chance.integerBelow(2), 2 + chance.integerBelow(3)];
    const trueL = 1 + 2 * chance.uniform();
    const { means, kgs } = measured(chance, trueL);
    const [first, ...rest] = means;
    told.goTo(0, 21 + act / 100).tell('movement', {
      from: STORES[from]!,
      to: STORES[to]!,
      ...first!,
      ...(rest.length > 0 && { alsoRead: rest }),
    });
    acts.push({
      act: 'fused',
      from,
      to,
      means: kgs.map(({ massKg, uKg, meter }) => ({ massKg, uKg, calibration: placeOfMeter(meter) })),
    });
    if (act % 3 !== 2) continue;
    const value = Math.round(1000 * (told.believed(STORES[to]!).valueL + 0.2 * chance.normal())) / 1000;
    told.tell('weigh', { store: STORES[to]!, amount: litres(value, 0.1), instrument: 'fill-meter' });
    // What is declared is all there is: half of it at least is new, and the meter's 1 % has no more than the rest.
    const meterKg = 0.01 * value;
    const newKg = Math.sqrt(Math.max(0.1 ** 2 - meterKg ** 2, 0.1 ** 2 / 4));
    const scale = meterKg > 0 ? Math.min(1, Math.sqrt(0.1 ** 2 - newKg ** 2) / meterKg) : 0;
    const places = [to, placeOfMeter('fill-meter')];
    const u = Math.round(newKg * 1e6) / 1e6;
    acts.push({ act: 'read', places, weights: [1, scale * value], value, u });
  }
  const priors = [...PRIORS, ...METERS.map((name) => ({ mean: 0, variance: RELATIVE[name] ** 2 }))];
  return { told, history: { priors, acts }, disagreements: told.findings('means-disagree').length };
}

describe('against the batch', () => {
  test('sixty random stories: best values and covariances of stores and meters', () => {
    let [compared, most] = [0, 0];
    for (let seed = 1; seed <= 60; seed += 1) {
      const { told, history, disagreements } = story(seed);
      if (disagreements > 0 || told.findings('reading-far-off').length > 0) continue;
      const { means, covariance } = solveAsBatch(history);
      const { estimator, stores, errors } = told.fold;
      const places = [
        ...STORES.map((id) => stores.get(id)!.content),
        ...METERS.map((id) => errors.get(errorKey('calibration', id))?.place ?? -1),
      ];
      places.forEach((a, i) => {
        if (a < 0) return;
        const scale = Math.sqrt(element(covariance, i, i));
        most = Math.max(most, Math.abs(estimator.mean(a) - means[i]!) / scale);
        places.forEach((b, j) => {
          if (b < 0) return;
          const of = scale * Math.sqrt(element(covariance, j, j));
          most = Math.max(most, Math.abs(estimator.covariance(a, b) - element(covariance, i, j)) / of);
        });
      });
      compared += 1;
    }
    console.log(`${compared} stories, largest difference ${most.toExponential(1)} of a standard deviation`);
    expect(compared).toBeGreaterThan(30);
    expect(most).toBeLessThan(1e-7);
  });
});

const fill = (means: readonly Means[]): Told => {
  const [first, ...alsoRead] = means;
  const told = holm();
  told.goTo(0, 22).tell('movement', { from: 'R1', to: 'C-03', ...first!, alsoRead });
  return told;
};

const figures = (told: Told) => {
  const { estimator, stores, errors } = told.fold;
  const [from, to] = [stores.get('R1')!.content, stores.get('C-03')!.content];
  const meter = errors.get(errorKey('calibration', 'fill-meter'))?.place ?? to;
  return [
    ...[from, to, meter].map((place) => estimator.mean(place)),
    estimator.variance(from),
    estimator.variance(to),
    estimator.covariance(from, to),
    estimator.variance(meter),
    estimator.covariance(to, meter),
  ];
};

const permutations = <T>(list: readonly T[]): T[][] =>
  list.length < 2
    ? [[...list]]
    : list.flatMap((each, at) => permutations(list.toSpliced(at, 1)).map((rest) => [each, ...rest]));

describe('the order in which means are told', () => {
  const agreeing: readonly Means[] = [
    { amount: litres(18.2), instrument: 'fill-meter' },
    { amount: litres(18.05, 0.15), method: 'weight before and after' },
    { amount: litres(18.3), instrument: 'fill-meter' },
    { amount: litres(18.4), method: 'stop-watch' },
  ];

  test('makes no difference', () => {
    const wanted = figures(fill(agreeing));
    for (const means of permutations(agreeing)) {
      const got = figures(fill(means));
      for (const [at, value] of got.entries()) expect(Math.abs(value - wanted[at]!)).toBeLessThan(1e-9);
    }
  });

  test('makes none where two disagree, either', () => {
    const two = [agreeing[0]!, { amount: litres(16.5, 0.15), method: 'weight before and after' }];
    const [one, other] = [fill(two), fill(two.toReversed())];
    expect([one, other].map((told) => told.findings('means-disagree').length)).toEqual([1, 1]);
    const wanted = figures(one);
    for (const [at, value] of figures(other).entries())
      expect(Math.abs(value - wanted[at]!)).toBeLessThan(1e-9);
  });
});

test('what one end has too much the other has too little: the sum is as it was, in milligrams and in doubt', () => {
  const told = holm();
  const [from, to] = ['R1', 'C-03'].map((id) => told.fold.stores.get(id)!.content) as [number, number];
  const before = told.fold.estimator.sum([from, to]);
  const alsoRead = [{ amount: litres(18.05, 0.15), method: 'weight before and after' }];
  told
    .goTo(0, 22)
    .tell('movement', { from: 'R1', to: 'C-03', amount: litres(18.2), instrument: 'fill-meter', alsoRead });
  const after = told.fold.estimator.sum([from, to]);
  expect(after.mean).toBeCloseTo(before.mean, 12);
  expect(after.variance).toBeCloseTo(before.variance, 12);
  expect([told.ledgerL('R1'), told.ledgerL('C-03')]).toEqual([131.8, 18.2]);
  expect(told.position().closureMg).toBe(0);
});

test('two means by their doubts: 1/u² weights, and the doubt of both together', () => {
  const told = fill([
    { amount: litres(18.2, 0.2), method: 'a' },
    { amount: litres(18, 0.1), method: 'b' },
  ]);
  const [wa, wb] = [1 / 0.04, 1 / 0.01];
  const { valueL, uL } = told.believed('C-03');
  expect(valueL).toBeCloseTo((18.2 * wa + 18 * wb) / (wa + wb), 6);
  expect(uL).toBeCloseTo(Math.sqrt(0.05 * 0.05 + 1 / (wa + wb)), 6);
});

test('one meter read twice is no two meters: its calibration stays', () => {
  const told = fill([
    { amount: litres(20), instrument: 'fill-meter' },
    { amount: litres(20), instrument: 'fill-meter' },
  ]);
  // New in each: 0.12 L, halved in variance; the same in both: 1 % of 20 L.
  expect(told.believed('C-03').uL ** 2).toBeCloseTo(0.05 ** 2 + 0.12 ** 2 / 2 + 0.2 ** 2, 6);
  const error = told.fold.errors.get(errorKey('calibration', 'fill-meter'))!;
  expect(Math.sqrt(told.fold.estimator.variance(error.place))).toBeCloseTo(0.01, 12);
});

test('another means teaches the meter: what it learned is used the next time', () => {
  const told = fill([
    { amount: litres(20), instrument: 'fill-meter' },
    { amount: litres(20.3, 0.05), method: 'weight before and after' },
  ]);
  const { estimator, errors } = told.fold;
  const error = errors.get(errorKey('calibration', 'fill-meter'))!;
  // b from 0.3 = 20 b + noise of 0.12 and 0.05: prior variance 1e-4.
  const gain = (20 * 1e-4) / (400 * 1e-4 + 0.0144 + 0.0025);
  expect(estimator.mean(error.place)).toBeCloseTo(0.3 * gain, 9);
  expect(error.lessons).toEqual([told.entries.at(-1)?.id]);
});

describe('means that disagree', () => {
  test('are said with both figures, and nothing of the ledger changes', () => {
    const told = fill([
      { amount: litres(18.5, 0.2), method: 'flow meter' },
      { amount: litres(17.1, 0.15), method: 'weight before and after' },
    ]);
    const [finding] = told.findings('means-disagree');
    expect(finding?.data).toMatchObject({
      saidMg: 18_500_000,
      otherMg: 17_100_000,
      means: 'weight before and after',
      u95Mg: Math.round(2 * 1e6 * Math.sqrt(0.2 ** 2 + 0.15 ** 2)),
    });
    expect(finding?.where.store).toBe('C-03');
    expect(told.ledgerL('C-03')).toBe(18.5);
  });

  test('leave a best value between them, as doubtful as they disagree', () => {
    const [ua, ub] = [0.2, 0.15];
    const told = fill([
      { amount: litres(18.5, ua), method: 'a' },
      { amount: litres(17.1, ub), method: 'b' },
    ]);
    const [wa, wb] = [1 / (ua * ua), 1 / (ub * ub)];
    const times = (1.4 * 1.4) / (ua * ua + ub * ub);
    const { valueL, uL } = told.believed('C-03');
    expect(valueL).toBeCloseTo((18.5 * wa + 17.1 * wb) / (wa + wb), 6);
    expect(uL).toBeCloseTo(Math.sqrt(0.05 * 0.05 + times / (wa + wb)), 6);
  });

  test('just within three standard deviations nothing is said', () => {
    const u = Math.sqrt(0.2 ** 2 + 0.15 ** 2);
    for (const [apart, said] of [
      [2.95 * u, 0],
      [3.05 * u, 1],
    ] as const) {
      const told = fill([
        { amount: litres(18, 0.2), method: 'a' },
        { amount: litres(Math.round(1000 * (18 + apart)) / 1000, 0.15), method: 'b' },
      ]);
      expect(told.findings('means-disagree')).toHaveLength(said);
    }
  });
});

test('a run that was measured twice is fused as it ends', () => {
  const told = holm();
  told.goTo(0, 22).tell('run-start', { run: 'T-1', from: 'R1', to: 'C-03' });
  told.tell('run-finish', {
    run: 'T-1',
    amount: litres(18.2, 0.2),
    alsoRead: [{ amount: litres(18, 0.1), method: 'weight before and after' }],
  });
  expect(told.believed('C-03').valueL).toBeCloseTo((18.2 * 25 + 18 * 100) / 125, 6);
});

test('without an estimator whole milligrams move as the entry says first', () => {
  const told = holm({ estimating: false });
  told.goTo(1, 9).tell('movement', {
    from: 'R1',
    to: 'C-03',
    amount: litres(5),
    alsoRead: [{ amount: litres(9, 0.1), method: 'weight' }],
  });
  expect([told.ledgerL('C-03'), told.believed('C-03')]).toEqual([5, { valueL: 5, uL: 0 }]);
  expect(told.findings('means-disagree')).toEqual([]);
});
