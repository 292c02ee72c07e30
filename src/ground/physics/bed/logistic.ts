// The breakthrough of a bed as a logistic curve, under its three names, and the full form that starts at zero time.
import { exp, expm1, log, log1p } from '../../maths/index.ts';
import { OutsideRange } from '../outside-range.ts';
import { stayAboveZero, stayAtLeastZero } from '../stay-within.ts';
import { checkFlow, checkSorbent } from './capacity.ts';

const SOURCE = 'logistic-bed';

/** One model: Yoon and Nelson write it so; Thomas and Bohart and Adams name other figures of the same curve. */
export interface LogisticBed {
  /** k_YN: how steep the curve is. */
  readonly ratePerS: number;
  /** τ: when half of the feed comes through. */
  readonly halfTimeS: number;
}

/**
 * The share of the feed that comes through: c/c₀ = 1 / (1 + e^(k (τ − t))).
 *
 * It is not 0 at the start: for a short bed take `bohartAdams`.
 * @param bed `ratePerS` 1/s and `halfTimeS` s, above 0
 * @param timeS s, from 0
 * @returns 0 to 1
 * @throws OutsideRange outside those ranges and for NaN
 * @source logistic-bed
 * @example logisticBreakthrough({ ratePerS: 0.0199629, halfTimeS: 646.64 }, 540) // 0.1063
 */
export function logisticBreakthrough(bed: LogisticBed, timeS: number): number {
  checkBed(bed);
  stayAtLeastZero({ quantity: 'time', value: timeS, unit: 's', source: SOURCE });
  return 1 / (1 + exp(bed.ratePerS * (bed.halfTimeS - timeS)));
}

/**
 * When so much of the feed comes through: t = τ − ln(1/x − 1) / k. Below zero where it did so from the start.
 * @param bed `ratePerS` 1/s and `halfTimeS` s, above 0
 * @param share of the feed, between 0 and 1, without them
 * @returns s
 * @throws OutsideRange outside those ranges and for NaN
 * @source logistic-bed
 * @example logisticTimeS({ ratePerS: 0.0199629, halfTimeS: 646.64 }, 0.01) // 416.5
 */
export function logisticTimeS(bed: LogisticBed, share: number): number {
  checkBed(bed);
  checkShare(share);
  return bed.halfTimeS - log(1 / share - 1) / bed.ratePerS;
}

/** What a sorbent holds and what flows through it. */
export interface SorbentRun {
  readonly capacityKgPerKg: number;
  readonly sorbentKg: number;
  readonly feedKgPerM3: number;
  readonly flowM3PerS: number;
}

/**
 * The same curve from Thomas's figures: k_YN = k_Th c₀, τ = q₀ M / (Q c₀).
 * @param run `thomasM3PerKgS` m³/(kg s), above 0; `capacityKgPerKg` kg/kg, `sorbentKg` kg, `feedKgPerM3` kg/m³, `flowM3PerS` m³/s, above 0
 * @throws OutsideRange outside those ranges and for NaN
 * @source logistic-bed
 * @example logisticOfThomas({ thomasM3PerKgS: 1e-5, capacityKgPerKg: 0.05, sorbentKg: 2, feedKgPerM3: 0.03, flowM3PerS: 1e-6 }).halfTimeS / 86400 // 38.58
 */
export function logisticOfThomas(run: SorbentRun & { readonly thomasM3PerKgS: number }): LogisticBed {
  const { thomasM3PerKgS, capacityKgPerKg, sorbentKg, feedKgPerM3, flowM3PerS } = run;
  checkRun(run);
  stayAboveZero({ quantity: "Thomas's rate", value: thomasM3PerKgS, unit: 'm³/(kg s)', source: SOURCE });
  return {
    ratePerS: thomasM3PerKgS * feedKgPerM3,
    halfTimeS: (capacityKgPerKg * sorbentKg) / (flowM3PerS * feedKgPerM3),
  };
}

/**
 * Thomas's figures of a curve: k_Th = k_YN / c₀, q₀ = τ Q c₀ / M. The inverse of `logisticOfThomas`.
 * @param run `bed` the curve; `sorbentKg` kg, `feedKgPerM3` kg/m³, `flowM3PerS` m³/s, above 0
 * @throws OutsideRange outside those ranges and for NaN
 * @source logistic-bed
 * @example thomasOfLogistic({ bed: { ratePerS: 3e-7, halfTimeS: 3333333 }, sorbentKg: 2, feedKgPerM3: 0.03, flowM3PerS: 1e-6 }).capacityKgPerKg // 0.05
 */
export function thomasOfLogistic(run: Omit<SorbentRun, 'capacityKgPerKg'> & { readonly bed: LogisticBed }): {
  readonly thomasM3PerKgS: number;
  readonly capacityKgPerKg: number;
} {
  const { bed, sorbentKg, feedKgPerM3, flowM3PerS } = run;
  checkBed(bed);
  checkRun({ ...run, capacityKgPerKg: 1 });
  return {
    thomasM3PerKgS: bed.ratePerS / feedKgPerM3,
    capacityKgPerKg: (bed.halfTimeS * flowM3PerS * feedKgPerM3) / sorbentKg,
  };
}

/** Bohart and Adams count the capacity by the volume of the bed and the flow by its speed over the empty bed. */
export interface BohartAdamsBed {
  /** k_BA, the same figure as Thomas's rate. */
  readonly rateM3PerKgS: number;
  /** N₀. */
  readonly capacityKgPerM3: number;
  /** Z. */
  readonly lengthM: number;
  /** u. */
  readonly speedMPerS: number;
  readonly feedKgPerM3: number;
}

/**
 * The same curve from Bohart's and Adams's figures: k_YN = k_BA c₀, τ = N₀ Z / (u c₀).
 * @param bed each of its figures above 0, in SI units
 * @throws OutsideRange outside those ranges and for NaN
 * @source logistic-bed
 * @example logisticOfBohartAdams({ rateM3PerKgS: 1e-5, capacityKgPerM3: 25, lengthM: 0.4, speedMPerS: 1e-4, feedKgPerM3: 0.03 }).halfTimeS // 3333333
 */
export function logisticOfBohartAdams(bed: BohartAdamsBed): LogisticBed {
  const { rateM3PerKgS, capacityKgPerM3, lengthM, speedMPerS, feedKgPerM3 } = bed;
  checkBohartAdams(bed);
  return {
    ratePerS: rateM3PerKgS * feedKgPerM3,
    halfTimeS: (capacityKgPerM3 * lengthM) / (speedMPerS * feedKgPerM3),
  };
}

/**
 * The share of the feed that comes through, by the full form: c/c₀ = e^A / (e^A + e^B − 1), A = k c₀ t, B = k N₀ Z / u = k_YN τ.
 *
 * It starts at e^(−B) and not before: a short bed lets some through from the first drop. For B above 10 it is the logistic curve to
 * a part in twenty thousand.
 * @param bed `ratePerS` 1/s and `halfTimeS` s, above 0
 * @param timeS s, from 0
 * @returns e^(−B) to 1
 * @throws OutsideRange outside those ranges and for NaN
 * @source bohart-adams-1920
 * @example bohartAdams({ ratePerS: 0.001, halfTimeS: 2000 }, 0) // 0.1353
 */
export function bohartAdams(bed: LogisticBed, timeS: number): number {
  checkBed(bed);
  stayAtLeastZero({ quantity: 'time', value: timeS, unit: 's', source: SOURCE });
  // e^(B−A) (1 − e^(−B)): no power that overflows while the share is above nothing.
  const b = bed.ratePerS * bed.halfTimeS;
  return 1 / (1 - exp(b - bed.ratePerS * timeS) * expm1(-b));
}

/**
 * When so much of the feed comes through, by the full form: A = B + ln(1 − e^(−B)) + ln(x / (1 − x)); 0 where it does from the start.
 * @param bed `ratePerS` 1/s and `halfTimeS` s, above 0
 * @param share of the feed, between 0 and 1, without them
 * @returns s
 * @throws OutsideRange outside those ranges and for NaN
 * @source bohart-adams-1920
 * @example bohartAdamsTimeS({ ratePerS: 0.001, halfTimeS: 2000 }, 0.5) // 1854.6
 */
export function bohartAdamsTimeS(bed: LogisticBed, share: number): number {
  checkBed(bed);
  checkShare(share);
  const b = bed.ratePerS * bed.halfTimeS;
  return Math.max(0, (b + log1p(-exp(-b)) - log(1 / share - 1)) / bed.ratePerS);
}

export function checkBed({ ratePerS, halfTimeS }: LogisticBed): void {
  stayAboveZero({ quantity: 'rate of the breakthrough', value: ratePerS, unit: '1/s', source: SOURCE });
  stayAboveZero({ quantity: 'time to half of the feed', value: halfTimeS, unit: 's', source: SOURCE });
}

export function checkShare(share: number): void {
  if (!(share > 0 && share < 1))
    throw new OutsideRange({
      quantity: 'share of the feed, between nothing and all of it',
      value: share,
      unit: 'of 1',
      low: 0,
      lowIsOpen: true,
      high: 1,
      source: SOURCE,
    });
}

function checkRun(run: SorbentRun): void {
  checkSorbent(run);
  checkFlow(run.flowM3PerS);
}

function checkBohartAdams(bed: BohartAdamsBed): void {
  const units = {
    rateM3PerKgS: 'm³/(kg s)',
    capacityKgPerM3: 'kg/m³',
    lengthM: 'm',
    speedMPerS: 'm/s',
    feedKgPerM3: 'kg/m³',
  };
  for (const [quantity, unit] of Object.entries(units))
    stayAboveZero({ quantity, value: bed[quantity as keyof BohartAdamsBed], unit, source: SOURCE });
}
