// Walls against brute force over every set of pins; what chance put beyond them comes back, an error stays where it is.
import { expect, test } from 'vitest';
import { holmOpening, litres, Told } from '../../tests/journeys/told.ts';
import { made } from '../../tests/reference/dense.ts';
import { bestOfAll } from '../../tests/reference/every-set-of-pins.ts';
import { seededChance } from '../ground/maths/index.ts';
import { Estimator } from './estimator.ts';
import { type Walls, withinWalls } from './positivity.ts';

const STORES = 4;
const PROBLEMS = 3000;

/** Stores near the lower wall 0 or the upper one 10, which have errors in common. */
function problem(seed: number): { estimator: Estimator; walls: Walls[] } {
  const chance = seededChance({ seed });
  const estimator = new Estimator();
  const walls = Array.from({ length: STORES }, () => {
    const isHigh = chance.uniform() < 0.3;
    const mean = (isHigh ? 10 : 0) + 0.8 * chance.normal();
    return { place: estimator.add(mean, 0.05 + 0.5 * chance.uniform()), lowKg: 0, highKg: 10 };
  });
  for (let shared = 0; shared < 3; shared += 1) {
    const error = estimator.add(0, 1);
    for (const { place } of walls) estimator.lean(place, error, 0.6 * chance.normal());
  }
  return { estimator, walls };
}

function freeOf(estimator: Estimator) {
  const mean = Float64Array.from({ length: STORES }, (_, at) => estimator.mean(at));
  return { mean, covariance: made(STORES, STORES, (a, b) => estimator.covariance(a, b)) };
}

/** How far beyond its walls a store is, in its own standard deviations. */
const beyond = (estimator: Estimator, { place, lowKg, highKg }: Walls): number => {
  const value = estimator.mean(place);
  return Math.max(0, lowKg - value, value - highKg) / Math.sqrt(estimator.variance(place));
};

test(`${PROBLEMS} random problems: the best of every set of pins, and no doubt is touched`, () => {
  const pins = new Map<number, number>();
  let [compared, shifted] = [0, 0];
  for (let seed = 1; seed <= PROBLEMS; seed += 1) {
    const { estimator, walls } = problem(seed);
    // What is not chance is left out of this comparison: it is not held by any wall.
    if (walls.some((wall) => beyond(estimator, wall) > 2)) continue;
    const before = freeOf(estimator);
    const values = withinWalls(estimator, walls);
    const best = bestOfAll(before, walls);
    compared += 1;
    pins.set(best.pinned.length, (pins.get(best.pinned.length) ?? 0) + 1);
    if (best.pinned.length === 0) expect(values.size).toBe(0);
    else
      for (const { place } of walls) {
        expect(values.get(place), `seed ${seed}, store ${place}`).toBeCloseTo(best.values[place]!, 6);
        if (!best.pinned.includes(place) && Math.abs(best.values[place]! - estimator.mean(place)) > 1e-6)
          shifted += 1;
      }
    expect(freeOf(estimator)).toEqual(before);
  }
  console.log(`${compared} problems compared, by number of pins: ${JSON.stringify([...pins].sort())}`);
  expect(compared).toBeGreaterThan(PROBLEMS / 2);
  for (const count of [0, 1, 2, 3]) expect(pins.get(count)).toBeGreaterThan(20);
  expect(shifted).toBeGreaterThan(500);
});

test('a wall pushes, it never pulls: every multiplier has the sign of its wall', () => {
  let looked = 0;
  for (let seed = 1; seed <= 1000; seed += 1) {
    const { estimator, walls } = problem(seed);
    if (walls.some((wall) => beyond(estimator, wall) > 2)) continue;
    const values = withinWalls(estimator, walls);
    const held = walls.filter(({ place, lowKg, highKg }) =>
      [lowKg, highKg].some((wall) => Math.abs((values.get(place) ?? Number.NaN) - wall) < 1e-7),
    );
    // Let one go: where the others are held it would be beyond its wall, or on it.
    for (const wall of held) {
      const others = estimator.clone();
      for (const { place } of held)
        if (place !== wall.place) others.read({ places: [place], value: values.get(place)!, u: 0 });
      const alone = others.mean(wall.place);
      const isLow = values.get(wall.place)! < 5;
      expect(isLow ? alone : 10 - alone).toBeLessThan(1e-6);
      looked += 1;
    }
  }
  expect(looked).toBeGreaterThan(500);
});

test('further beyond than two standard deviations is no chance: it stays, and others are not bent by it', () => {
  const estimator = new Estimator();
  const [wrong, near] = [estimator.add(-1, 0.16), estimator.add(-0.1, 0.16)];
  const walls = [wrong, near].map((place) => ({ place, lowKg: 0, highKg: 10 }));
  const values = withinWalls(estimator, walls);
  expect([...values.keys()]).toEqual([near]);
  expect(values.get(near)).toBe(0);
});

test('in a position: less than nothing by chance is nothing, by more it is said; a sum is that of what is shown', () => {
  const told = new Told();
  const stores = holmOpening().stores.map((each) =>
    each.store === 'W-02' ? { ...each, amount: litres(1, 0.3) } : each,
  );
  told.tell('opening', holmOpening({ stores }));
  told.goTo(0, 22).tell('movement', { from: 'W-02', to: 'outside', amount: litres(1.4, 0.1) });
  const of = (id: string) => told.position().stores.find(({ facts }) => facts.id === id)!;
  const uMg = Math.round(1e6 * Math.sqrt(0.3 * 0.3 + 0.1 * 0.1));
  expect(of('W-02')).toMatchObject({ massMg: 0, uMg, lowMg: 0, highMg: 2 * uMg });
  expect(told.findings('negative-stock')).toEqual([]);
  const position = told.position();
  expect(position.sumOf(['W-02', 'C-04']).massMg).toBe(of('C-04').massMg);
  expect(position.closureMg).toBe(0);
  told.goTo(0, 23).tell('movement', { from: 'W-02', to: 'outside', amount: litres(0.6, 0.1) });
  expect(of('W-02').massMg).toBe(-1_000_000);
  expect(told.findings('negative-stock')).toHaveLength(1);
});
