// Random histories of water for the tracer: a few stores, a hose and pools, with readings, samples, doses and words on them.
import fc from 'fast-check';
import type { Step, TracedAccount, WaterHistory } from '../../src/account/index.ts';

/** One step in small numbers: what it is, three choices and minutes since the one before. */
export interface Dice {
  readonly what: number;
  readonly a: number;
  readonly b: number;
  readonly c: number;
  readonly minutes: number;
}

export const anyDice: fc.Arbitrary<readonly Dice[]> = fc.array(
  fc.record({
    what: fc.nat({ max: 99 }),
    a: fc.nat({ max: 999 }),
    b: fc.nat({ max: 999 }),
    c: fc.nat({ max: 999 }),
    minutes: fc.nat({ max: 300 }),
  }),
  { minLength: 5, maxLength: 60, size: 'max' },
);

const ACCOUNTS: readonly TracedAccount[] = [
  ...['A', 'B', 'C', 'D', 'R', 'W'].map((name) => ({ kind: 'store' as const, name })),
  { kind: 'hose', name: 'RUN-1' },
  ...['people', 'outside', 'cabin air'].map((name) => ({ kind: 'pool' as const, name })),
];
const STORES = 6;
const CONTAINERS = 7;
const HOSES = [null, null, 'H-1', 'H-2'] as const;
const REMAINDER_MG = 500;
const MINUTE_MS = 60_000;

export interface RandomHistory {
  readonly history: WaterHistory;
  readonly clean: ReadonlySet<string>;
  /** Samples that were drawn. */
  readonly samples: readonly string[];
}

/** A history in which amounts follow the flows, but for what readings said and what nobody knew of. */
export function randomHistory(dice: readonly Dice[]): RandomHistory {
  const teller = new Teller();
  for (let account = 0; account < STORES - 1; account++) teller.told(account, (account % 3) * 40_000);
  for (const one of dice) teller.tell(one);
  return teller.finished();
}

class Teller {
  readonly #steps: Step[] = [];
  readonly #held = new Array<number>(ACCOUNTS.length).fill(0);
  readonly #clean = new Set<string>();
  readonly #samples: string[] = [];
  #atMs = 0;

  #moment() {
    return { atMs: this.#atMs, entry: `E${this.#steps.length}` };
  }

  told(account: number, massMg: number, kind: 'opening' | 'visit-berth' = 'opening'): void {
    const heldMg = this.#held[account] ?? 0;
    this.#steps.push({ what: 'told', account, heldMg, massMg, kind, visit: null, ...this.#moment() });
    this.#held[account] = massMg;
  }

  tell({ what, a, b, c, minutes }: Dice): void {
    this.#atMs += minutes * MINUTE_MS;
    if (what < 55) this.#move(a, b, c);
    else if (what < 61) this.#takeBack(c);
    else if (what < 70) this.#read(a % CONTAINERS, c);
    else if (what < 80) this.#sample(a % STORES, c);
    else if (what < 88) this.#result(a, b, c);
    else if (what < 93) this.#word('release', a, b);
    else if (what < 97) this.#word('treated', a, b);
    else this.told(a % STORES, c * 50, b % 2 === 0 ? 'opening' : 'visit-berth');
  }

  /** Mostly a part of what is there, at times all of it, at times more than anybody knew of. */
  #move(a: number, b: number, c: number): void {
    const from = a % ACCOUNTS.length;
    const heldMg = Math.max(0, this.#held[from] ?? 0);
    const part = c % 10 === 0 ? 1 : c % 17 === 0 ? 1.25 : (c % 100) / 100;
    const massMg = from >= CONTAINERS ? 30 * (c + 1) : Math.round(heldMg * part) + (c % 23 === 0 ? 7 : 0);
    this.#flow(from, b % ACCOUNTS.length, massMg, HOSES[(a + b) % HOSES.length] ?? null);
  }

  /** A part of what was posted last is taken back. */
  #takeBack(c: number): void {
    const before = this.#steps.findLast(({ what }) => what === 'flow');
    if (before?.what !== 'flow' || before.massMg < 0) return;
    this.#flow(before.from, before.to, -Math.round((before.massMg * (c % 100)) / 120), null);
  }

  #flow(from: number, to: number, massMg: number, hose: string | null): void {
    if (from === to || massMg === 0) return;
    const [fromHeldMg = 0, toHeldMg = 0] = [this.#held[from], this.#held[to]];
    this.#steps.push({
      what: 'flow',
      from,
      to,
      massMg,
      fromHeldMg,
      toHeldMg,
      begins: massMg > 0 && to < STORES && toHeldMg <= REMAINDER_MG,
      kind: 'movement',
      hose,
      person: null,
      ...this.#moment(),
    });
    this.#held[from] = fromHeldMg - massMg;
    this.#held[to] = toHeldMg + massMg;
  }

  /** A reading changes what is believed, and no step says so. */
  #read(account: number, c: number): void {
    this.#held[account] =
      c % 9 === 0 ? 0 : Math.round((this.#held[account] ?? 0) * (0.8 + (c % 41) / 100)) + (c % 3);
  }

  #sample(account: number, c: number): void {
    const sample = `S${this.#samples.length}`;
    this.#samples.push(sample);
    this.#steps.push({ what: 'sample', account, sample, fromContents: c % 3 !== 0, ...this.#moment() });
  }

  #result(a: number, b: number, c: number): void {
    const sample =
      b % 5 === 0 ? 'no sample' : (this.#samples[a % Math.max(1, this.#samples.length)] ?? 'none');
    const moment = this.#moment();
    this.#steps.push({ what: 'result', sample, account: b % 2 === 0 ? a % STORES : null, ...moment });
    if (c % 2 === 0) this.#clean.add(moment.entry);
  }

  #word(what: 'release' | 'treated', a: number, b: number): void {
    this.#steps.push({ what, accounts: [...new Set([a % STORES, b % STORES])], ...this.#moment() });
  }

  finished(): RandomHistory {
    const state = { aboard: true, reserve: false, waste: false, grade: null };
    const stores = ACCOUNTS.slice(0, STORES).map(({ name }): [string, typeof state] => [
      name,
      { ...state, reserve: name === 'R', waste: name === 'W' },
    ]);
    const history = {
      steps: this.#steps,
      accounts: ACCOUNTS,
      heldMg: this.#held,
      stores: new Map(stores),
      units: new Map(),
    };
    return { history, clean: this.#clean, samples: this.#samples };
  }
}
