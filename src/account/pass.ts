// A pass over a book: its amended entries posted one after another on a fold of their own, with somebody watching.
import { type AnyEntry, amendmentsOf, type BookPort, readBook, type View } from '../book/index.ts';
import type { OutpostFinding } from '../outpost/index.ts';
import { applyEntry } from './apply.ts';
import { Fold, type Watcher } from './fold.ts';
import { type OutpostReader, outpostOfBook } from './outpost-of-book.ts';
import { decisionsOf } from './reckon.ts';

export interface PassOptions {
  readonly view?: View;
  readonly readOutpost?: OutpostReader;
}

export interface Pass {
  /** As far as the batches have been taken. */
  readonly fold: Fold;
  /** Entries that have been posted, in the total order; the next ones are posted when they are asked for. */
  readonly batches: AsyncIterable<readonly AnyEntry[]>;
}

/** `findings: null` says that the book has no outpost file yet. */
export type NoPass = { readonly ok: false; readonly findings: readonly OutpostFinding[] | null };
export type PassOutcome = { readonly ok: true; readonly pass: Pass } | NoPass;

/**
 * Begins a pass. It holds one batch of entries at a time, whatever the length of the book.
 * @param how `estimating: false` moves whole milligrams alone, which is several times as fast
 */
export async function beginPass(
  port: BookPort,
  watcher: Watcher,
  how: PassOptions & { readonly estimating: boolean },
): Promise<PassOutcome> {
  const view = how.view ?? {};
  const amendments = await amendmentsOf(port, view);
  const read = await outpostOfBook(port, view, amendments, how.readOutpost);
  if (!read.ok) return read;
  const fold = new Fold(read.index.outpost, { estimating: how.estimating, index: read.index });
  fold.decisions = decisionsOf(amendments);
  fold.watcher = watcher;
  return { ok: true, pass: { fold, batches: posted(fold, readBook(port, view, { amendments })) } };
}

async function* posted(
  fold: Fold,
  batches: AsyncIterable<readonly AnyEntry[]>,
): AsyncIterable<readonly AnyEntry[]> {
  for await (const batch of batches) {
    for (const entry of batch) {
      fold.watcher?.onEntry?.(fold, entry);
      applyEntry(fold, entry);
      fold.watcher?.onApplied?.(fold, entry);
    }
    yield batch;
  }
}
