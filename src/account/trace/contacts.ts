// Contact tracing forward: what else may hold the water of a bad sample, how much of it, since when, and by which way.
import { shareOut } from '../share-out.ts';
import { type Cut, type Drunk, Follower } from './follow.ts';
import { type AccountAt, placeOfStore, type TracedAccount, type WaterHistory } from './step.ts';
import { endAt, type Suspicion } from './suspicion.ts';
import { type Hop, Touched } from './touched.ts';
import { cleanWordsOf, type OpenWindow, type SuspectWindow, windowOf } from './window.ts';

/** One movement of suspect water, from and to by name: of a store its id, of a hose the run, of a pool its name. */
export interface ContactHop {
  readonly from: string;
  readonly to: string;
  readonly entry: string;
  readonly atMs: number;
  readonly hose: string | null;
}

/** Suspect water that came from one place. */
export interface ContactFrom {
  readonly from: string;
  readonly massMg: number;
  readonly firstMs: number;
  readonly lastMs: number;
  /** The oldest first, and how many there are in all. */
  readonly entries: readonly string[];
  readonly entryCount: number;
}

/** A place that suspect water came into. */
export interface Contact extends TracedAccount {
  /** Its water is what was sampled. */
  readonly isSource: boolean;
  /** Suspect water that is in it now, whole milligrams; in a pool: what went there. */
  readonly suspectMg: number;
  /** All water that is in it now; null for a pool. */
  readonly heldMg: number | null;
  /** Suspect part of the content, from 0 to 1; null for a pool and for an empty store. */
  readonly share: number | null;
  /** Suspect water that came in, all together; of a source what came back to it. */
  readonly receivedMg: number;
  /** When the first of it came and when the last; of a source the time in which it was under suspicion. */
  readonly firstMs: number;
  readonly lastMs: number;
  /** Some of it came straight from the source by the way that was sampled; false: only from the same source by others. */
  readonly bySampledWay: boolean;
  /** The way by which it first came (since its last cut), from the source on; empty for a source. */
  readonly path: readonly ContactHop[];
  readonly from: readonly ContactFrom[];
}

/** A chain that was broken, and by which entry. */
export interface ContactCut {
  readonly store: string;
  readonly how: Cut['how'];
  readonly entry: string;
  readonly treatedBy: string | null;
  readonly atMs: number;
  readonly clearedMg: number;
}

export interface ContactTrace {
  readonly windows: readonly SuspectWindow[];
  /** Sources first, then by the time of the first contact. */
  readonly contacts: readonly Contact[];
  readonly cuts: readonly ContactCut[];
  /**
   * Suspect water at the start, and what readings found and lost of it since. Their sum is the suspect water in all contacts,
   * in all cuts and elsewhere, to the milligram.
   */
  readonly startedMg: number;
  readonly changedMg: number;
  /** In places that received less than a milligram each. */
  readonly elsewhereMg: number;
}

/** Somebody drank or used water with suspect water in it. For the medic alone: a trace without these names nobody. */
export interface DrunkContact {
  readonly atMs: number;
  readonly entry: string;
  readonly from: string;
  readonly massMg: number;
  /** Not rounded to a whole, so that the lines add up to what went into the pool of people within a milligram. */
  readonly suspectMg: number;
  /** Null where nobody is named, such as in what a counter counted. */
  readonly person: string | null;
}

export interface Traced {
  readonly trace: ContactTrace;
  readonly drunk: readonly DrunkContact[];
}

/**
 * Follows the water of a suspicion through the history, by perfect mixing: an account with the suspect part s of its content
 * gives s · m with every m that it gives.
 *
 * All water of a source is suspect from the last word that speaks well of it to the sample. A clean result or a release
 * of the outpost's own ends the suspicion of what is in a store at that moment, and the trace says which did.
 * A contact is what received a milligram or more.
 * @param clean ids of entries of results that passed
 * @example traceContacts(history, suspicion, { clean }).trace.contacts.map(({ name, suspectMg }) => …)
 */
export function traceContacts(
  history: WaterHistory,
  suspicion: Suspicion,
  { clean = new Set<string>() }: { readonly clean?: ReadonlySet<string> } = {},
): Traced {
  const words = cleanWordsOf(history, clean);
  const toStep = stepOfSample(history, suspicion);
  const windows = [...new Set(suspicion.sources)].flatMap((store): OpenWindow[] => {
    const account = placeOfStore(history, store);
    const source = { store, account, toStep, toMs: suspicion.takenAtMs };
    return account < 0 ? [] : [windowOf(history, words, source)];
  });
  const follower = new Follower(history, windows, suspicion.hose);
  follower.run(words);
  return { trace: traceOf(history, windows, follower), drunk: drunkOf(history, follower.drunk) };
}

/** Steps before this one are before the sample: those of its own instant are, unless its entry stands among them. */
function stepOfSample(history: WaterHistory, { entry, takenAtMs }: Suspicion): number {
  const at = entry === null ? -1 : history.steps.findIndex((step) => step.entry === entry);
  return at < 0 ? endAt(history, takenAtMs) : at;
}

function traceOf(history: WaterHistory, windows: readonly OpenWindow[], follower: Follower): ContactTrace {
  const { mixing, touched, cuts } = follower;
  const nameOf = (at: AccountAt) => history.accounts[at]?.name ?? '';
  const amounts = [
    ...history.accounts.map((_, at) => mixing.suspectMg(at)),
    ...cuts.map((cut) => cut.clearedMg),
  ];
  const startedMg = Math.round(mixing.startedMg);
  const changedMg = Math.round(mixing.startedMg + mixing.changedMg) - startedMg;
  const whole = wholeMg(startedMg + changedMg, amounts);
  const sources = new Map(windows.map((window) => [window.account, window] as const));
  const contacts = history.accounts.flatMap((_, at): Contact[] => {
    const one = touched.get(at) ?? new Touched();
    const window = sources.get(at);
    const isContact = window !== undefined || one.firstMs !== null || mixing.suspectMg(at) >= 1;
    return isContact ? [contactOf(history, { at, touched: one, window, suspectMg: whole[at] ?? 0 })] : [];
  });
  const shownMg = contacts.reduce((sum, { suspectMg }) => sum + suspectMg, 0);
  const clearedMg = cuts.reduce((sum, _, k) => sum + (whole[history.accounts.length + k] ?? 0), 0);
  return {
    windows: windows.map(({ store, opened, entry, fromMs, toMs }) => ({
      store,
      opened,
      entry,
      fromMs,
      toMs,
    })),
    contacts: contacts.sort(bySourceAndTime),
    cuts: cuts.map(({ account, how, entry, treatedBy, atMs }, k) => {
      const clearedMg = whole[history.accounts.length + k] ?? 0;
      return { store: nameOf(account), how, entry, treatedBy, atMs, clearedMg };
    }),
    startedMg,
    changedMg,
    elsewhereMg: startedMg + changedMg - shownMg - clearedMg,
  };
}

function bySourceAndTime(a: Contact, b: Contact): number {
  if (a.isSource !== b.isSource) return a.isSource ? -1 : 1;
  return a.firstMs - b.firstMs;
}

/** Whole milligrams that add up. What is so little that it rounds to nothing is nowhere. */
function wholeMg(totalMg: number, amounts: readonly number[]): readonly number[] {
  return totalMg <= 0 ? amounts.map(() => 0) : shareOut(totalMg, amounts);
}

interface Met {
  readonly at: AccountAt;
  readonly touched: Touched;
  readonly window: OpenWindow | undefined;
  readonly suspectMg: number;
}

function contactOf(history: WaterHistory, { at, touched, window, suspectMg }: Met): Contact {
  const { kind, name } = history.accounts[at] as TracedAccount;
  const heldMg = kind === 'pool' ? null : Math.max(0, history.heldMg[at] ?? 0);
  return {
    kind,
    name,
    isSource: window !== undefined,
    suspectMg,
    heldMg,
    share: heldMg === null || heldMg === 0 ? null : Math.min(1, suspectMg / heldMg),
    receivedMg: Math.round(touched.receivedMg),
    firstMs: window?.fromMs ?? touched.firstMs ?? touched.hop?.atMs ?? 0,
    lastMs:
      window === undefined
        ? (touched.lastMs ?? touched.hop?.atMs ?? 0)
        : Math.max(window.toMs, touched.lastMs ?? 0),
    bySampledWay: window !== undefined || touched.bySampledHose,
    path: window === undefined ? pathOf(history, touched.hop) : [],
    from: fromOf(history, touched),
  };
}

function pathOf({ accounts }: WaterHistory, last: Hop | null): readonly ContactHop[] {
  const path: ContactHop[] = [];
  for (let hop = last; hop !== null; hop = hop.before) {
    const { entry, atMs, hose } = hop;
    path.push({ from: accounts[hop.from]?.name ?? '', to: accounts[hop.to]?.name ?? '', entry, atMs, hose });
  }
  return path.reverse();
}

function fromOf({ accounts }: WaterHistory, touched: Touched): readonly ContactFrom[] {
  return [...touched.from].flatMap(([at, { massMg, ...rest }]): ContactFrom[] => {
    const rounded = Math.round(massMg);
    return rounded === 0 ? [] : [{ from: accounts[at]?.name ?? '', massMg: rounded, ...rest }];
  });
}

function drunkOf({ accounts }: WaterHistory, drunk: readonly Drunk[]): readonly DrunkContact[] {
  return drunk.map(({ from, ...rest }) => ({ ...rest, from: accounts[from]?.name ?? '' }));
}
