// Keeping entries that belong together, all or none, and what they change; or what they would change, with nothing kept.
import { type Fold, positionOf } from '../../account/index.ts';
import type { AnyDraft, AnyEntry } from '../../book/index.ts';
import type { KeptSheet } from '../../papers/index.ts';
import { type Answer, yes } from '../answer.ts';
import type { Context } from './context.ts';
import { sheetOf } from './kept-sheet.ts';
import { entriesToBe, foldWithAll } from './overlay.ts';

/** The first one is what the sheet is about. */
export type Drafts = readonly [AnyDraft, ...AnyDraft[]];
type Entries = readonly [AnyEntry, ...AnyEntry[]];

/** The account as it would be with drafts kept, and the entries that they would be. */
export interface Ahead {
  readonly entries: Entries;
  readonly fold: Fold;
}

export async function lookAhead(context: Context, drafts: Drafts): Promise<Ahead> {
  const entries = (await entriesToBe(context.desk, drafts)) as unknown as Entries;
  return { entries, fold: await foldWithAll(context, entries) };
}

export async function wouldKeep(context: Context, drafts: Drafts): Promise<KeptSheet> {
  return sheetAhead(context, await lookAhead(context, drafts));
}

/** The sheet of an account that was looked ahead into already. */
export function sheetAhead(context: Context, { entries, fold }: Ahead): Promise<KeptSheet> {
  const before = positionOf(context.fold, context.presentMs);
  const after = positionOf(fold, latest(context, entries));
  return sheetOf(context.desk.port, {
    entries,
    kept: false,
    before,
    after: { ...after, dayRule: context.fold.dayRule },
  });
}

export async function keepTogether(context: Context, drafts: Drafts): Promise<Answer<KeptSheet>> {
  const { desk, moment, fold, presentMs } = context;
  const before = positionOf(fold, presentMs);
  const kept = await desk.keep(drafts, moment);
  if (!kept.ok) return kept;
  const entries = kept.value.kept;
  if (entries.length < drafts.length) throw new Error('a new entry was not kept');
  const opened = await desk.account();
  if (!opened.ok) return opened;
  const after = positionOf(opened.value.fold, latest(context, entries));
  return yes(await sheetOf(desk.port, { entries: entries as unknown as Entries, kept: true, before, after }));
}

function latest({ presentMs }: Context, entries: readonly AnyEntry[]): number {
  return Math.max(presentMs, ...entries.map(({ happenedAtMs }) => happenedAtMs));
}
