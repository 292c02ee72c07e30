// The curve through points with least squares of what is left, for curves that bend in their parameters.
import { type Curve, type CurvePoint, CurveSurface } from './curve-surface.ts';
import { type Bounds, type Descent, descent, type FitVerdict, type Limits } from './fit-descent.ts';
import type { Matrix } from './matrix.ts';

export interface CurveFit<Name extends string> {
  readonly verdict: FitVerdict;
  readonly parameters: Readonly<Record<Name, number>>;
  /** One standard deviation of each: √ of the diagonal of `covariance`; 0 for one that is held at its bound. */
  readonly u: Readonly<Record<Name, number>>;
  /**
   * In the order of the parameters: s² (Jᵀ J)⁻¹ where no doubts of the points are told, else (Jᵀ W J)⁻¹ as they are told.
   * Null where the fit is undetermined or there are no more points than parameters to tell s² from.
   */
  readonly covariance: Matrix | null;
  /** (Jᵀ W J)⁻¹, without s². */
  readonly unscaled: Matrix | null;
  /** s² (Jᵀ W J)⁻¹: the doubts told count only in relation to each other. */
  readonly scaled: Matrix | null;
  /** Points less the parameters that are free. */
  readonly degrees: number;
  /** Of what is left, over its doubt where that is told. */
  readonly sumOfSquares: number;
  /** √(sum of squares / degrees); about 1 where doubts are told and the curve is right. */
  readonly residualU: number;
  /** Value less curve, point by point, in the unit of the values. */
  readonly residuals: Float64Array;
  readonly atBound: readonly Name[];
  readonly steps: number;
  /** How far from a least sum, as a part of what is left: the tangent of the angle between them and the curve's surface. */
  readonly offset: number;
}

const MOST_STEPS = 1000;

interface FitRequest<Name extends string, At> {
  readonly curve: Curve<Name, At>;
  readonly points: readonly CurvePoint<At>[];
  readonly start: Readonly<Record<Name, number>>;
  readonly bounds?: Readonly<Partial<Record<Name, Bounds>>>;
  readonly mostSteps?: number;
}

/**
 * The parameters that make Σ ((value − curve)/u)² least, from a start, by Levenberg and Marquardt's method.
 *
 * Slopes by dual numbers; each step by QR factors, damped as Nielsen does. A parameter that would leave its bounds is held there.
 * Whether the fit has settled is told by the angle between what is left and the curve's surface (Bates and Watts), not by how
 * short the last step was. A least sum that it settles at may be one of several: a start near the expected curve is the
 * caller's part. A parameter that has to stay above 0 is best fitted as its logarithm, by `exp` in the curve.
 * @throws RangeError if there are fewer points than parameters, doubts are told for some points only or not above 0, the start
 *   is out of its bounds, or the curve has no finite value there
 * @source marquardt-1963; nielsen-1999; bates-watts-1981
 * @example
 * curveFit({
 *   curve: (on, { k }, t: number) => on.exp(on.scaled(k, -t)),
 *   points: [{ at: 1, value: 0.61 }, { at: 2, value: 0.37 }, { at: 3, value: 0.22 }],
 *   start: { k: 1 },
 * }).parameters.k // 0.498…
 */
export function curveFit<Name extends string, At>(request: FitRequest<Name, At>): CurveFit<Name> {
  const names = Object.keys(request.start) as Name[];
  mustBeFittable(request, names);
  const surface = new CurveSurface({ ...request, names });
  const limits = limitsOf(names, request.bounds);
  const start = Float64Array.from(names, (name) => request.start[name]);
  const walked = descent(surface, start, { limits, mostSteps: request.mostSteps ?? MOST_STEPS });
  return fitOf(request.points, names, walked);
}

function mustBeFittable<Name extends string, At>(
  { points, start, bounds }: FitRequest<Name, At>,
  names: readonly Name[],
): void {
  if (points.length < names.length || names.length === 0)
    throw new RangeError(`${points.length} points do not tell ${names.length} parameters`);
  const told = points.filter(({ u }) => u !== undefined);
  if (told.length !== 0 && told.length !== points.length)
    throw new RangeError('doubts are told for all points or for none');
  for (const { value, u = 1 } of points)
    if (!(Number.isFinite(value) && u > 0 && u < Number.POSITIVE_INFINITY))
      throw new RangeError(`a point has a finite value and a doubt above 0, not ${value} and ${u}`);
  for (const name of names) {
    const { low = Number.NEGATIVE_INFINITY, high = Number.POSITIVE_INFINITY } = bounds?.[name] ?? {};
    if (!(start[name] >= low && start[name] <= high))
      throw new RangeError(`${name} starts at ${start[name]}, which is not from ${low} to ${high}`);
  }
}

function limitsOf<Name extends string>(
  names: readonly Name[],
  bounds: FitRequest<Name, unknown>['bounds'],
): Limits {
  return {
    low: Float64Array.from(names, (name) => bounds?.[name]?.low ?? Number.NEGATIVE_INFINITY),
    high: Float64Array.from(names, (name) => bounds?.[name]?.high ?? Number.POSITIVE_INFINITY),
  };
}

function fitOf<Name extends string>(
  points: readonly CurvePoint<unknown>[],
  names: readonly Name[],
  { verdict, here, free, whole, offset, steps }: Descent,
): CurveFit<Name> {
  const degrees = points.length - free.length;
  const { sumOfSquares } = here;
  const variance = degrees === 0 ? Number.NaN : sumOfSquares / degrees;
  const unscaled = whole === null ? null : spreadOut(whole.covariance, free, names.length);
  const scaled = unscaled === null || degrees === 0 ? null : scaledBy(unscaled, variance);
  const covariance = points[0]?.u === undefined ? scaled : unscaled;
  const uAt = (at: number): number =>
    covariance === null ? Number.NaN : Math.sqrt(covariance.values[at * names.length + at] as number);
  return {
    verdict,
    parameters: named(names, (at) => here.parameters[at] as number),
    u: named(names, uAt),
    ...{ covariance, unscaled, scaled, degrees, sumOfSquares, steps, offset },
    residualU: Math.sqrt(variance),
    residuals: here.left.map((each, at) => each * (points[at]?.u ?? 1)),
    atBound: names.filter((_, at) => !free.includes(at)),
  };
}

function named<Name extends string>(
  names: readonly Name[],
  value: (at: number) => number,
): Readonly<Record<Name, number>> {
  const record = {} as Record<Name, number>;
  names.forEach((name, at) => {
    record[name] = value(at);
  });
  return record;
}

/** The covariance of the free parameters among all; one that is held has none. */
function spreadOut({ columns, values }: Matrix, free: readonly number[], order: number): Matrix {
  const all = new Float64Array(order * order);
  free.forEach((row, i) => {
    free.forEach((column, j) => {
      all[row * order + column] = values[i * columns + j] as number;
    });
  });
  return { rows: order, columns: order, values: all };
}

function scaledBy({ rows, columns, values }: Matrix, factor: number): Matrix {
  return { rows, columns, values: values.map((value) => value * factor) };
}
