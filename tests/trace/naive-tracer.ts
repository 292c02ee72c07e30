// A tracer that follows every parcel of water by itself, from the first step on: what the product's tracer is held against.

import type { FlowStep, Step, Suspicion, WaterHistory } from '../../src/account/index.ts';

/** Ways in which a tracer may be wrong on purpose. */
export type Fault =
  | 'suspect water first'
  | 'no cuts'
  | 'from the sample on'
  | 'nothing is taken back'
  | 'readings lose it'
  | 'none';

/** Parcels by name, in milligrams. The name of a suspect one begins with `!`, that of a cleared one with `cut`. */
type Parcels = Map<string, number>;

export interface NaiveTrace {
  /** By the place of the account. */
  readonly suspectMg: readonly number[];
  /** Water that would be suspect if nothing had been cut. */
  readonly clearedThereMg: readonly number[];
  readonly receivedMg: readonly number[];
  readonly clearedMg: number;
  readonly startedMg: number;
  readonly drunkMg: number;
  readonly fromStep: ReadonlyMap<number, number>;
}

export class NaiveTracer {
  readonly #history: WaterHistory;
  readonly #clean: ReadonlySet<string>;
  readonly #fault: Fault;
  readonly #parcels: Parcels[];
  /** Makeup of an account when it last held anything. */
  readonly #lastMakeup: Parcels[];
  readonly #received: number[];
  #startedMg = 0;
  #clearedMg = 0;
  #births = 0;

  constructor(history: WaterHistory, clean: ReadonlySet<string>, fault: Fault = 'none') {
    this.#history = history;
    this.#clean = clean;
    this.#fault = fault;
    this.#parcels = history.accounts.map(() => new Map());
    this.#lastMakeup = history.accounts.map(() => new Map());
    this.#received = history.accounts.map(() => 0);
  }

  trace(suspicion: Suspicion): NaiveTrace {
    const { steps, accounts, heldMg } = this.#history;
    const byEntry = steps.findIndex(({ entry }) => entry === suspicion.entry);
    const sampled = byEntry >= 0 ? byEntry : steps.filter(({ atMs }) => atMs <= suspicion.takenAtMs).length;
    const fromStep = new Map<number, number>();
    for (const source of suspicion.sources) {
      const account = accounts.findIndex(({ kind, name }) => kind === 'store' && name === source);
      fromStep.set(account, this.#fault === 'from the sample on' ? sampled : this.#opens(account, sampled));
    }
    steps.forEach((step, k) => {
      if (this.#fault !== 'no cuts') for (const account of this.#wellSpokenAt(k)) this.#cut(account);
      // In the window everything in a source is suspect, before and after each step.
      const under = [...fromStep].filter(([, from]) => from <= k && k < sampled).map(([account]) => account);
      for (const account of under) this.#suspectAll(account);
      this.#step(step, under);
      for (const account of under) this.#suspectAll(account);
    });
    for (const [account, held] of heldMg.entries()) this.#believe(account, held);
    const sumOf = (mark: string) => (parcels: Parcels) =>
      sum([...parcels].filter(([name]) => name.startsWith(mark)));
    return {
      suspectMg: this.#parcels.map(sumOf('!')),
      clearedThereMg: this.#parcels.map(sumOf('cut')),
      receivedMg: this.#received,
      clearedMg: this.#clearedMg,
      startedMg: this.#startedMg,
      drunkMg: sumOf('!')(this.#parcels[accounts.findIndex(({ name }) => name === 'people')] ?? new Map()),
      fromStep,
    };
  }

  #opens(account: number, before: number): number {
    let opens = 0;
    this.#history.steps.slice(0, before).forEach((step, k) => {
      const begins = step.what === 'flow' && step.begins && step.to === account;
      const first = step.what === 'told' && step.account === account && step.heldMg <= 0;
      if (begins || first || this.#wellSpokenAt(k).includes(account)) opens = k;
    });
    return opens;
  }

  /** Accounts that are spoken well of as of a step: by a release at it, by a clean result of the sample that it is. */
  #wellSpokenAt(k: number): readonly number[] {
    const step = this.#history.steps[k] as Step;
    if (step.what === 'release') return step.accounts;
    if (step.what === 'sample') {
      const speaks = this.#history.steps.some(
        (one, j) =>
          one.what === 'result' && this.#clean.has(one.entry) && this.#sampleOf(one.sample, j) === k,
      );
      return speaks ? [this.#giverOrSelf(k, step)] : [];
    }
    const alone = step.what === 'result' && this.#clean.has(step.entry) && this.#sampleOf(step.sample, k) < 0;
    return alone && step.account !== null ? [step.account] : [];
  }

  #sampleOf(sample: string, before: number): number {
    return this.#history.steps
      .slice(0, before)
      .findLastIndex((one) => one.what === 'sample' && one.sample === sample);
  }

  #giverOrSelf(k: number, step: Step & { what: 'sample' }): number {
    if (step.fromContents) return step.account;
    const fills = this.#history.steps.slice(0, k).filter((one): one is FlowStep => one.what === 'flow');
    const fill = fills.findLast(
      ({ from, to, massMg }) =>
        to === step.account && massMg > 0 && this.#history.accounts[from]?.kind === 'store',
    );
    return fill?.from ?? step.account;
  }

  #step(step: Step, under: readonly number[]): void {
    if (step.what === 'told') {
      this.#believe(step.account, step.heldMg);
      const isNew = step.heldMg <= 0 && (step.kind !== 'opening' || under.includes(step.account));
      if (isNew) this.#fill(step.account, new Map([[this.#name(), step.massMg]]));
      else this.#believe(step.account, step.massMg);
    } else if (step.what === 'flow') this.#flow(step, under);
  }

  #flow(step: FlowStep, under: readonly number[]): void {
    const { from, to, massMg, fromHeldMg, toHeldMg } = step;
    this.#believe(from, fromHeldMg);
    this.#believe(to, toHeldMg);
    if (massMg > 0) this.#move(from, to, massMg);
    else if (this.#fault !== 'nothing is taken back') this.#takeBack(from, to, -massMg);
    for (const account of under) this.#suspectAll(account);
    this.#believe(from, fromHeldMg - massMg);
    this.#believe(to, toHeldMg + massMg);
  }

  #move(from: number, to: number, massMg: number): void {
    if (!this.#isPool(from) && this.#heldMg(from) < massMg) this.#believe(from, massMg);
    const gone = this.#isPool(from) ? new Map([[this.#name(), massMg]]) : this.#draw(from, massMg);
    this.#received[to] = (this.#received[to] ?? 0) + suspectIn(gone);
    this.#add(to, gone);
  }

  #takeBack(from: number, to: number, massMg: number): void {
    const makeup = this.#makeup(from);
    const back: Parcels = new Map();
    const there = this.#parcels[to] ?? new Map();
    let clean = massMg;
    for (const mark of ['!', 'cut']) {
      const wantedMg = this.#isPool(from)
        ? 0
        : massMg * sum([...makeup].filter(([name]) => name.startsWith(mark)));
      const have = [...there].filter(([name]) => name.startsWith(mark));
      const part = Math.min(1, wantedMg / Math.max(1e-300, sum(have)));
      for (const [name, mg] of have) {
        back.set(name, mg * part);
        there.set(name, mg * (1 - part));
        clean -= mg * part;
      }
    }
    if (!this.#isPool(to)) this.#shrinkClean(to, Math.max(0, clean), massMg - clean);
    if (suspectIn(back) > 0) this.#received[to] = Math.max(0, (this.#received[to] ?? 0) - suspectIn(back));
    if (!this.#isPool(from)) this.#add(from, new Map([...back, [this.#name(), clean]]));
    else this.#add(from, back);
  }

  /** Clean water goes; where there is not so much of it, all that is left shrinks. */
  #shrinkClean(account: number, cleanMg: number, alreadyMg: number): void {
    const parcels = this.#parcels[account] ?? new Map();
    const markedMg = sum([...parcels].filter(([name]) => isMarked(name)));
    const beforeMg = sum([...parcels]) + alreadyMg;
    const leftMg = Math.max(0, beforeMg - alreadyMg - cleanMg);
    const left: Parcels = new Map();
    const suspectMg = suspectIn(parcels);
    const keepSuspect = suspectMg === 0 ? 0 : Math.min(1, leftMg / suspectMg);
    const cutMg = markedMg - suspectMg;
    const keepCut = cutMg === 0 ? 0 : Math.min(1, Math.max(0, leftMg - suspectMg * keepSuspect) / cutMg);
    for (const [name, mg] of parcels)
      if (isMarked(name)) left.set(name, mg * (name.startsWith('!') ? keepSuspect : keepCut));
    const restMg = leftMg - sum([...left]);
    if (restMg > 0) left.set(this.#name(), restMg);
    this.#fill(account, left);
  }

  /** Every parcel gives the same part of itself. */
  #draw(account: number, massMg: number): Parcels {
    const parcels = this.#parcels[account] ?? new Map();
    const heldMg = this.#heldMg(account);
    const part = heldMg === 0 ? 0 : massMg / heldMg;
    const gone: Parcels = new Map();
    if (this.#fault === 'suspect water first') return this.#drawInOrder(account, massMg);
    this.#remember(account);
    for (const [name, mg] of parcels) {
      gone.set(name, mg * part);
      if (part >= 1) parcels.delete(name);
      else parcels.set(name, mg * (1 - part));
    }
    return gone;
  }

  #drawInOrder(account: number, massMg: number): Parcels {
    const parcels = this.#parcels[account] ?? new Map();
    const gone: Parcels = new Map();
    let leftMg = massMg;
    for (const [name, mg] of [...parcels].sort(
      ([a], [b]) => Number(b.startsWith('!')) - Number(a.startsWith('!')),
    )) {
      const takenMg = Math.min(mg, leftMg);
      gone.set(name, takenMg);
      parcels.set(name, mg - takenMg);
      leftMg -= takenMg;
    }
    return gone;
  }

  /** All parcels of a content become more or less alike. */
  #believe(account: number, believedMg: number): void {
    if (this.#isPool(account)) return;
    const heldMg = Math.max(0, believedMg);
    const makeup = this.#makeup(account);
    if (this.#fault === 'readings lose it' && heldMg !== this.#heldMg(account))
      this.#fill(account, new Map([[this.#name(), heldMg]]));
    else if (makeup.size === 0)
      this.#fill(account, heldMg === 0 ? new Map() : new Map([[this.#name(), heldMg]]));
    else this.#fill(account, new Map([...makeup].map(([name, part]) => [name, part * heldMg])));
  }

  #cut(account: number): void {
    for (const mark of [this.#parcels[account], this.#lastMakeup[account]]) {
      for (const [name, mg] of [...(mark ?? [])]) {
        if (!name.startsWith('!')) continue;
        mark?.delete(name);
        const cleared = `cut${name.slice(1)}`;
        mark?.set(cleared, (mark.get(cleared) ?? 0) + mg);
        if (mark === this.#parcels[account]) this.#clearedMg += mg;
      }
    }
  }

  #suspectAll(account: number): void {
    const heldMg = this.#heldMg(account);
    this.#startedMg += heldMg - suspectIn(this.#parcels[account] ?? new Map());
    const name = `!${this.#name()}`;
    this.#lastMakeup[account] = new Map([[name, 1]]);
    this.#fill(account, heldMg === 0 ? new Map() : new Map([[name, heldMg]]));
  }

  #add(account: number, parcels: Parcels): void {
    const there = this.#parcels[account] ?? new Map();
    for (const [name, mg] of parcels) if (mg > 0) there.set(name, (there.get(name) ?? 0) + mg);
    this.#parcels[account] = there;
  }

  #fill(account: number, parcels: Parcels): void {
    this.#remember(account);
    this.#parcels[account] = new Map([...parcels].filter(([, mg]) => mg > 0));
  }

  #remember(account: number): void {
    if (this.#heldMg(account) > 0) this.#lastMakeup[account] = this.#makeup(account);
  }

  #makeup(account: number): Parcels {
    const heldMg = this.#heldMg(account);
    if (heldMg === 0) return this.#lastMakeup[account] ?? new Map();
    return new Map([...(this.#parcels[account] ?? [])].map(([name, mg]) => [name, mg / heldMg]));
  }

  #heldMg(account: number): number {
    return sum([...(this.#parcels[account] ?? [])]);
  }

  #isPool(account: number): boolean {
    return this.#history.accounts[account]?.kind === 'pool';
  }

  #name(): string {
    this.#births += 1;
    return `parcel ${this.#births}`;
  }
}

function isMarked(name: string): boolean {
  return name.startsWith('!') || name.startsWith('cut');
}

function suspectIn(parcels: Parcels): number {
  return sum([...parcels].filter(([name]) => name.startsWith('!')));
}

function sum(parcels: readonly (readonly [string, number])[]): number {
  return parcels.reduce((all, [, mg]) => all + mg, 0);
}
