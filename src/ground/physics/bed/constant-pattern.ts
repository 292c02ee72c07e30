// The shape of a breakthrough that no longer changes on its way through a long bed, for three kinds of resistance.
import { log, log1p, rootBetween } from '../../maths/index.ts';
import { OPEN_END } from '../outside-range.ts';
import { stayAboveZero, stayWithin } from '../stay-within.ts';
import { checkShare } from './logistic.ts';

const SOURCE = 'constant-pattern';
/** From here on the front grows longer all the way and there is no constant shape. */
const FLATTEST = 0.5;
const NEAR = 1e-13;
/** Within a part in 10¹² of nothing and of all. */
const LEAST_SHARE = 1e-12;

/** What slows the uptake: the film around a grain, the way into it (as a linear driving force), or the reaction at its surface. */
export type Resistance = 'film' | 'solid' | 'reaction';

export interface PatternBed {
  readonly resistance: Resistance;
  /** Separation factor, from 0 to below 0.5 (`separationFactor`). */
  readonly separation: number;
  /** Number of transfer units, k a V_bed / Q: the longer the bed, the more. */
  readonly transferUnits: number;
}

/**
 * The throughput, in units of the stoichiometric one, at which a share X of the feed comes through:
 * film N (T − 1) = (ln X − R ln(1 − X)) / (1 − R) + 1; solid N (T − 1) = (R ln X − ln(1 − X)) / (1 − R) − 1;
 * reaction (1 − R) N (T − 1) = ln(X / (1 − X)).
 *
 * For a bed that is longer than its front; without a resistance (N without end) everything breaks through at T = 1.
 * @param bed `resistance`; `separation` R, 0 to below 0.5; `transferUnits` N, above 0
 * @param share X of the feed, between 0 and 1, without them
 * @returns T
 * @throws OutsideRange outside those ranges, for NaN, and where the bed is shorter than its front
 * @source constant-pattern (from memory; its balance of mass and a column of cells agree)
 * @example patternThroughput({ resistance: 'film', separation: 0.2, transferUnits: 40 }, 0.05) // 0.9317
 */
export function patternThroughput(bed: PatternBed, share: number): number {
  checkPattern(bed);
  checkShare(share);
  const throughput = 1 + shapeOf(bed, share) / bed.transferUnits;
  const given = {
    quantity: 'throughput of a bed that is longer than its front',
    value: throughput,
    unit: 'times',
  };
  stayWithin({ ...given, low: 0, high: OPEN_END, source: SOURCE });
  return throughput;
}

function shapeOf({ resistance, separation: r }: PatternBed, share: number): number {
  const through = log(share);
  const held = log1p(-share);
  if (resistance === 'film') return (through - r * held) / (1 - r) + 1;
  if (resistance === 'solid') return (r * through - held) / (1 - r) - 1;
  return (through - held) / (1 - r);
}

/**
 * The share of the feed that comes through at a throughput: the inverse of `patternThroughput`.
 * @param bed `resistance`; `separation` R, 0 to below 0.5; `transferUnits` N, above 0
 * @param throughput T, in units of the stoichiometric one, from 0
 * @returns X, 0 to 1
 * @throws OutsideRange outside those ranges and for NaN
 * @source constant-pattern
 * @example patternBreakthrough({ resistance: 'reaction', separation: 0.2, transferUnits: 40 }, 1) // 0.5
 */
export function patternBreakthrough(bed: PatternBed, throughput: number): number {
  checkPattern(bed);
  const given = { quantity: 'throughput, of the stoichiometric one', value: throughput, unit: 'times' };
  stayWithin({ ...given, low: 0, high: 1e6, source: SOURCE });
  const wanted = bed.transferUnits * (throughput - 1);
  const short = (share: number): number => shapeOf(bed, share) - wanted;
  if (short(LEAST_SHARE) >= 0) return 0;
  if (short(1 - LEAST_SHARE) < 0) return 1;
  return rootBetween(short, { low: LEAST_SHARE, high: 1 - LEAST_SHARE }, NEAR);
}

function checkPattern({ separation, transferUnits }: PatternBed): void {
  const given = { quantity: 'separation factor, favourable', value: separation, unit: 'of 1' };
  stayWithin({ ...given, low: 0, high: FLATTEST, source: SOURCE });
  stayAboveZero({
    quantity: 'number of transfer units',
    value: transferUnits,
    unit: 'units',
    source: SOURCE,
  });
}
