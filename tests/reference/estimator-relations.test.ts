// Relations that the estimator keeps without anybody knowing the right answer: names, units, order and pieces do not count.
import { expect, test } from 'vitest';
import { Estimator } from '../../src/account/index.ts';
import { seededChance } from '../../src/ground/maths/index.ts';
import { type Act, type History, tell } from './history.ts';
import { randomNetwork } from './random-history.ts';

const SEEDS = Array.from({ length: 40 }, (_, at) => at + 1);

interface Told {
  readonly estimator: Estimator;
  readonly sumOfSquares: number;
}

function told(history: History): Told {
  const estimator = new Estimator(8);
  return { estimator, sumOfSquares: tell(estimator, history).sumOfSquares };
}

/** The same history with every place renamed. */
function renamed({ priors, acts }: History, placeOf: (place: number) => number): History {
  const moved = [...priors];
  priors.forEach((prior, place) => {
    moved[placeOf(place)] = prior;
  });
  const named = (place: number): number => (place < 0 ? place : placeOf(place));
  return { priors: moved, acts: acts.map((act) => renamedAct(act, named)) };
}

function renamedAct(act: Act, named: (place: number) => number): Act {
  if (act.act === 'move')
    return { ...act, from: named(act.from), to: named(act.to), calibration: named(act.calibration) };
  if (act.act === 'read') return { ...act, places: act.places.map(named) };
  return { ...act, place: named(act.place) };
}

test('other names, in another order: the same bits', () => {
  for (const seed of SEEDS) {
    const { history } = randomNetwork(seed);
    const chance = seededChance({ seed, stream: 3 });
    const order = history.priors.map((_, place) => place);
    for (let at = order.length - 1; at > 0; at -= 1) {
      const other = chance.integerBelow(at + 1);
      [order[at], order[other]] = [order[other]!, order[at]!];
    }
    const here = told(history);
    const there = told(renamed(history, (place) => order[place]!));
    expect(there.sumOfSquares).toBe(here.sumOfSquares);
    order.forEach((named, place) => {
      expect(there.estimator.mean(named)).toBe(here.estimator.mean(place));
      order.forEach((alsoNamed, other) => {
        expect(there.estimator.covariance(named, alsoNamed)).toBe(here.estimator.covariance(place, other));
      });
    });
  }
});

test('masses in units a power of two smaller or larger: the same bits, with another exponent', () => {
  for (const seed of SEEDS) {
    const { history, stores, calibrations } = randomNetwork(seed);
    const here = told(history);
    for (const scale of [2 ** -20, 4, 2 ** 30]) {
      const isRelative = (place: number): boolean => place >= stores && place < stores + calibrations;
      const of = (place: number): number => (isRelative(place) ? 1 : scale);
      const there = told(scaledBy(history, scale, isRelative));
      expect(there.sumOfSquares).toBe(here.sumOfSquares);
      for (let a = 0; a < here.estimator.size; a += 1) {
        expect(there.estimator.mean(a)).toBe(here.estimator.mean(a) * of(a));
        for (let b = 0; b <= a; b += 1)
          expect(there.estimator.covariance(a, b)).toBe(here.estimator.covariance(a, b) * of(a) * of(b));
      }
    }
  }
});

/** Stores, offsets and amounts scale; calibration errors are relative and stay. */
function scaledBy({ priors, acts }: History, scale: number, isRelative: (place: number) => boolean): History {
  const prior = ({ mean, variance }: History['priors'][number], place: number) =>
    isRelative(place) ? { mean, variance } : { mean: mean * scale, variance: variance * scale * scale };
  return {
    priors: priors.map(prior),
    acts: acts.map((act): Act => {
      if (act.act === 'move') return { ...act, massKg: act.massKg * scale, uKg: act.uKg * scale };
      if (act.act === 'read') return { ...act, value: act.value * scale, u: act.u * scale };
      if (act.act === 'told') return { ...act, prior: prior(act.prior, act.place) };
      return isRelative(act.place) ? act : { ...act, variance: act.variance * scale * scale };
    }),
  };
}

test('a movement in two parts by the same instrument is the movement as a whole', () => {
  let split = 0;
  let furthest = 0;
  for (const seed of SEEDS) {
    const { history } = randomNetwork(seed);
    const chance = seededChance({ seed, stream: 4 });
    const acts = history.acts.flatMap((act): Act[] => {
      if (act.act !== 'move') return [act];
      split += 1;
      const part = chance.uniform();
      // The noise of the parts is independent, so their squares share the square of the whole.
      const noise = chance.uniform();
      return [
        { ...act, massKg: act.massKg * part, uKg: act.uKg * Math.sqrt(noise) },
        { ...act, massKg: act.massKg * (1 - part), uKg: act.uKg * Math.sqrt(1 - noise) },
      ];
    });
    furthest = Math.max(furthest, furthestApart(told(history), told({ ...history, acts })));
  }
  expect(split).toBeGreaterThan(5000);
  expect(furthest).toBeLessThan(1e-8);
});

test('a movement back and forth by the same instrument leaves its noise and nothing else', () => {
  const { history, stores } = randomNetwork(11);
  const there = { act: 'move', from: 0, to: 1, calibration: stores, massKg: 7, uKg: 0 } as const;
  const more = { ...history, acts: [...history.acts, there, { ...there, from: 1, to: 0 }] };
  expect(furthestApart(told(history), told(more))).toBeLessThan(1e-9);
});

test('a store that nothing touches changes no bit of the others, and stays what it was', () => {
  for (const seed of SEEDS.slice(0, 10)) {
    const { history } = randomNetwork(seed);
    const here = told(history);
    const lonely = { mean: 3, variance: 7 };
    const there = told({ ...history, priors: [...history.priors, lonely] });
    const place = here.estimator.size;
    expect([there.estimator.mean(place), there.estimator.variance(place)]).toEqual([3, 7]);
    for (let a = 0; a < place; a += 1) {
      expect(there.estimator.covariance(a, place)).toBe(0);
      for (let b = 0; b <= a; b += 1)
        expect(there.estimator.covariance(a, b)).toBe(here.estimator.covariance(a, b));
    }
  }
});

test('reading with hardly any weight teaches hardly anything, and no reading widens any doubt', () => {
  for (const seed of SEEDS.slice(0, 10)) {
    const { history, stores } = randomNetwork(seed);
    const { estimator } = told(history);
    const before = estimator.clone();
    estimator.read({ places: [stores - 1], value: 1e3, u: 1e9 });
    for (let at = 0; at < estimator.size; at += 1) {
      expect(Math.abs(estimator.mean(at) - before.mean(at))).toBeLessThan(1e-9);
      expect(estimator.variance(at)).toBeLessThanOrEqual(before.variance(at));
    }
    estimator.read({ places: [0, stores], weights: [1, 5], value: 20, u: 0.1 });
    for (let at = 0; at < estimator.size; at += 1)
      expect(estimator.variance(at)).toBeLessThanOrEqual(before.variance(at) * (1 + 1e-12));
  }
});

/** The furthest that means are apart, in standard deviations, and covariances, in products of two. */
function furthestApart(one: Told, other: Told): number {
  let most = Math.abs(one.sumOfSquares / other.sumOfSquares - 1);
  const u = (at: number): number => Math.sqrt(one.estimator.variance(at));
  for (let a = 0; a < one.estimator.size; a += 1) {
    most = Math.max(most, Math.abs(one.estimator.mean(a) - other.estimator.mean(a)) / u(a));
    for (let b = 0; b <= a; b += 1) {
      const difference = Math.abs(one.estimator.covariance(a, b) - other.estimator.covariance(a, b));
      most = Math.max(most, difference / (u(a) * u(b)));
    }
  }
  return most;
}
