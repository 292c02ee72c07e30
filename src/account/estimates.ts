// The history of one store's estimate: what was believed of it at each day line, and around each entry that moved or read its water.
import type { AnyEntry } from '../book/index.ts';
import { contentOf } from './flow.ts';
import { type Fold, MG_PER_KG, type Watcher } from './fold.ts';
import { withGapsFilled } from './gaps.ts';
import type { HowKnown } from './store-state.ts';
import type { WatchedReading } from './watcher.ts';

/** Best value and one standard deviation, in whole milligrams. */
export interface Content {
  readonly massMg: number;
  readonly uMg: number;
}

/** What was believed at a moment. */
export interface Estimate extends Content {
  readonly atMs: number;
  readonly entry: string;
  /** At a day line; or just before and just after an entry that moved or read its water. */
  readonly when: 'line' | 'before' | 'after';
}

/** A direct reading of the content, against what was believed before it. */
export interface Gauging extends Content {
  readonly atMs: number;
  readonly entry: string;
  readonly how: HowKnown;
  /** Null where nothing was known: the content was told for the first time. */
  readonly believed: Content | null;
  /** Reading less belief; its doubt has both in it, and what they share. */
  readonly difference: Content | null;
}

/** When there are more estimates than this, every second of the older half is let go: a picture has no room for more. */
const MOST_ESTIMATES = 4000;
/** Readings that are kept, the youngest ones. */
const MOST_GAUGINGS = 1000;

export class Estimates {
  readonly store: string;
  estimates: Estimate[] = [];
  gaugings: Gauging[] = [];
  #before: Content | null = null;
  #touched = false;

  constructor(store: string) {
    this.store = store;
  }

  readonly watcher: Watcher = {
    onFlow: (_fold, _entry, { from, to, plumbing }) => {
      // Between two readings of its counters a buffer is nobody's guess: what they count is told at the line.
      if (plumbing === true) return undefined;
      this.#touched ||= from.store?.facts.id === this.store || to.store?.facts.id === this.store;
      return undefined;
    },
    onTold: (_fold, entry, { facts }, { massMg, uMg }) => {
      if (facts.id !== this.store) return;
      this.#touched = true;
      const how = entry.kind === 'visit-berth' ? 'loader’s figure' : 'opening';
      this.#gauged({ ...placeOf(entry), how, massMg, uMg, believed: null, difference: null });
    },
    onRead: (fold, entry, state, reading) => {
      if (state.facts.id !== this.store) return;
      this.#touched = true;
      this.#gauged({ ...placeOf(entry), ...gaugingOf(fold, state.content, reading) });
    },
    onEntry: (fold) => {
      this.#touched = false;
      this.#before = this.#contentIn(fold);
    },
    onApplied: (fold, entry) => {
      const isLine = entry.kind === 'day-line';
      if (!isLine && !this.#touched) return;
      if (!isLine && this.#before !== null) this.#believed(entry, 'before', this.#before);
      const after = this.#contentIn(fold);
      if (after !== null) this.#believed(entry, isLine ? 'line' : 'after', after);
    },
  };

  /** Null before the store is aboard, and after it has left. */
  #contentIn(told: Fold): Content | null {
    if (told.openingMs === null || told.stores.get(this.store)?.aboard !== true) return null;
    // As a position says it: with what stands in for a count that is still missing.
    const fold = withGapsFilled(told);
    const state = fold.stores.get(this.store);
    return state === undefined ? null : contentOf(fold, state);
  }

  #believed(entry: AnyEntry, when: Estimate['when'], { massMg, uMg }: Content): void {
    this.estimates.push({ ...placeOf(entry), when, massMg, uMg });
    if (this.estimates.length < MOST_ESTIMATES) return;
    const half = MOST_ESTIMATES / 2;
    this.estimates = this.estimates.filter((_, k) => k >= half || k % 2 === 0);
  }

  #gauged(gauging: Gauging): void {
    this.gaugings.push(gauging);
    if (this.gaugings.length > MOST_GAUGINGS) this.gaugings.shift();
  }
}

function placeOf(entry: AnyEntry): { readonly atMs: number; readonly entry: string } {
  return { atMs: entry.happenedAtMs, entry: entry.id };
}

/** The reading with all of its own doubt, and with what was expected of it. */
function gaugingOf(
  fold: Fold,
  place: number,
  reading: WatchedReading,
): Pick<Gauging, 'how' | 'massMg' | 'uMg' | 'believed' | 'difference'> {
  const { estimator } = fold;
  const shared = reading.shared ?? [];
  const places = shared.map((one) => one.place);
  const weights = shared.map((one) => one.weight);
  const noise = reading.uMg / MG_PER_KG;
  const own = estimator.sum(places, weights).variance + noise * noise;
  const expected = estimator.sum([place, ...places], [1, ...weights]);
  const mean = estimator.mean(place);
  return {
    how: reading.how,
    massMg: reading.massMg,
    uMg: inMg(Math.sqrt(own)),
    believed: { massMg: inMg(mean), uMg: inMg(Math.sqrt(Math.max(0, estimator.variance(place)))) },
    difference: {
      massMg: reading.massMg - inMg(mean),
      uMg: inMg(Math.sqrt(expected.variance + noise * noise)),
    },
  };
}

function inMg(kilograms: number): number {
  return Math.round(kilograms * MG_PER_KG);
}
