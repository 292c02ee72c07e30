// What the tables of statistics are held against: the reference twin, the product's estimator, its quantiles and its fits.
import { Estimator } from '../../src/account/index.ts';
import {
  chiSquareCdf,
  chiSquareQuantile,
  chiSquareUpper,
  choleskyFactor,
  leastSquares,
  matrixOf,
  normalQuantile,
  studentCdf,
  studentQuantile,
} from '../../src/ground/maths/index.ts';
import { chosenColumns, element, made } from '../reference/dense.ts';
import {
  biasDirection,
  explainedBy,
  globalProbability,
  leakDirection,
  measurementTests,
  nodalTests,
  sidakCritical,
  strongestMeasurementTests,
  strongestNodalTests,
} from '../reference/gross-errors.ts';
import {
  diagnosticsOf,
  filterGivenFirst,
  filterWithPrior,
  likeliest,
  logLikelihood,
} from '../reference/local-level.ts';
import { type NetworkData, publishedData, publishedNetwork } from '../reference/network-data.ts';
import { reconcilePositive } from '../reference/positive.ts';
import { doubtsOf, type Reconciled, reconcile } from '../reference/reconcile.ts';
import { type PartlyReconciled, reconcilePartly } from '../reference/unmeasured.ts';
import { lossHypothesis } from './loss-hypothesis.ts';
import type { Subject } from './subject.ts';

/** Worked out once for all rows of it. */
function once<Value>(make: (name: string) => Value): (name: string) => Value {
  const made = new Map<string, Value>();
  return (name) => {
    const known = made.get(name) ?? make(name);
    made.set(name, known);
    return known;
  };
}

interface Solved {
  readonly data: NetworkData;
  readonly solution: Reconciled;
}

const solvedNetwork = once((name): Solved => {
  const data = publishedNetwork(name);
  return { data, solution: reconcile(data.problem) };
});

type OfNetwork = (solved: Solved, at: number) => number;

const ofNetwork: Readonly<Record<string, OfNetwork>> = {
  reconciled: ({ solution }, at) => solution.values[at]!,
  u: ({ solution }, at) => doubtsOf(solution.covariance)[at]!,
  u95: ({ solution, data }, at) => data.coverageFactor * doubtsOf(solution.covariance)[at]!,
  residual: ({ solution }, at) => solution.residuals[at]!,
  globalTest: ({ solution }) => solution.chiSquare,
  degrees: ({ solution }) => solution.degrees,
  critical95: ({ solution }) => chiSquareQuantile({ probability: 0.95, degrees: solution.degrees }),
  probability: ({ solution }) => globalProbability(solution),
  sidak95: ({ data }) => sidakCritical({ level: 0.05, count: data.names.length }),
  measurementTest: ({ solution }, at) => measurementTests(solution)[at]!,
  strongestMeasurementTest: ({ solution, data }, at) =>
    strongestMeasurementTests(solution, data.problem.covariance)[at]!,
  nodalTest: ({ solution }, at) => nodalTests(solution)[at]!,
  strongestNodalTest: ({ solution }, at) => strongestNodalTests(solution)[at]!,
  biasStatistic: ({ solution, data }, at) =>
    explainedBy(solution, biasDirection(data.problem.balances, at)).statistic,
  biasSize: ({ solution, data }, at) => explainedBy(solution, biasDirection(data.problem.balances, at)).size,
  leakStatistic: ({ solution, data }, at) =>
    explainedBy(solution, leakDirection(data.problem.balances, at)).statistic,
  leakSize: ({ solution, data }, at) => explainedBy(solution, leakDirection(data.problem.balances, at)).size,
};

const network: Subject = (name = '', quantity = '', which = '') => {
  const solved = solvedNetwork(name);
  const named = solved.data.names.indexOf(which);
  const run = ofNetwork[quantity];
  if (run === undefined) throw new Error(`${quantity} is not worked out for a network`);
  // Balances go by their number, from 1; a quantity of the whole has no place.
  return run(solved, named === -1 ? Number(which) - 1 : named);
};

/** A case names the values that are measured; an empty one leaves that to the data. */
const partlySolved = once((key): { data: NetworkData; places: readonly number[]; part: PartlyReconciled } => {
  const [name = '', chosen = ''] = key.split(': ');
  const data = publishedNetwork(name);
  const kept = (at: number): boolean =>
    chosen === '' ? data.isMeasured[at]! : chosen.split(' ').includes(data.names[at]!);
  const places = data.names.map((_, at) => at);
  const measured = places.filter(kept);
  const unmeasured = places.filter((at) => !kept(at));
  const { problem } = data;
  const part = reconcilePartly({
    measured: Float64Array.from(measured, (at) => problem.measured[at]!),
    covariance: made(measured.length, measured.length, (row, column) =>
      element(problem.covariance, measured[row]!, measured[column]!),
    ),
    balances: chosenColumns(problem.balances, measured),
    unmeasuredBalances: chosenColumns(problem.balances, unmeasured),
  });
  return { data, places: [...measured, ...unmeasured], part };
});

const partlyMeasured: Subject = (name = '', chosen = '', quantity = '', which = '') => {
  const { data, places, part } = partlySolved(`${name}: ${chosen}`);
  if (quantity === 'degrees') return part.degrees;
  const at = places.indexOf(data.names.indexOf(which));
  const value = [...part.values, ...part.unmeasured][at];
  if (value === null || value === undefined) throw new Error(`${which} cannot be known`);
  return value;
};

const word: Subject = (name = '', chosen = '', which = '') => {
  const { data, places, part } = partlySolved(`${name}: ${chosen}`);
  const words = [...part.words.measured, ...part.words.unmeasured];
  return words[places.indexOf(data.names.indexOf(which))] ?? 'missing';
};

const bounded: Subject = (name = '', quantity = '', which = '') => {
  const { data, solution } = solvedNetwork(name);
  const positive = reconcilePositive(data.problem);
  if (quantity === 'objective') return positive.chiSquare;
  const values = quantity === 'bounded' ? positive.values : solution.values;
  return values[data.names.indexOf(which)]!;
};

interface FitFile {
  readonly columns: readonly string[];
  readonly rows: readonly (readonly number[])[];
  readonly y: readonly number[];
}

const fitted = once((name) => {
  const file = publishedData<FitFile>(name);
  const fit = leastSquares(matrixOf(file.rows), Float64Array.from(file.y));
  return { file, fit, variance: fit.sumOfSquares / (file.rows.length - file.columns.length) };
});

const fit: Subject = (name = '', quantity = '', which = '') => {
  const { file, fit: found, variance } = fitted(name);
  const at = file.columns.indexOf(which);
  const mean = file.y.reduce((sum, value) => sum + value, 0) / file.y.length;
  const whole = file.y.reduce((sum, value) => sum + (value - mean) * (value - mean), 0);
  const quantities: Readonly<Record<string, number>> = {
    coefficient: found.solution[at]!,
    u: Math.sqrt(variance * element(found.covariance, Math.max(0, at), Math.max(0, at))),
    residualU: Math.sqrt(variance),
    sumOfSquares: found.sumOfSquares,
    rSquared: 1 - found.sumOfSquares / whole,
  };
  return quantities[quantity] ?? Number.NaN;
};

const nileReadings = once(() => publishedData<{ values: readonly number[] }>('nile').values);
const nileLikeliest = once(() => likeliest(nileReadings('')));

const nile: Subject = (quantity = '', noise = '', wander = '') => {
  const readings = nileReadings('');
  if (quantity === 'likeliestNoise') return nileLikeliest('').noise;
  if (quantity === 'likeliestWander') return nileLikeliest('').wander;
  const model = { noise: Number(noise), wander: Number(wander) };
  const filtered = filterGivenFirst(readings, model);
  const diagnostics = diagnosticsOf(filtered);
  const variance = filtered.variances.at(-1)!;
  const quantities: Readonly<Record<string, number>> = {
    logLikelihoodGivenFirst: logLikelihood(filtered),
    logLikelihoodPrior1e7: logLikelihood(filterWithPrior(readings, model, { mean: 0, variance: 1e7 })),
    level: filtered.level,
    levelVariance: filtered.levelVariance,
    predictedVariance: variance - model.noise,
    gain: (variance - model.noise) / variance,
    ...diagnostics,
  };
  return quantities[quantity] ?? Number.NaN;
};

/** Three transfers by one instrument, as a store that they fill: their doubts add up as their errors are shared or not. */
const transfers: Subject = (masses = '', random = '', calibration = '', isShared = '') => {
  const estimator = new Estimator(4);
  const store = estimator.add(0, 0);
  let place = -1;
  for (const massKg of masses.split(' ').map(Number)) {
    if (place === -1 || isShared === 'each its own') place = estimator.add(0, Number(calibration) ** 2);
    estimator.move({ from: -1, to: store, calibration: place, massKg, uKg: massKg * Number(random) });
  }
  return Math.sqrt(estimator.variance(store));
};

/** Differences of a balance made independent of each other, by the factor of their covariance and by the estimator. */
const whitened: Subject = (series = '', way = '', at = '') => {
  const differences = series.split(' ').map(Number);
  const [inventory, transfer] = [1, 0.5];
  return (
    way === 'factor'
      ? byFactor(differences, inventory, transfer)
      : byEstimator(differences, inventory, transfer)
  )[Number(at)]!;
};

function byFactor(differences: readonly number[], inventory: number, transfer: number): readonly number[] {
  const n = differences.length;
  const covariance = made(n, n, (row, column) => {
    if (row === column) return 2 * inventory * inventory + transfer * transfer;
    return Math.abs(row - column) === 1 ? -inventory * inventory : 0;
  });
  const { values } = choleskyFactor({ order: n, values: covariance.values });
  const white: number[] = [];
  differences.forEach((difference, row) => {
    const before = white.reduce((sum, value, column) => sum + value * values[row * n + column]!, 0);
    white.push((difference - before) / values[row * n + row]!);
  });
  return white;
}

/** What is missing is what the reading lies below the stock that the one before it and the transfers led to expect. */
function byEstimator(differences: readonly number[], inventory: number, transfer: number): readonly number[] {
  const estimator = new Estimator(1);
  const stock = estimator.add(0, inventory * inventory);
  let reading = 0;
  return differences.map((difference) => {
    reading -= difference;
    estimator.widen(stock, transfer * transfer);
    const { innovation, variance } = estimator.read({ places: [stock], value: reading, u: inventory });
    return -innovation / Math.sqrt(variance);
  });
}

const ofDegrees =
  (run: (x: number, degrees: number) => number): Subject =>
  (x = '', degrees = '') =>
    run(Number(x), Number(degrees));

export const STATISTICS: Readonly<Record<string, Subject>> = {
  bounded,
  chiSquareCdf: ofDegrees((value, degrees) => chiSquareCdf({ value, degrees })),
  chiSquareQuantile: ofDegrees((probability, degrees) => chiSquareQuantile({ probability, degrees })),
  chiSquareUpper: ofDegrees((value, degrees) => chiSquareUpper({ value, degrees })),
  detectionMultiple: (alarm = '', miss = '') =>
    normalQuantile(1 - Number(alarm)) + normalQuantile(1 - Number(miss)),
  fit,
  lossHypothesis,
  network,
  nile,
  partlyMeasured,
  studentCdf: ofDegrees((t, degrees) => studentCdf({ t, degrees })),
  studentQuantile: ofDegrees((probability, degrees) => studentQuantile({ probability, degrees })),
  transfers,
  whitened,
  word,
};
