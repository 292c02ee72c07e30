// Who follows the water while entries are posted: what a pass over a book may listen to. A watcher changes nothing.
import type { AnyEntry } from '../book/index.ts';
import type { HowKnown, StoreState } from './store-state.ts';

/** What is told of a content for the first time. */
interface WatchedContent {
  readonly massMg: number;
  readonly uMg: number;
  readonly grade: string | null;
}

/** A reading: its own doubt, and the errors that it shares with others, by their place in the estimator. */
export interface WatchedReading {
  readonly massMg: number;
  readonly uMg: number;
  readonly how: HowKnown;
  readonly shared?: readonly { readonly place: number; readonly weight: number }[];
}

/** Every call comes at the moment of the posting, with the fold as it stands then. */
export interface WatcherOf<Fold, Flow> {
  /**
   * Water is about to move. What this gives back is called when the contents are posted, and grade, release and holds
   * have not gone with the water yet.
   */
  readonly onFlow?: (fold: Fold, entry: AnyEntry, what: Flow) => (() => void) | undefined;
  /** A content is about to be told for the first time: an opening, a delivery, a store that came aboard. */
  readonly onTold?: (fold: Fold, entry: AnyEntry, state: StoreState, told: WatchedContent) => void;
  /** A content was read, and the estimate has not been drawn to the reading yet. */
  readonly onRead?: (fold: Fold, entry: AnyEntry, state: StoreState, reading: WatchedReading) => void;
  /** Before and after an entry as a whole. */
  readonly onEntry?: (fold: Fold, entry: AnyEntry) => void;
  readonly onApplied?: (fold: Fold, entry: AnyEntry) => void;
}

/** Several watchers as one; each hears everything, in this order. */
export function together<Fold, Flow>(watchers: readonly WatcherOf<Fold, Flow>[]): WatcherOf<Fold, Flow> {
  return {
    onFlow: (...told) => {
      const posted = watchers.flatMap((watcher) => watcher.onFlow?.(...told) ?? []);
      return () => {
        for (const each of posted) each();
      };
    },
    onTold: (...told) => {
      for (const watcher of watchers) watcher.onTold?.(...told);
    },
    onRead: (...told) => {
      for (const watcher of watchers) watcher.onRead?.(...told);
    },
    onEntry: (...told) => {
      for (const watcher of watchers) watcher.onEntry?.(...told);
    },
    onApplied: (...told) => {
      for (const watcher of watchers) watcher.onApplied?.(...told);
    },
  };
}
