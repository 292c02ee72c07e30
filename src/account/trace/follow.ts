// Follows suspect water forward through the steps of a history.
import { heldBefore } from './held-before.ts';
import { Mixing } from './mixing.ts';
import type { AccountAt, FlowStep, Step, ToldStep, WaterHistory } from './step.ts';
import { type Hop, Touched } from './touched.ts';
import type { CleanWord, CleanWords, OpenWindow } from './window.ts';

/** A chain that was broken: by which word, and which dose or treatment it came after. */
export interface Cut extends CleanWord {
  readonly atMs: number;
  readonly clearedMg: number;
  /** The last dose or treatment of the store since suspect water came into it. */
  readonly treatedBy: string | null;
}

/** Water with suspect water in it that somebody drank or used. A negative amount takes back what was posted too much. */
export interface Drunk {
  readonly atMs: number;
  readonly entry: string;
  readonly from: AccountAt;
  /** What was drunk, and what of it was suspect. */
  readonly massMg: number;
  readonly suspectMg: number;
  readonly person: string | null;
}

const PEOPLE = 'people';

export class Follower {
  readonly mixing: Mixing;
  readonly touched = new Map<AccountAt, Touched>();
  readonly cuts: Cut[] = [];
  readonly drunk: Drunk[] = [];
  readonly #history: WaterHistory;
  readonly #windows: readonly OpenWindow[];
  readonly #hose: string | null;
  readonly #sources: ReadonlySet<AccountAt>;
  readonly #treatedBy = new Map<AccountAt, string>();
  readonly #people: AccountAt;

  constructor(history: WaterHistory, windows: readonly OpenWindow[], hose: string | null) {
    this.mixing = new Mixing(history.accounts);
    this.#history = history;
    this.#windows = windows;
    this.#hose = hose;
    this.#sources = new Set(windows.map(({ account }) => account));
    this.#people = history.accounts.findIndex(({ kind, name }) => kind === 'pool' && name === PEOPLE);
  }

  run(words: CleanWords): void {
    const { steps, heldMg, accounts } = this.#history;
    const first = Math.min(steps.length, ...this.#windows.map(({ fromStep }) => fromStep));
    const turns = this.#turns();
    for (let k = first; k < steps.length; k++) {
      const step = steps[k] as Step;
      if (words.has(k)) for (const word of words.get(k) ?? []) this.#cut(word, step);
      if (turns.has(k)) for (const turn of turns.get(k) ?? []) turn();
      this.#step(step);
    }
    for (const turn of turns.get(steps.length) ?? []) turn();
    for (let at = 0; at < accounts.length; at++) this.mixing.meet(at, heldMg[at] ?? 0);
  }

  /** What is to be done before a step: windows that open, and windows that close. */
  #turns(): ReadonlyMap<number, readonly (() => void)[]> {
    const turns = new Map<number, (() => void)[]>();
    const add = (k: number, turn: () => void) => turns.set(k, [...(turns.get(k) ?? []), turn]);
    for (const { account, fromStep, toStep } of this.#windows) {
      if (fromStep >= toStep) continue;
      add(fromStep, () => this.mixing.open(account, heldBefore(this.#history, fromStep, account)));
      add(toStep, () => this.mixing.close(account));
    }
    return turns;
  }

  #step(step: Step): void {
    if (step.what === 'flow') this.#flow(step);
    else if (step.what === 'told') {
      this.#tell(step);
    } else if (step.what === 'treated') {
      for (const account of step.accounts)
        if (this.mixing.suspectMg(account) > 0) this.#treatedBy.set(account, step.entry);
    }
  }

  /** An opening tells of water that was there, as a reading does; what comes aboard was not. */
  #tell({ account, heldMg, massMg, kind }: ToldStep): void {
    this.mixing.meet(account, heldMg);
    const isReading = heldMg > 0 || (kind === 'opening' && !this.mixing.isUnder(account));
    if (isReading) this.mixing.meet(account, massMg);
    else this.mixing.begin(account, massMg);
  }

  #flow(step: FlowStep): void {
    const { from, to, massMg, fromHeldMg, toHeldMg } = step;
    this.mixing.meet(from, fromHeldMg);
    this.mixing.meet(to, toHeldMg);
    if (massMg < 0) this.#back(step, this.mixing.takeBack(from, to, -massMg));
    else this.#came(step, this.mixing.flow(from, to, massMg));
    this.mixing.meet(from, fromHeldMg - massMg);
    this.mixing.meet(to, toHeldMg + massMg);
  }

  #came(step: FlowStep, carriedMg: number): void {
    if (carriedMg <= 0) return;
    this.#touch(step.to).receive(step, carriedMg, this.#wayFrom(step));
    if (step.to === this.#people) this.#drink(step, carriedMg);
  }

  #wayFrom({ from, hose }: FlowStep): { hop: Hop | null; isSampled: boolean } {
    const isSource = this.#sources.has(from);
    const hop = isSource ? null : (this.touched.get(from)?.hop ?? null);
    return { hop, isSampled: isSource && (this.#hose === null || hose === this.#hose) };
  }

  #back(step: FlowStep, backMg: number): void {
    if (backMg <= 0) return;
    this.touched.get(step.to)?.giveBack(step.from, backMg);
    if (step.to === this.#people) this.#drink(step, -backMg);
  }

  #drink({ atMs, entry, from, massMg, person }: FlowStep, suspectMg: number): void {
    this.drunk.push({ atMs, entry, from, massMg, suspectMg, person });
  }

  #touch(at: AccountAt): Touched {
    const known = this.touched.get(at);
    if (known !== undefined) return known;
    const touched = new Touched();
    this.touched.set(at, touched);
    return touched;
  }

  #cut(word: CleanWord, { atMs }: Step): void {
    const { account } = word;
    const clearedMg = this.mixing.clear(account);
    if (clearedMg > 0)
      this.cuts.push({ ...word, atMs, clearedMg, treatedBy: this.#treatedBy.get(account) ?? null });
    this.touched.get(account)?.cut();
    this.#treatedBy.delete(account);
  }
}
