// What a gauging would bring to what is known of a store: whether it is of any use, and its worth by the crew minute.
import { stayAboveZero, stayAtLeastZero, stayWithin } from '../stay-within.ts';

const SOURCE = 'kalman-1960';

/** Why a gauging is useless. Figures in the unit in which they were told, m³ or kg. */
export type UselessBecause =
  /** Its u is no smaller than what is known already. */
  | { readonly code: 'no-better-than-known'; readonly u: number; readonly presentU: number }
  /** Its ±, 2u, is larger than the content: it cannot tell that store from an empty one. */
  | { readonly code: 'larger-than-content'; readonly u95: number; readonly content: number };

export interface GaugingJudged {
  readonly verdict: 'useful' | 'useless';
  readonly because: readonly UselessBecause[];
  /** Doubt of the store after such a gauging. */
  readonly afterU: number;
}

export interface GaugingForeseen {
  /** Doubt of the gauging by itself, one standard deviation. */
  readonly u: number;
  /** The part of it that what is known already rests on too: a tank's shell, a stroke's calibration. */
  readonly sharedU?: number;
}

export interface StoreKnown {
  /** Doubt of the store now; null where nothing is known of it. */
  readonly presentU: number | null;
  /** What is of interest in it: what it is believed to hold above what stays behind. Absent: not asked about. */
  readonly content?: number;
}

/**
 * The doubt after a reading: u'² = (u₀² u² − c²) / (u₀² + u² − 2c), c = s² the error that both rest on. The best weights of the
 * two; it is never above either.
 * @param gauging `u` above 0, `sharedU` from 0, no more than `u` and than what is known
 * @param presentU above 0, or null where nothing is known
 * @throws OutsideRange outside those ranges and for NaN
 * @source kalman-1960, with a shared error; gum, 5.2.2
 * @example doubtAfterGauging({ u: 1.6 }, 6) // 1.546
 */
export function doubtAfterGauging({ u, sharedU = 0 }: GaugingForeseen, presentU: number | null): number {
  stayAboveZero({ quantity: 'doubt of the gauging', value: u, unit: 'in its unit', source: SOURCE });
  if (presentU === null) return u;
  stayAtLeastZero({
    quantity: 'doubt of what is known',
    value: presentU,
    unit: 'in its unit',
    source: SOURCE,
  });
  stayWithin({
    ...{ quantity: 'doubt that both share', value: sharedU, unit: 'in its unit', source: SOURCE },
    ...{ low: 0, high: Math.min(u, presentU) },
  });
  const [own, known, common] = [u * u, presentU * presentU, sharedU * sharedU];
  const apart = own + known - 2 * common;
  if (apart <= 0) return presentU;
  return Math.sqrt(Math.max(0, (own * known - common * common) / apart));
}

/**
 * Whether a gauging of this doubt tells anything about a store.
 *
 * Useless: u no smaller than what is known already, or 2u larger than the content of interest. The figures go with the verdict.
 * @param gauging see `doubtAfterGauging`
 * @param store `content` from 0, in the unit of the doubts
 * @throws OutsideRange as `doubtAfterGauging`
 * @source the two rules are ours
 * @example judgeGauging({ u: 13.3 }, { presentU: 1.5, content: 20 }).because // both reasons
 */
export function judgeGauging(gauging: GaugingForeseen, { presentU, content }: StoreKnown): GaugingJudged {
  const { u } = gauging;
  const afterU = doubtAfterGauging(gauging, presentU);
  const because: UselessBecause[] = [];
  if (presentU !== null && u >= presentU) because.push({ code: 'no-better-than-known', u, presentU });
  if (content !== undefined) {
    stayAtLeastZero({ quantity: 'content of interest', value: content, unit: 'in its unit', source: SOURCE });
    if (2 * u > content) because.push({ code: 'larger-than-content', u95: 2 * u, content });
  }
  return { verdict: because.length === 0 ? 'useful' : 'useless', because, afterU };
}

/** A way in which the store could be gauged now. */
export interface WayOfGauging extends GaugingForeseen {
  /** Gas injection, weighing, strokes … */
  readonly way: string;
  readonly minutes: number;
  /** People at it; absent: one. */
  readonly people?: number;
}

export interface WorthOfGauging extends GaugingJudged {
  readonly way: string;
  readonly u: number;
  readonly crewMinutes: number;
  /** How far the doubt of the store falls; null where nothing is known of it, for then it falls from nowhere. */
  readonly drop: number | null;
  readonly dropPerMinute: number | null;
}

/**
 * What each way of gauging a store would bring now, the best by the crew minute first; where nothing is known of the store, by
 * how small the doubt after it is for the minutes: least u × minutes.
 * @param store what is known now
 * @param ways each with its doubt (`gaugeByInjection`, `weighByOscillation`, … of readings as expected) and minutes, above 0
 * @throws OutsideRange as `doubtAfterGauging`, and for minutes or people that are not above 0
 * @source the order is ours
 * @example worthOfGaugings({ presentU: 6 }, [{ way: 'gas injection', u: 1.6, minutes: 50 }])[0].dropPerMinute // 0.089
 */
export function worthOfGaugings(store: StoreKnown, ways: readonly WayOfGauging[]): readonly WorthOfGauging[] {
  const worth = ways.map((each): WorthOfGauging => {
    const { way, u, minutes, people = 1 } = each;
    stayAboveZero({ quantity: `minutes of ${way}`, value: minutes, unit: 'min', source: SOURCE });
    stayAboveZero({ quantity: `people at ${way}`, value: people, unit: 'people', source: SOURCE });
    const judged = judgeGauging(each, store);
    const crewMinutes = minutes * people;
    const drop = store.presentU === null ? null : store.presentU - judged.afterU;
    return { way, u, crewMinutes, ...judged, drop, dropPerMinute: drop === null ? null : drop / crewMinutes };
  });
  const rank = ({ dropPerMinute, u, crewMinutes }: WorthOfGauging): number =>
    dropPerMinute ?? -u * crewMinutes;
  return worth.sort((a, b) => rank(b) - rank(a));
}
