// A reading of a store's content: evidence that draws the estimate, and never a movement.
import type { AnyEntry } from '../book/index.ts';
import { noteFarOff } from './far-off.ts';
import { contentOf } from './flow.ts';
import { type Fold, MG_PER_KG } from './fold.ts';
import type { SharedError } from './gauge-doubt.ts';
import { postNorms } from './norms.ts';
import { noteEntry } from './note.ts';
import { noteOpeningError, openingError } from './opening-error.ts';
import { readState } from './read-state.ts';
import { type HowKnown, rememberReading, type StoreState } from './store-state.ts';

export interface ContentReading {
  readonly massMg: number;
  readonly uMg: number;
  readonly how: HowKnown;
  /** The instrument that it was read on, where one is named. */
  readonly instrument?: string | undefined;
  /** Errors that this reading shares with others: the gauge's calibration, the tank's shell. */
  readonly shared?: readonly SharedError[];
}

export function readContent(fold: Fold, entry: AnyEntry, state: StoreState, reading: ContentReading): void {
  // What the norms say up to now flowed in before the reading, not after it.
  postNorms(fold, entry);
  const before = contentOf(fold, state);
  fold.watcher?.onRead?.(fold, entry, state, reading);
  const remembered = { atMs: entry.happenedAtMs, how: reading.how, entry: entry.id };
  rememberReading(state, remembered);
  if (!fold.estimating) return;
  const opening = openingError(fold, state.facts.id);
  const openingUKg = opening === null ? 0 : Math.sqrt(fold.estimator.variance(opening.place));
  const outcome = readState(fold, entry, {
    place: state.content,
    shared: reading.shared ?? [],
    valueKg: reading.massMg / MG_PER_KG,
    uKg: reading.uMg / MG_PER_KG,
    recordOf: reading.instrument ?? reading.how,
  });
  state.lastReading = { ...remembered, redundancy: outcome.isFarOff ? 0 : outcome.redundancy };
  noteOpeningError(fold, entry, state, openingUKg);
  if (outcome.isFarOff)
    noteReadFarOff(fold, entry, { state, reading, expectedMg: before.massMg, ...outcome });
}

function noteReadFarOff(
  fold: Fold,
  entry: AnyEntry,
  what: { state: StoreState; reading: ContentReading; expectedMg: number; variance: number },
): void {
  const { state, reading, expectedMg } = what;
  const uMg = Math.round(Math.sqrt(what.variance) * MG_PER_KG);
  const store = state.facts.id;
  if (noteFarOff(fold, entry, { store, readMg: reading.massMg, expectedMg, uMg })) return;
  const data = {
    readMg: reading.massMg,
    expectedMg,
    u95Mg: 2 * uMg,
    mgPerL: fold.mgPerL,
    how: reading.how,
  };
  noteEntry(fold, entry, { code: 'reading-far-off', severity: 'act-today', store, data });
}
