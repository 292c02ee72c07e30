// Mean and standard deviation of normal values of which some are only known to be below or above a figure.
import { exp } from './exponential.ts';
import { log } from './logarithm.ts';
import { normalCdf } from './normal-distribution.ts';

export interface CensoredValues {
  readonly seen: readonly number[];
  /** Each is less than this. */
  readonly below: readonly number[];
  /** Each is more than this. */
  readonly above: readonly number[];
}

interface Scaled extends CensoredValues {
  readonly shift: number;
  readonly unit: number;
}

/** 1/σ and μ/σ: in these two the likelihood has one top and no other. */
interface Place {
  readonly theta: number;
  readonly delta: number;
}

const MOST_STEPS = 200;
const MOST_HALVINGS = 60;
const ROOT_TWO_PI = 2.5066282746310002;

/**
 * The likeliest normal distribution: the top of Σ ln φ(z)/σ over what was seen + Σ ln Φ(z) over what is below +
 * Σ ln Φ(−z) over what is above, with z = (x − μ)/σ.
 *
 * Newton's steps, halved until the likelihood grows. Of values that were all seen it is the mean and the root of the mean
 * square from it: divided by n, not by n − 1.
 * @param values any unit, at least two seen that differ
 * @returns null where two seen values do not differ, or the search does not settle
 * @throws RangeError if a value is not finite
 * @source tobin-olsen
 * @example censoredNormal({ seen: [1, 3], below: [], above: [] })?.mean // 2
 */
export function censoredNormal(
  values: CensoredValues,
): { readonly mean: number; readonly sd: number } | null {
  const all = [...values.seen, ...values.below, ...values.above];
  if (!all.every((value) => Number.isFinite(value))) throw new RangeError('a value is not finite');
  const scaled = scaledToOne(values);
  if (scaled === null) return null;
  let at: Place = { theta: 1, delta: 0 };
  for (let step = 0; step < MOST_STEPS; step += 1) {
    const next = climbed(scaled, at);
    if (next === null) return null;
    const moved = Math.abs(next.theta - at.theta) + Math.abs(next.delta - at.delta);
    at = next;
    if (moved <= 1e-13 * (1 + at.theta + Math.abs(at.delta))) {
      const sd = 1 / at.theta;
      return { mean: scaled.shift + scaled.unit * at.delta * sd, sd: scaled.unit * sd };
    }
  }
  return null;
}

/** What was seen gets the mean 0 and the standard deviation 1, so that the search begins near its end. */
function scaledToOne({ seen, below, above }: CensoredValues): Scaled | null {
  const shift = seen.reduce((sum, value) => sum + value, 0) / seen.length;
  const unit = Math.sqrt(
    seen.reduce((sum, value) => sum + (value - shift) * (value - shift), 0) / seen.length,
  );
  if (!(unit > 0)) return null;
  const of = (list: readonly number[]) => list.map((value) => (value - shift) / unit);
  return { seen: of(seen), below: of(below), above: of(above), shift, unit };
}

/** One step of Newton's that makes the data likelier; the same place where none does. */
function climbed(values: Scaled, at: Place): Place | null {
  const { slopes, bends } = derivatives(values, at);
  const determinant = bends.tt * bends.dd - bends.td * bends.td;
  if (!(determinant > 0)) return null;
  const step = {
    theta: (bends.td * slopes.d - bends.dd * slopes.t) / determinant,
    delta: (bends.td * slopes.t - bends.tt * slopes.d) / determinant,
  };
  const now = likelihood(values, at);
  for (let part = 1, halvings = 0; halvings < MOST_HALVINGS; part /= 2, halvings += 1) {
    const next = { theta: at.theta + part * step.theta, delta: at.delta + part * step.delta };
    if (next.theta > 0 && likelihood(values, next) >= now) return next;
  }
  return at;
}

function likelihood({ seen, below, above }: Scaled, { theta, delta }: Place): number {
  const ofSeen = seen.reduce(
    (sum, x) => sum + log(theta) - (theta * x - delta) * (theta * x - delta) * 0.5,
    0,
  );
  const ofBelow = below.reduce((sum, x) => sum + log(normalCdf(theta * x - delta)), 0);
  return above.reduce((sum, x) => sum + log(normalCdf(delta - theta * x)), ofSeen + ofBelow);
}

/** First and second derivatives of the likelihood by θ (t) and δ (d). */
function derivatives({ seen, below, above }: Scaled, { theta, delta }: Place) {
  const slopes = { t: 0, d: 0 };
  const bends = { tt: 0, td: 0, dd: 0 };
  const add = (x: number, bend: number) => {
    bends.tt += bend * x * x;
    bends.td -= bend * x;
    bends.dd += bend;
  };
  for (const x of seen) {
    const z = theta * x - delta;
    slopes.t += 1 / theta - z * x;
    slopes.d += z;
    bends.tt -= 1 / (theta * theta);
    add(x, -1);
  }
  for (const x of below) {
    const { hazard, bend } = hazardAt(theta * x - delta);
    slopes.t += hazard * x;
    slopes.d -= hazard;
    add(x, bend);
  }
  for (const x of above) {
    const { hazard, bend } = hazardAt(delta - theta * x);
    slopes.t -= hazard * x;
    slopes.d += hazard;
    add(x, bend);
  }
  return { slopes, bends };
}

/** φ(z) / Φ(z) and its derivative; so far down that Φ vanishes it is −z. */
function hazardAt(z: number): { hazard: number; bend: number } {
  const share = normalCdf(z);
  const hazard = share > 0 ? exp(-z * z * 0.5) / ROOT_TWO_PI / share : -z;
  return { hazard, bend: -hazard * (z + hazard) };
}
