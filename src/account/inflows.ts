// What came into every store, in order: the memory that a family tree of water is read from.
import type { AnyEntry } from '../book/index.ts';
import { contentOf } from './flow.ts';
import type { End, Flow, Fold, Watcher } from './fold.ts';
import { OUTSIDE } from './ledger.ts';
import type { StoreState } from './store-state.ts';

/** What was told of a content for the first time, and by what. */
export type Told = 'opening' | 'delivery' | 'came aboard';

/** One coming in of water. */
export interface Inflow {
  readonly to: string;
  /** The giving account; of a content that was told, the visit that brought it, or nothing. */
  readonly from: string;
  /** Set where the content was told and not moved. */
  readonly told: Told | null;
  /** Which part of the content after it came in by it, from 0 to 1. */
  readonly part: number;
  /** The store stood at its usable remainder or below: a new filling begins. */
  readonly begins: boolean;
  readonly atMs: number;
  readonly entry: string;
  readonly grade: string | null;
}

/** More than this are not kept, so that the memory of a pass has an end: what came in earlier is said to be older. */
export const MOST_INFLOWS = 200_000;

export class Inflows {
  #list: Inflow[] = [];
  /** Accounts whose last change was a coming in: they are being filled. */
  readonly #filling = new Set<string>();
  readonly #most: number;

  constructor(most = MOST_INFLOWS) {
    this.#most = most;
  }

  /** In the order of posting, the youngest last. */
  get list(): readonly Inflow[] {
    return this.#list;
  }

  readonly watcher: Watcher = {
    onFlow: (fold, entry, what) => this.#flow(fold, entry, what),
    onTold: (_fold, entry, state, told) => {
      if (told.massMg <= 0) return;
      this.#filling.add(state.account);
      const { account: to } = state;
      const from = entry.kind === 'visit-berth' ? entry.body.visit : OUTSIDE;
      this.#keep(entry, { to, from, told: toldBy(entry), part: 1, begins: true, grade: told.grade });
    },
    // A reading says how much there is, not where it came from; but at the remainder a filling has come to its end.
    onRead: (_fold, _entry, { account }) => {
      this.#filling.delete(account);
    },
  };

  /** What is taken back was never here, and so is in no tree. */
  #flow(fold: Fold, entry: AnyEntry, what: Flow): (() => void) | undefined {
    const { from, to, massMg } = what;
    if (massMg === 0 || from.account === to.account) return undefined;
    const beforeMg = heldMg(fold, to);
    const begins = !this.#filling.has(to.account) && beforeMg <= atRemainderMg(to.store);
    return () => {
      this.#filling.delete(from.account);
      if (massMg < 0 || !isFollowed(to)) return;
      this.#filling.add(to.account);
      const afterMg = heldMg(fold, to);
      const part = afterMg <= 0 ? 1 : Math.min(1, Math.max(0, (afterMg - beforeMg) / afterMg));
      const grade = from.store?.grade ?? what.grade ?? null;
      this.#keep(entry, { to: to.account, from: from.account, told: null, part, begins, grade });
    };
  }

  #keep(entry: AnyEntry, inflow: Omit<Inflow, 'atMs' | 'entry'>): void {
    this.#list.push({ ...inflow, atMs: entry.happenedAtMs, entry: entry.id });
    if (this.#list.length >= 2 * this.#most) this.#list = this.#list.slice(-this.#most);
  }
}

/** Stores and hoses hold water; a pool has no content that could be shared out. */
function isFollowed(end: End): boolean {
  return end.store !== null || end.account.startsWith('line:');
}

function heldMg(fold: Fold, { account, store }: End): number {
  return store === null ? fold.ledger.balanceMg(account) : contentOf(fold, store).massMg;
}

/** Up to this a store stands at its usable remainder, as far as anybody can tell: the remainder has a ± of its own. */
function atRemainderMg(store: StoreState | null): number {
  return store === null ? 0 : store.facts.remainderMg + 2 * store.facts.remainderUMg;
}

function toldBy({ kind }: AnyEntry): Told {
  if (kind === 'opening') return 'opening';
  return kind === 'visit-berth' ? 'delivery' : 'came aboard';
}
