// What an outpost usually does, learned from its own entries: what new entries are held against before anybody is asked about them.
import type { AnyEntry } from '../../book/index.ts';

/** So many of the last accepted values are remembered. Ours, no source: two weeks of day lines. */
const MOST_KEPT = 14;
/** Samples and results that are remembered by the name of their bottle. */
const MOST_BOTTLES = 200;

/** A flow as it was told: which hose it took, and from when to when. */
export interface FlowSpan {
  readonly startMs: number;
  readonly endMs: number;
  readonly entry: string;
  readonly ref: string;
}

export interface LineMark {
  readonly day: number;
  readonly atMs: number;
  readonly entry: string;
  readonly ref: string;
  readonly people: number;
}

/** Plain data. The lists in the tables are replaced and never changed, so that copies may share them. */
export interface Habits {
  /** Litres a person and day, by counter. */
  readonly perPersonDayL: Map<string, readonly number[]>;
  /** The last amount a day of a counter, accepted or not: what comes twice is no slip. */
  readonly lastPerDayL: Map<string, number>;
  /** Readings of the cabin, by instrument; and the last one, accepted or not. */
  readonly spots: Map<string, readonly number[]>;
  readonly lastSpot: Map<string, number>;
  /** Litres a minute, by hose. */
  readonly flowLPerMin: Map<string, readonly number[]>;
  readonly lastFlow: Map<string, FlowSpan>;
  /** Minute of the day, by kind of act. */
  readonly minutes: Map<string, readonly number[]>;
  /** Milligrams that people moved into a store since the last day line. */
  readonly movedInMg: Map<string, number>;
  /** Store of each sample, and entries of results, by bottle. */
  readonly sampleStore: Map<string, string>;
  readonly resultSeen: Map<string, string>;
  /** When another source than the store on the port was told, by counter. */
  readonly sourceTold: Map<string, number>;
  /** The last hook-up on each port. */
  readonly putOn: Map<string, { readonly entry: string; readonly ref: string }>;
  /** An hour outside of the habit, by kind of act: the second one is a habit. */
  readonly oddHours: Map<string, number>;
  /** Checks that were made, by what and visit. */
  readonly checked: Map<string, string>;
  /** Tastes and odours of the last two weeks, by store or point. */
  readonly tastes: Map<string, readonly { readonly atMs: number; readonly entry: string }[]>;
  /** Entries that later ones are compared with, to see the same one entered twice. */
  recent: AnyEntry[];
  line: LineMark | null;
  /** Fewest and most people aboard since the last day line. */
  people: { readonly fewest: number; readonly most: number } | null;
  /** The number of people that was asked about last, so that it is asked once. */
  peopleAsked: number | null;
  /** The last window of another cabin pressure that was told. */
  cabinWindow: { readonly duringKPa: number; readonly untilMs: number } | null;
  /** When the last late entry that was asked about was entered: those that were made up for with it are not asked about. */
  lateAskedMs: number | null;
}

export function noHabits(): Habits {
  return {
    perPersonDayL: new Map(),
    lastPerDayL: new Map(),
    spots: new Map(),
    lastSpot: new Map(),
    flowLPerMin: new Map(),
    lastFlow: new Map(),
    minutes: new Map(),
    movedInMg: new Map(),
    sampleStore: new Map(),
    resultSeen: new Map(),
    sourceTold: new Map(),
    putOn: new Map(),
    oddHours: new Map(),
    checked: new Map(),
    tastes: new Map(),
    recent: [],
    line: null,
    people: null,
    peopleAsked: null,
    cabinWindow: null,
    lateAskedMs: null,
  };
}

export function cloneHabits(habits: Habits): Habits {
  return {
    ...habits,
    recent: [...habits.recent],
    perPersonDayL: new Map(habits.perPersonDayL),
    lastPerDayL: new Map(habits.lastPerDayL),
    spots: new Map(habits.spots),
    lastSpot: new Map(habits.lastSpot),
    flowLPerMin: new Map(habits.flowLPerMin),
    lastFlow: new Map(habits.lastFlow),
    minutes: new Map(habits.minutes),
    movedInMg: new Map(habits.movedInMg),
    sampleStore: new Map(habits.sampleStore),
    resultSeen: new Map(habits.resultSeen),
    sourceTold: new Map(habits.sourceTold),
    putOn: new Map(habits.putOn),
    oddHours: new Map(habits.oddHours),
    checked: new Map(habits.checked),
    tastes: new Map(habits.tastes),
  };
}

/** Remembers a value; only the youngest ones are kept. */
export function learn(table: Map<string, readonly number[]>, key: string, value: number): void {
  table.set(key, [...(table.get(key) ?? []).slice(1 - MOST_KEPT), value]);
}

/** Remembers what belongs to a bottle; the oldest is forgotten. */
export function rememberBottle(table: Map<string, string>, bottle: string, what: string): void {
  table.set(bottle, what);
  const [oldest] = table.keys();
  if (table.size > MOST_BOTTLES && oldest !== undefined) table.delete(oldest);
}

export interface Spread {
  readonly mean: number;
  readonly sd: number;
  readonly count: number;
}

/** Mean and standard deviation of what was learned; null before there is anything. */
export function spreadOf(values: readonly number[] | undefined): Spread | null {
  if (values === undefined || values.length === 0) return null;
  const mean = values.reduce((sum, value) => sum + value, 0) / values.length;
  const squares = values.reduce((sum, value) => sum + (value - mean) * (value - mean), 0);
  return {
    mean,
    sd: values.length < 2 ? 0 : Math.sqrt(squares / (values.length - 1)),
    count: values.length,
  };
}
