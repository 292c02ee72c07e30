// What the account keeps of one store: what it is, what is in it, what it may be used for, and how that is known.
import type { Store } from '../outpost/index.ts';
import type { KnownResult } from './quality/known-results.ts';

/** The word for how a content came to be known. */
export type HowKnown =
  | 'opening'
  | 'filled'
  | 'weighed'
  | 'gauged'
  | 'declared empty'
  | 'declared full'
  | 'counted'
  | 'loader’s figure'
  | 'reckoned'
  | 'unknown';

/** On whose word the water may be used. */
export type Release = 'own sample' | 'made here' | 'opening' | 'loader’s certificate' | 'none';

export interface HoldState {
  readonly hold: string;
  readonly sinceMs: number;
  readonly reason: string;
  readonly entry: string;
  /** Parameters that failed, where a result set it. */
  readonly failed?: readonly string[];
  /** Results that fail a limit which was chosen: they go with the water, so that the next choice judges them wherever it is. */
  readonly results?: readonly KnownResult[];
  /** Who looks after it, and until when. */
  readonly parked?: Parked;
}

export interface Parked {
  readonly owner: string;
  readonly untilMs: number;
  readonly entry: string;
}

/** A hold that somebody waived: the water may be used until then, and is no better for it. */
export interface WaivedHold {
  readonly hold: HoldState;
  readonly by: string;
  readonly second: string | null;
  readonly reason: string;
  readonly untilMs: number;
  readonly entry: string;
}

/** A dose, or a treatment by a recipe of the outpost. */
export interface Treated {
  readonly atMs: number;
  /** Null: by a recipe, which answers every earlier result. */
  readonly biocide: string | null;
  readonly untilMs: number;
  readonly entry: string;
}

/** Who gave the word on which the water may be used, on which samples, and until when. */
export interface ReleaseRecord {
  readonly by: string;
  readonly atMs: number;
  readonly samples: readonly string[];
  /** Null: without an end. */
  readonly untilMs: number | null;
  readonly entry: string;
}

export interface LastReading {
  readonly atMs: number;
  readonly how: HowKnown;
  readonly entry: string;
  /** How far other evidence checked it: 0 or absent, it alone told; 1, it added nothing. */
  readonly redundancy?: number;
}

/** What was first told of a content, and how far off it has been said to be. */
export interface ToldFirst {
  readonly massMg: number;
  /** On whose word. */
  readonly by: Release;
  readonly atMs: number;
  readonly saidMg: number;
}

/** Facts of a store that do not change while it is aboard. */
export interface StoreFacts {
  readonly id: string;
  readonly name: string;
  readonly kind: Store['kind'];
  readonly place: string;
  readonly capacityMg: number;
  readonly fillMg: number | null;
  readonly remainderMg: number;
  readonly remainderUMg: number;
  readonly reserve: boolean;
  readonly wasteLimitMg: number | null;
  readonly emptyNeedsFlowStopped: boolean;
  /** Vehicle that it leaves with, or null. */
  readonly visit: string | null;
}

export interface StoreState {
  readonly facts: StoreFacts;
  /** Its account in the ledger. */
  readonly account: string;
  /** Places in the estimator: the content, and the error that every gauging of this store repeats (−1: none). */
  readonly content: number;
  readonly gaugeOffset: number;
  aboard: boolean;
  /** Grade of the content; of an emptied store the grade that it held last; null: never used or unknown. */
  grade: string | null;
  emptied: boolean;
  /** Declared empty with water in it: what comes in then mixes with water that nobody meant to draw on any more. */
  setAside: boolean;
  /** Grades in the order in which they were held. */
  gradeHistory: readonly string[];
  /** Every biocide that has been in it since it was last disinfected. */
  biocides: readonly string[];
  release: Release;
  released: ReleaseRecord | null;
  /** The oldest hold that is open, and those that came after it: see hold.ts. */
  hold: HoldState | null;
  holdsBehind: readonly HoldState[];
  conditional: HoldState | null;
  /** Other reasons why it is conditional: each ends only by its own name. */
  conditionalsBehind: readonly HoldState[];
  waived: readonly WaivedHold[];
  /** Treated by two and by an allowed recipe since the last hold that nothing else brings back: see hold.ts. */
  broughtBack: boolean;
  /** What was found in this water; a list that is replaced and never changed. */
  results: readonly KnownResult[];
  /** Since when nothing came in that was not there before, and since when bad news is of this water. */
  waterSinceMs: number;
  badNewsSinceMs: number;
  /** All that ever flowed in, whole milligrams: it tells how often a buffer has been filled anew. */
  inflowMg: number;
  /** The store that filled it last. */
  filledFrom: string | null;
  /** What was added last, and until when no sample of it counts. */
  treated: Treated | null;
  lastReading: LastReading | null;
  toldFirst: ToldFirst | null;
  /** When water last moved in or out. */
  movedAtMs: number | null;
  /** Entries that the figure rests on since the last direct reading, the newest last: see reasonsOf. */
  because: string[];
}

/** More entries than this are not listed behind a figure; the reading that it starts from always is. */
const MOST_REASONS = 40;

/** The list is cut now and then, not at every entry. */
export function rememberEntry({ because }: StoreState, entry: string): void {
  if (because.at(-1) === entry) return;
  because.push(entry);
  if (because.length >= 2 * MOST_REASONS) because.splice(1, because.length - MOST_REASONS);
}

/** Entries behind the figure: what it starts from, and the youngest ones. */
export function reasonsOf({ because }: StoreState): readonly string[] {
  return because.length <= MOST_REASONS
    ? [...because]
    : [...because.slice(0, 1), ...because.slice(1 - MOST_REASONS)];
}

export function rememberReading(state: StoreState, reading: LastReading): void {
  state.lastReading = reading;
  state.because = [reading.entry];
}

export function holdsNow(state: StoreState, grade: string): void {
  state.grade = grade;
  state.emptied = false;
  if (state.gradeHistory.at(-1) !== grade) state.gradeHistory = [...state.gradeHistory, grade];
}

/** Nothing is in it but the rest that stays in any store. */
export function ranDry({ emptied, setAside }: Pick<StoreState, 'emptied' | 'setAside'>): boolean {
  return emptied && !setAside;
}

export function cloneStore(state: StoreState): StoreState {
  return { ...state, because: [...state.because] };
}
