// A naive ledger: a plain map of whole milligrams that knows undo, corrections, copies and one counter, and nothing else.
import type { AnyEntry, Body } from '../../src/book/index.ts';
import type { World } from './world.ts';

/** The order in which people made up their minds. */
function late(a: AnyEntry, b: AnyEntry): number {
  return a.enteredAtMs - b.enteredAtMs || (a.site < b.site ? -1 : a.site > b.site ? 1 : a.number - b.number);
}

/**
 * What counts, by the plainest rule: an undo counts unless a later undo of it counts; the last correction that counts stands.
 */
export function whatCounts(entries: readonly AnyEntry[]): AnyEntry[] {
  const byId = new Map(entries.map((entry) => [entry.id, entry]));
  const isUndone = (id: string): boolean =>
    entries.some((other) => {
      if (other.kind !== 'undo' || other.body.target !== id || other.id === id) return false;
      const target = byId.get(id);
      return !(target?.kind === 'undo' && late(other, target) < 0) && !isUndone(other.id);
    });
  return entries
    .filter(({ id }) => !isUndone(id))
    .map((entry) => {
      const correction = entries
        .filter(
          (other) => other.kind === 'correction' && other.body.target === entry.id && !isUndone(other.id),
        )
        .sort(late)
        .at(-1);
      return correction?.kind === 'correction'
        ? ({ ...entry, body: correction.body.body } as AnyEntry)
        : entry;
    })
    .sort(
      (a, b) =>
        a.happenedAtMs - b.happenedAtMs || (a.site < b.site ? -1 : a.site > b.site ? 1 : a.number - b.number),
    );
}

export class NaiveLedger {
  readonly balances = new Map<string, number>();
  /** Milligrams that the tap gave by its counter, and by single uses since the counter was read. */
  tapMg = 0;
  #singleMg = 0;
  #counted = 0;
  #litresPerCount: number;
  readonly #aboard = new Set<string>();
  readonly #world: World;
  readonly #moved: Body<'movement'>[] = [];

  constructor(world: World, entries: readonly AnyEntry[]) {
    this.#world = world;
    this.#litresPerCount = world.tap.litresPerCount;
    for (const name of world.stores) this.#aboard.add(name);
    const counting = whatCounts(entries);
    for (const entry of counting) this.#fold(entry, counting);
  }

  get tapInAllMg(): number {
    return this.tapMg + this.#singleMg;
  }

  #post(from: string, to: string, massMg: number): void {
    const end = (name: string) =>
      this.#aboard.has(name) ||
      ['outside', 'unaccounted', 'lost', 'people'].includes(name) ||
      name.startsWith('line ')
        ? name
        : 'unplaced';
    this.balances.set(end(from), (this.balances.get(end(from)) ?? 0) - massMg);
    this.balances.set(end(to), (this.balances.get(end(to)) ?? 0) + massMg);
  }

  #setTo(store: string, massMg: number): void {
    this.#aboard.add(store);
    this.#post('outside', store, massMg - (this.balances.get(store) ?? 0));
  }

  #fold(entry: AnyEntry, counting: readonly AnyEntry[]): void {
    switch (entry.kind) {
      case 'opening':
        for (const { store, amount } of entry.body.stores) this.#setTo(store, amount.massMg);
        // What was drunk is drunk; the counter begins anew.
        this.tapMg += this.#singleMg;
        this.#singleMg = 0;
        return;
      case 'movement':
        this.#move(entry.body, entry, counting);
        return;
      case 'run-pause':
      case 'run-finish':
        this.#run(entry.body, entry.kind === 'run-pause' ? 300_000 : 0);
        return;
      case 'push':
        for (const leg of entry.body.from)
          this.#post(leg.store, entry.body.to[0]?.store ?? '', leg.amount.massMg);
        return;
      case 'sample':
        if (entry.body.store !== undefined && this.#aboard.has(entry.body.store))
          this.#post(entry.body.store, 'outside', entry.body.volumeMg ?? 0);
        return;
      case 'visit-berth':
        for (const { store, amount } of entry.body.stores) this.#setTo(store, amount?.massMg ?? 0);
        return;
      case 'visit-depart': {
        const store = entry.body.visit.replace('Skiff ', 'X-');
        if (this.#aboard.has(store)) this.#post(store, 'outside', this.balances.get(store) ?? 0);
        this.#aboard.delete(store);
        return;
      }
      case 'day-line':
        this.#read(entry.body.readings, true);
        return;
      case 'declared-empty':
        this.#read(entry.body.counters, false);
        return;
      case 'instrument-calibrated':
        if (entry.body.instrument === this.#world.tap.counter)
          this.#litresPerCount = entry.body.litresPerCount ?? this.#litresPerCount;
        return;
      case 'instrument-replaced':
        if (entry.body.instrument === this.#world.tap.counter) this.#replace(entry.body);
        return;
      default:
    }
  }

  #move(body: Body<'movement'>, entry: AnyEntry, counting: readonly AnyEntry[]): void {
    const { from, to, amount } = body;
    if (from === this.#world.tap.unit) {
      this.#singleMg += amount.massMg;
      // All that the tap gives is people's; what went elsewhere they have given on.
      this.#post('people', to, amount.massMg);
      return;
    }
    const decided = counting
      .filter((other) => other.kind === 'duplicate-decision' && other.body.second === entry.id)
      .sort(late)
      .at(-1);
    const isCopy = this.#moved.some(
      (other) => other.from === from && other.to === to && other.amount.massMg === amount.massMg,
    );
    this.#moved.push(body);
    const counts =
      decided?.kind === 'duplicate-decision' ? decided.body.decision === 'both are true' : !isCopy;
    if (counts) this.#post(from, to, amount.massMg);
  }

  #run({ run, from = '', to = '', amount }: Body<'run-pause'> | Body<'run-finish'>, lineMg: number): void {
    const inLine = Math.min(lineMg, amount.massMg);
    this.#post(from, to, amount.massMg - inLine);
    this.#post(`line ${run}`, to, this.balances.get(`line ${run}`) ?? 0);
    this.#post(from, `line ${run}`, inLine);
  }

  #read(readings: Body<'day-line'>['readings'], isLine: boolean): void {
    const value = readings.find(({ instrument }) => instrument === this.#world.tap.counter)?.value ?? null;
    if (value === null) return;
    const fell = value < this.#counted;
    if (fell && !isLine) return;
    if (!fell)
      this.tapMg += Math.round((value - this.#counted) * (this.#litresPerCount * this.#world.mgPerL));
    else this.tapMg += this.#singleMg;
    this.#singleMg = 0;
    this.#counted = isLine ? 0 : value;
  }

  /** The old one is read, and then the new one stands where it stands. What was drunk since is drunk. */
  #replace({ instrument, endedAt = null, startsAt }: Body<'instrument-replaced'>): void {
    this.#read([{ instrument, value: endedAt }], false);
    this.tapMg += this.#singleMg;
    this.#singleMg = 0;
    this.#counted = startsAt;
  }
}
