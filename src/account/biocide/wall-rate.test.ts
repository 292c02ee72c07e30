// What stores of a kind say of one another: agreement, disagreement, too few, and what each then adds.
import { describe, expect, test } from 'vitest';
import { seededChance } from '../../ground/maths/index.ts';
import type { LogRow } from './result-doubt.ts';
import { fallingLevel, kindRate, rateWithoutLevel } from './wall-rate.ts';

const alike = (count: number, metresPerDay = 0.0005, u = 0.0001) =>
  Array.from({ length: count }, () => ({ metresPerDay, u, results: 2 }));

describe('a kind', () => {
  test('of fewer than four says nothing', () => {
    expect(kindRate(alike(3))).toBeNull();
    expect(kindRate(alike(4))).not.toBeNull();
  });

  test('that agrees is surer than one store, by Student’s factor less than the square root of the count', () => {
    const kind = kindRate(alike(16));
    expect(kind?.metresPerDay).toBeCloseTo(0.0005, 12);
    // 14 degrees: 2.1448 / 1.96.
    expect(kind?.u).toBeCloseTo((0.0001 / 4) * 1.0943, 8);
  });

  test('that differs is no surer than its stores differ', () => {
    const rates = [0.0002, 0.0004, 0.0006, 0.0008].map((metresPerDay) => ({ metresPerDay, u: 0.00001 }));
    expect(kindRate(rates)?.u).toBeGreaterThan(0.00025);
  });

  test('holds one more store of it about as often as it says', () => {
    const chance = seededChance({ seed: 11 });
    let held = 0;
    const tries = 500;
    for (let k = 0; k < tries; k += 1) {
      const rate = () => 0.001 + 0.0002 * chance.normal();
      const others = Array.from({ length: 6 }, () => ({
        metresPerDay: rate() + 0.0001 * chance.normal(),
        u: 0.0001,
      }));
      const kind = kindRate(others);
      if (Math.abs(rate() - (kind?.metresPerDay ?? Number.NaN)) <= 1.96 * (kind?.u ?? Number.NaN)) held += 1;
    }
    // 475 are 95 %; the spread between so few is known badly, and the factor makes up for it.
    expect(held).toBeGreaterThan(455);
  });
});

const row = (days: number, log: number, below = false): LogRow => ({
  ...{ log, u: 0.05, below, exposureDaysPerM: 25 * days },
});
const kind = { metresPerDay: 0.0005, u: 0.0001, stores: 5 };

test('one result and a kind make a level that falls; two results draw the rate to themselves', () => {
  const one = fallingLevel({ exposureDaysPerM: 25 * 30 }, [[row(1, -1.6)]], kind);
  expect(one?.rate).toMatchObject({ from: 'kind', stores: 5 });
  expect(one?.rate?.metresPerDay).toBeCloseTo(0.0005, 12);
  expect(one?.logMgPerL).toBeCloseTo(-1.6 - 0.0005 * 25 * 29, 9);
  const two = fallingLevel({ exposureDaysPerM: 25 * 30 }, [[row(1, -1.6), row(30, -2.6)]], kind);
  expect(two?.rate?.from).toBe('both');
  // Its own results say 0.00138, with a doubt as large as that of the kind.
  expect(two?.rate?.metresPerDay).toBeGreaterThan(0.0008);
  expect(two?.rate?.metresPerDay).toBeLessThan(0.00138);
});

test('a kind without a result of this water makes a rate and no level', () => {
  expect(fallingLevel({ exposureDaysPerM: 10 }, [[]], kind)).toBeNull();
  expect(rateWithoutLevel(null, kind)).toMatchObject({ metresPerDay: 0.0005, u: 0.0001, from: 'kind' });
  const both = rateWithoutLevel({ metresPerDay: 0.0007, u: 0.0001, results: 2 }, kind);
  expect(both?.metresPerDay).toBeCloseTo(0.0006, 12);
  expect(both?.u).toBeCloseTo(0.0001 / Math.SQRT2, 12);
  expect(rateWithoutLevel(null, null)).toBeNull();
});
