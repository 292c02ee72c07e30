// Several gaugings of one content made into one figure, with what they share; and whether they disagree.
import { chiSquareUpper, choleskyFactor, choleskySolve } from '../../maths/index.ts';
import { stayWithin } from '../stay-within.ts';

export interface GaugingToCombine {
  /** By what it is told apart: gas injection, strokes, weighing. */
  readonly of: string;
  /** In the unit in which all are told: m³ or kg. */
  readonly value: number;
  /** What is new in it, one standard deviation. */
  readonly u: number;
  /** What one standard deviation of an error moves it by, for errors that others may share; by the name of the error, signed. */
  readonly shared?: Readonly<Record<string, number>>;
}

export interface CombinedGauging {
  readonly of: string;
  /** What it counts for; all make 1. Below 0 where it serves to take an error out of another that shares it. */
  readonly weight: number;
  /** How far it lies from the combined figure. */
  readonly off: number;
  /** The same over its own doubt of that; beyond 3 or so this is the odd one. 0 where there is only one. */
  readonly offInU: number;
}

export interface Combined {
  readonly value: number;
  readonly u: number;
  readonly gaugings: readonly CombinedGauging[];
  readonly chiSquare: number;
  readonly degrees: number;
  /** How often chance alone makes them differ so much, where the doubts are as told. */
  readonly probability: number;
  /** `disagree`: less often than the level. Then no one figure is right, and this one is not to be posted as it is. */
  readonly verdict: 'agree' | 'disagree';
}

/** Below this a disagreement is said. Ours, no source: once in a hundred good pairs it is said for nothing. */
const LEVEL = 0.01;

/**
 * The best figure of several gaugings: x = (1ᵀ V⁻¹ z) / (1ᵀ V⁻¹ 1), u² = 1 / (1ᵀ V⁻¹ 1), with V_ij = u_i² δ_ij + Σ s_ik s_jk over
 * the errors k that they share; χ² = (z − x)ᵀ V⁻¹ (z − x) of n − 1 degrees.
 * @param gaugings at least one; `u` above 0 in at least all but one of those that share all their errors
 * @param level of the test, above 0 and below 1
 * @throws OutsideRange for a level outside its range; RangeError for no gauging, a value that is not finite, a doubt below 0, or
 *   gaugings of which one tells no more than another
 * @source gum, 5.2.2; least squares with a full covariance
 * @example combineGaugings([{ of: 'strokes', value: 40, u: 1 }, { of: 'weighing', value: 42, u: 1 }]).value // 41
 */
export function combineGaugings(gaugings: readonly GaugingToCombine[], level = LEVEL): Combined {
  stayWithin({
    ...{ quantity: 'level of the test', value: level, unit: 'of 1', source: 'gum' },
    ...{ low: 0, lowIsOpen: true, high: 1 },
  });
  mustBeGaugings(gaugings);
  const order = gaugings.length;
  const covariance = covarianceOf(gaugings);
  const factor = choleskyFactor({ order, values: covariance });
  const ones = choleskySolve(factor, new Float64Array(order).fill(1));
  const information = ones.reduce((sum, each) => sum + each, 0);
  const weights = ones.map((each) => each / information);
  const value = gaugings.reduce((sum, each, at) => sum + each.value * (weights[at] as number), 0);
  const off = Float64Array.from(gaugings, (each) => each.value - value);
  const pulled = choleskySolve(factor, off);
  const chiSquare = off.reduce((sum, each, at) => sum + each * (pulled[at] as number), 0);
  const degrees = order - 1;
  const probability = degrees === 0 ? 1 : chiSquareUpper({ value: chiSquare, degrees });
  const uSquared = 1 / information;
  return {
    ...{ value, u: Math.sqrt(uSquared), chiSquare, degrees, probability },
    verdict: probability < level ? 'disagree' : 'agree',
    gaugings: gaugings.map(({ of }, at) => ({
      ...{ of, weight: weights[at] as number, off: off[at] as number },
      offInU: inU(off[at] as number, (covariance[at * order + at] as number) - uSquared),
    })),
  };
}

/** The variance of a distance from the combined figure is that of the gauging less that of the figure. */
function inU(off: number, variance: number): number {
  return variance > 0 ? off / Math.sqrt(variance) : 0;
}

function mustBeGaugings(gaugings: readonly GaugingToCombine[]): void {
  if (gaugings.length === 0) throw new RangeError('there is no gauging to combine');
  for (const { of, value, u, shared = {} } of gaugings) {
    if (!Number.isFinite(value)) throw new RangeError(`${of} is a finite figure, not ${value}`);
    if (!(u >= 0 && u < Number.POSITIVE_INFINITY))
      throw new RangeError(`the doubt of ${of} is a finite figure from 0, not ${u}`);
    const bad = Object.values(shared).find((each) => !Number.isFinite(each));
    if (bad !== undefined) throw new RangeError(`an error that ${of} shares is a finite figure, not ${bad}`);
  }
}

function covarianceOf(gaugings: readonly GaugingToCombine[]): Float64Array {
  const order = gaugings.length;
  const values = new Float64Array(order * order);
  gaugings.forEach((one, row) => {
    gaugings.forEach((other, column) => {
      let sum = row === column ? one.u * one.u : 0;
      for (const [error, reach] of Object.entries(one.shared ?? {}))
        sum += reach * (other.shared?.[error] ?? 0);
      values[row * order + column] = sum;
    });
  });
  return values;
}
