// Walks a random history beside the naive model: after every act no store that is counted as free may be tainted.
import { type Fold, freeStock, notFreeBecause, positionOf } from '../../../src/account/index.ts';
import type { AnyEntry } from '../../../src/book/index.ts';
import { History } from './history.ts';
import { NaiveFitness } from './naive-fitness.ts';
import { OUTPOSTS } from './world.ts';

/** What is wrong with an account on purpose: what it changes of the fold after an entry, and which entries it never hears. */
export interface Planted {
  readonly after?: (fold: Fold, entry: AnyEntry) => void;
  readonly hears?: (entry: AnyEntry) => boolean;
}

export interface FalselyFree {
  readonly seed: number;
  readonly store: string;
  readonly why: readonly string[];
  readonly entries: readonly AnyEntry[];
}

export interface Walked {
  histories: number;
  acts: number;
  /** Stores looked at, free in both, and free by the naive model alone by the account's reason. */
  looked: number;
  free: number;
  readonly stricter: Map<string, number>;
  readonly byKind: Map<string, number>;
  /** How often the naive model said each reason. */
  readonly tainted: Map<string, number>;
}

export const nothingWalked = (): Walked => ({
  ...{ histories: 0, acts: 0, looked: 0, free: 0 },
  ...{ stricter: new Map(), byKind: new Map(), tainted: new Map() },
});

const ACTS = 40;

/** Walks the history of a seed to its end, or to the first store that is free and should not be. */
export function walk(seed: number, walked: Walked, planted: Planted = {}): FalselyFree | null {
  const index = OUTPOSTS[seed % 3 === 0 ? 1 : 0];
  if (index === undefined) throw new Error('no outpost');
  const history = new History(index, seed);
  const naive = new NaiveFitness(index);
  history.fold.watcher = {
    onFlow: (_fold, entry, { from, to, massMg }) => {
      naive.flow(entry, { from: from.account, to: to.account, massMg });
      return undefined;
    },
  };
  walked.histories += 1;
  for (let act = 0; act < ACTS; act++) {
    const entry = history.next();
    if (planted.hears?.(entry) !== false) history.apply(entry);
    planted.after?.(history.fold, entry);
    naive.act(entry);
    add(walked.byKind, entry.kind);
    walked.acts += 1;
    const found = look(history, naive, walked);
    if (found !== null) return { seed, ...found, entries: history.entries };
  }
  return null;
}

function look(
  history: History,
  naive: NaiveFitness,
  walked: Walked,
): Pick<FalselyFree, 'store' | 'why'> | null {
  const position = positionOf(history.fold, history.nowMs);
  const grades = new Set(position.stores.flatMap(({ grade }) => grade ?? []));
  const free = new Set([...grades].flatMap((grade) => freeStock(position, grade).stores));
  for (const store of position.stores) {
    const { id } = store.facts;
    const why = naive.against(id, history.nowMs);
    walked.looked += 1;
    if (free.has(id) && why.length > 0) return { store: id, why };
    if (free.has(id)) walked.free += 1;
    for (const one of why) add(walked.tainted, reasonOf(one));
    const because = notFreeBecause(position, store);
    if (why.length === 0 && because !== null && store.massMg > store.facts.remainderMg)
      add(walked.stricter, store.hold === null ? because : `hold: ${store.hold.reason}`);
  }
  return null;
}

/** Without the name of the hold. */
function reasonOf(why: string): string {
  return /^(hold|waiver over)\b/.exec(why)?.[0] ?? why;
}

function add(counts: Map<string, number>, name: string): void {
  counts.set(name, (counts.get(name) ?? 0) + 1);
}
