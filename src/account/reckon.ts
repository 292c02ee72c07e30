// Reckoning: folding the entries of a book into a position, from scratch or on from where one stands.
import {
  type Amendments, type AnyEntry, amendmentsOf, type BookPort, compareOrder, entryOf, isAmendmentKind, type OrderKey, readBook, type View,
} from '../book/index.ts';
import { type Outpost, type OutpostFinding, readOutpost } from '../outpost/index.ts';
import { applyEntry } from './apply.ts';
import { Fold } from './fold.ts';

/** A fold is kept every so many entries, so that a late entry need not start from the first one. */
const CHECKPOINT_EVERY = 500;
/** Checkpoints that are kept; older ones are thinned out to every second one. */
const MOST_CHECKPOINTS = 24;

interface Checkpoint {
  readonly key: OrderKey;
  readonly fold: Fold;
}

export type OpenOutcome = { ok: true; account: Account } | { ok: false; findings: readonly OutpostFinding[] | null };

/** The account of a book in one view. */
export class Account {
  readonly #port: BookPort;
  readonly #view: View;
  readonly #outpost: Outpost;
  readonly #estimating: boolean;
  #fold: Fold;
  #last: OrderKey | null = null;
  #checkpoints: Checkpoint[] = [];

  private constructor(port: BookPort, outpost: Outpost, options: { view: View; estimating: boolean }) {
    this.#port = port;
    this.#outpost = outpost;
    this.#view = options.view;
    this.#estimating = options.estimating;
    this.#fold = new Fold(outpost, { estimating: options.estimating });
  }

  /** Reads the whole book once. `findings: null` says that the book has no outpost file yet. */
  static async open(port: BookPort, options: { readonly view?: View; readonly estimating?: boolean } = {}): Promise<OpenOutcome> {
    const view = options.view ?? {};
    const text = await outpostText(port, view);
    if (text === null) return { ok: false, findings: null };
    const read = readOutpost(text, { file: 'outpost file in the book' });
    if (!read.ok) return { ok: false, findings: read.findings };
    const account = new Account(port, read.outpost, { view, estimating: options.estimating ?? true });
    await account.#replay(null, await amendmentsOf(port, view));
    return { ok: true, account };
  }

  get fold(): Fold {
    return this.#fold;
  }

  get outpost(): Outpost {
    return this.#outpost;
  }

  /** Takes entries that the book has just kept. Late ones and amendments replay from the checkpoint before them. */
  async take(entries: readonly AnyEntry[]): Promise<void> {
    let from: OrderKey | null = null;
    for (const entry of entries) {
      if (from === null && this.#last !== null && compareOrder(entry, this.#last) > 0 && !isAmendmentKind(entry.kind)) {
        this.#apply(entry);
        continue;
      }
      const target = await this.#targetOf(entry);
      if (from === null || compareOrder(target, from) < 0) from = target;
    }
    if (from !== null) await this.#replay(from, await amendmentsOf(this.#port, this.#view));
  }

  /** The place in the order from which a replay has to start. */
  async #targetOf(entry: AnyEntry): Promise<OrderKey> {
    if (entry.kind === 'undo' || entry.kind === 'correction') {
      const kept = await this.#port.find(entry.body.target);
      // An undo of an undo brings back what the first one took out, further back.
      if (kept !== null) return isAmendmentKind(kept.kind) ? this.#targetOf(entryOf(kept)) : kept;
    }
    if (entry.kind === 'duplicate-decision') return (await this.#port.find(entry.body.second)) ?? entry;
    return entry;
  }

  async #replay(from: OrderKey | null, amendments: Amendments): Promise<void> {
    const start = from === null ? undefined : this.#checkpoints.findLast((checkpoint) => compareOrder(checkpoint.key, from) < 0);
    this.#checkpoints = start === undefined ? [] : this.#checkpoints.filter((one) => compareOrder(one.key, start.key) <= 0);
    this.#fold = start === undefined ? new Fold(this.#outpost, { estimating: this.#estimating }) : start.fold.clone();
    this.#last = start?.key ?? null;
    this.#fold.decisions = new Map([...amendments.decided].map(([id, entry]) => [id, entry.body.decision]));
    const after = start === undefined ? {} : { after: start.key };
    for await (const batch of readBook(this.#port, this.#view, { ...after, amendments })) {
      for (const entry of batch) this.#apply(entry);
    }
  }

  #apply(entry: AnyEntry): void {
    applyEntry(this.#fold, entry);
    this.#last = { happenedAtMs: entry.happenedAtMs, site: entry.site, number: entry.number };
    if (this.#fold.entries % CHECKPOINT_EVERY === 0) this.#keepCheckpoint(this.#last);
  }

  /** Dense near the present, where late entries fall; ever wider apart behind. */
  #keepCheckpoint(key: OrderKey): void {
    this.#checkpoints.push({ key, fold: this.#fold.clone() });
    if (this.#checkpoints.length <= MOST_CHECKPOINTS) return;
    const half = MOST_CHECKPOINTS / 2;
    this.#checkpoints = this.#checkpoints.filter((_one, k) => k >= half || k % 2 === 0);
  }
}

/** Text of the outpost file that was entered last, in a view. */
async function outpostText(port: BookPort, view: View): Promise<string | null> {
  let latest: { enteredAtMs: number; text: string } | null = null;
  for await (const rows of port.scan({ order: 'total', kinds: ['outpost'] })) {
    for (const row of rows) {
      if (view.knownAtMs !== undefined && row.enteredAtMs > view.knownAtMs) continue;
      const entry = entryOf(row);
      if (entry.kind === 'outpost' && (latest === null || entry.enteredAtMs >= latest.enteredAtMs)) {
        latest = { enteredAtMs: entry.enteredAtMs, text: entry.body.text };
      }
    }
  }
  return latest?.text ?? null;
}
