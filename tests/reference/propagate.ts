// The law of propagation of uncertainty, to first and second order, by numerical sensitivity coefficients.
import type { Matrix } from '../../src/ground/maths/index.ts';
import { element, made, spreadBy } from './dense.ts';

export type Model = (x: readonly number[]) => readonly number[];

/** Steps as a share of each input's standard deviation: the models here are smooth on that scale. */
const STEP = 1e-3;

/** ∂f_i / ∂x_j at x, by central differences of a size that follows the doubts. */
export function sensitivities(model: Model, x: readonly number[], u: readonly number[]): Matrix {
  const columns = x.map((_, at) => {
    const step = u[at]! * STEP;
    const up = model(x.map((value, k) => (k === at ? value + step : value)));
    const down = model(x.map((value, k) => (k === at ? value - step : value)));
    return up.map((value, row) => (step === 0 ? 0 : (value - down[row]!) / (2 * step)));
  });
  return made(columns[0]!.length, x.length, (row, column) => columns[column]![row]!);
}

/** C S Cᵀ. @source gum, 5.1.2, 5.2.2 and, for several outputs, H.2.3 */
export function propagated(model: Model, x: readonly number[], covariance: Matrix): Matrix {
  const u = x.map((_, at) => Math.sqrt(element(covariance, at, at)));
  return spreadBy(sensitivities(model, x, u), covariance);
}

/** ν_eff = u⁴ / Σ u_i⁴ / ν_i. @source gum, G.4.1 */
export function effectiveDegrees(parts: readonly { readonly u: number; readonly degrees: number }[]): number {
  const variance = parts.reduce((sum, { u }) => sum + u * u, 0);
  return (variance * variance) / parts.reduce((sum, { u, degrees }) => sum + (u * u * u * u) / degrees, 0);
}

/**
 * The variance of one output with the terms of second order: Σ Σ (½ f_ij² + f_i f_ijj) u_i² u_j², for independent inputs.
 * @source gum, note to 5.1.2
 */
export function secondOrderVariance(
  model: (x: readonly number[]) => number,
  x: readonly number[],
  u: readonly number[],
): number {
  // A wider step here: a second difference divides rounding by the square of the step.
  const moved = (steps: readonly [at: number, times: number][]): number =>
    model(
      x.map(
        (value, k) => value + steps.reduce((sum, [at, count]) => sum + (at === k ? count * u[k]! : 0), 0),
      ),
    );
  const n = x.length;
  let variance = 0;
  for (let i = 0; i < n; i += 1) {
    // Each derivative times the doubts that go with it, so that no unit is left.
    const first = (moved([[i, 1]]) - moved([[i, -1]])) / 2;
    variance += first * first;
    for (let j = 0; j < n; j += 1) {
      const mixed =
        i === j ? moved([[i, 1]]) - 2 * moved([]) + moved([[i, -1]]) : mixedDifference(moved, i, j);
      const slopeAt = (side: number): number =>
        (moved([
          [i, 1],
          [j, side],
        ]) -
          moved([
            [i, -1],
            [j, side],
          ])) /
        2;
      const third = i === j ? thirdDifference(moved, i) : slopeAt(1) - 2 * first + slopeAt(-1);
      variance += 0.5 * mixed * mixed + first * third;
    }
  }
  return variance;
}

type Moved = (steps: readonly [at: number, times: number][]) => number;

function mixedDifference(moved: Moved, i: number, j: number): number {
  const at = (a: number, b: number): number =>
    moved([
      [i, a],
      [j, b],
    ]);
  return (at(1, 1) - at(1, -1) - at(-1, 1) + at(-1, -1)) / 4;
}

function thirdDifference(moved: Moved, i: number): number {
  const at = (steps: number): number => moved([[i, steps]]);
  return (at(2) - 2 * at(1) + 2 * at(-1) - at(-2)) / 2;
}
