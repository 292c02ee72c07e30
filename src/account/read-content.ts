// A reading of a store's content: evidence that draws the estimate, and never a movement.
import type { AnyEntry } from '../book/index.ts';
import { contentOf } from './flow.ts';
import { type Fold, MG_PER_KG } from './fold.ts';
import type { SharedError } from './gauge-doubt.ts';
import { postNorms } from './norms.ts';
import { noteEntry } from './note.ts';
import { type HowKnown, rememberReading, type StoreState } from './store-state.ts';

/** A reading this many of its own standard deviations from what was expected is asked about first. */
const FAR_OFF = 3;

export interface ContentReading {
  readonly massMg: number;
  readonly uMg: number;
  readonly how: HowKnown;
  /** Errors that this reading shares with others: the gauge's calibration, the tank's shell. */
  readonly shared?: readonly SharedError[];
}

export function readContent(fold: Fold, entry: AnyEntry, state: StoreState, reading: ContentReading): void {
  // What the norms say up to now flowed in before the reading, not after it.
  postNorms(fold, entry);
  const before = contentOf(fold, state);
  fold.watcher?.onRead?.(fold, entry, state, reading);
  rememberReading(state, { atMs: entry.happenedAtMs, how: reading.how, entry: entry.id });
  if (!fold.estimating) return;
  const shared = reading.shared ?? [];
  const places = [state.content, ...shared.map(({ place }) => place)];
  const weights = [1, ...shared.map(({ weight }) => weight)];
  const value = reading.massMg / MG_PER_KG;
  const u = reading.uMg / MG_PER_KG;
  const expected = fold.estimator.sum(places, weights);
  const off = value - expected.mean;
  const variance = expected.variance + u * u;
  const isFarOff = off * off > FAR_OFF * FAR_OFF * variance;
  // So far off, something happened to this store that is in no entry: its own content is doubted, not the instruments it shares.
  if (isFarOff) fold.estimator.widen(state.content, off * off);
  fold.estimator.read({ places, weights, value, u });
  if (!isFarOff) return;
  const data = {
    readMg: reading.massMg,
    expectedMg: before.massMg,
    u95Mg: Math.round(2 * Math.sqrt(variance) * MG_PER_KG),
    mgPerL: fold.mgPerL,
    how: reading.how,
  };
  noteEntry(fold, entry, { code: 'reading-far-off', severity: 'act-today', store: state.facts.id, data });
}
