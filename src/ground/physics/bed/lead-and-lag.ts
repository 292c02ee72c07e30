// Two beds in a row: what comes out behind each, how much they hold, and when it is time to change.
import { exp, expm1, log1p, rootBetween } from '../../maths/index.ts';
import { OutsideRange } from '../outside-range.ts';
import { stayAboveZero, stayAtLeastZero, stayWithin } from '../stay-within.ts';

const SOURCE = 'lead-and-lag';
/** Steeper is a step in all that can be measured, and beyond what a double holds. */
const STEEPEST = 500;

/**
 * A bed, told by what it was fed: the share that it lets through is that of Bohart and Adams with the mass fed in place of the time,
 * x = 1 / (1 + e^(−s f) (e^s − 1)) with f = fed / capacity.
 */
export interface ChainBed {
  /** What it holds when it is full, kg. */
  readonly capacityKg: number;
  /** s = k τ of its breakthrough: how steep it is. 10 is a gentle one, 40 a sharp one. */
  readonly steepness: number;
  /** What has been fed to it since it was fresh, kg. */
  readonly fedKg: number;
}

/** Water flows through the lead first, then through the lag. */
export interface BedChain {
  readonly lead: ChainBed;
  readonly lag: ChainBed;
}

export interface ChainStep {
  readonly chain: BedChain;
  /** Behind the lead and behind the lag at the end of the step. */
  readonly leadKgPerM3: number;
  readonly lagKgPerM3: number;
  /** What went past both during the step. */
  readonly passedKg: number;
  readonly leadHoldsKg: number;
  readonly lagHoldsKg: number;
}

/**
 * The chain after so much more water: the mass that the lead lets pass is what the lag is fed.
 *
 * In closed form, so that a step of a hundred litres is the same as a hundred of one, and what is fed is held or has passed, to the
 * last digit. Left out: a feed that varies washes some out of a full bed again, and rest between runs evens a bed out.
 * @param chain both beds: `capacityKg` kg above 0, `steepness` above 0 up to 500, `fedKg` kg from 0
 * @param fed `volumeM3` m³ and `feedKgPerM3` kg/m³, from 0
 * @throws OutsideRange outside those ranges and for NaN
 * @source lead-and-lag; bohart-adams-1920
 * @example chainAfter({ lead: { capacityKg: 0.03, steepness: 20, fedKg: 0.027 }, lag: { capacityKg: 0.03, steepness: 20, fedKg: 0 } },
 *   { volumeM3: 0.1, feedKgPerM3: 0.03 }).leadKgPerM3 // 0.015
 */
export function chainAfter(
  chain: BedChain,
  fed: { readonly volumeM3: number; readonly feedKgPerM3: number },
): ChainStep {
  const { volumeM3, feedKgPerM3 } = fed;
  checkChain(chain);
  stayAtLeastZero({ quantity: 'volume', value: volumeM3, unit: 'm³', source: SOURCE });
  checkFeed(feedKgPerM3);
  const lead = { ...chain.lead, fedKg: chain.lead.fedKg + volumeM3 * feedKgPerM3 };
  const leadPassed = passedKg(lead);
  const lag = { ...chain.lag, fedKg: chain.lag.fedKg + (leadPassed - passedKg(chain.lead)) };
  const lagPassed = passedKg(lag);
  const leadKgPerM3 = feedKgPerM3 * shareThrough(lead);
  return {
    chain: { lead, lag },
    leadKgPerM3,
    lagKgPerM3: leadKgPerM3 * shareThrough(lag),
    passedKg: lagPassed - passedKg(chain.lag),
    leadHoldsKg: lead.fedKg - leadPassed,
    lagHoldsKg: lag.fedKg - lagPassed,
  };
}

/**
 * How much more water until a limit is passed behind the lead or behind the lag; 0 where it is passed already.
 * @param chain as in `chainAfter`
 * @param limit `behind` which bed; `feedKgPerM3` kg/m³, above 0; `limitKgPerM3` between 0 and the feed, without them
 * @returns m³
 * @throws OutsideRange outside those ranges and for NaN
 * @source lead-and-lag
 * @example volumeToLimitM3({ lead: { capacityKg: 0.03, steepness: 20, fedKg: 0 }, lag: { capacityKg: 0.03, steepness: 20, fedKg: 0 } },
 *   { behind: 'lead', feedKgPerM3: 0.03, limitKgPerM3: 0.003 }) // 0.890
 */
export function volumeToLimitM3(
  chain: BedChain,
  limit: { readonly behind: 'lead' | 'lag'; readonly feedKgPerM3: number; readonly limitKgPerM3: number },
): number {
  const { behind, feedKgPerM3, limitKgPerM3 } = limit;
  checkChain(chain);
  stayAboveZero({ quantity: 'concentration in the feed', value: feedKgPerM3, unit: 'kg/m³', source: SOURCE });
  if (!(limitKgPerM3 > 0 && limitKgPerM3 < feedKgPerM3)) throw notBelowFeed(limitKgPerM3, feedKgPerM3);
  const tooMuch = (volumeM3: number): number => {
    const { leadKgPerM3, lagKgPerM3 } = chainAfter(chain, { volumeM3, feedKgPerM3 });
    return (behind === 'lead' ? leadKgPerM3 : lagKgPerM3) - limitKgPerM3;
  };
  if (tooMuch(0) >= 0) return 0;
  let high = (chain.lead.capacityKg + chain.lag.capacityKg) / feedKgPerM3;
  // The share behind both goes to 1 as they fill, so that doubling ends.
  while (tooMuch(high) < 0) high *= 2;
  return rootBetween(tooMuch, { low: 0, high }, 1e-14 * feedKgPerM3);
}

/**
 * The chain after a change: the lag moves up, a fresh bed takes its place, and the old lead goes out.
 * @param chain the chain before
 * @param fresh `capacityKg` kg and `steepness` of the new bed, above 0
 * @throws OutsideRange outside those ranges and for NaN
 * @source lead-and-lag
 */
export function swappedChain(chain: BedChain, fresh: Omit<ChainBed, 'fedKg'>): BedChain {
  checkChain(chain);
  const lag = { ...fresh, fedKg: 0 };
  checkBed('fresh bed', lag);
  return { lead: chain.lag, lag };
}

/** x = 1 / (1 + e^(s (1 − f)) (1 − e^(−s))). */
function shareThrough({ capacityKg, steepness, fedKg }: ChainBed): number {
  return 1 / (1 - exp(steepness * (1 - fedKg / capacityKg)) * expm1(-steepness));
}

/** The mass that has passed a bed since it was fresh: the integral of its share, (C / s) ln(1 + e^(s (f − 1)) − e^(−s)). */
function passedKg({ capacityKg, steepness, fedKg }: ChainBed): number {
  const filled = steepness * (fedKg / capacityKg - 1);
  // Two forms of one thing: the first keeps the digits of a fresh bed, the second does not overflow in a full one.
  const exponent =
    filled <= 0
      ? log1p(exp(-steepness) * expm1(steepness + filled))
      : filled + log1p(-exp(-filled) * expm1(-steepness));
  return (capacityKg / steepness) * exponent;
}

function checkChain({ lead, lag }: BedChain): void {
  checkBed('lead', lead);
  checkBed('lag', lag);
}

function checkBed(name: string, { capacityKg, steepness, fedKg }: ChainBed): void {
  stayAboveZero({ quantity: `capacity of the ${name}`, value: capacityKg, unit: 'kg', source: SOURCE });
  const given = {
    quantity: `steepness of the ${name}`,
    value: steepness,
    unit: '(a number)',
    lowIsOpen: true,
  };
  stayWithin({ ...given, low: 0, high: STEEPEST, source: SOURCE });
  stayAtLeastZero({ quantity: `mass fed to the ${name}`, value: fedKg, unit: 'kg', source: SOURCE });
}

function checkFeed(feedKgPerM3: number): void {
  stayAtLeastZero({
    quantity: 'concentration in the feed',
    value: feedKgPerM3,
    unit: 'kg/m³',
    source: SOURCE,
  });
}

function notBelowFeed(value: number, high: number): OutsideRange {
  const given = { quantity: 'limit behind a bed, below the feed', value, unit: 'kg/m³' };
  return new OutsideRange({ ...given, low: 0, lowIsOpen: true, high, source: SOURCE });
}
