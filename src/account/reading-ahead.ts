// A reading that nobody has taken yet: what would be known after it, worked out on a copy of the account.
import type { Amount, AnyEntry } from '../book/index.ts';
import type { Store } from '../outpost/index.ts';
import { type Fold, MG_PER_KG } from './fold.ts';
import { type GaugeDoubt, gaugeDoubt } from './gauge-doubt.ts';
import { injectionDoubt } from './injection-doubt.ts';
import { type ContentReading, readContent } from './read-content.ts';
import type { StorePosition } from './store-position.ts';
import type { StoreState } from './store-state.ts';

/** Ways in which a content can be read at any time; the others tell only when a store is full, empty or loaded. */
export type WayOfReading = Extract<
  Store['gaugedBy'],
  'gas injection' | 'weighing' | 'sight glass' | 'dip stick' | 'level gauge'
>;

/** What would be known after a reading that says just what is expected. Best values do not move, so only doubts are told. */
export interface ReadingAhead {
  readonly store: string;
  readonly way: WayOfReading;
  /** Instrument by the outpost file; null: the way needs none. */
  readonly instrument: string | null;
  /** Doubt of such a reading by itself, what it repeats from other readings included; one standard deviation. */
  readonly readingUMg: number;
  /** Doubt of a sum over stores after it, one standard deviation. */
  readonly uOf: (stores: readonly string[]) => number;
}

const waysAtAnyTime: ReadonlySet<string> = new Set<WayOfReading>([
  'gas injection',
  'weighing',
  'sight glass',
  'dip stick',
  'level gauge',
]);

/**
 * Readings of stores as they would be at an instant, by store; null where a store cannot be read at any time.
 * The reading goes the way of every reading, errors that it shares with others included. The doubt after it does not hang
 * on what it says, as long as that is not far off.
 * @source kalman-1960: the covariance after a reading does not contain the reading
 */
export function readingsAhead(
  fold: Fold,
  stores: readonly StorePosition[],
  atMs: number,
): (store: string) => ReadingAhead | null {
  const kept = fold.clone();
  kept.lastEntryMs = atMs;
  const massesMg = new Map(stores.map(({ facts, massMg }) => [facts.id, massMg]));
  return (id) => {
    const way = wayOf(kept.index.stores.get(id));
    const massMg = massesMg.get(id);
    if (way === null || massMg === undefined || !kept.estimating) return null;
    return aheadOf(kept.clone(), { id, way, massMg, atMs });
  };
}

function wayOf(store: Store | undefined): WayOfReading | null {
  return store !== undefined && waysAtAnyTime.has(store.gaugedBy) ? (store.gaugedBy as WayOfReading) : null;
}

function aheadOf(
  copy: Fold,
  reading: {
    readonly id: string;
    readonly way: WayOfReading;
    readonly massMg: number;
    readonly atMs: number;
  },
): ReadingAhead {
  const { id, way, atMs } = reading;
  const state = copy.stores.get(id) as StoreState;
  const instrument = copy.index.instruments.get(copy.index.stores.get(id)?.gauge ?? '');
  const massMg = Math.min(state.facts.capacityMg, Math.max(0, reading.massMg));
  const amount: Amount = { massMg, raw: { value: massMg, unit: 'mg', mgPerUnit: 1 } };
  const doubt =
    way === 'gas injection' ? injectionDoubt(copy, state, amount) : gaugeDoubt(copy, id, instrument, amount);
  const readingUMg = wholeDoubt(copy, doubt);
  const expected = expectedMg(copy, state, doubt);
  const how = way === 'weighing' ? 'weighed' : 'gauged';
  readContent(copy, standIn(id, atMs), state, { massMg: expected, how, ...doubt } satisfies ContentReading);
  return {
    store: id,
    way,
    instrument: instrument?.id ?? null,
    readingUMg,
    uOf: (ids) => {
      const places = ids.flatMap((each) => copy.stores.get(each)?.content ?? []);
      return Math.round(Math.sqrt(copy.estimator.sum(places).variance) * MG_PER_KG);
    },
  };
}

/** All parts together: what is new in it, and what it repeats. */
function wholeDoubt({ estimator }: Fold, { uMg, shared }: GaugeDoubt): number {
  const places = shared.map(({ place }) => place);
  const weights = shared.map(({ weight }) => weight * MG_PER_KG);
  return Math.round(Math.sqrt(uMg * uMg + estimator.sum(places, weights).variance));
}

/** What the gauge would show: the content and the errors that are known of it. */
function expectedMg({ estimator }: Fold, { content }: StoreState, { shared }: GaugeDoubt): number {
  const places = [content, ...shared.map(({ place }) => place)];
  const weights = [1, ...shared.map(({ weight }) => weight)];
  return Math.round(estimator.sum(places, weights).mean * MG_PER_KG);
}

/** The entry that such a reading would be; nothing keeps it. */
function standIn(store: string, atMs: number): AnyEntry {
  return {
    id: '',
    site: '',
    number: 0,
    version: 1,
    kind: 'weigh',
    happenedAtMs: atMs,
    happenedOffsetMin: 0,
    enteredAtMs: atMs,
    enteredOffsetMin: 0,
    by: '',
    body: { store, amount: null },
  };
}
