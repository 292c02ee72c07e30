// Whether propagation to first order is borne out by draws, in the way of the guide's first supplement.
import { coverageFactor } from './coverage-factor.ts';
import { log10 } from './logarithm.ts';
import { pow } from './power.ts';
import type { Drawn, Interval } from './propagate-by-draws.ts';

export interface BorneOut {
  /** `not settled`: there were too few draws to tell. */
  readonly verdict: 'borne out' | 'not borne out' | 'not settled';
  /** What the interval says by propagation: value ± k u. */
  readonly interval: Interval;
  /** How far its ends are from those of the draws. */
  readonly lowOff: number;
  readonly highOff: number;
  /** How far they may be: half a unit in the last digit of u that counts. */
  readonly tolerance: number;
}

/**
 * Compares the coverage interval of propagation with that of the draws.
 *
 * Borne out: both ends lie within δ of those drawn, δ being half a unit in the last of the digits of u that count; and the ends
 * drawn are themselves known to δ/5. Not borne out: one lies further off than δ and what the draws leave open.
 * @param propagated value, u and degrees of `propagate`; null degrees are taken as infinite
 * @param digits of u that count, 1 or 2
 * @throws RangeError if u is not above 0
 * @source jcgm-101, clause 8
 * @example isBorneOut({ propagated: propagate(told), drawn: propagateByDraws({ ...told, seed: 7 }) }).verdict
 */
export function isBorneOut({
  propagated,
  drawn,
  digits = 2,
  against = 'symmetric',
}: {
  readonly propagated: { readonly value: number; readonly u: number; readonly degrees: number | null };
  readonly drawn: Drawn;
  readonly digits?: 1 | 2;
  readonly against?: 'symmetric' | 'shortest';
}): BorneOut {
  const { value, u, degrees } = propagated;
  const tolerance = halfUnitOf(u, digits);
  const k = coverageFactor({ probability: drawn.probability, degrees: degrees ?? Number.POSITIVE_INFINITY });
  const interval = { low: value - k * u, high: value + k * u };
  const lowOff = Math.abs(interval.low - drawn[against].low);
  const highOff = Math.abs(interval.high - drawn[against].high);
  const { low, high } = drawn.unsettled[against];
  const isFar = lowOff > tolerance + low || highOff > tolerance + high;
  const isNear = lowOff <= tolerance && highOff <= tolerance && Math.max(low, high) <= tolerance / 5;
  const verdict = isFar ? 'not borne out' : isNear ? 'borne out' : 'not settled';
  return { verdict, interval, lowOff, highOff, tolerance };
}

/** u = c × 10^l with c of so many digits; half of 10^l. @source jcgm-101, 7.9.2 */
function halfUnitOf(u: number, digits: number): number {
  if (!(u > 0 && u < Number.POSITIVE_INFINITY))
    throw new RangeError(`a doubt to compare is above 0, not ${u}`);
  const least = pow(10, digits - 1);
  const power = Math.floor(log10(u)) - (digits - 1);
  // 0.0996 in two digits is 10 × 10⁻².
  const rounded = Math.round(u / pow(10, power));
  return 0.5 * pow(10, rounded >= 10 * least ? power + 1 : power);
}
