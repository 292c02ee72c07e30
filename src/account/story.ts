// The story of one store: where its water came from, what was believed of it, and what was read.
import type { BookPort } from '../book/index.ts';
import type { Storage } from './biocide/storage.ts';
import { StorageRecorder } from './biocide/storage-recorder.ts';
import { type Estimate, Estimates, type Gauging } from './estimates.ts';
import { type FamilyPart, familyOf } from './family.ts';
import { withGapsFilled } from './gaps.ts';
import { Inflows } from './inflows.ts';
import { beginPass, type NoPass, type PassOptions } from './pass.ts';
import { positionOf } from './position.ts';
import { together } from './watcher.ts';

export interface StoreStory {
  /** What it was made of; empty when it holds nothing or less. The parts add up to the content of the position. */
  readonly family: readonly FamilyPart[];
  readonly estimates: readonly Estimate[];
  readonly gaugings: readonly Gauging[];
  /** What the book tells of standing water, of all stores: their kinds speak for one another. */
  readonly storage: Storage;
}

export type StoryOutcome = { readonly ok: true; readonly story: StoreStory } | NoPass;

/**
 * Goes through the book once more, with the estimator: a position keeps no past.
 * @param store id of a store; one that is not aboard has no story
 */
export async function storyOf(
  port: BookPort,
  store: string,
  options: PassOptions = {},
): Promise<StoryOutcome> {
  const inflows = new Inflows();
  const estimates = new Estimates(store);
  const storage = new StorageRecorder();
  const watcher = together([inflows.watcher, estimates.watcher, storage.watcher]);
  const begun = await beginPass(port, watcher, { ...options, estimating: true });
  if (!begun.ok) return begun;
  for await (const _ of begun.pass.batches);
  const { fold } = begun.pass;
  // What stands in for a count that is still missing flowed in, too, as the position has it.
  withGapsFilled(fold, inflows.watcher);
  const shown = positionOf(fold, fold.lastEntryMs ?? 0).stores.find(({ facts }) => facts.id === store);
  const massMg = shown?.massMg ?? 0;
  return {
    ok: true,
    story: {
      family: familyOf(inflows.list, { store, massMg }),
      estimates: estimates.estimates,
      gaugings: estimates.gaugings,
      storage: storage.storage(fold),
    },
  };
}
