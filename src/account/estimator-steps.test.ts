// Steps that time and several means bring: a state that forgets, one that leans on another, one that is there for a moment only.
import { expect, test } from 'vitest';
import { act, distance, pair, SIZE } from '../../tests/reference/dense-estimator.ts';
import { Estimator } from './estimator.ts';

test('a state that forgets comes to the doubt of its noise, and keeps its part of what it shared', () => {
  const estimator = new Estimator();
  const [state, other] = [estimator.add(3, 2), estimator.add(0, 1)];
  estimator.lean(state, other, 0.5);
  expect([estimator.variance(state), estimator.covariance(state, other)]).toEqual([2.25, 0.5]);
  // φ = 0.8 a day with noise 0.36 σ²: the doubt that it comes to is σ² = 4.
  const [factor, noise] = [0.8, 0.36 * 4];
  for (let day = 0; day < 200; day++) estimator.fade(state, factor, noise);
  expect(estimator.mean(state)).toBeCloseTo(0, 12);
  expect(estimator.variance(state)).toBeCloseTo(4, 12);
  expect(estimator.covariance(state, other)).toBeCloseTo(0, 12);
  expect([estimator.mean(other), estimator.variance(other)]).toEqual([0, 1]);
});

test('fading twice is fading once for the time of both', () => {
  const [twice, once] = [pair(31), pair(31)];
  for (const both of [twice, once]) for (let step = 0; step < 20; step++) act(both);
  const [early, late] = [0.9, 0.7];
  twice.estimator.fade(1, early, 1 - early * early);
  twice.estimator.fade(1, late, 1 - late * late);
  once.estimator.fade(1, early * late, 1 - early * early * late * late);
  for (let i = 0; i < SIZE; i++)
    expect(twice.estimator.covariance(1, i)).toBeCloseTo(once.estimator.covariance(1, i), 12);
  expect(twice.estimator.mean(1)).toBeCloseTo(once.estimator.mean(1), 12);
});

test('the state that was added last is forgotten, and leaves no trace for the next one', () => {
  const { estimator, dense } = pair(33);
  const place = estimator.add(5, 2);
  estimator.lean(place, 0, 3);
  estimator.dropLast();
  expect(estimator.size).toBe(SIZE);
  expect(distance(estimator, dense)).toBe(0);
  expect([estimator.mean(place), estimator.variance(place)]).toEqual([Number.NaN, Number.NaN]);
  expect(estimator.add(1, 1)).toBe(place);
  for (let i = 0; i < SIZE; i++) expect(estimator.covariance(place, i)).toBe(0);
  expect(() => new Estimator().dropLast()).toThrow(RangeError);
});

test('a state that leans on itself, and a share that is no number, are refused', () => {
  const { estimator } = pair(2);
  expect(() => estimator.lean(1, 1, 0.5)).toThrow(RangeError);
  expect(() => estimator.lean(SIZE, 1, 0.5)).toThrow(RangeError);
  expect(() => estimator.lean(1, SIZE, 0.5)).toThrow(RangeError);
  expect(() => estimator.lean(1, 2, Number.NaN)).toThrow(RangeError);
  expect(() => estimator.fade(1, Number.NaN, 0)).toThrow(RangeError);
  expect(() => estimator.fade(1, 0.5, -1)).toThrow(RangeError);
  expect(() => estimator.fade(SIZE, 0.5, 1)).toThrow(RangeError);
});
