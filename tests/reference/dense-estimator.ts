// An estimator of matrices written out, and random acts that both it and the product's estimator are told.
import { expect } from 'vitest';
import { Estimator } from '../../src/account/index.ts';
import { seededChance } from '../../src/ground/maths/index.ts';

type Matrix = number[][];

const zeros = (n: number): Matrix => Array.from({ length: n }, () => new Array<number>(n).fill(0));
const one = (n: number): Matrix => zeros(n).map((row, i) => row.map((_, j) => (i === j ? 1 : 0)));
const transpose = (a: Matrix): Matrix => a.map((_, i) => a.map((row) => row[i]!));
const times = (a: Matrix, b: Matrix): Matrix =>
  a.map((row) => b[0]!.map((_, j) => row.reduce((sum, value, k) => sum + value * b[k]![j]!, 0)));
const plus = (a: Matrix, b: Matrix): Matrix => a.map((row, i) => row.map((value, j) => value + b[i]![j]!));

/** Matrices written out: P ← F P Fᵀ + Q, and Joseph's (I − K h) P (I − K h)ᵀ + K R Kᵀ. */
export class DenseReference {
  mean: number[] = [];
  covariance: Matrix = [];

  add(mean: number, variance: number): void {
    this.mean.push(mean);
    this.covariance = this.covariance.map((row) => [...row, 0]);
    this.covariance.push([...new Array<number>(this.mean.length - 1).fill(0), variance]);
  }

  move(flow: { from: number; to: number; calibration: number; massKg: number; uKg: number }): void {
    const n = this.mean.length;
    const direction = new Array<number>(n).fill(0);
    if (flow.from >= 0) direction[flow.from]! -= 1;
    if (flow.to >= 0) direction[flow.to]! += 1;
    const factor = flow.massKg * (1 + (flow.calibration < 0 ? 0 : this.mean[flow.calibration]!));
    this.mean = this.mean.map((value, i) => value + direction[i]! * factor);
    const f = one(n);
    if (flow.calibration >= 0)
      for (let i = 0; i < n; i++) f[i]![flow.calibration]! += flow.massKg * direction[i]!;
    const q = zeros(n).map((row, i) =>
      row.map((_, j) => direction[i]! * direction[j]! * flow.uKg * flow.uKg),
    );
    this.covariance = plus(times(times(f, this.covariance), transpose(f)), q);
  }

  /** x ← F x, P ← F P Fᵀ + q, with F as given and q on one state. */
  #step(f: Matrix, noise: { place: number; variance: number }): void {
    this.mean = f.map((row) => row.reduce((sum, each, j) => sum + each * this.mean[j]!, 0));
    this.covariance = times(times(f, this.covariance), transpose(f));
    this.covariance[noise.place]![noise.place]! += noise.variance;
  }

  fade(place: number, factor: number, variance: number): void {
    const f = one(this.mean.length);
    f[place]![place] = factor;
    this.#step(f, { place, variance });
  }

  lean(place: number, on: number, factor: number): void {
    const f = one(this.mean.length);
    f[place]![on] = factor;
    this.#step(f, { place, variance: 0 });
  }

  dropLast(): void {
    this.mean = this.mean.slice(0, -1);
    this.covariance = this.covariance.slice(0, -1).map((row) => row.slice(0, -1));
  }

  read(h: readonly number[], value: number, u: number): { innovation: number; variance: number } {
    const n = this.mean.length;
    const ph = this.covariance.map((row) => row.reduce((sum, each, j) => sum + each * h[j]!, 0));
    const variance = ph.reduce((sum, each, i) => sum + each * h[i]!, 0) + u * u;
    const innovation = value - this.mean.reduce((sum, each, i) => sum + each * h[i]!, 0);
    const k = ph.map((each) => each / variance);
    this.mean = this.mean.map((each, i) => each + k[i]! * innovation);
    const left = one(n).map((row, i) => row.map((each, j) => each - k[i]! * h[j]!));
    const noise = zeros(n).map((row, i) => row.map((_, j) => k[i]! * u * u * k[j]!));
    this.covariance = plus(times(times(left, this.covariance), transpose(left)), noise);
    return { innovation, variance };
  }
}

export const STORES = 5;
const CALIBRATIONS = 3;
export const SIZE = STORES + CALIBRATIONS;

export function pair(seed: number): {
  estimator: Estimator;
  dense: DenseReference;
  chance: ReturnType<typeof seededChance>;
} {
  const chance = seededChance({ seed });
  const estimator = new Estimator(4);
  const dense = new DenseReference();
  for (let k = 0; k < SIZE; k++) {
    const mean = k < STORES ? 20 * chance.uniform() : 0;
    const variance = k < STORES ? 2 * chance.uniform() : 0.0004 * chance.uniform();
    estimator.add(mean, variance);
    dense.add(mean, variance);
  }
  return { estimator, dense, chance };
}

/** A state that forgets, one that leans on another, and one that is there for the time of one movement only. */
function rareAct({ estimator, dense, chance }: ReturnType<typeof pair>): void {
  const place = chance.integerBelow(SIZE);
  const kind = chance.integerBelow(3);
  if (kind === 0) {
    const [factor, variance] = [chance.uniform(), chance.uniform()];
    for (const each of [estimator, dense]) each.fade(place, factor, variance);
  } else if (kind === 1) {
    const on = (place + 1 + chance.integerBelow(SIZE - 1)) % SIZE;
    const factor = 2 * chance.uniform() - 1;
    for (const each of [estimator, dense]) each.lean(place, on, factor);
  } else {
    const flow = {
      from: -1,
      to: SIZE,
      calibration: STORES,
      massKg: 9 * chance.uniform(),
      uKg: chance.uniform(),
    };
    const [from, to] = [chance.integerBelow(STORES), chance.integerBelow(STORES)];
    for (const each of [estimator, dense]) {
      each.add(0, 0);
      each.move(flow);
      each.lean(from, SIZE, -1);
      each.lean(to, SIZE, 1);
      each.dropLast();
    }
  }
}

/** One random act on both; every kind of end comes up, the pools outside included. */
export function act(both: ReturnType<typeof pair>): void {
  const { estimator, dense, chance } = both;
  if (chance.uniform() < 0.15) {
    rareAct(both);
    return;
  }
  if (chance.uniform() < 0.7) {
    const end = () => chance.integerBelow(STORES + 1) - 1;
    const calibration = chance.uniform() < 0.5 ? STORES + chance.integerBelow(CALIBRATIONS) : -1;
    const flow = {
      from: end(),
      to: end(),
      calibration,
      massKg: 20 * chance.uniform(),
      uKg: chance.uniform(),
    };
    estimator.move(flow);
    dense.move(flow);
    return;
  }
  const places = [chance.integerBelow(STORES), STORES + chance.integerBelow(CALIBRATIONS)];
  const weights = [1, 4 * chance.uniform() - 2];
  const value = 20 * chance.uniform();
  const u = 0.05 + chance.uniform();
  const h = new Array<number>(SIZE).fill(0);
  places.forEach((place, k) => {
    h[place]! += weights[k]!;
  });
  const got = estimator.read({ places, weights, value, u });
  const wanted = dense.read(h, value, u);
  expect(Math.abs(got.innovation - wanted.innovation)).toBeLessThan(
    1e-10 * Math.max(1, Math.abs(wanted.innovation)),
  );
  expect(Math.abs(got.variance - wanted.variance)).toBeLessThan(1e-10 * wanted.variance);
}

/** Greatest distance, each figure held against its own scale. */
export function distance(estimator: Estimator, dense: DenseReference): number {
  let most = 0;
  for (let i = 0; i < SIZE; i++) {
    most = Math.max(
      most,
      Math.abs(estimator.mean(i) - dense.mean[i]!) / Math.max(1, Math.abs(dense.mean[i]!)),
    );
    for (let j = 0; j < SIZE; j++) {
      const scale = Math.sqrt(dense.covariance[i]![i]! * dense.covariance[j]![j]!);
      most = Math.max(
        most,
        Math.abs(estimator.covariance(i, j) - dense.covariance[i]![j]!) / Math.max(scale, 1e-12),
      );
    }
  }
  return most;
}
