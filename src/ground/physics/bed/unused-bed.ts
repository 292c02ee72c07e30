// From one measured breakthrough: how much of the bed was used, how long its front is, and how long a longer bed would last.
import { OutsideRange } from '../outside-range.ts';
import { stayAboveZero, stayAtLeastZero, stayWithin } from '../stay-within.ts';
import { checkShare } from './logistic.ts';

const SOURCE = 'unused-bed';

export interface CurvePoint {
  readonly timeS: number;
  /** c/c₀, the share of the feed that comes through. */
  readonly share: number;
}

export interface UnusedBed {
  /** ∫(1 − c/c₀) dt over the whole curve: as long as it would have lasted with a front of no length. */
  readonly stoichiometricS: number;
  /** When the limit was passed, on a straight line between two points. */
  readonly breakS: number;
  /** ∫(1 − c/c₀) dt up to then. */
  readonly usedS: number;
  readonly usedShare: number;
  /** L (1 − used share). */
  readonly unusedM: number;
}

/**
 * What a breakthrough curve says of its bed, by trapezoids: t_t = ∫(1 − c/c₀) dt, t_u the same up to the limit, used share t_u / t_t,
 * length of unused bed L (1 − t_u / t_t).
 *
 * The curve has to go on until nearly all of the feed comes through; what is missing at its end is missing in t_t.
 * @param run `curve` points in order of time, each share from 0, the last above the limit; `limitShare` between 0 and 1; `lengthM` m, above 0
 * @throws OutsideRange outside those ranges, for NaN, and where the curve does not pass the limit
 * @source unused-bed
 * @example unusedBed({ curve: [{ timeS: 0, share: 0 }, { timeS: 100, share: 0 }, { timeS: 200, share: 1 }], limitShare: 0.1, lengthM: 0.3 }).unusedM // 0.081
 */
export function unusedBed(run: {
  readonly curve: readonly CurvePoint[];
  readonly limitShare: number;
  readonly lengthM: number;
}): UnusedBed {
  const { curve, limitShare, lengthM } = run;
  checkCurve(curve);
  checkShare(limitShare);
  const { breakS, usedS } = upToLimit(curve, limitShare);
  const stoichiometricS = held(curve);
  const usedShare = usedS / stoichiometricS;
  const unusedM = unusedLengthM({ lengthM, usedS, stoichiometricS });
  return { stoichiometricS, breakS, usedS, usedShare, unusedM };
}

/**
 * The length of bed that is unused when the limit is passed: L (1 − t_u / t_t).
 * @param bed `lengthM` m and `stoichiometricS` s, above 0; `usedS` s, from 0 to `stoichiometricS`
 * @returns m
 * @throws OutsideRange outside those ranges and for NaN
 * @source unused-bed
 * @example unusedLengthM({ lengthM: 0.16, usedS: 7.07, stoichiometricS: 9.59 }) // 0.0420
 */
export function unusedLengthM(bed: {
  readonly lengthM: number;
  readonly usedS: number;
  readonly stoichiometricS: number;
}): number {
  const { lengthM, usedS, stoichiometricS } = bed;
  stayAboveZero({ quantity: 'length of the bed', value: lengthM, unit: 'm', source: SOURCE });
  stayAboveZero({ quantity: 'stoichiometric time', value: stoichiometricS, unit: 's', source: SOURCE });
  const given = { quantity: 'time used, of the stoichiometric one', value: usedS, unit: 's' };
  stayWithin({ ...given, low: 0, high: stoichiometricS, source: SOURCE });
  return lengthM * (1 - usedS / stoichiometricS);
}

/**
 * How long another length of the same bed lasts to the same limit, at the same flow through the same area: t = t_t (L' − L_unused) / L.
 *
 * The front is as long in every bed that is longer than it.
 * @param bed `stoichiometricS` s and `lengthM` m of the bed that was measured, above 0; `unusedM` m, from 0; `newLengthM` m, above `unusedM`
 * @returns s
 * @throws OutsideRange outside those ranges and for NaN
 * @source unused-bed
 * @example breakTimeOfLengthS({ stoichiometricS: 34524, lengthM: 0.16, unusedM: 0.04204, newLengthM: 0.32 }) / 3600 // 16.66 h
 */
export function breakTimeOfLengthS(bed: {
  readonly stoichiometricS: number;
  readonly lengthM: number;
  readonly unusedM: number;
  readonly newLengthM: number;
}): number {
  const { stoichiometricS, lengthM, unusedM, newLengthM } = bed;
  stayAboveZero({ quantity: 'stoichiometric time', value: stoichiometricS, unit: 's', source: SOURCE });
  stayAboveZero({ quantity: 'length of the bed', value: lengthM, unit: 'm', source: SOURCE });
  stayAtLeastZero({ quantity: 'length of unused bed', value: unusedM, unit: 'm', source: SOURCE });
  stayAboveZero({
    quantity: 'new length over the unused bed',
    value: newLengthM - unusedM,
    unit: 'm',
    source: SOURCE,
  });
  return (stoichiometricS * (newLengthM - unusedM)) / lengthM;
}

/**
 * What the sorbent took up in a time: w = (mass fed per area and time) × time / (length × bulk density).
 * @param run `fedKgPerM2S` kg/(m² s), `heldS` s of `unusedBed`, `lengthM` m, `bulkKgPerM3` kg/m³, each above 0
 * @returns kg/kg
 * @throws OutsideRange outside those ranges and for NaN
 * @source unused-bed
 * @example takenUpKgPerKg({ fedKgPerM2S: 6.222e-4, heldS: 34524, lengthM: 0.16, bulkKgPerM3: 461 }) // 0.291
 */
export function takenUpKgPerKg(run: {
  readonly fedKgPerM2S: number;
  readonly heldS: number;
  readonly lengthM: number;
  readonly bulkKgPerM3: number;
}): number {
  const { fedKgPerM2S, heldS, lengthM, bulkKgPerM3 } = run;
  stayAboveZero({ quantity: 'mass fed', value: fedKgPerM2S, unit: 'kg/(m² s)', source: SOURCE });
  stayAboveZero({ quantity: 'time held', value: heldS, unit: 's', source: SOURCE });
  stayAboveZero({ quantity: 'length of the bed', value: lengthM, unit: 'm', source: SOURCE });
  stayAboveZero({ quantity: 'bulk density', value: bulkKgPerM3, unit: 'kg/m³', source: SOURCE });
  return (fedKgPerM2S * heldS) / (lengthM * bulkKgPerM3);
}

function checkCurve(curve: readonly CurvePoint[]): void {
  let before = Number.NEGATIVE_INFINITY;
  for (const { timeS, share } of curve) {
    stayAtLeastZero({ quantity: 'share of the feed', value: share, unit: 'of 1', source: SOURCE });
    if (!(timeS > before && Number.isFinite(timeS)))
      throw new OutsideRange({
        quantity: 'time of a point, later than the one before',
        value: timeS,
        unit: 's',
        low: before,
        lowIsOpen: true,
        high: Number.POSITIVE_INFINITY,
        source: SOURCE,
      });
    before = timeS;
  }
}

/** ∫(1 − c/c₀) dt by trapezoids. */
function held(curve: readonly CurvePoint[]): number {
  let sum = 0;
  for (const [at, point] of curve.entries()) {
    const last = curve[at - 1];
    if (last !== undefined) sum += (point.timeS - last.timeS) * (1 - (point.share + last.share) / 2);
  }
  return sum;
}

function upToLimit(curve: readonly CurvePoint[], limitShare: number): { breakS: number; usedS: number } {
  const at = curve.findIndex(({ share }) => share >= limitShare);
  const [before, after] = [curve[at - 1], curve[at]];
  if (before === undefined || after === undefined)
    throw new OutsideRange({
      quantity: 'limit that the curve passes between two of its points',
      value: limitShare,
      unit: 'of 1',
      low: Math.max(0, curve[0]?.share ?? 0),
      lowIsOpen: true,
      high: curve.reduce((most, { share }) => Math.max(most, share), 0),
      source: SOURCE,
    });
  const part = (limitShare - before.share) / (after.share - before.share);
  const breakS = before.timeS + part * (after.timeS - before.timeS);
  return { breakS, usedS: held([...curve.slice(0, at), { timeS: breakS, share: limitShare }]) };
}
