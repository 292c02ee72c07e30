// Values that cannot be negative: the solution meets the conditions of a least sum of squares, and no set of pins does better.
import { expect, test } from 'vitest';
import { diagonal, element, made, solved, stacked, times } from './dense.ts';
import { reconcilePositive } from './positive.ts';
import { randomBalances } from './random-balances.ts';
import { openOf, type Problem, reconcile } from './reconcile.ts';

/** Values near zero, so that many would come out negative. */
function nearZero(seed: number): Problem {
  const { problem, chance } = randomBalances(seed);
  const { measured, balances } = problem;
  return {
    covariance: problem.covariance,
    balances,
    measured: measured.map(() => 3 * chance.uniform() - 1.2),
  };
}

/** The least sum of squares over every set of pins, each solved on its own. */
function byEverySet(problem: Problem): number {
  const { measured, balances } = problem;
  let least = Number.POSITIVE_INFINITY;
  for (let set = 0; set < 2 ** measured.length; set += 1) {
    const pinned = measured.map((_, at) => at).filter((at) => Math.floor(set / 2 ** at) % 2 === 1);
    const own = made(pinned.length, measured.length, (row, column) => (column === pinned[row] ? 1 : 0));
    try {
      const { values, chiSquare } = reconcile({
        ...problem,
        balances: pinned.length === 0 ? balances : stacked(balances, own),
      });
      if (values.every((value) => value > -1e-9)) least = Math.min(least, chiSquare);
    } catch {
      // Pins that the balances bring about by themselves: another set has the same solution.
    }
  }
  return least;
}

test('no set of pins gives a smaller sum of squares: 60 small networks, every set tried', () => {
  let pinnedInAll = 0;
  let looked = 0;
  for (let seed = 1; looked < 60; seed += 1) {
    const problem = nearZero(seed);
    if (problem.measured.length > 9) continue;
    const { values, chiSquare, pinned } = reconcilePositive(problem);
    expect(Math.min(...values)).toBeGreaterThanOrEqual(-1e-11);
    expect(openOf(problem, values)).toBeLessThan(1e-9);
    expect(Math.abs(chiSquare - byEverySet(problem))).toBeLessThan(1e-8 * (1 + chiSquare));
    pinnedInAll += pinned.length;
    looked += 1;
  }
  expect(pinnedInAll).toBeGreaterThan(60);
});

test('larger networks: the slope of the sum of squares points out of the pins, and along the balances elsewhere', () => {
  let released = 0;
  for (let seed = 1; seed <= 150; seed += 1) {
    const problem = nearZero(seed);
    const { values, pinned } = reconcilePositive(problem);
    const change = made(values.length, 1, (row) => values[row]! - problem.measured[row]!);
    const slope = solved(problem.covariance, change);
    // Slope + Aᵀ λ is 0 off the pins and not negative on them, for one λ: fit it on what is free, then look.
    const free = values.map((_, at) => at).filter((at) => !pinned.includes(at));
    const fitted = multipliersOf(problem, slope.values, [...free]);
    values.forEach((_, at) => {
      let sum = slope.values[at]!;
      fitted.forEach((multiplier, row) => {
        sum += multiplier * element(problem.balances, row, at);
      });
      if (pinned.includes(at)) expect(sum).toBeGreaterThan(-1e-7);
      else expect(Math.abs(sum)).toBeLessThan(1e-7);
    });
    if (pinned.length < reconcile(problem).values.filter((value) => value < 0).length) released += 1;
  }
  // Some value that was negative at first is let go or never pinned: the cheap way of pinning all of them is wrong.
  expect(released).toBeGreaterThan(5);
});

/** Normal equations of the free part: enough for a test of sizes like these. */
function multipliersOf({ balances }: Problem, slope: Float64Array, free: number[]): Float64Array {
  const part = made(balances.rows, free.length, (row, column) => element(balances, row, free[column]!));
  const across = times(
    part,
    made(free.length, balances.rows, (row, column) => element(part, column, row)),
  );
  const right = made(
    balances.rows,
    1,
    (row) => -free.reduce((sum, at, k) => sum + slope[at]! * element(part, row, k), 0),
  );
  // A balance among pinned values alone has no say in what is free.
  const sure = made(
    balances.rows,
    balances.rows,
    (row, column) => element(across, row, column) + (row === column ? 1e-13 : 0),
  );
  return solved(sure, right).values;
}

test('where nothing is negative it is the plain reconciliation', () => {
  const { problem } = randomBalances(3);
  const high = {
    ...problem,
    measured: problem.measured.map((value) => value + 100),
    totals: problem.totals!,
  };
  const plain = reconcile(high);
  expect(Math.min(...plain.values)).toBeGreaterThan(0);
  expect([...reconcilePositive(high).values]).toEqual([...plain.values]);
});

test('a single balance of three: what is pinned shares its part by weight', () => {
  const balances = made(1, 3, (_, column) => (column === 0 ? 1 : -1));
  const { values, pinned } = reconcilePositive({
    measured: new Float64Array([4, 5, -1]),
    covariance: diagonal([1, 3, 1]),
    balances,
  });
  // With the third at 0 the first moves by 1 part of 4 towards the second, and that one by 3.
  expect(pinned).toEqual([2]);
  expect(values[0]).toBeCloseTo(4.25, 12);
  expect(values[1]).toBeCloseTo(4.25, 12);
  expect(values[2]).toBe(0);
});
