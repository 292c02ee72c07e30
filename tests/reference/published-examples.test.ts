// What the published examples are there to teach, beside their figures: which of them fail, and what cannot be told apart.
import { expect, test } from 'vitest';
import { chiSquareQuantile } from '../../src/ground/maths/index.ts';
import {
  biasDirection,
  explainedBy,
  leakDirection,
  measurementTests,
  sidakCritical,
} from './gross-errors.ts';
import { filterGivenFirst, likeliest, logLikelihood } from './local-level.ts';
import { publishedData, publishedNetwork } from './network-data.ts';
import { openOf, reconcile, reconcileInNullSpace } from './reconcile.ts';
import { reconcilePartly, splitBy } from './unmeasured.ts';

const critical = (degrees: number): number => chiSquareQuantile({ probability: 0.95, degrees });

test('the heat circuit fails its global test, by its two feed-water values', () => {
  const { problem, names } = publishedNetwork('heat-circuit');
  const solution = reconcile(problem);
  expect(solution.chiSquare).toBeGreaterThan(critical(solution.degrees));
  const tests = measurementTests(solution).map(Math.abs);
  const over = names.filter((_, at) => tests[at]! > sidakCritical({ level: 0.05, count: names.length }));
  expect(over).toEqual(['mFDKeI', 'mFDKeII']);
  // The two are in the same balances alone: their traces are one and the same, and nothing tells which it is.
  expect(tests[0]).toBeCloseTo(tests[1]!, 10);
});

test('the by-pass exchanger with 4 added to stream 2 cannot rule out a leak instead', () => {
  const { problem } = publishedNetwork('bypass-exchanger-biased');
  const solution = reconcile(problem);
  const bias = explainedBy(solution, biasDirection(problem.balances, 1));
  const leak = explainedBy(solution, leakDirection(problem.balances, 1));
  expect(Math.abs(bias.size - 4)).toBeLessThan(bias.sizeU);
  expect(leak.statistic).toBeGreaterThan(bias.statistic);
});

test.each([
  ['steam-metering', true],
  ['twelve-streams', true],
  ['industrial-water', false],
  ['eight-streams', false],
  ['bypass-exchanger', true],
  ['bypass-exchanger-biased', false],
])('%s passes its global test: %s; its balances close; two forms agree', (name, passes) => {
  const { problem } = publishedNetwork(name);
  const solution = reconcile(problem);
  expect(solution.chiSquare <= critical(solution.degrees)).toBe(passes);
  expect(openOf(problem, solution.values)).toBeLessThan(1e-9);
  const other = reconcileInNullSpace(problem);
  other.values.forEach((value, at) => {
    expect(Math.abs(value - solution.values[at]!)).toBeLessThan(1e-9);
  });
});

test('steam metering: what is reconciled lies nearer to the true flows than what was read', () => {
  const { problem, truth } = publishedNetwork('steam-metering');
  const off = (values: ArrayLike<number>): number => {
    const squares = truth!.map((value, at) => {
      const z = (values[at]! - value) / Math.sqrt(problem.covariance.values[at * (truth!.length + 1)]!);
      return z * z;
    });
    return Math.sqrt(squares.reduce((sum, square) => sum + square, 0) / squares.length);
  };
  expect(off(problem.measured)).toBeCloseTo(1.12, 2);
  expect(off(reconcile(problem).values)).toBeCloseTo(0.93, 2);
});

test('the heat circuit with three of its values not measured says which can still be deduced', () => {
  const { problem, names } = publishedNetwork('heat-circuit');
  const hidden = ['mHK', 'mA7', 'mHDNK'];
  const kept = names.map((_, at) => at).filter((at) => !hidden.includes(names[at]!));
  const { measured, unmeasured } = splitBy(problem.balances, (column) => kept.includes(column));
  const part = reconcilePartly({
    measured: Float64Array.from(kept, (at) => problem.measured[at]!),
    covariance: {
      rows: kept.length,
      columns: kept.length,
      values: Float64Array.from(
        kept.flatMap((a) => kept.map((b) => problem.covariance.values[a * names.length + b]!)),
      ),
    },
    balances: measured,
    unmeasuredBalances: unmeasured,
  });
  // Two balances for three unknown values: the sum of the circuit is still checked once, the split is not known.
  expect(part.degrees).toBe(1);
  expect(part.words.unmeasured).toEqual(['unknown', 'unknown', 'unknown']);
  expect(part.unmeasured).toEqual([null, null, null]);
  expect(part.words.measured.slice(0, 5)).toEqual(new Array<string>(5).fill('checked'));
});

test('the likeliest variances of the Nile are a top: the published ones lie beside it, and every way from it leads down', () => {
  const { values } = publishedData<{ values: readonly number[] }>('nile');
  const best = likeliest(values);
  const top = logLikelihood(filterGivenFirst(values, best));
  const published = logLikelihood(filterGivenFirst(values, { noise: 15099, wander: 1469.1 }));
  expect(top).toBeGreaterThanOrEqual(published);
  expect(top - published).toBeLessThan(1e-6);
  for (const [noise, wander] of [
    [1.01, 1],
    [0.99, 1],
    [1, 1.01],
    [1, 0.99],
  ] as const) {
    const beside = { noise: best.noise * noise, wander: best.wander * wander };
    expect(logLikelihood(filterGivenFirst(values, beside))).toBeLessThan(top);
  }
});
