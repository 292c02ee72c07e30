// Contact tracing backward: where the water of a store came from, and which stores it went through.
import { shareOut } from '../share-out.ts';
import { heldBefore } from './held-before.ts';
import {
  type AccountAt,
  type FlowStep,
  placeOfStore,
  type Step,
  type ToldStep,
  type WaterHistory,
} from './step.ts';
import { endAt } from './suspicion.ts';
import { type CleanWord, type CleanWords, cleanWordsOf } from './window.ts';

/**
 * Where a part of the water began, as far as it is followed: a content that was told, a pool, water that the outpost's own
 * clean result or release spoke well of, what stood in a store when the time that is looked at began, or nothing known.
 */
export interface Origin {
  readonly kind: 'told' | 'pool' | 'clean result' | 'release' | 'stood in' | 'unknown';
  /** The store that it was told of, spoken well of or stood in; the pool. */
  readonly name: string;
  /** Of a delivery the visit. */
  readonly visit: string | null;
  readonly massMg: number;
  readonly share: number;
  readonly firstMs: number;
  readonly lastMs: number;
  /** The youngest first, and how many there are in all. */
  readonly entries: readonly string[];
  readonly entryCount: number;
}

/** A store or a hose that handed some of it on. */
export interface PassedOn {
  readonly kind: 'store' | 'hose';
  readonly name: string;
  /** What it gave on the way to here; water that went to and fro counts each time. */
  readonly massMg: number;
  /** It gave some of it straight into the store that is asked about. */
  readonly isGiver: boolean;
  readonly firstMs: number;
  readonly lastMs: number;
  readonly entries: readonly string[];
  readonly entryCount: number;
}

export interface Origins {
  readonly store: string;
  /** Its content at the time; the origins add up to it to the milligram. */
  readonly heldMg: number;
  /** The largest first. */
  readonly origins: readonly Origin[];
  readonly passedOn: readonly PassedOn[];
}

export interface OriginsOptions {
  /** Ids of entries of results that passed; with releases they end the way back, unless `throughCuts`. */
  readonly clean?: ReadonlySet<string>;
  readonly throughCuts?: boolean;
  /** The store as of this instant, of a history that goes further; absent: as of its end. */
  readonly atMs?: number;
  /** The way back ends here. */
  readonly sinceMs?: number;
}

/**
 * Reads the history backwards. An inflow of m into a store that then held c brought the share m / c of everything that was in
 * it after; what was in it before has the rest. What is taken back later was never here, and so is left out.
 * @returns null for a store that the history does not know
 * @example originsOf(history, 'C-13')?.origins // [{ kind: 'told', name: 'FA', visit: 'Pannier 8', … }]
 */
export function originsOf(
  history: WaterHistory,
  store: string,
  options: OriginsOptions = {},
): Origins | null {
  const account = placeOfStore(history, store);
  if (account < 0) return null;
  const end = options.atMs === undefined ? history.steps.length : endAt(history, options.atMs);
  const isNow = end === history.steps.length;
  const heldMg = Math.max(0, (isNow ? history.heldMg[account] : heldBefore(history, end, account)) ?? 0);
  const words = options.throughCuts === true ? new Map() : cleanWordsOf(history, options.clean ?? new Set());
  const walk = new WalkBack(history, account, words);
  walk.run(end, options.sinceMs ?? Number.NEGATIVE_INFINITY);
  return { store, heldMg, ...walk.told(heldMg) };
}

/** Entries that are named for one origin. */
const MOST_ENTRIES = 8;

interface Found {
  share: number;
  firstMs: number;
  lastMs: number;
  entryCount: number;
  readonly entries: string[];
}

class WalkBack {
  readonly #history: WaterHistory;
  readonly #account: AccountAt;
  readonly #words: CleanWords;
  /** What of the content is in each account at the step that the walk has come back to. */
  readonly #open: Float64Array;
  readonly #origins = new Map<
    string,
    { readonly of: Pick<Origin, 'kind' | 'name' | 'visit'>; readonly found: Found }
  >();
  readonly #passed = new Map<AccountAt, { isGiver: boolean; readonly found: Found }>();

  constructor(history: WaterHistory, account: AccountAt, words: CleanWords) {
    this.#history = history;
    this.#account = account;
    this.#words = words;
    this.#open = new Float64Array(history.accounts.length);
    this.#open[account] = 1;
  }

  run(end: number, sinceMs: number): void {
    const { steps } = this.#history;
    let k = end - 1;
    for (; k >= 0; k--) {
      const step = steps[k] as Step;
      if (step.atMs < sinceMs) break;
      if (step.what === 'flow') this.#flow(step);
      else if (step.what === 'told') this.#told(step);
      for (const word of this.#words.get(k) ?? []) this.#spokenWell(word, step);
    }
    const last = steps[Math.max(0, k)];
    for (let at = 0; at < this.#open.length; at++) {
      const kind = k >= 0 ? 'stood in' : 'unknown';
      if (last !== undefined)
        this.#end(at, this.#open[at] ?? 0, { kind, visit: null, atMs: last.atMs, entry: null });
    }
  }

  #flow(step: FlowStep): void {
    const open = this.#open[step.to] ?? 0;
    if (open === 0 || step.massMg <= 0) return;
    const beforeMg = Math.max(0, step.toHeldMg);
    const moved = open * (step.massMg / (beforeMg + step.massMg));
    this.#open[step.to] = beforeMg === 0 ? 0 : open - moved;
    if (this.#history.accounts[step.from]?.kind === 'pool') {
      this.#end(step.from, moved, { kind: 'pool', visit: null, atMs: step.atMs, entry: step.entry });
      return;
    }
    this.#open[step.from] = (this.#open[step.from] ?? 0) + moved;
    const known = this.#passed.get(step.from) ?? { isGiver: false, found: nothingFound(step.atMs) };
    known.isGiver ||= step.to === this.#account;
    add(known.found, moved, step);
    this.#passed.set(step.from, known);
  }

  /** A content that is told where there was one is a reading of it. */
  #told({ account, heldMg, massMg, visit, atMs, entry }: ToldStep): void {
    const open = this.#open[account] ?? 0;
    if (open === 0 || heldMg > 0 || massMg <= 0) return;
    this.#open[account] = 0;
    this.#end(account, open, { kind: 'told', visit, atMs, entry });
  }

  #spokenWell({ account, how, entry }: CleanWord, { atMs }: Step): void {
    const open = this.#open[account] ?? 0;
    this.#open[account] = 0;
    this.#end(account, open, { kind: how, visit: null, atMs, entry });
  }

  #end(
    at: AccountAt,
    share: number,
    by: Pick<Origin, 'kind' | 'visit'> & { readonly atMs: number; readonly entry: string | null },
  ): void {
    if (share <= 0) return;
    const name = this.#history.accounts[at]?.name ?? '';
    const { kind, visit } = by;
    const key = `${kind} ${visit ?? ''} ${name}`;
    const known = this.#origins.get(key) ?? { of: { kind, name, visit }, found: nothingFound(by.atMs) };
    add(known.found, share, by);
    this.#origins.set(key, known);
  }

  told(heldMg: number): Pick<Origins, 'origins' | 'passedOn'> {
    const origins = [...this.#origins.values()].sort((a, b) => b.found.share - a.found.share);
    const masses =
      heldMg === 0
        ? []
        : shareOut(
            heldMg,
            origins.map(({ found }) => found.share),
          );
    const passed = [...this.#passed].sort(([, a], [, b]) => b.found.share - a.found.share);
    return {
      origins: origins.flatMap(({ of, found }, k) => {
        const massMg = masses[k] ?? 0;
        return massMg === 0 ? [] : [{ ...of, massMg, ...found }];
      }),
      passedOn: passed.flatMap(
        ([
          at,
          {
            isGiver,
            found: { share, ...rest },
          },
        ]): PassedOn[] => {
          const massMg = Math.round(heldMg * share);
          const { kind, name } = this.#history.accounts[at] ?? { kind: 'pool', name: '' };
          return massMg === 0 || kind === 'pool' ? [] : [{ kind, name, massMg, isGiver, ...rest }];
        },
      ),
    };
  }
}

function nothingFound(lastMs: number): Found {
  return { share: 0, firstMs: lastMs, lastMs, entryCount: 0, entries: [] };
}

/** The walk goes back, so that what is found last was first. */
function add(
  found: Found,
  share: number,
  by: { readonly atMs: number; readonly entry: string | null },
): void {
  found.share += share;
  found.firstMs = by.atMs;
  if (by.entry === null || found.entries.at(-1) === by.entry) return;
  found.entryCount += 1;
  if (found.entries.length < MOST_ENTRIES) found.entries.push(by.entry);
}
