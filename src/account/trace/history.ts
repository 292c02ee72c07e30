// The history of the water in a book: every step of it from one pass, from which any number of traces is read.
import type { BookPort } from '../../book/index.ts';
import type { Outpost } from '../../outpost/index.ts';
import type { Fold } from '../fold.ts';
import { withGapsFilled } from '../gaps.ts';
import { lineAccount, storeAccount } from '../ledger.ts';
import { beginPass, type NoPass, type PassOptions } from '../pass.ts';
import { positionOf } from '../position.ts';
import { isWaste } from '../rules.ts';
import { Recorder } from './recorder.ts';
import type { TracedAccount, TracedStore, UnitWater, WaterHistory } from './step.ts';

export type HistoryOutcome = { readonly ok: true; readonly history: WaterHistory } | NoPass;

/**
 * Goes through the book once. Contents are those that were believed at each moment, so that what a trace says of a store is
 * a part of what the position says of it.
 * @param options.view the part of the book that is looked at: a trace as of an instant is one of a history up to it
 * @param options.estimating `false`: contents by the ledger alone, several times as fast; what readings said is not in it
 */
export async function historyOf(
  port: BookPort,
  options: PassOptions & { readonly estimating?: boolean } = {},
): Promise<HistoryOutcome> {
  const recorder = new Recorder();
  const estimating = options.estimating ?? true;
  const begun = await beginPass(port, recorder.watcher, { ...options, estimating });
  if (!begun.ok) return begun;
  for await (const _ of begun.pass.batches);
  return { ok: true, history: finished(recorder, begun.pass.fold) };
}

/** What stands in for a count that is still missing flowed, too, as the position has it. */
function finished(recorder: Recorder, fold: Fold): WaterHistory {
  withGapsFilled(fold, recorder.watcher);
  const { accountsMg } = positionOf(fold, fold.lastEntryMs ?? 0);
  const stores = [...fold.stores.values()].map((state): readonly [string, TracedStore] => {
    const { aboard, grade, facts } = state;
    return [facts.id, { aboard, reserve: facts.reserve, waste: isWaste(fold.index, state), grade }];
  });
  const { steps, accounts } = recorder;
  const heldMg = accounts.map((account) => accountsMg.get(ledgerNameOf(account)) ?? 0);
  return { steps, accounts, heldMg, stores: new Map(stores), units: unitsOf(fold.index.outpost) };
}

function ledgerNameOf({ kind, name }: TracedAccount): string {
  if (kind === 'store') return storeAccount(name);
  return kind === 'hose' ? lineAccount(name) : name;
}

function unitsOf({ units }: Outpost): ReadonlyMap<string, readonly UnitWater[]> {
  return new Map(
    units.map(({ id, feeds, takes }): readonly [string, readonly UnitWater[]] => {
      if ('store' in feeds) return [id, [{ store: feeds.store }]];
      const ends = takes.flatMap((end): UnitWater[] => {
        if ('port' in end) return [{ port: end.port }];
        return 'store' in end && !end.onlyByEntry ? [{ store: end.store }] : [];
      });
      return [id, ends];
    }),
  );
}
