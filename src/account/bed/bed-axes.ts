// What a bed's curve may be before any reading, as four standard normal numbers: the axes along which it is learned.
import { exp, log, normalCdf } from '../../ground/maths/index.ts';

/** What is known of a bed before any reading of its water. */
export interface BedPrior {
  /** Litres at which the limit is reached behind the beds, by the outpost file, and one standard deviation. */
  readonly lifeL: number;
  readonly lifeUL: number;
  /** The limit, in the unit of the readings. */
  readonly limit: number;
}

/** One curve that may be. */
export interface BedCurve {
  /** What comes through a bed that is fresh. */
  readonly base: number;
  /** What comes through when it holds no more. */
  readonly ceiling: number;
  /** s = k τ: how steep the front is. */
  readonly steepness: number;
  /** Throughput at which the limit is reached, litres. */
  readonly limitAtL: number;
}

/** A bed that lets half the limit through while it is fresh is no bed. Ours, no source. */
export const MOST_BASE = 0.5;
/** In limits: what comes through a full bed, from hardly more than the limit to all that a strong feed brings. Ours, no source. */
export const LEAST_CEILING = 1.05;
export const MOST_CEILING = 20;
/** 10 is a gentle front and 40 a sharp one (ground/physics/bed/lead-and-lag.ts); twice as far to both sides. Ours, no source. */
export const LEAST_STEEPNESS = 5;
export const MOST_STEEPNESS = 80;

/** Base, ceiling, steepness and throughput at the limit. */
export const AXES = 4;

/**
 * The curve at a point of the axes: base uniform, ceiling and steepness uniform in their logarithms, throughput normal.
 * @param point four numbers, standard normal before any reading
 * @returns null where the throughput is not above 0
 */
export function curveAt(point: Float64Array, { lifeL, lifeUL, limit }: BedPrior): BedCurve | null {
  const limitAtL = lifeL + lifeUL * (point[3] as number);
  if (!(limitAtL > 0)) return null;
  return {
    base: MOST_BASE * limit * normalCdf(point[0] as number),
    ceiling: limit * between(LEAST_CEILING, MOST_CEILING, point[1] as number),
    steepness: between(LEAST_STEEPNESS, MOST_STEEPNESS, point[2] as number),
    limitAtL,
  };
}

/** As likely between 1 and 2 as between 10 and 20. */
function between(low: number, high: number, z: number): number {
  return low * exp(log(high / low) * normalCdf(z));
}

/**
 * The reading that a curve expects: c(V) = b + (C − b) / (1 + e^(s (1 − V / τ))), with τ = V_limit / (1 + ln(q / (1 − q)) / s) and
 * q = (limit − b) / (C − b).
 * @param limit in the unit of the curve
 * @source logistic-bed
 */
export function readingOf(curve: BedCurve, limit: number): (throughputL: number) => number {
  const { base, ceiling, steepness, limitAtL } = curve;
  const perHalf = (1 + log((limit - base) / (ceiling - limit)) / steepness) / limitAtL;
  const rise = ceiling - base;
  return (throughputL) => base + rise / (1 + exp(steepness * (1 - throughputL * perHalf)));
}
