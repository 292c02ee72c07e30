// What defines a reconciliation holds on random networks: balances close, two forms agree, and each test does what it says.
import { expect, test } from 'vitest';
import { chiSquareQuantile, type Matrix, matrixOf } from '../../src/ground/maths/index.ts';
import {
  diagonal,
  diagonalOf,
  element,
  largestOf,
  made,
  minus,
  stacked,
  times,
  vectorMinus,
} from './dense.ts';
import {
  biasDirection,
  explainedBy,
  leakDirection,
  measurementTests,
  nodalTests,
  strongestMeasurementTests,
  strongestNodalTests,
} from './gross-errors.ts';
import { randomBalances } from './random-balances.ts';
import { openOf, reconcile, reconcileInNullSpace } from './reconcile.ts';
import { reconcilePartly, splitBy } from './unmeasured.ts';

const SEEDS = Array.from({ length: 100 }, (_, at) => at + 1);

test('balances close, and no combination of them is in doubt any more', () => {
  let most = 0;
  for (const seed of SEEDS) {
    const { problem } = randomBalances(seed);
    const solution = reconcile(problem);
    most = Math.max(
      most,
      openOf(problem, solution.values),
      largestOf(times(problem.balances, solution.covariance).values),
    );
    expect(openOf(problem, problem.measured)).toBeGreaterThan(1e-3);
  }
  expect(most).toBeLessThan(1e-12);
});

test('the null-space form gives the same values and the same covariance', () => {
  let most = 0;
  for (const seed of SEEDS) {
    const { problem } = randomBalances(seed);
    const one = reconcile(problem);
    const other = reconcileInNullSpace(problem);
    most = Math.max(
      most,
      largestOf(vectorMinus(one.values, other.values)),
      largestOf(minus(one.covariance, other.covariance).values),
    );
  }
  expect(most).toBeLessThan(1e-11);
});

test('every value is at least as well known as it was measured', () => {
  for (const seed of SEEDS) {
    const { problem } = randomBalances(seed);
    const { covariance } = reconcile(problem);
    diagonalOf(covariance).forEach((variance, at) => {
      expect(variance).toBeLessThanOrEqual(element(problem.covariance, at, at) * (1 + 1e-12));
    });
  }
});

test('with the declared doubts true, the sum of squares has the chi-square distribution', () => {
  // The counts below three quantiles, over 2000 networks of all sizes.
  const levels = [0.5, 0.9, 0.99];
  const below = levels.map(() => 0);
  const count = 2000;
  for (let seed = 1; seed <= count; seed += 1) {
    const { chiSquare, degrees } = reconcile(randomBalances(seed + 10_000).problem);
    levels.forEach((probability, at) => {
      if (chiSquare <= chiSquareQuantile({ probability, degrees })) below[at]! += 1;
    });
  }
  levels.forEach((level, at) => {
    const sd = Math.sqrt(count * level * (1 - level));
    expect(Math.abs(below[at]! - count * level)).toBeLessThan(3.5 * sd);
  });
});

test('a value that is not measured comes out as if it had been measured with hardly any weight', () => {
  let deduced = 0;
  for (const seed of SEEDS) {
    const { problem, chance } = randomBalances(seed);
    const hidden = new Set([
      chance.integerBelow(problem.measured.length),
      chance.integerBelow(problem.measured.length),
    ]);
    const kept = problem.measured.map((_, at) => at).filter((at) => !hidden.has(at));
    const { measured, unmeasured } = splitBy(problem.balances, (column) => !hidden.has(column));
    const part = reconcilePartly({
      measured: Float64Array.from(kept, (at) => problem.measured[at]!),
      covariance: withoutValue(problem.covariance, [...kept]),
      balances: measured,
      unmeasuredBalances: unmeasured,
      totals: problem.totals!,
    });
    const vague = made(problem.measured.length, problem.measured.length, (row, column) => {
      if (hidden.has(row) || hidden.has(column)) return row === column ? 1e8 : 0;
      return element(problem.covariance, row, column);
    });
    const whole = reconcile({ ...problem, covariance: vague });
    kept.forEach((at, place) => {
      expect(Math.abs(part.values[place]! - whole.values[at]!)).toBeLessThan(1e-5);
    });
    [...hidden]
      .sort((a, b) => a - b)
      .forEach((at, place) => {
        const value = part.unmeasured[place];
        if (value === null || value === undefined) return;
        expect(Math.abs(value - whole.values[at]!)).toBeLessThan(1e-4);
        deduced += 1;
      });
  }
  expect(deduced).toBeGreaterThan(50);
});

test('what a hypothesis explains is what the sum of squares falls by when it is let free', () => {
  for (const seed of SEEDS) {
    const { problem, chance } = randomBalances(seed);
    const solution = reconcile(problem);
    const value = chance.integerBelow(problem.measured.length);
    const explained = explainedBy(solution, biasDirection(problem.balances, value));
    // Let free: that value is not measured at all, and the balances are made to do without it.
    const others = problem.measured.map((_, at) => at).filter((at) => at !== value);
    const split = splitBy(problem.balances, (column) => column !== value);
    const { reconciled } = reconcilePartly({
      measured: Float64Array.from(others, (at) => problem.measured[at]!),
      covariance: withoutValue(problem.covariance, [...others]),
      balances: split.measured,
      unmeasuredBalances: split.unmeasured,
      totals: problem.totals!,
    });
    const left = reconciled?.chiSquare ?? 0;
    expect(Math.abs(solution.chiSquare - left - explained.statistic)).toBeLessThan(
      1e-9 * (1 + solution.chiSquare),
    );
  }
});

function withoutValue(covariance: Matrix, kept: readonly number[]): Matrix {
  return made(kept.length, kept.length, (row, column) => element(covariance, kept[row]!, kept[column]!));
}

test('the strongest test of a value is the hypothesis of its bias, and that of a balance the hypothesis of a leak there', () => {
  for (const seed of SEEDS) {
    const { problem } = randomBalances(seed);
    const solution = reconcile(problem);
    const values = strongestMeasurementTests(solution, problem.covariance);
    values.forEach((z, at) => {
      const { statistic } = explainedBy(solution, biasDirection(problem.balances, at));
      expect(Math.abs(z * z - statistic)).toBeLessThan(1e-8 * (1 + statistic));
    });
    strongestNodalTests(solution).forEach((z, at) => {
      const { statistic } = explainedBy(solution, leakDirection(problem.balances, at));
      expect(Math.abs(z * z - statistic)).toBeLessThan(1e-8 * (1 + statistic));
    });
  }
});

test('independent doubts: the plain test of a value is the strongest', () => {
  for (const seed of SEEDS.slice(0, 30)) {
    const { problem } = randomBalances(seed);
    const covariance = diagonal(diagonalOf(problem.covariance));
    const solution = reconcile({ ...problem, covariance });
    const plain = measurementTests(solution);
    strongestMeasurementTests(solution, covariance).forEach((z, at) => {
      expect(Math.abs(z - plain[at]!)).toBeLessThan(1e-9);
    });
  }
});

test('an error planted in one value is found by the test of that value, and its size comes out', () => {
  for (const seed of SEEDS) {
    const { problem, truth } = randomBalances(seed);
    // Without noise the planted error is all there is.
    const measured = truth.map((value, at) => (at === 3 ? value + 6 : value));
    const solution = reconcile({ ...problem, measured });
    const explained = explainedBy(solution, biasDirection(problem.balances, 3));
    expect(explained.size).toBeCloseTo(6, 8);
    expect(explained.statistic).toBeCloseTo(solution.chiSquare, 6);
    const tests = strongestMeasurementTests(solution, problem.covariance).map(Math.abs);
    expect(Math.max(...tests) - tests[3]!).toBeLessThan(1e-8);
  }
});

test('a balance that closes shows no residual, and a value outside all balances no test', () => {
  const balances = matrixOf([[1, -1, 0]]);
  const solution = reconcile({
    measured: new Float64Array([5, 5, 9]),
    covariance: diagonal([1, 1, 1]),
    balances,
  });
  expect([...solution.values]).toEqual([5, 5, 9]);
  expect([...nodalTests(solution)]).toEqual([0]);
  expect(measurementTests(solution)[2]).toBe(0);
  expect(element(solution.covariance, 2, 2)).toBe(1);
});

test('balances that say the same twice are refused', () => {
  const balances = matrixOf([[1, -1]]);
  expect(() =>
    reconcile({
      measured: new Float64Array([1, 2]),
      covariance: diagonal([1, 1]),
      balances: stacked(balances, balances),
    }),
  ).toThrow(RangeError);
});
