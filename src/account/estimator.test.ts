// The estimator against a dense reference that knows no short cuts, and the relations that must hold whatever happens.
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { act, distance, pair, SIZE, STORES } from '../../tests/reference/dense-estimator.ts';
import { Estimator } from './estimator.ts';

test('random movements and readings agree with the dense reference to 1e-10', () => {
  let most = 0;
  for (let seed = 1; seed <= 40; seed++) {
    const both = pair(seed);
    for (let step = 0; step < 150; step++) act(both);
    most = Math.max(most, distance(both.estimator, both.dense));
  }
  expect(most).toBeLessThan(1e-10);
});

test('the reference is no copy: a movement that forgets its calibration is caught', () => {
  const { estimator, dense } = pair(3);
  const flow = { from: 0, to: 1, calibration: STORES, massKg: 10, uKg: 0.1 };
  estimator.move({ ...flow, calibration: -1 });
  dense.move(flow);
  expect(distance(estimator, dense)).toBeGreaterThan(1e-6);
});

test('the covariance stays symmetric to the bit and no variance falls below zero', () => {
  fc.assert(
    fc.property(fc.integer({ min: 1, max: 1e9 }), (seed) => {
      const both = pair(seed);
      for (let step = 0; step < 60; step++) act(both);
      const { estimator } = both;
      for (let i = 0; i < SIZE; i++) {
        expect(estimator.variance(i)).toBeGreaterThanOrEqual(0);
        for (let j = 0; j < i; j++) expect(estimator.covariance(i, j)).toBe(estimator.covariance(j, i));
      }
    }),
    { numRuns: 200, seed: 21 },
  );
});

test('a reading without doubt pins a state: its variance is 0 and not below', () => {
  fc.assert(
    fc.property(fc.integer({ min: 1, max: 1e9 }), (seed) => {
      const both = pair(seed);
      for (let step = 0; step < 20; step++) act(both);
      both.estimator.read({ places: [0], value: 7, u: 0 });
      expect(both.estimator.variance(0)).toBeGreaterThanOrEqual(0);
      expect(both.estimator.variance(0)).toBeLessThan(1e-12);
      expect(both.estimator.mean(0)).toBeCloseTo(7, 12);
      const again = both.estimator.read({ places: [0], value: 7, u: 0 });
      expect(Number.isFinite(again.variance)).toBe(true);
    }),
    { numRuns: 200, seed: 22 },
  );
});

test('water moved between two stores leaves the doubt of their sum as it was, whoever measured it', () => {
  const { estimator, chance } = pair(11);
  for (let step = 0; step < 50; step++) {
    const before = estimator.sum([0, 1]);
    const calibration = step % 2 === 0 ? STORES : -1;
    estimator.move({
      from: step % 3 === 0 ? 1 : 0,
      to: step % 3 === 0 ? 0 : 1,
      calibration,
      massKg: 20 * chance.uniform(),
      uKg: 1,
    });
    const after = estimator.sum([0, 1]);
    expect(after.mean).toBeCloseTo(before.mean, 10);
    expect(Math.abs(after.variance - before.variance)).toBeLessThan(1e-9);
  }
  expect(estimator.variance(0)).toBeGreaterThan(10);
});

test('water that leaves adds its doubt to the sum', () => {
  const estimator = new Estimator();
  estimator.add(10, 0.25);
  estimator.add(5, 0.25);
  estimator.move({ from: 0, to: -1, calibration: -1, massKg: 2, uKg: 0.5 });
  expect(estimator.sum([0, 1])).toEqual({ mean: 13, variance: 0.75 });
});

test('water that ends where it came from changes nothing', () => {
  const estimator = new Estimator();
  estimator.add(10, 0.25);
  const calibration = estimator.add(0, 0.0001);
  estimator.move({ from: 0, to: 0, calibration, massKg: 4, uKg: 0.5 });
  expect(estimator.mean(0)).toBe(10);
  expect(estimator.variance(0)).toBe(0.25);
  expect(estimator.covariance(0, calibration)).toBe(0);
});

test('a shared calibration error makes two fills fall together, and a reading of one teaches the other', () => {
  const estimator = new Estimator();
  const [a, b] = [estimator.add(0, 0), estimator.add(0, 0)];
  const meter = estimator.add(0, 0.02 * 0.02);
  for (const to of [a, b]) estimator.move({ from: -1, to, calibration: meter, massKg: 20, uKg: 0 });
  expect(estimator.covariance(a, b)).toBeCloseTo(0.16, 12);
  estimator.read({ places: [a], value: 20.4, u: 1e-6 });
  expect(estimator.mean(b)).toBeCloseTo(20.4, 6);
  expect(estimator.mean(meter)).toBeCloseTo(0.02, 6);
});

test('a copy goes its own way', () => {
  const both = pair(5);
  for (let step = 0; step < 10; step++) act(both);
  const copy = both.estimator.clone();
  const wanted = Array.from({ length: SIZE }, (_, i) => both.estimator.variance(i));
  copy.move({ from: 0, to: 1, calibration: STORES, massKg: 3, uKg: 2 });
  copy.read({ places: [2], value: 1, u: 0.1 });
  copy.add(1, 1);
  expect(Array.from({ length: SIZE }, (_, i) => both.estimator.variance(i))).toEqual(wanted);
  expect(both.estimator.size).toBe(SIZE);
  expect(distance(both.estimator, both.dense)).toBeLessThan(1e-12);
});

test('growing changes no figure', () => {
  const both = pair(9);
  for (let step = 0; step < 30; step++) act(both);
  for (let k = 0; k < 100; k++) expect(both.estimator.add(k, 1 + k)).toBe(SIZE + k);
  expect(distance(both.estimator, both.dense)).toBeLessThan(1e-11);
  expect(both.estimator.mean(SIZE + 99)).toBe(99);
  expect(both.estimator.variance(SIZE + 99)).toBe(100);
  expect(both.estimator.covariance(SIZE + 99, 0)).toBe(0);
});

test('a state that is told anew forgets what it shared; time widens one state alone', () => {
  const both = pair(13);
  for (let step = 0; step < 30; step++) act(both);
  const { estimator } = both;
  const other = estimator.variance(1);
  estimator.reset(0, 12, 0.09);
  expect([estimator.mean(0), estimator.variance(0), estimator.variance(1)]).toEqual([12, 0.09, other]);
  for (let j = 1; j < SIZE; j++)
    expect([estimator.covariance(0, j), estimator.covariance(j, 0)]).toEqual([0, 0]);
  estimator.widen(0, 0.16);
  expect(estimator.variance(0)).toBe(0.25);
});

test('numbers that are none are refused, and nothing is changed', () => {
  const { estimator } = pair(2);
  const before = [estimator.mean(0), estimator.variance(0)];
  const flow = { from: 0, to: 1, calibration: -1, massKg: 1, uKg: 0 };
  for (const bad of [Number.NaN, Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY]) {
    expect(() => estimator.add(bad, 1)).toThrow(RangeError);
    expect(() => estimator.add(0, bad)).toThrow(RangeError);
    expect(() => estimator.move({ ...flow, massKg: bad })).toThrow(RangeError);
    expect(() => estimator.move({ ...flow, uKg: bad })).toThrow(RangeError);
    expect(() => estimator.read({ places: [0], value: bad, u: 1 })).toThrow(RangeError);
    expect(() => estimator.read({ places: [0], value: 1, u: bad })).toThrow(RangeError);
    expect(() => estimator.reset(0, bad, 1)).toThrow(RangeError);
    expect(() => estimator.widen(0, bad)).toThrow(RangeError);
  }
  expect([estimator.mean(0), estimator.variance(0)]).toEqual(before);
  expect(estimator.size).toBe(SIZE);
});

test('a state that is not there is refused: it would be a silent NaN', () => {
  const { estimator } = pair(2);
  expect(() => estimator.read({ places: [SIZE], value: 1, u: 1 })).toThrow(RangeError);
  expect(() => estimator.move({ from: SIZE + 1, to: 0, calibration: -1, massKg: 1, uKg: 0 })).toThrow(
    RangeError,
  );
  expect(() => estimator.add(0, -1)).toThrow(RangeError);
});

test('a good scale on a wide guess keeps its digits: subtracting would leave rounding', () => {
  // n readings of content + offset with noise R: the content's variance in closed form, sums of positive terms alone.
  const wide = 1e4;
  const offset = 0.01;
  for (const u of [1e-1, 1e-2, 1e-3, 1e-4]) {
    const estimator = new Estimator();
    const [content, gauge] = [estimator.add(0, wide), estimator.add(0, offset)];
    for (let count = 1; count <= 20; count++) {
      estimator.read({ places: [content, gauge], value: 7, u });
      const perNoise = count / (u * u);
      const determinant = 1 / (wide * offset) + perNoise * (1 / wide + 1 / offset);
      const wanted = (1 / offset + perNoise) / determinant;
      expect(Math.abs(estimator.variance(content) / wanted - 1)).toBeLessThan(1e-12);
      // What the two sum to is known to the noise of the readings, though each alone is not.
      const known = 1 / (perNoise + 1 / (wide + offset));
      expect(Math.abs(estimator.sum([content, gauge]).variance / known - 1)).toBeLessThan(1e-6);
    }
  }
});

test('an exact reading of what is known exactly draws nothing, whatever rounding has left', () => {
  const both = pair(17);
  for (let step = 0; step < 40; step++) act(both);
  const { estimator } = both;
  const reading = { places: [0, STORES, 2], weights: [1, 3, -0.7], value: 5, u: 0 };
  estimator.read(reading);
  const means = Array.from({ length: SIZE }, (_, i) => estimator.mean(i));
  estimator.read({ ...reading, value: 6 });
  expect(Array.from({ length: SIZE }, (_, i) => estimator.mean(i))).toEqual(means);
});
