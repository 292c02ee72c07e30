// The desk of one book: its account kept up to date, and what every request needs to know of its moment.
import {
  Account,
  type Beds,
  bedsOf,
  type Condensate,
  condensateOf,
  type Fold,
  historyOf,
  type Measured,
  measuredOf,
  type OutpostReader,
  type Position,
  positionOf,
  type SnapshotPlace,
  type Storage,
  type StoreStory,
  storageOf,
  storyOf,
  type WaterHistory,
} from '../account/index.ts';
import type { AnyDraft, AnyEntry, BookInfo, BookPort, Hash, SecondPerson, View } from '../book/index.ts';
import { entryId, keepDrafts, plainHash } from '../book/index.ts';
import { type DayRule, dayOf, dayStartUtcMs, type Finding } from '../ground/units/index.ts';
import { type Answer, no, yes } from './answer.ts';
import { type CodeKeeper, NO_CODES } from './codes/code-keeper.ts';
import { deskFinding } from './desk-finding.ts';

/** Who asks, and when: doors bring it, the desk has no clock of its own. */
export interface Moment {
  readonly nowUtcMs: number;
  readonly offsetMin: number;
  readonly by: string;
  readonly second?: SecondPerson;
  /** Spoken when nothing else speaks against what is to be kept, and never when it is only tried: it may refuse, or say it anew. */
  readonly lastWord?: (drafts: readonly AnyDraft[]) => Promise<Answer<readonly AnyDraft[]>>;
}

export interface DeskTools {
  readonly hash?: Hash;
  /** Ten bytes of chance for a new id. */
  readonly chance: () => Uint8Array;
  /** Where the codes of the offices are kept; absent: nobody has one. */
  readonly codes?: CodeKeeper;
  /** How the outpost file of the book is read; absent: by its own room. */
  readonly readOutpost?: OutpostReader;
  /** Where the account of the book is put away between two runs; absent: nowhere. */
  readonly snapshots?: SnapshotPlace;
  /** Files of limits that come with the program; absent: none. */
  readonly limitFiles?: () => Promise<readonly NamedText[]>;
}

/** A file as a door brings it. */
export interface NamedText {
  readonly file: string;
  readonly text: string;
}

/** Views of the past that a desk keeps at once. */
const MOST_VIEWS = 4;

/** A history is as long as its book. */
const MOST_HISTORIES = 2;

export class Desk {
  readonly port: BookPort;
  readonly info: BookInfo;
  readonly hash: Hash;
  readonly codes: CodeKeeper;
  readonly #chance: () => Uint8Array;
  /** Files of limits that come with the program. */
  readonly limitFiles: () => Promise<readonly NamedText[]>;
  readonly #opening: Pick<DeskTools, 'readOutpost' | 'snapshots'>;
  #account: Account | null = null;
  /** Accounts of the past that were asked for last, by their view: a page asks for one of them several times. */
  readonly #views = new Map<string, Account>();
  readonly #histories = new Map<string, WaterHistory>();

  private constructor(port: BookPort, info: BookInfo, tools: DeskTools) {
    this.port = port;
    this.info = info;
    this.hash = tools.hash ?? plainHash;
    this.codes = tools.codes ?? NO_CODES;
    this.#chance = tools.chance;
    this.limitFiles = tools.limitFiles ?? (() => Promise.resolve([]));
    this.#opening = {
      ...(tools.readOutpost !== undefined && { readOutpost: tools.readOutpost }),
      ...(tools.snapshots !== undefined && { snapshots: tools.snapshots }),
    };
  }

  static async open(port: BookPort, tools: DeskTools): Promise<Desk> {
    return new Desk(port, await port.info(), tools);
  }

  /** The account of a view; that of the whole book is kept and goes on with every entry. */
  async account(view: View = {}): Promise<Answer<Account>> {
    const whole = view.knownAtMs === undefined && view.asOfMs === undefined;
    const name = `${view.knownAtMs ?? ''} ${view.asOfMs ?? ''}`;
    const known = whole ? this.#account : this.#views.get(name);
    if (known != null) return yes(known);
    const opened = await Account.open(this.port, { view, ...this.#opening });
    if (!opened.ok) return notBegun(opened.findings);
    if (whole) this.#account = opened.account;
    else this.#remember(name, opened.account);
    return yes(opened.account);
  }

  #remember(name: string, account: Account): void {
    const [oldest] = this.#views.keys();
    if (oldest !== undefined && this.#views.size >= MOST_VIEWS) this.#views.delete(oldest);
    this.#views.set(name, account);
  }

  /** The past of one store in a view: a pass over the whole book. */
  async story(store: string, view: View = {}): Promise<Answer<StoreStory>> {
    const told = await storyOf(this.port, store, { view, ...this.#opening });
    return told.ok ? yes(told.story) : notBegun(told.findings);
  }

  /** What a view tells of standing water and its biocide: a pass over the whole book. */
  async storage(view: View = {}): Promise<Answer<Storage>> {
    const told = await storageOf(this.port, { view, ...this.#opening });
    return told.ok ? yes(told.storage) : notBegun(told.findings);
  }

  /** Expected and collected condensate of every day in a view: a pass over the whole book. */
  async condensate(view: View = {}): Promise<Answer<Condensate>> {
    const told = await condensateOf(this.port, { view, ...this.#opening });
    if (told.ok) return yes(told.condensate);
    return told.missing === undefined
      ? notBegun(told.findings)
      : no('wrong use', deskFinding('no-condensate-expectation', { missing: told.missing }));
  }

  /** All that was measured of the water in a view: a pass over the whole book. */
  async measured(view: View = {}): Promise<Answer<Measured>> {
    const told = await measuredOf(this.port, { view, ...this.#opening });
    return told.ok ? yes(told.measured) : notBegun(told.findings);
  }

  /** Every step of the water in a view: a pass over the whole book, which is kept until the book goes on. */
  async history(view: View = {}): Promise<Answer<WaterHistory>> {
    const name = nameOf(view);
    const known = this.#histories.get(name);
    if (known !== undefined) return yes(known);
    const told = await historyOf(this.port, { view, ...this.#opening });
    if (!told.ok) return notBegun(told.findings);
    const [oldest] = this.#histories.keys();
    if (oldest !== undefined && this.#histories.size >= MOST_HISTORIES) this.#histories.delete(oldest);
    this.#histories.set(name, told.history);
    return yes(told.history);
  }

  /** What is told of the purifier's beds in a view: a pass over the whole book. */
  async beds(view: View = {}): Promise<Answer<Beds>> {
    const told = await bedsOf(this.port, { view, ...this.#opening });
    return told.ok ? yes(told.beds) : notBegun(told.findings);
  }

  /** Keeps drafts and moves the account on. */
  async keep(
    drafts: readonly AnyDraft[],
    moment: Pick<Moment, 'nowUtcMs' | 'lastWord'>,
  ): Promise<Answer<{ kept: readonly AnyEntry[]; alreadyKept: readonly string[] }>> {
    const said = moment.lastWord === undefined ? yes(drafts) : await moment.lastWord(drafts);
    if (!said.ok) return said;
    const outcome = await keepDrafts(this.port, said.value, { hash: this.hash, keptAtMs: moment.nowUtcMs });
    if (!outcome.ok) return no('bad input', ...outcome.findings);
    await this.took(outcome.kept);
    return yes({ kept: outcome.kept, alreadyKept: outcome.alreadyKept });
  }

  /** Takes in entries that were kept through the same port and not through this desk. */
  async took(entries: readonly AnyEntry[]): Promise<void> {
    this.#views.clear();
    this.#histories.clear();
    // Another outpost file is another fold: it is made anew when next asked for.
    if ((await this.#account?.take(entries)) === false) this.#account = null;
  }

  /** Forgets what was reckoned: after lines came in that were not kept through this desk. */
  forget(): void {
    this.#account = null;
    this.#views.clear();
    this.#histories.clear();
  }

  newId(utcMs: number): string {
    return entryId(utcMs, this.#chance());
  }

  /**
   * The present of this book. A practice book lives in its own time: its present is its last entry,
   * so that the invented outpost does not look a hundred years away.
   */
  presentMs(position: Pick<Position, 'lastEntryMs'>, moment: Pick<Moment, 'nowUtcMs'>): number {
    return this.info.purpose === 'practice' && position.lastEntryMs !== null
      ? position.lastEntryMs
      : moment.nowUtcMs;
  }

  /**
   * When something happens that is entered now. A practice book whose last day is closed goes on with the next day:
   * else its first entry would need a reason for being late.
   */
  enteringMs(
    fold: Pick<Fold, 'lastEntryMs' | 'closedDays' | 'dayRule'>,
    moment: Pick<Moment, 'nowUtcMs'>,
  ): number {
    const presentMs = this.presentMs(fold, moment);
    const day = dayOf(presentMs, fold.dayRule);
    const isOver = this.info.purpose === 'practice' && fold.closedDays.has(day);
    return isOver ? dayStartUtcMs(day + 1, fold.dayRule) : presentMs;
  }
}

function nameOf({ knownAtMs, asOfMs }: View): string {
  return `${knownAtMs ?? ''} ${asOfMs ?? ''}`;
}

function notBegun(findings: readonly Finding[] | null) {
  return findings === null
    ? no('wrong use', deskFinding('book-not-begun', { what: 'outpost file' }))
    : no('bad input', ...findings);
}

/** Where a request looks: now, as known at an instant, or as of one by all that is known. */
export type Sight =
  | { readonly kind: 'now' }
  | { readonly kind: 'as known at'; readonly ms: number }
  | { readonly kind: 'as of'; readonly ms: number };

export function viewOf(sight: Sight): View {
  if (sight.kind === 'now') return {};
  return sight.kind === 'as of' ? { asOfMs: sight.ms } : { knownAtMs: sight.ms, asOfMs: sight.ms };
}

/** The position that a request sees. */
export async function positionAt(
  desk: Desk,
  sight: Sight,
  moment: Pick<Moment, 'nowUtcMs'>,
): Promise<Answer<Position>> {
  const opened = await desk.account(viewOf(sight));
  if (!opened.ok) return opened;
  const { fold } = opened.value;
  const atMs = sight.kind === 'now' ? desk.presentMs(fold, moment) : sight.ms;
  return yes(positionOf(fold, Math.max(atMs, fold.lastEntryMs ?? atMs)));
}

/** The day rule of the book, for reading times that people type. */
export async function dayRuleOf(desk: Desk): Promise<Answer<DayRule>> {
  const opened = await desk.account();
  return opened.ok ? yes(opened.value.fold.dayRule) : opened;
}
