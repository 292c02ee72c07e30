// What one observation says of a fit: its share of the logarithm of the likelihood, with slope and bend in its ends.
import { expm1 } from './exponential.ts';
import { log, log1p } from './logarithm.ts';
import { logNormalCdf, normalEdge } from './normal-tail.ts';

/**
 * What was observed: a value; only that it lies at or below, or at or above a limit; or that it lies between two.
 * A result under the detection limit is `atMost` that limit.
 */
export type Observed =
  | { readonly value: number }
  | { readonly atMost: number }
  | { readonly atLeast: number }
  | { readonly from: number; readonly to: number };

/**
 * The share of one observation as a function of its standardised ends: slope and bend are those in the upper end (`high`),
 * in the lower end (`low`) and in both. A value has one end only, called `high`.
 */
export interface RowShare {
  readonly logLikelihood: number;
  readonly slopeHigh: number;
  readonly slopeLow: number;
  readonly bendHigh: number;
  readonly bendLow: number;
  readonly bendBoth: number;
}

const LOG_ROOT_TWO_PI = 0.9189385332046728;
/** An interval this narrow, in standard deviations, says what its middle says, to 1 part in 10⁹. */
export const NARROW = 1e-4;

/** Of a value: −z²/2 − ln √(2π), to which the caller adds the logarithm of 1/σ. */
export function shareOfValue(z: number): RowShare {
  return { ...NONE, logLikelihood: (-z * z) / 2 - LOG_ROOT_TWO_PI, slopeHigh: -z, bendHigh: -1 };
}

/** Of "at most": ln Φ(z). */
export function shareOfAtMost(z: number): RowShare {
  const edge = normalEdge(z);
  return { ...NONE, logLikelihood: logNormalCdf(z), slopeHigh: edge, bendHigh: bendOf(z, edge) };
}

/** Of "at least": ln Φ(−z). */
export function shareOfAtLeast(z: number): RowShare {
  const { logLikelihood, slopeHigh, bendHigh } = shareOfAtMost(-z);
  return { ...NONE, logLikelihood, slopeHigh: -slopeHigh, bendHigh };
}

/** Of "between": ln (Φ(high) − Φ(low)), from the side on which the difference loses least. */
export function shareOfBetween({ low, high }: { readonly low: number; readonly high: number }): RowShare {
  // Both ends turned round: the same probability, seen from the other side.
  if (low + high > 0) return turned(shareOfBetween({ low: -high, high: -low }));
  const edgeHigh = normalEdge(high);
  // Φ(low)/Φ(high), which is 1 for an empty interval and 0 for one without a lower end.
  const logRatio = logNormalCdf(low) - logNormalCdf(high);
  const part = -expm1(logRatio);
  const [ofHigh, ofLow] = [edgeHigh / part, (normalEdge(low) * (1 - part)) / part];
  return {
    logLikelihood: logNormalCdf(high) + logOfPart(part),
    slopeHigh: ofHigh,
    slopeLow: -ofLow,
    bendHigh: -ofHigh * (high + ofHigh),
    bendLow: ofLow * (low - ofLow),
    bendBoth: ofHigh * ofLow,
  };
}

const NONE = { slopeLow: 0, bendLow: 0, bendBoth: 0 } as const;

/** −e (z + e) with e = φ/Φ: from −1 far below to 0 far above, and never on the other side of them. */
function bendOf(z: number, edge: number): number {
  return -Math.min(1, Math.max(0, edge * (z + edge)));
}

function logOfPart(part: number): number {
  return part > 0.5 ? log1p(part - 1) : log(part);
}

function turned(share: RowShare): RowShare {
  const { logLikelihood, slopeHigh, slopeLow, bendHigh, bendLow, bendBoth } = share;
  return {
    logLikelihood,
    slopeHigh: -slopeLow,
    slopeLow: -slopeHigh,
    bendHigh: bendLow,
    bendLow: bendHigh,
    bendBoth,
  };
}
