// What must hold of every journey. Each check throws when it does not.
import { expect } from 'vitest';
import { Account, applyEntry, Fold, positionOf } from '../../src/account/index.ts';
import { type AnyEntry, type KeptEntry, MemoryStore, rowOf, type View } from '../../src/book/index.ts';
import { positionDigest, stateOf } from './fold-state.ts';
import type { Journey } from './journey.ts';
import { NaiveLedger } from './naive-ledger.ts';
import type { World } from './world.ts';

/** Rows without seals: chains are the book's own tests, and a thousand stories are told faster without them. */
function rowsOf(entries: readonly AnyEntry[]): KeptEntry[] {
  return entries.map((entry) => rowOf(entry, { text: JSON.stringify(entry), seal: '', keptAtMs: 0 }));
}

export async function bookOf(entries: readonly AnyEntry[]): Promise<MemoryStore> {
  const port = new MemoryStore({ bookId: 'journey', site: 'holm', purpose: 'practice', createdAtMs: 0 });
  await port.append(rowsOf(entries), []);
  return port;
}

export async function reckon(port: MemoryStore, view: View = {}, checkpointEvery = 500): Promise<Account> {
  const opened = await Account.open(port, { view, checkpointEvery });
  if (!opened.ok) throw new Error(JSON.stringify(opened.findings));
  return opened.account;
}

export const digestOf = ({ fold }: Account): string =>
  positionDigest(positionOf(fold, fold.lastEntryMs ?? 0));

/** So that stories of some dozen entries go back to kept folds, as books of thousands do. */
const CHECKPOINT_EVERY = 3;

/** Takes one entry after another as they arrive; the sum over all accounts is the integer 0 after each. */
export async function grow(entries: readonly AnyEntry[]): Promise<Account> {
  const port = await bookOf(entries.slice(0, 2));
  const account = await reckon(port, {}, CHECKPOINT_EVERY);
  for (const entry of entries.slice(2)) {
    await port.append(rowsOf([entry]), []);
    expect(await account.take([entry])).toBe(true);
    expect(account.fold.ledger.closureMg()).toBe(0);
    expect(positionOf(account.fold, account.fold.lastEntryMs ?? 0).closureMg).toBe(0);
  }
  return account;
}

/** A model that says what every account holds where no counter has a hand in it, and what the tap gave. */
export interface LedgerModel {
  readonly balances: ReadonlyMap<string, number>;
  readonly tapInAllMg: number;
}

export type MakeModel = (world: World, entries: readonly AnyEntry[]) => LedgerModel;

export const naive: MakeModel = (world, entries) => new NaiveLedger(world, entries);

/** Accounts of which the plain model can speak: those that no counter moves water through. Returns how many there were. */
export function agreesWith(model: LedgerModel, { world, arrived }: Journey, account: Account): number {
  const metered = new Set(world.metered);
  for (const { kind, body } of arrived) {
    if (kind === 'opening') for (const { store } of body.ports) metered.add(store);
    if (kind === 'hookup') metered.add(body.store);
    // With nothing on the port, or by a told draw, the tap gives from the reserve.
    if (['declared-empty', 'declared-full', 'hookup', 'source-change', 'visit-depart'].includes(kind))
      metered.add('R1');
  }
  const { ledger, stores } = account.fold;
  const spoken = [...stores.keys()].filter((id) => !metered.has(id));
  for (const id of spoken)
    expect([id, ledger.balanceMg(`store:${id}`)]).toEqual([id, model.balances.get(id) ?? 0]);
  // A second opening takes from outside what it tells anew of metered stores, too.
  const openings = arrived.filter(({ kind }) => kind === 'opening').length;
  // What people eat, make and give off goes by norms, of which the plain model knows nothing.
  const isBreathed = account.fold.normFlows.length > account.outpost.normFlows.length;
  const pools = openings > 1 || isBreathed ? ['unaccounted', 'lost'] : ['outside', 'unaccounted', 'lost'];
  for (const pool of pools)
    expect([pool, ledger.balanceMg(pool)]).toEqual([pool, model.balances.get(pool) ?? 0]);
  if (isBreathed) return spoken.length + pools.length;
  expect(['people', ledger.balanceMg('people')]).toEqual([
    'people',
    (model.balances.get('people') ?? 0) + model.tapInAllMg,
  ]);
  return spoken.length + pools.length + 1;
}

/** From scratch and by entry, in the order of the story and in another order of the two sites: the same to the last bit. */
export async function sameHoweverItGrew({ arrived }: Journey): Promise<Account> {
  const scratch = await reckon(await bookOf(arrived));
  const wanted = stateOf(scratch.fold);
  expect(stateOf((await grow(arrived)).fold)).toBe(wanted);
  const [own, ground] = [
    arrived.filter(({ site }) => site === 'holm'),
    arrived.filter(({ site }) => site !== 'holm'),
  ];
  if (ground.length > 0)
    expect(stateOf((await grow([...own.slice(0, 2), ...ground, ...own.slice(2)])).fold)).toBe(wanted);
  return scratch;
}

/** A control that is wrong on purpose: entries folded as they arrive, nothing taken back, nothing gone back for. */
export async function arrivalIsNoOrder({ arrived }: Journey): Promise<boolean> {
  const scratch = await reckon(await bookOf(arrived));
  const fold = new Fold(scratch.outpost);
  for (const entry of arrived) applyEntry(fold, entry);
  return positionDigest(positionOf(fold, fold.lastEntryMs ?? 0)) === digestOf(scratch);
}

/** An entry that is taken back, and the word that took it back, might never have been. Returns whether there was one to try. */
export async function undoneIsNeverEntered({ arrived }: Journey, choice: number): Promise<boolean> {
  const spoken = new Set(
    arrived.flatMap(({ kind, body }) =>
      kind === 'undo' || kind === 'correction'
        ? [body.target]
        : kind === 'duplicate-decision'
          ? [body.first, body.second]
          : [],
    ),
  );
  const plain = arrived.filter(
    ({ kind, id, happenedAtMs }) =>
      kind === 'movement' && !spoken.has(id) && happenedAtMs < (arrived.at(-1)?.enteredAtMs ?? 0),
  );
  const target = plain[choice % Math.max(1, plain.length)];
  if (target === undefined) return false;
  const enteredAtMs = arrived.at(-1)?.enteredAtMs ?? 0;
  const number = arrived.filter(({ site }) => site === 'holm').length + 1;
  // The word is dated at what it takes back, so that the last instant of the book stays the same.
  const word = {
    ...target,
    kind: 'undo',
    site: 'holm',
    number,
    id: target.id.replace(/^.{8}/, 'ffffffff'),
    enteredAtMs,
    body: { target: target.id },
  } as AnyEntry;
  const without = renumbered(arrived.filter((entry) => entry !== target));
  expect(digestOf(await reckon(await bookOf([...arrived, word])))).toBe(
    digestOf(await reckon(await bookOf(without))),
  );
  return true;
}

/** Numbers without a gap again, in the same order. */
function renumbered(entries: readonly AnyEntry[]): AnyEntry[] {
  const numbers = new Map<string, number>();
  return entries.map((entry) => {
    const number = (numbers.get(entry.site) ?? 0) + 1;
    numbers.set(entry.site, number);
    return { ...entry, number } as AnyEntry;
  });
}

/** Whether a day was closed before something came changes no figure. Returns how many closes there were. */
export async function closingChangesNothing({ arrived }: Journey): Promise<number> {
  const open = renumbered(arrived.filter(({ kind }) => kind !== 'day-close'));
  const closes = arrived.length - open.length;
  if (closes === 0) return 0;
  const figuresOf = ({ fold }: Account) => {
    const { stores, accountsMg } = positionOf(fold, fold.lastEntryMs ?? 0);
    return JSON.stringify([stores.map(({ facts, massMg, uMg }) => [facts.id, massMg, uMg]), [...accountsMg]]);
  };
  expect(figuresOf(await reckon(await bookOf(arrived)))).toBe(figuresOf(await reckon(await bookOf(open))));
  return closes;
}

/** As known at an instant is the account of the book as it was then. Returns how many entries were not known yet. */
export async function knownIsTruncated({ arrived }: Journey, choice: number): Promise<number> {
  const knownAtMs = arrived[1 + (choice % (arrived.length - 1))]?.enteredAtMs ?? 0;
  const then = arrived.filter(({ enteredAtMs }) => enteredAtMs <= knownAtMs);
  const view = await reckon(await bookOf(arrived), { knownAtMs });
  expect(stateOf(view.fold)).toBe(stateOf((await reckon(await bookOf(then))).fold));
  return arrived.length - then.length;
}
