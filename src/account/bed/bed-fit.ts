// How a bed lets through what it should hold: one logistic curve over throughput, learned from few readings by Bayes' rule.
import { exp, log, normalCdf } from '../../ground/maths/index.ts';
import { type BedCurve, type BedPrior, curveAt, readingOf } from './bed-axes.ts';
import { BedGrid } from './bed-grid.ts';

export interface FitReading {
  readonly throughputL: number;
  readonly value: number;
  /** Nothing was found: the value is the detection limit. */
  readonly below: boolean;
}

/** How an instrument reads, one standard deviation each. */
export interface ReadingDoubt {
  /** New at every reading, in its unit, with its resolution inside. */
  readonly random: number;
  /** The same at every reading, relative. */
  readonly calibration: number;
}

/** One curve that fits, and how well it does. */
export interface BedCase extends BedCurve {
  readonly weight: number;
}

export interface BedFit {
  readonly cases: readonly BedCase[];
  readonly readings: number;
  /** Mean and one standard deviation of the throughput at the limit, litres. */
  readonly limitAtL: number;
  readonly limitAtUL: number;
  /** Cases are points of a grid: each stands for so much around it, one standard deviation, litres. */
  readonly grainL: number;
  /** What the file alone says of it. */
  readonly prior: BedPrior;
}

/** Water differs from day to day beside what the instrument adds: part of a reading, one standard deviation. Ours, no source. */
export const OWN_SCATTER = 0.05;
/** The outer nodes of a quadrature that holds mean, variance, skewness and kurtosis of a normal distribution. @source Gauss and Hermite, three points */
const ROOT_THREE = 1.7320508075688772;
/** A case whose weight is below this part of the greatest one is left out. */
const LEAST_PART = 1e-5;
/** Times that the grid is laid anew along what fits. */
const ROUNDS = 5;

/**
 * Learns the curve c(V) = b + (C − b) / (1 + e^(s (1 − V / τ))).
 *
 * Before the readings: the throughput at the limit is normal, by the outpost file, and above 0; b is uniform from 0 to half the
 * limit, C and s are uniform in their logarithms (see bed-axes.ts). A reading is normal around the curve; one below the detection
 * limit says only that. The calibration error is one for all of them.
 * @param readings in any order; `value` in the unit of the limit, from 0
 * @param doubt of the instrument: `random` above 0, `calibration` from 0 to 0.5
 * @throws RangeError where the limit, the life or its doubt is not above 0, or a reading is no number
 * @source logistic-bed; docs/methods/bed-life.md
 * @example fitBed([{ throughputL: 700, value: 1, below: false }], { random: 0.08, calibration: 0.05 }, { lifeL: 850, lifeUL: 120, limit: 3 }).limitAtL
 */
export function fitBed(readings: readonly FitReading[], doubt: ReadingDoubt, prior: BedPrior): BedFit {
  check(readings, doubt, prior);
  const likelihood = likelihoodOf(readings, doubt);
  const logWeightOf = (point: Float64Array): number => {
    const curve = curveAt(point, prior);
    if (curve === null) return Number.NEGATIVE_INFINITY;
    return likelihood(readingOf(curve, prior.limit)) - halfSquare(point);
  };
  let grid = BedGrid.ofPrior();
  // Without a reading the prior is the answer, and its grid lies along it already.
  const rounds = readings.length === 0 ? 0 : ROUNDS;
  for (let round = 0; round < rounds; round++) grid = grid.along(logWeightOf);
  const cases = grid.weighed(logWeightOf, LEAST_PART).flatMap(({ point, weight }) => {
    const curve = curveAt(point, prior);
    return curve === null ? [] : [{ ...curve, weight }];
  });
  return { cases, readings: readings.length, ...momentsOf(cases), grainL: grid.grain * prior.lifeUL, prior };
}

function halfSquare(point: Float64Array): number {
  let sum = 0;
  for (const each of point) sum += each * each;
  return sum / 2;
}

/** The log-likelihood of a curve. */
type Likelihood = (reading: (throughputL: number) => number) => number;

/**
 * The calibration error is one for all readings, and is summed out behind them. Variances are multiplied in units of the
 * instrument's own, so that one logarithm does for all: 40 readings of the widest curve stay within the range of doubles.
 */
function likelihoodOf(readings: readonly FitReading[], { random, calibration }: ReadingDoubt): Likelihood {
  const found = readings.filter(({ below }) => !below);
  const notFound = readings.filter(({ below }) => below);
  const [lowFactor, highFactor] = [1 - ROOT_THREE * calibration, 1 + ROOT_THREE * calibration];
  return (reading) => {
    let [low, middle, high, variances] = [0, 0, 0, 1];
    for (const { throughputL, value } of found) {
      const expected = reading(throughputL);
      const part = (OWN_SCATTER * expected) / random;
      const variance = 1 + part * part;
      variances *= variance;
      const [offLow, offMiddle, offHigh] = [
        value - lowFactor * expected,
        value - expected,
        value - highFactor * expected,
      ];
      low += (offLow * offLow) / variance;
      middle += (offMiddle * offMiddle) / variance;
      high += (offHigh * offHigh) / variance;
    }
    const half = -0.5 / (random * random);
    const [ofLow, ofMiddle, ofHigh] = notFound.reduce(
      ([first, second, third], one) => {
        const expected = reading(one.throughputL);
        const own = OWN_SCATTER * expected;
        const u = Math.sqrt(random * random + own * own);
        const chance = (factor: number): number =>
          log(Math.max(1e-300, normalCdf((one.value - factor * expected) / u)));
        return [first + chance(lowFactor), second + chance(1), third + chance(highFactor)] as const;
      },
      [half * low, half * middle, half * high] as const,
    );
    // Weights 1/6, 2/3 and 1/6: the quadrature of Gauss and Hermite with three points.
    const greatest = Math.max(ofLow, ofMiddle, ofHigh);
    const sum = (exp(ofLow - greatest) + 4 * exp(ofMiddle - greatest) + exp(ofHigh - greatest)) / 6;
    return greatest + log(sum) - 0.5 * log(variances);
  };
}

function momentsOf(cases: readonly BedCase[]): Pick<BedFit, 'limitAtL' | 'limitAtUL'> {
  const limitAtL = cases.reduce((sum, one) => sum + one.weight * one.limitAtL, 0);
  const square = ({ limitAtL: at }: BedCase): number => (at - limitAtL) * (at - limitAtL);
  return { limitAtL, limitAtUL: Math.sqrt(cases.reduce((sum, one) => sum + one.weight * square(one), 0)) };
}

function check(
  readings: readonly FitReading[],
  { random, calibration }: ReadingDoubt,
  { lifeL, lifeUL, limit }: BedPrior,
): void {
  const wrong = [lifeL, lifeUL, limit].some((value) => !(value > 0 && value < Number.POSITIVE_INFINITY));
  if (wrong) throw new RangeError('a bed was fitted without a life, its doubt or a limit above 0');
  if (!(random > 0) || !(calibration >= 0 && calibration < 0.5))
    throw new RangeError('a bed was fitted with an instrument whose doubt is no doubt');
  if (readings.some(({ throughputL, value }) => !(throughputL >= 0) || !(value >= 0)))
    throw new RangeError('a bed was fitted with a reading that is no number');
}
