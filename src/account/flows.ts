// Every flow that a book posts, in the total order: what contact tracing and a picture of the flows are made of.
import type { BookPort, Kind } from '../book/index.ts';
import type { Watcher } from './fold.ts';
import { OUTSIDE } from './ledger.ts';
import { beginPass, type NoPass, type PassOptions } from './pass.ts';

/** Water that went from one account of the ledger to another; a store's account is its id behind `store:`. */
export interface PostedFlow {
  readonly from: string;
  readonly to: string;
  /** Whole milligrams; a negative amount takes back what was posted too much before. */
  readonly massMg: number;
  readonly atMs: number;
  /** Id of the entry that it was posted for, and that entry's kind: an `opening` tells contents, and moves none. */
  readonly entry: string;
  readonly kind: Kind;
  /** Grade of the water that went: that of the giving store, else what the entry names; null where neither is known. */
  readonly grade: string | null;
}

export type FlowsOutcome =
  | { readonly ok: true; readonly flows: AsyncIterable<readonly PostedFlow[]> }
  | NoPass;

/**
 * The flows of a view, batch by batch: those of entries, of counters, of norms, and the contents that are told first.
 * The amounts into an account less those out of it are its balance in the ledger, to the milligram.
 * Only one batch is held at a time. What stands in for a count that is still missing is no flow of the book.
 * @example for await (const flows of outcome.flows) for (const { from, to, massMg } of flows) …
 */
export async function flowsOf(port: BookPort, options: PassOptions = {}): Promise<FlowsOutcome> {
  const waiting: PostedFlow[] = [];
  const begun = await beginPass(port, listener(waiting), { ...options, estimating: false });
  return begun.ok ? { ok: true, flows: taken(begun.pass.batches, waiting) } : begun;
}

function listener(waiting: PostedFlow[]): Watcher {
  return {
    onFlow: (_fold, { id: entry, kind, happenedAtMs: atMs }, { from, to, massMg, grade }) => {
      if (massMg !== 0 && from.account !== to.account) {
        const carried = from.store?.grade ?? grade ?? null;
        waiting.push({ from: from.account, to: to.account, massMg, atMs, entry, kind, grade: carried });
      }
      return undefined;
    },
    onTold: (fold, { id: entry, kind, happenedAtMs: atMs }, { account }, told) => {
      const massMg = told.massMg - fold.ledger.balanceMg(account);
      if (massMg !== 0)
        waiting.push({ from: OUTSIDE, to: account, massMg, atMs, entry, kind, grade: told.grade });
    },
  };
}

async function* taken(
  batches: AsyncIterable<readonly unknown[]>,
  waiting: PostedFlow[],
): AsyncIterable<readonly PostedFlow[]> {
  for await (const _ of batches) if (waiting.length > 0) yield waiting.splice(0);
}
