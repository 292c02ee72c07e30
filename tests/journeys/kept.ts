// A book in memory that takes drafts, for tests of what the account makes of one.
import { Account, type Position, positionOf } from '../../src/account/index.ts';
import {
  type AnyDraft,
  type AnyEntry,
  type Body,
  type Kind,
  keepDrafts,
  MemoryStore,
  plainHash,
  type View,
} from '../../src/book/index.ts';
import { HOLM } from './holm.ts';
import { at, holmOpening, idOf, type More } from './told.ts';

/** A draft of any kind at an instant. `count` makes its id its own. */
export function draftOf<K extends Kind>(
  kind: K,
  body: Body<K>,
  when: { readonly atMs: number; readonly count: number; readonly enteredAtMs?: number },
  more: More = {},
): AnyDraft {
  const enteredAtMs = when.enteredAtMs ?? when.atMs;
  return {
    id: idOf(enteredAtMs, when.count),
    version: 1,
    kind,
    happenedAtMs: when.atMs,
    happenedOffsetMin: 0,
    enteredAtMs,
    enteredOffsetMin: 0,
    by: 'keeper',
    ...more,
    body,
  } as unknown as AnyDraft;
}

export function emptyBook(site = 'holm'): MemoryStore {
  return new MemoryStore({ bookId: 'b', site, purpose: 'book', createdAtMs: 0 });
}

/** Keeps drafts, and gives back the entries that were new. */
export async function keep(port: MemoryStore, drafts: readonly AnyDraft[]): Promise<readonly AnyEntry[]> {
  const outcome = await keepDrafts(port, drafts, { hash: plainHash, keptAtMs: 0 });
  if (!outcome.ok) throw new Error(JSON.stringify(outcome.findings));
  return outcome.kept;
}

export async function accountOf(
  port: MemoryStore,
  options: { readonly view?: View; readonly estimating?: boolean } = {},
): Promise<Account> {
  const opened = await Account.open(port, options);
  if (!opened.ok) throw new Error(JSON.stringify(opened.findings));
  return opened.account;
}

export function positionNow(account: Account): Position {
  return positionOf(account.fold, account.fold.lastEntryMs ?? 0);
}

/** A book that begins with Holm's file and Holm's opening. */
export async function holmBook(outpost = HOLM): Promise<MemoryStore> {
  const port = emptyBook();
  const atMs = at(0, 21);
  await keep(port, [
    draftOf('outpost', { text: outpost }, { atMs, count: 1 }),
    draftOf('opening', holmOpening(), { atMs, count: 2 }),
  ]);
  return port;
}
