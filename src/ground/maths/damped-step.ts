// One step towards the least sum of squares: short where the curve bends, the whole way where it is straight.
import { columnsOf, lengthOf, timesVector } from './curve-surface.ts';
import { type LeastSquares, leastSquares } from './least-squares.ts';
import type { Matrix } from './matrix.ts';

/** The step that would reach the least sum if the curve were straight; null where it is not the only one. */
export function wholeStep(slopes: Matrix, left: Float64Array): LeastSquares | null {
  try {
    return leastSquares(slopes, left);
  } catch (error) {
    if (error instanceof RangeError) return null;
    throw error;
  }
}

/**
 * The step d that makes |J d − r|² + λ |S d|² least, S being the longest that each column has been: by QR of J with √λ S below.
 * @source marquardt-1963; more-1978 for the scales
 */
export function dampedStep(
  slopes: Matrix,
  left: Float64Array,
  { scales, damping }: { readonly scales: readonly number[]; readonly damping: number },
): Float64Array {
  const { rows, columns, values } = slopes;
  const taller = new Float64Array((rows + columns) * columns);
  taller.set(values);
  const root = Math.sqrt(damping);
  for (let at = 0; at < columns; at += 1) taller[(rows + at) * columns + at] = root * (scales[at] as number);
  const right = new Float64Array(rows + columns);
  right.set(left);
  return leastSquares({ rows: rows + columns, columns, values: taller }, right).solution;
}

/** How much of what is left the curve's slopes still reach, as a tangent; 0 where all that they reach is rounding. */
export function offsetOf(
  slopes: Matrix,
  { solution, residuals }: Pick<LeastSquares, 'solution' | 'residuals'>,
  rounding: number,
): number {
  const reached = lengthOf(timesVector(slopes, solution));
  return reached <= rounding ? 0 : reached / lengthOf(residuals);
}

/** The length of each column; 1 for one of zeros, so that nothing is divided by it. */
export function columnLengths(slopes: Matrix): number[] {
  return Array.from({ length: slopes.columns }, (_, at) => lengthOf(columnsOf(slopes, [at]).values) || 1);
}
