// Since when water is under suspicion, and which entries break a chain: the outpost's own clean results and releases.

import type { AccountAt, Step, WaterHistory } from './step.ts';
import { spokenOf } from './suspicion.ts';

/** What speaks well of the water of an account at a place of the history. */
export interface CleanWord {
  readonly account: AccountAt;
  readonly how: 'clean result' | 'release';
  /** The result or the release. */
  readonly entry: string;
}

/** Clean words by the place of the step at which they hold: a result holds at its sample, a release at itself. */
export type CleanWords = ReadonlyMap<number, readonly CleanWord[]>;

/**
 * @param clean ids of the entries of results that passed: whether one did is for the limits to say, not for a trace
 */
export function cleanWordsOf(history: WaterHistory, clean: ReadonlySet<string>): CleanWords {
  const words = new Map<number, CleanWord[]>();
  const samples = new Map<string, number>();
  const say = (at: number, word: CleanWord) => words.set(at, [...(words.get(at) ?? []), word]);
  history.steps.forEach((step, k) => {
    if (step.what === 'flow') return;
    if (step.what === 'sample') samples.set(step.sample, k);
    else if (step.what === 'release')
      for (const account of step.accounts) say(k, { account, how: 'release', entry: step.entry });
    else if (step.what === 'result' && clean.has(step.entry)) {
      const at = samples.get(step.sample) ?? k;
      const account = accountOfResult(history, at, step.account);
      if (account !== null) say(at, { account, how: 'clean result', entry: step.entry });
    }
  });
  return words;
}

/** A result whose sample is not in the book speaks of the store that it names, as of itself; without one, of nothing. */
function accountOfResult(history: WaterHistory, at: number, named: AccountAt | null): AccountAt | null {
  const step = history.steps[at];
  return step?.what === 'sample' ? spokenOf(history, at, step).takenFrom : named;
}

/** The time in which all water of a source counts as suspect. */
export interface SuspectWindow {
  readonly store: string;
  /** What opened it. */
  readonly opened: 'clean result' | 'release' | 'filling began' | 'first told' | 'book began';
  /** The entry that did; null where the book began. */
  readonly entry: string | null;
  readonly fromMs: number;
  readonly toMs: number;
}

export interface OpenWindow extends SuspectWindow {
  readonly account: AccountAt;
  /** The first step inside, and the first one behind it. */
  readonly fromStep: number;
  readonly toStep: number;
}

/**
 * Goes back from the sample to the youngest word that speaks well of the same water: the last clean result or release of the
 * source, the beginning of its filling, or the moment at which it was first told of. All that was in it since may be what
 * was sampled, and so may be all that left it since.
 */
export function windowOf(
  { steps }: WaterHistory,
  words: CleanWords,
  source: {
    readonly store: string;
    readonly account: AccountAt;
    readonly toStep: number;
    readonly toMs: number;
  },
): OpenWindow {
  const { account, toStep } = source;
  for (let k = toStep - 1; k >= 0; k--) {
    const step = steps[k] as Step;
    const word = words.get(k)?.find((one) => one.account === account);
    const opened = word?.how ?? beginningIn(step, account);
    if (opened === null) continue;
    return { ...source, opened, entry: word?.entry ?? step.entry, fromMs: step.atMs, fromStep: k };
  }
  return { ...source, opened: 'book began', entry: null, fromMs: steps[0]?.atMs ?? source.toMs, fromStep: 0 };
}

function beginningIn(step: Step, account: AccountAt): 'filling began' | 'first told' | null {
  if (step.what === 'flow' && step.to === account && step.begins) return 'filling began';
  return step.what === 'told' && step.account === account && step.heldMg <= 0 ? 'first told' : null;
}
