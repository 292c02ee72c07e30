// Reckoning: folding the entries of a book into a position, from scratch or on from where one stands.
import {
  type Amendments,
  type AnyEntry,
  amend,
  amendmentsOf,
  type BookPort,
  compareOrder,
  entryOf,
  isAmendmentKind,
  type OrderKey,
  readBook,
  type View,
} from '../book/index.ts';
import type { Outpost, OutpostFinding, OutpostIndex } from '../outpost/index.ts';
import { applyEntry } from './apply.ts';
import { Fold } from './fold.ts';
import { dataOfFold, foldOfData } from './fold-data.ts';
import { type OutpostReader, outpostOfBook } from './outpost-of-book.ts';
import { type AccountSnapshot, freshSince, type SnapshotPlace, sameHeads } from './snapshot.ts';

/** A fold is kept every so many entries, so that a late entry need not start from the first one. */
const CHECKPOINT_EVERY = 500;
/** Checkpoints that are kept; older ones are thinned out to every second one. */
const MOST_CHECKPOINTS = 24;

/** Checkpoints that are put away with it, the youngest ones. */
const MOST_PUT_AWAY = 8;

interface Checkpoint {
  readonly key: OrderKey;
  readonly fold: Fold;
}

export type OpenOutcome =
  | { ok: true; account: Account }
  | { ok: false; findings: readonly OutpostFinding[] | null };

/** How far a fold has come. */
interface Reckoned {
  fold: Fold;
  last: OrderKey | null;
  checkpoints: Checkpoint[];
}

/** The account of a book in one view. */
export class Account {
  readonly #port: BookPort;
  readonly #view: View;
  readonly #index: OutpostIndex;
  readonly #estimating: boolean;
  readonly #checkpointEvery: number;
  #reckoned: Reckoned;
  #amendments: Amendments;
  /** Entries folded since this account was last put away. */
  #sinceKept = 0;

  private constructor(
    port: BookPort,
    index: OutpostIndex,
    options: { view: View; estimating: boolean; checkpointEvery: number; amendments: Amendments },
  ) {
    this.#port = port;
    this.#index = index;
    this.#view = options.view;
    this.#estimating = options.estimating;
    this.#checkpointEvery = options.checkpointEvery;
    this.#amendments = options.amendments;
    this.#reckoned = this.#nothing();
  }

  /**
   * Reads the whole book once. `findings: null` says that the book has no outpost file yet.
   * @param options `checkpointEvery`: entries between two kept folds; it says how far a late entry goes back, never what comes out
   */
  static async open(
    port: BookPort,
    options: {
      readonly view?: View;
      readonly estimating?: boolean;
      readonly checkpointEvery?: number;
      readonly readOutpost?: OutpostReader;
      /** Where accounts of the whole book are put away between two runs; a view of the past uses none. */
      readonly snapshots?: SnapshotPlace;
    } = {},
  ): Promise<OpenOutcome> {
    const view = options.view ?? {};
    const isWhole = view.knownAtMs === undefined && view.asOfMs === undefined;
    const snapshots = isWhole && options.estimating !== false ? options.snapshots : undefined;
    const heads = snapshots === undefined ? [] : await port.heads();
    const amendments = await amendmentsOf(port, view);
    const read = await outpostOfBook(port, view, amendments, options.readOutpost);
    if (!read.ok) return read;
    const account = new Account(port, read.index, {
      view,
      estimating: options.estimating ?? true,
      checkpointEvery: options.checkpointEvery ?? CHECKPOINT_EVERY,
      amendments,
    });
    if (!(await account.#resume(snapshots?.load() ?? null))) await account.#replay(null);
    // Entries that came in meanwhile may or may not be in the fold: then it is put away another time.
    if (snapshots !== undefined && account.#sinceKept >= snapshots.keepAfter) {
      if (sameHeads(heads, await port.heads())) account.#putAway(snapshots, heads);
    }
    return { ok: true, account };
  }

  /** Goes on from an account that was put away; what came in since is taken as it would have been then. */
  async #resume(snapshot: AccountSnapshot | null): Promise<boolean> {
    const fresh = snapshot === null ? null : await freshSince(this.#port, snapshot.heads);
    if (snapshot === null || fresh === null) return false;
    const thaw = (fold: AccountSnapshot['fold']) => foldOfData(this.#index.outpost, this.#index, fold);
    this.#reckoned = {
      fold: thaw(snapshot.fold),
      last: snapshot.last,
      checkpoints: snapshot.checkpoints.map(({ key, fold }) => ({ key, fold: thaw(fold) })),
    };
    this.#reckoned.fold.decisions = decisionsOf(this.#amendments);
    return this.take(fresh);
  }

  #putAway(snapshots: SnapshotPlace, heads: AccountSnapshot['heads']): void {
    const { fold, last, checkpoints } = this.#reckoned;
    if (last === null) return;
    const { happenedAtMs, site, number } = last;
    snapshots.keep({
      heads,
      last: { happenedAtMs, site, number },
      fold: dataOfFold(fold),
      checkpoints: checkpoints
        .slice(-MOST_PUT_AWAY)
        .map(({ key, fold: kept }) => ({ key, fold: dataOfFold(kept) })),
    });
    this.#sinceKept = 0;
  }

  get fold(): Fold {
    return this.#reckoned.fold;
  }

  get outpost(): Outpost {
    return this.#index.outpost;
  }

  /**
   * Takes entries that the book has just kept. Late ones and amendments replay from the checkpoint before them.
   * @returns false when the outpost file is another one now: then the account has to be opened anew
   */
  async take(entries: readonly AnyEntry[]): Promise<boolean> {
    const seen = entries.filter((entry) => isSeen(entry, this.#view));
    const reach = await this.#reachOf(seen.filter((entry) => isAmendmentKind(entry.kind)));
    if (reach.touchesOutpost || seen.some((entry) => entry.kind === 'outpost')) return false;
    if (reach.changes) this.#amendments = await amendmentsOf(this.#port, this.#view);
    let from = reach.from;
    for (const entry of seen) {
      if (isAmendmentKind(entry.kind)) continue;
      const { last } = this.#reckoned;
      if (from === null && last !== null && compareOrder(entry, last) > 0)
        this.#applyAmended(this.#reckoned, entry);
      else if (from === null || compareOrder(entry, from) < 0) from = entry;
    }
    if (from !== null) await this.#replay(from);
    return true;
  }

  /** The first place in the order at which amendments change anything: their own, or that of what they speak of. */
  async #reachOf(
    amendments: readonly AnyEntry[],
  ): Promise<{ from: OrderKey | null; changes: boolean; touchesOutpost: boolean }> {
    let from: OrderKey | null = null;
    let touchesOutpost = false;
    const waiting = [...amendments];
    const ids = new Set<string>();
    for (let entry = waiting.pop(); entry !== undefined; entry = waiting.pop()) {
      if (from === null || compareOrder(entry, from) < 0) from = entry;
      touchesOutpost ||= entry.kind === 'outpost';
      // An undo of an undo brings back what the first one took out, further back.
      for (const id of spokenOf(entry)) {
        const kept = ids.has(id) ? null : await this.#port.find(id);
        ids.add(id);
        if (kept !== null) waiting.push(entryOf(kept));
      }
    }
    return { from, changes: amendments.length > 0, touchesOutpost };
  }

  #nothing(): Reckoned {
    return {
      fold: new Fold(this.#index.outpost, { estimating: this.#estimating, index: this.#index }),
      last: null,
      checkpoints: [],
    };
  }

  async #replay(from: OrderKey | null): Promise<void> {
    const { checkpoints } = this.#reckoned;
    const start =
      from === null
        ? undefined
        : checkpoints.findLast((checkpoint) => compareOrder(checkpoint.key, from) < 0);
    const reckoned: Reckoned =
      start === undefined
        ? this.#nothing()
        : {
            fold: start.fold.clone(),
            last: start.key,
            checkpoints: checkpoints.slice(0, checkpoints.indexOf(start) + 1),
          };
    reckoned.fold.decisions = decisionsOf(this.#amendments);
    const after = start === undefined ? {} : { after: start.key };
    const expected = await this.#port.count();
    try {
      for await (const batch of readBook(this.#port, this.#view, {
        ...after,
        amendments: this.#amendments,
      })) {
        for (const entry of batch) this.#apply(reckoned, entry, expected);
      }
    } catch (error) {
      // The book has entries that this fold has not: whatever comes next starts from the beginning.
      this.#reckoned = { ...this.#reckoned, last: null, checkpoints: [] };
      throw error;
    }
    this.#reckoned = reckoned;
  }

  /** What takes an entry back, or corrects it, may have come before it. */
  #applyAmended(reckoned: Reckoned, entry: AnyEntry): void {
    const amended = amend(entry, this.#amendments);
    if (amended !== null) this.#apply(reckoned, amended);
  }

  /** @param expected how many entries there will be in the end, as far as that is known */
  #apply(reckoned: Reckoned, entry: AnyEntry, expected = 0): void {
    applyEntry(reckoned.fold, entry);
    reckoned.last = entry;
    this.#sinceKept += 1;
    const { entries } = reckoned.fold;
    if (entries % this.#checkpointEvery === 0 && isWanted((expected - entries) / this.#checkpointEvery))
      keepCheckpoint(reckoned);
  }
}

/** On the way to a known end: all of those near it, and further off one at each doubling of the distance. */
function isWanted(stepsToEnd: number): boolean {
  const steps = Math.ceil(stepsToEnd);
  return steps < MOST_CHECKPOINTS / 2 || (steps & (steps - 1)) === 0;
}

/** Dense near the present, where late entries fall; ever wider apart behind. */
function keepCheckpoint(reckoned: Reckoned): void {
  const { last: key, fold, checkpoints } = reckoned;
  if (key === null) return;
  const { happenedAtMs, site, number } = key;
  checkpoints.push({ key: { happenedAtMs, site, number }, fold: fold.clone() });
  if (checkpoints.length <= MOST_CHECKPOINTS) return;
  const half = MOST_CHECKPOINTS / 2;
  reckoned.checkpoints = checkpoints.filter((_one, k) => k >= half || k % 2 === 0);
}

/** An amendment counts in a view as soon as it was entered, whenever it says that it happened. */
function isSeen(entry: AnyEntry, view: View): boolean {
  if (view.knownAtMs !== undefined && entry.enteredAtMs > view.knownAtMs) return false;
  return view.asOfMs === undefined || isAmendmentKind(entry.kind) || entry.happenedAtMs <= view.asOfMs;
}

/** Ids of the entries that an amendment speaks of. */
function spokenOf(entry: AnyEntry): readonly string[] {
  if (entry.kind === 'undo' || entry.kind === 'correction') return [entry.body.target];
  return entry.kind === 'duplicate-decision' ? [entry.body.first, entry.body.second] : [];
}

export function decisionsOf({ decided }: Amendments): Fold['decisions'] {
  return new Map([...decided].map(([id, { body }]) => [id, { first: body.first, decision: body.decision }]));
}
