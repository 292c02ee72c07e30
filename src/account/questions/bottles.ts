// Samples and their results: a result of another store than the sample, or from before it; holds that are ended where there is none.
import type { AnyEntry, Entry } from '../../book/index.ts';
import type { Fold } from '../fold.ts';
import { noteEntry } from '../note.ts';
import type { StoreState } from '../store-state.ts';
import { learn, rememberBottle, spreadOf } from './habits.ts';
import { askFigure } from './question.ts';
import { askStore, storesThat } from './stores.ts';

export function askSample(fold: Fold, entry: Entry<'sample'>): void {
  const { sample, store } = entry.body;
  if (store === undefined) return;
  const { resultSeen, sampleStore } = fold.habits;
  const state = fold.stores.get(store);
  if (state?.emptied === true && state.aboard && entry.body.drawnFrom === undefined)
    askStore(fold, entry, { why: 'emptied already', store, other: sample, candidates: likeIt(fold, state) });
  askVolume(fold, entry);
  const seen = resultSeen.get(sample);
  if (seen !== undefined) {
    const data = { why: 'result before sample', sample };
    noteEntry(fold, entry, { code: 'order-impossible', severity: 'act-today', store, data, entries: [seen] });
  }
  rememberBottle(sampleStore, sample, store);
}

/** Stores on the same hold, or else of the same kind, that have water in them. */
function likeIt(fold: Fold, state: StoreState): readonly string[] {
  const full = storesThat(fold, state, (other) => !other.emptied);
  const held = full.filter((id) => fold.stores.get(id)?.hold != null);
  return held.length > 0 ? held : full;
}

/** A sample's volume is that of the bottles that are used here, within this factor. Ours, no source. */
const VOLUME_FACTOR = 5;
const LEAST_SAMPLES = 2;

function askVolume(fold: Fold, entry: Entry<'sample'>): void {
  const { volumeMg, store } = entry.body;
  if (store === undefined || volumeMg === undefined || volumeMg === 0 || entry.body.drawnFrom !== undefined)
    return;
  const value = (1000 * volumeMg) / fold.mgPerL;
  const bottles = `bottles for ${entry.body.tests.join(', ')}`;
  const usual = spreadOf(fold.habits.spots.get(bottles));
  learn(fold.habits.spots, bottles, value);
  if (usual === null || usual.count < LEAST_SAMPLES) return;
  const [low, high] = [usual.mean / VOLUME_FACTOR, usual.mean * VOLUME_FACTOR];
  if (value >= low && value <= high) return;
  const fits = [1000, 0.1, 10, 0.001, 0.01, 100]
    .map((factor) => value * factor)
    .find((other) => other >= low && other <= high);
  const fit = fits === undefined ? null : { value: fits, slip: 'point' as const };
  askFigure(fold, entry, {
    ...{
      code: 'amount-implausible',
      of: 'sample',
      value,
      unit: 'mL',
      low,
      high,
      fit,
      against: 'usual',
      store,
    },
  });
}

export function askResult(fold: Fold, entry: Entry<'result'>): void {
  const { sample, store } = entry.body;
  const { resultSeen, sampleStore } = fold.habits;
  rememberBottle(resultSeen, sample, entry.id);
  const drawnFrom = sampleStore.get(sample);
  if (store === undefined || drawnFrom === undefined || drawnFrom === store) return;
  askStore(fold, entry, { why: 'sample of other', store, other: sample, candidates: [drawnFrom] });
}

/** A hold that ends where none is: it was never set, or is set only after this. */
export function askHeld(
  fold: Fold,
  entry: AnyEntry,
  stores: readonly string[],
  hold: string | undefined,
): void {
  for (const store of stores) {
    const state = fold.stores.get(store);
    if (state?.aboard !== true || state.hold !== null || state.conditional !== null) continue;
    // Water that was never held may be released: its own sample has passed.
    if (hold === undefined && state.release !== 'own sample') continue;
    const held = [...fold.stores.values()]
      .filter((other) => other.hold?.hold === hold)
      .map(({ facts }) => facts.id);
    askStore(fold, entry, { why: 'not held', store, other: hold ?? null, candidates: held });
  }
}
