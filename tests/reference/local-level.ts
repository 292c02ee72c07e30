// A level that wanders, read once a year: the product's estimator as a time-series filter, and its likelihood.
import { Estimator } from '../../src/account/index.ts';
import { exp, log } from '../../src/ground/maths/index.ts';

export interface LevelModel {
  /** Variance of a reading. */
  readonly noise: number;
  /** Variance that the level gains from one reading to the next. */
  readonly wander: number;
}

export interface Filtered {
  /** Innovations after the first reading, and their variances. */
  readonly innovations: readonly number[];
  readonly variances: readonly number[];
  readonly level: number;
  readonly levelVariance: number;
}

/** The first reading is the level's prior: what comes after is given the first. */
export function filterGivenFirst(readings: readonly number[], { noise, wander }: LevelModel): Filtered {
  const [first = 0, ...later] = readings;
  return filter(new Estimator(1), { mean: first, variance: noise }, later, { noise, wander });
}

/** A prior of the level before the first reading, which then counts like the others. */
export function filterWithPrior(
  readings: readonly number[],
  model: LevelModel,
  prior: { mean: number; variance: number },
): Filtered {
  // The wander before the first reading is part of the prior.
  return filter(
    new Estimator(1),
    { mean: prior.mean, variance: prior.variance - model.wander },
    readings,
    model,
  );
}

function filter(
  estimator: Estimator,
  prior: { readonly mean: number; readonly variance: number },
  readings: readonly number[],
  { noise, wander }: LevelModel,
): Filtered {
  const level = estimator.add(prior.mean, prior.variance);
  const seen = readings.map((value) => {
    estimator.widen(level, wander);
    return estimator.read({ places: [level], value, u: Math.sqrt(noise) });
  });
  return {
    innovations: seen.map(({ innovation }) => innovation),
    variances: seen.map(({ variance }) => variance),
    level: estimator.mean(level),
    levelVariance: estimator.variance(level),
  };
}

const TWO_PI = 6.283185307179586;

/** Σ −½ (ln 2π + ln V + ν² / V). */
export function logLikelihood({ innovations, variances }: Filtered): number {
  return innovations.reduce((sum, innovation, at) => {
    const variance = variances[at]!;
    return sum - 0.5 * (log(TWO_PI * variance) + (innovation * innovation) / variance);
  }, 0);
}

/**
 * The two variances that make the readings likeliest, the first reading given. Scaling both scales every innovation's
 * variance, so that for each ratio the best scale is known, and a search by golden sections over the ratio is left.
 */
export function likeliest(readings: readonly number[]): LevelModel {
  const modelAt = (logRatio: number): LevelModel => {
    const ratio = exp(logRatio);
    const { innovations, variances } = filterGivenFirst(readings, { noise: 1, wander: ratio });
    const noise =
      innovations.reduce((sum, each, at) => sum + (each * each) / variances[at]!, 0) / innovations.length;
    return { noise, wander: ratio * noise };
  };
  const heightAt = (logRatio: number): number => logLikelihood(filterGivenFirst(readings, modelAt(logRatio)));
  return modelAt(highest(heightAt, { low: -8, high: 3 }));
}

/** Golden sections, for a curve with one top. */
function highest(heightAt: (x: number) => number, { low, high }: { low: number; high: number }): number {
  const golden = (Math.sqrt(5) - 1) / 2;
  let [from, to] = [low, high];
  while (to - from > 1e-9) {
    const left = to - golden * (to - from);
    const right = from + golden * (to - from);
    if (heightAt(left) > heightAt(right)) to = right;
    else from = left;
  }
  return (from + to) / 2;
}

export interface Diagnostics {
  readonly skew: number;
  readonly excessKurtosis: number;
  readonly jarqueBera: number;
  readonly ljungBox9: number;
  /** Sum of squares of the last third over that of the first. */
  readonly spread: number;
}

/** What the standardised innovations look like: of a right model, white noise. */
export function diagnosticsOf({ innovations, variances }: Filtered): Diagnostics {
  const e = innovations.map((innovation, at) => innovation / Math.sqrt(variances[at]!));
  const n = e.length;
  const mean = e.reduce((sum, value) => sum + value, 0) / n;
  const moment = (power: number): number =>
    e.reduce((sum, value) => {
      let term = 1;
      for (let k = 0; k < power; k += 1) term *= value - mean;
      return sum + term;
    }, 0) / n;
  const sd = Math.sqrt(moment(2));
  const skew = moment(3) / (sd * sd * sd);
  const excessKurtosis = moment(4) / (moment(2) * moment(2)) - 3;
  const third = Math.round(n / 3);
  const squares = (part: readonly number[]): number => part.reduce((sum, value) => sum + value * value, 0);
  return {
    skew,
    excessKurtosis,
    jarqueBera: n * ((skew * skew) / 6 + (excessKurtosis * excessKurtosis) / 24),
    ljungBox9: ljungBox(
      e.map((value) => value - mean),
      9,
    ),
    spread: squares(e.slice(-third)) / squares(e.slice(0, third)),
  };
}

function ljungBox(e: readonly number[], lags: number): number {
  const n = e.length;
  const whole = e.reduce((sum, value) => sum + value * value, 0);
  let sum = 0;
  for (let lag = 1; lag <= lags; lag += 1) {
    let product = 0;
    for (let at = lag; at < n; at += 1) product += e[at]! * e[at - lag]!;
    const correlation = product / whole;
    sum += (correlation * correlation) / (n - lag);
  }
  return n * (n + 2) * sum;
}
