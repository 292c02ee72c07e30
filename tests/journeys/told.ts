// Tells a fold, entry by entry, what happened at an outpost: the tests' short hand for entries.
import { type AccountFinding, applyEntry, Fold, type Position, positionOf } from '../../src/account/index.ts';
import type { Amount, AnyEntry, Body, Entry, Kind } from '../../src/book/index.ts';
import { entryId } from '../../src/book/index.ts';
import { type Outpost, readOutpost } from '../../src/outpost/index.ts';
import { HOLM, HOLM_DAY_ONE_MS, MG_PER_L } from './holm.ts';

const HOUR_MS = 3_600_000;

/** An amount as it was read in litres. */
export function litres(value: number, uL?: number): Amount {
  const raw = { value, unit: 'L', mgPerUnit: MG_PER_L };
  const massMg = Math.round(value * MG_PER_L);
  return uL === undefined ? { massMg, raw } : { massMg, raw, uMg: Math.round(uL * MG_PER_L) };
}

/** An id that is the same in every run: from an instant and a count. */
export function idOf(utcMs: number, count: number): string {
  return entryId(
    utcMs,
    Uint8Array.from({ length: 10 }, (_, at) => (count >>> (8 * (at % 4))) & 0xff),
  );
}

export function outpostOf(text: string): Outpost {
  const read = readOutpost(text, { file: 'outpost of the test' });
  if (!read.ok) throw new Error(JSON.stringify(read.findings[0]));
  return read.outpost;
}

/** Instant of an hour of a day: `at(3, 21)` is 21:00 of Day 3. */
export function at(day: number, hour = 12): number {
  return HOLM_DAY_ONE_MS + (day - 1) * 24 * HOUR_MS + Math.round(hour * HOUR_MS);
}

export type More = Partial<Omit<Entry, 'kind' | 'body' | 'happenedAtMs'>>;

/** A fold, and the entries that it was told. */
export class Told {
  readonly fold: Fold;
  readonly entries: AnyEntry[] = [];
  #now = at(0, 21);

  constructor(outpost: string | Outpost = HOLM, options: { readonly estimating?: boolean } = {}) {
    this.fold = new Fold(typeof outpost === 'string' ? outpostOf(outpost) : outpost, options);
  }

  /** Moves the clock on; entries happen at the clock's time. */
  goTo(day: number, hour = 12): this {
    this.#now = at(day, hour);
    return this;
  }

  tell<K extends Kind>(kind: K, body: Body<K>, more: More = {}): AnyEntry {
    const number = this.entries.length + 1;
    const entry = {
      id: idOf(this.#now, number),
      site: 'holm',
      number,
      version: 1,
      kind,
      happenedAtMs: this.#now,
      happenedOffsetMin: 0,
      enteredAtMs: this.#now,
      enteredOffsetMin: 0,
      by: 'keeper',
      ...more,
      body,
    } as AnyEntry;
    this.entries.push(entry);
    this.fold.watcher?.onEntry?.(this.fold, entry);
    applyEntry(this.fold, entry);
    this.fold.watcher?.onApplied?.(this.fold, entry);
    return entry;
  }

  position(): Position {
    return positionOf(this.fold, this.#now);
  }

  /** Litres in a store by the ledger alone. */
  ledgerL(store: string): number {
    return this.accountL(`store:${store}`);
  }

  accountL(account: string): number {
    return this.fold.ledger.balanceMg(account) / MG_PER_L;
  }

  /** Litres in a store as believed, and one standard deviation. */
  believed(store: string): { valueL: number; uL: number } {
    const found = this.position().stores.find(({ facts }) => facts.id === store);
    if (found === undefined) throw new Error(`${store} is not aboard`);
    return { valueL: found.massMg / MG_PER_L, uL: found.uMg / MG_PER_L };
  }

  findings(code: AccountFinding['code']): readonly AccountFinding[] {
    return this.position().findings.filter((finding) => finding.code === code);
  }
}

type OpeningBody = Body<'opening'>;

/** What stands in Holm on the evening before Day 1. */
export function holmOpening(change: Partial<OpeningBody> = {}): OpeningBody {
  const store = (id: string, amount: Amount, grade: string | null): OpeningBody['stores'][number] => ({
    store: id,
    amount,
    grade,
  });
  return {
    asOfMs: at(0, 21),
    peopleAboard: 2,
    stores: [
      store('R1', litres(150, 3), 'drinking'),
      store('C-01', litres(20, 0.25), 'drinking'),
      store('C-02', litres(20, 0.25), 'technical'),
      store('C-03', litres(0, 0.05), null),
      store('C-04', litres(18, 0.25), 'drinking'),
      store('W-01', litres(2, 0.1), 'waste'),
      store('W-02', litres(0, 0.1), 'waste'),
      store('KB', litres(4, 0.2), 'raw'),
      store('PB', litres(2, 0.2), 'drinking'),
    ],
    ports: [
      { port: 'tap feed', store: 'C-01' },
      { port: 'flush feed', store: 'C-02' },
      { port: 'waste port', store: 'W-01' },
    ],
    counters: [{ instrument: 'condensate', value: 990 }],
    service: [],
    visits: [],
    ...change,
  };
}

/** Holm, opened. */
export function holm(options: { readonly estimating?: boolean } = {}): Told {
  const told = new Told(HOLM, options);
  told.tell('opening', holmOpening());
  return told;
}

/** Readings of counters by name; null is not read. */
export function readings(values: Readonly<Record<string, number | null>>) {
  return Object.entries(values).map(([instrument, value]) => ({ instrument, value }));
}

export function dayLine(
  day: number,
  values: Readonly<Record<string, number | null>>,
  peopleAboard = 2,
): Body<'day-line'> {
  return { day, peopleAboard, readings: readings(values) };
}
