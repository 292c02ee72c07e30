// The control chart of individuals: centre and limits of single values by the ranges between neighbours.
import { compensatedSum } from './sum.ts';

/**
 * The mean range of two normal numbers in standard deviations, as the tables of control charts print it; without rounding it
 * is 2/√π = 1.12838, which would narrow the limits by 0.03 %.
 */
export const RANGE_OF_TWO = 1.128;

/** Standard deviations from the centre to a limit, by custom. */
export const LIMIT_SIGMAS = 3;

export interface IndividualsChart {
  readonly centre: number;
  /** Mean of the moving ranges. */
  readonly meanRange: number;
  readonly sigma: number;
  readonly low: number;
  readonly high: number;
  /** How many values, and how many ranges between neighbours, it is made of. */
  readonly values: number;
  readonly ranges: number;
}

/**
 * Centre x̄ and limits x̄ ± 3 M̄R̄ / 1.128 = x̄ ± 2.66 M̄R̄, with M̄R̄ the mean of |x(i) − x(i−1)|.
 *
 * The ranges between neighbours know little of a slow drift, so that a drift stands out from limits made of it.
 * @param stretches values in the order of time, any unit; no range is taken from one stretch to the next
 * @returns null where no two values are neighbours
 * @throws RangeError if a value is not finite
 * @source nist-control-charts, 6.3.2.2
 * @example individualsChart([[49.6, 47.6, 49.9]])?.centre // 49.03…
 */
export function individualsChart(stretches: readonly (readonly number[])[]): IndividualsChart | null {
  const values = stretches.flat();
  if (!values.every((value) => Number.isFinite(value))) throw new RangeError('a value is not finite');
  const ranges = stretches.flatMap((stretch) =>
    stretch.slice(1).map((value, k) => Math.abs(value - (stretch[k] ?? Number.NaN))),
  );
  if (ranges.length === 0) return null;
  const centre = compensatedSum(values) / values.length;
  const meanRange = compensatedSum(ranges) / ranges.length;
  const sigma = meanRange / RANGE_OF_TWO;
  return {
    centre,
    meanRange,
    sigma,
    low: centre - LIMIT_SIGMAS * sigma,
    high: centre + LIMIT_SIGMAS * sigma,
    values: values.length,
    ranges: ranges.length,
  };
}
