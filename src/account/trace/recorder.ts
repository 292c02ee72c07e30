// Writes the steps of a history while entries are posted.
import type { AnyEntry } from '../../book/index.ts';
import { contentOf } from '../flow.ts';
import type { End, Flow, Fold, Watcher } from '../fold.ts';
import { storeAccount } from '../ledger.ts';
import { speaksOf } from '../quality/speaks-of.ts';
import type { StoreState } from '../store-state.ts';
import type { AccountAt, Step, TracedAccount } from './step.ts';

export class Recorder {
  readonly steps: Step[] = [];
  readonly accounts: TracedAccount[] = [];
  readonly #places = new Map<string, AccountAt>();
  /** Accounts whose last change was a coming in: they are being filled. */
  readonly #filling = new Set<AccountAt>();
  readonly #hoseOfRun = new Map<string, string>();

  readonly watcher: Watcher = {
    onFlow: (fold, entry, what) => {
      this.#flow(fold, entry, what);
      return undefined;
    },
    onTold: (fold, entry, state, told) => {
      const account = this.placeOf(state.account);
      const visit = entry.kind === 'visit-berth' ? entry.body.visit : null;
      const heldMg = contentOf(fold, state).massMg;
      const { kind } = entry;
      this.steps.push({
        what: 'told',
        account,
        heldMg,
        massMg: told.massMg,
        kind,
        visit,
        ...momentOf(entry),
      });
      if (told.massMg > 0) this.#filling.add(account);
    },
    onRead: (_fold, _entry, { account }) => {
      this.#filling.delete(this.placeOf(account));
    },
    onEntry: (fold, entry) => this.#quality(fold, entry),
    onApplied: (fold, entry) => this.#port(fold, entry),
  };

  /** Place of an account by its name in the ledger. */
  placeOf(account: string): AccountAt {
    const known = this.#places.get(account);
    if (known !== undefined) return known;
    const place = this.accounts.length;
    this.#places.set(account, place);
    this.accounts.push(tracedAccount(account));
    return place;
  }

  #flow(fold: Fold, entry: AnyEntry, { from, to, massMg }: Flow): void {
    if (massMg === 0 || from.account === to.account) return;
    const fromAt = this.placeOf(from.account);
    const toAt = this.placeOf(to.account);
    const toHeldMg = heldMg(fold, to);
    const isEmpty = to.store !== null && toHeldMg <= atRemainderMg(to.store);
    this.steps.push({
      what: 'flow',
      from: fromAt,
      to: toAt,
      massMg,
      fromHeldMg: heldMg(fold, from),
      toHeldMg,
      begins: massMg > 0 && isEmpty && !this.#filling.has(toAt),
      kind: entry.kind,
      hose: this.#hoseOf(entry),
      person: entry.kind === 'movement' ? (entry.body.person ?? null) : null,
      ...momentOf(entry),
    });
    this.#filling.delete(fromAt);
    if (massMg > 0) this.#filling.add(toAt);
    else this.#filling.delete(toAt);
  }

  /** A part of a run need not name the hose again. */
  #hoseOf({ kind, body }: AnyEntry): string | null {
    if (kind === 'movement' || kind === 'push') return body.hose ?? null;
    if (kind !== 'run-pause' && kind !== 'run-finish') return null;
    return body.hose ?? this.#hoseOfRun.get(body.run) ?? null;
  }

  #quality(fold: Fold, entry: AnyEntry): void {
    const { kind, body } = entry;
    const moment = momentOf(entry);
    const places = (stores: readonly string[]) => stores.map((store) => this.placeOf(storeAccount(store)));
    if (kind === 'run-start' || kind === 'run-pause' || kind === 'run-resume') {
      if (body.hose !== undefined) this.#hoseOfRun.set(body.run, body.hose);
    } else if (kind === 'sample') {
      // At a point that no store is named with, it is the water of what stands behind the point.
      const [account = -1] = places(body.store === undefined ? speaksOf(fold, entry) : [body.store]);
      const fromContents = body.drawnFrom === undefined;
      this.steps.push({ what: 'sample', account, sample: body.sample, fromContents, ...moment });
    } else if (kind === 'result') {
      const account = body.store === undefined ? null : (places([body.store])[0] ?? null);
      this.steps.push({ what: 'result', sample: body.sample, account, ...moment });
    } else if (kind === 'release') {
      this.steps.push({ what: 'release', accounts: places(body.stores), ...moment });
    } else if (kind === 'dose') {
      this.steps.push({ what: 'treated', accounts: places(body.stores), ...moment });
    } else if (kind === 'treatment') {
      this.steps.push({ what: 'treated', accounts: places([body.store]), ...moment });
    }
  }

  /** Ports change by several kinds of entries, so that what stands on them is looked at after those. */
  readonly #onPort = new Map<string, string | null>();

  #port(fold: Fold, entry: AnyEntry): void {
    if (!CHANGES_PORTS.has(entry.kind)) return;
    for (const port of fold.ports.keys()) {
      const store = fold.storeOn(port);
      const account = store?.account ?? null;
      if ((this.#onPort.get(port) ?? null) === account) continue;
      this.#onPort.set(port, account);
      const at = account === null ? null : this.placeOf(account);
      this.steps.push({ what: 'port', port, account: at, ...momentOf(entry) });
    }
  }
}

const CHANGES_PORTS: ReadonlySet<AnyEntry['kind']> = new Set<AnyEntry['kind']>([
  'opening',
  'hookup',
  'declared-empty',
  'declared-full',
  'visit-depart',
]);

function momentOf({ happenedAtMs: atMs, id: entry }: AnyEntry): { atMs: number; entry: string } {
  return { atMs, entry };
}

function heldMg(fold: Fold, { account, store }: End): number {
  return store === null ? fold.ledger.balanceMg(account) : contentOf(fold, store).massMg;
}

/** Up to this a store stands at its usable remainder, as far as anybody can tell: the remainder has a ± of its own. */
function atRemainderMg({ facts }: StoreState): number {
  return facts.remainderMg + 2 * facts.remainderUMg;
}

function tracedAccount(account: string): TracedAccount {
  if (account.startsWith('store:')) return { kind: 'store', name: account.slice('store:'.length) };
  if (account.startsWith('line:')) return { kind: 'hose', name: account.slice('line:'.length) };
  return { kind: 'pool', name: account };
}
