// Random histories of Holm's water: every act that bears on what may be counted on, forbidden ones as facts.
import { applyEntry, Fold } from '../../../src/account/index.ts';
import type { AnyEntry, Body, Kind } from '../../../src/book/index.ts';
import { type Chance, seededChance } from '../../../src/ground/maths/index.ts';
import type { OutpostIndex } from '../../../src/outpost/index.ts';
import { at, holmOpening, litres } from '../../journeys/told.ts';
import { CHOICES } from './world.ts';

const HOUR_MS = 3_600_000;
const STORES = [
  'C-01',
  'C-02',
  'C-03',
  'C-04',
  'C-01',
  'C-04',
  'PB',
  'R1',
  'KB',
  'C-05',
  'FA',
  'W-01',
  'W-02',
];
const GRADES = ['drinking', 'drinking', 'technical', 'technical', 'iodine', 'raw', 'waste'];
const HOLDS = ['Q-1', 'Q-2', 'Q-3'];
const SECOND = { second: { office: 'second', confirmation: 'by own code' } } as const;

type Values = Body<'result'>['values'];

export class History {
  readonly fold: Fold;
  readonly entries: AnyEntry[] = [];
  readonly #chance: Chance;
  #nowMs = at(0, 21);
  #samples = 0;
  #condensateL = 990;
  #productL = 0;

  constructor(index: OutpostIndex, seed: number) {
    this.fold = new Fold(index.outpost, { estimating: false, index });
    this.#chance = seededChance({ seed });
  }

  get nowMs(): number {
    return this.#nowMs;
  }

  /** The entry of the opening, or of the next act. */
  next(): AnyEntry {
    if (this.entries.length === 0) return this.#opening();
    // Most acts follow on each other, some after months.
    const hours = this.#oneIn(25) ? 24 * (20 + this.#below(60)) : this.#oneIn(3) ? this.#below(60) : 1;
    this.#nowMs += hours * HOUR_MS + this.#below(50) * 60_000;
    return this.#act();
  }

  apply(entry: AnyEntry): void {
    applyEntry(this.fold, entry);
  }

  #below(count: number): number {
    return this.#chance.integerBelow(count);
  }

  #oneIn(count: number): boolean {
    return this.#below(count) === 0;
  }

  #pick<T>(list: readonly T[]): T {
    return list[this.#below(list.length)] as T;
  }

  #tell<K extends Kind>(kind: K, body: Body<K>, more: Partial<AnyEntry> = {}): AnyEntry {
    const number = this.entries.length + 1;
    const entry = {
      ...{ id: `E${number}`, site: 'holm', number, version: 1, kind, by: 'keeper' },
      ...{ happenedAtMs: this.#nowMs, happenedOffsetMin: 0, enteredAtMs: this.#nowMs, enteredOffsetMin: 0 },
      ...more,
      body,
    } as AnyEntry;
    this.entries.push(entry);
    return entry;
  }

  #opening(): AnyEntry {
    const stores = holmOpening().stores.map((told) =>
      this.#oneIn(8) && told.store.startsWith('C') ? { ...told, grade: this.#pick([null, ...GRADES]) } : told,
    );
    return this.#tell('opening', holmOpening({ stores }));
  }

  #act(): AnyEntry {
    const acts: readonly [number, () => AnyEntry][] = [
      [24, () => this.#movement()],
      [6, () => this.#run()],
      [8, () => this.#meter()],
      [7, () => this.#declared()],
      [7, () => this.#hold()],
      [8, () => this.#sample()],
      [11, () => this.#result()],
      [16, () => this.#release()],
      [5, () => this.#waiver()],
      [6, () => this.#grade()],
      [5, () => this.#treatment()],
      [4, () => this.#dose()],
      [4, () => this.#limits()],
      [4, () => this.#comes()],
      [3, () => this.#hookup()],
      [2, () => this.#setAside()],
    ];
    const all = acts.reduce((sum, [weight]) => sum + weight, 0);
    let at = this.#below(all);
    for (const [weight, act] of acts) {
      if (at < weight) return act();
      at -= weight;
    }
    throw new Error('weights do not add up');
  }

  #movement(): AnyEntry {
    const pools = ['unaccounted', 'outside', 'people', 'unplaced', 'tap', 'tap feed'];
    const from = this.#oneIn(7) ? this.#pick(pools) : this.#pick(STORES);
    const to = this.#oneIn(9) ? this.#pick(['people', 'outside', 'waste port']) : this.#pick(STORES);
    const other = to === from ? 'C-03' : to;
    return this.#tell('movement', { from, to: other, amount: litres(1 + this.#below(9)) });
  }

  /** Of two names, so that hoses with water in them are there again and again. */
  #run(): AnyEntry {
    const run = this.#pick(['RUN-1', 'RUN-2']);
    const ends = { run, from: this.#pick(STORES), to: this.#pick(STORES) };
    if (this.#oneIn(3)) return this.#tell('run-finish', { ...ends, amount: litres(this.#below(4)) });
    const amount = litres(1 + this.#below(3));
    const lineContentMg = this.#oneIn(2) ? amount.massMg : 300_000;
    return this.#tell('run-pause', { ...ends, amount, lineContentMg });
  }

  #meter(): AnyEntry {
    this.#condensateL += this.#below(6);
    this.#productL = 2 + this.#below(7);
    const counters = [
      { instrument: 'condensate', value: this.#condensateL % 1000 },
      { instrument: 'product', value: this.#productL },
      { instrument: 'flushes', value: 12 },
      { instrument: 'strokes', value: 40 },
    ];
    if (this.#oneIn(3)) return this.#tell('meter', { readings: counters });
    const day = Math.round((this.#nowMs - at(1, 0)) / (24 * HOUR_MS));
    return this.#tell('day-line', { day, peopleAboard: 2, readings: counters });
  }

  #declared(): AnyEntry {
    const store = this.#pick(STORES);
    if (this.#oneIn(5)) return this.#tell('declared-full', { store, amount: litres(20) });
    const flowStopped = this.#oneIn(4) ? { flowStopped: this.#oneIn(2) } : {};
    return this.#tell('declared-empty', { store, counters: [], ...flowStopped });
  }

  #some(): string[] {
    return [...new Set([this.#pick(STORES), ...(this.#oneIn(3) ? [this.#pick(STORES)] : [])])];
  }

  /** A hold that is open somewhere, or one of three names. */
  #holdName(): string {
    const open = [...this.fold.stores.values()].flatMap(({ hold, holdsBehind, conditional }) =>
      [hold, ...holdsBehind, conditional].flatMap((one) => (one === null ? [] : [one.hold])),
    );
    return open.length === 0 || this.#oneIn(4) ? this.#pick(HOLDS) : this.#pick(open);
  }

  #hold(): AnyEntry {
    if (this.#oneIn(6))
      return this.#tell('parked', { hold: this.#holdName(), owner: 'medic', untilDay: this.#dayAhead() });
    const conditional = this.#oneIn(2) ? [this.#pick(STORES)] : [];
    return this.#tell('hold', {
      hold: this.#pick(HOLDS),
      stores: this.#some(),
      conditional,
      reason: 'taste',
    });
  }

  #dayAhead(): number {
    return Math.floor((this.#nowMs - at(1, 0)) / (24 * HOUR_MS)) + 1 + this.#below(6);
  }

  #sample(): AnyEntry {
    const sample = `S-${++this.#samples}`;
    const told = { sample, tests: [] };
    if (this.#oneIn(6))
      return this.#tell('sample', { ...told, point: this.#pick(['purifier', 'tap feed', 'galley']) });
    const drawn = this.#oneIn(4) ? { drawnFrom: 'fill hose' } : {};
    return this.#tell('sample', { ...told, store: this.#pick(STORES), ...drawn });
  }

  #values(): Values {
    const passes = !this.#oneIn(3);
    const silver = passes ? 0.08 : this.#pick([0.03, 0.2, 0.5]);
    const unit = this.#oneIn(12) ? 'NTU' : this.#oneIn(4) ? 'µg/L' : 'mg/L';
    const value = unit === 'µg/L' ? Math.round(silver * 1000) : silver;
    const below = this.#oneIn(12) ? { below: true } : {};
    const all: Values = [
      { parameter: 'silver', value, unit, ...below },
      { parameter: 'plate count', value: passes ? 4 : this.#pick([50, 51, 140]), unit: 'CFU/mL' },
      { parameter: 'TOC', value: passes ? 1 : this.#pick([2.9, 3.1]), unit: 'mg/L', basis: 'as C' },
    ];
    return this.#oneIn(6) ? [this.#pick(all)] : all;
  }

  #result(): AnyEntry {
    const sample = this.#oneIn(5) ? `L-${this.entries.length}` : `S-${1 + this.#below(this.#samples + 1)}`;
    const more = {
      ...(this.#oneIn(9) && { preliminary: true }),
      ...(this.#oneIn(9) && { custody: 'broken' as const }),
      ...(this.#oneIn(8) && { takenAtMs: this.#nowMs - this.#below(200) * HOUR_MS }),
    };
    return this.#tell('result', { sample, store: this.#pick(STORES), values: this.#values(), ...more });
  }

  #release(): AnyEntry {
    const held = [...this.fold.stores.values()].filter(
      ({ aboard, hold, release }) => aboard && (hold !== null || release === 'none'),
    );
    const stores = held.length > 0 && !this.#oneIn(4) ? [this.#pick(held).facts.id] : this.#some();
    return this.#tell(
      'release',
      {
        ...(this.#oneIn(2) && { hold: this.#holdName() }),
        stores,
        values: this.#oneIn(2) ? this.#values() : [],
        ...(this.#oneIn(3) && { untilDay: this.#dayAhead() }),
      },
      { by: 'medic' },
    );
  }

  #waiver(): AnyEntry {
    const held = [...this.fold.stores.values()].filter(({ hold }) => hold !== null);
    const one = held.length === 0 ? undefined : this.#pick(held);
    const stores = one === undefined ? this.#some() : [one.facts.id];
    const hold = one?.hold?.hold ?? this.#holdName();
    return this.#tell('waiver', { hold, stores, reason: 'none left', untilDay: this.#dayAhead() }, SECOND);
  }

  /** Down, up and to the same, by a label or by a word. */
  #grade(): AnyEntry {
    const store = this.#pick(STORES);
    const fromGrade = this.fold.stores.get(store)?.grade ?? 'drinking';
    const toGrade = this.#oneIn(3) ? fromGrade : this.#pick(GRADES);
    if (this.#oneIn(2))
      return this.#tell('relabel', { store, fromLabel: fromGrade, toGrade, twoPersons: true });
    const named = this.#oneIn(2) ? { hold: this.#holdName() } : {};
    return this.#tell('downgrade', { ...named, store, fromGrade, toGrade, values: [] });
  }

  #treatment(): AnyEntry {
    const held = [...this.fold.stores.values()].filter(({ hold }) => hold !== null);
    const store = held.length > 0 && this.#oneIn(2) ? this.#pick(held).facts.id : this.#pick(STORES);
    const recipe = this.#oneIn(5) ? this.#pick(['raw to drinking', 'boil it']) : 'technical to drinking';
    const toGrade = this.#oneIn(6) ? 'technical' : 'drinking';
    const dose = this.#oneIn(2) ? { dose: litres(0.01) } : {};
    return this.#tell('treatment', { store, recipe, toGrade, ...dose }, this.#oneIn(6) ? {} : SECOND);
  }

  #dose(): AnyEntry {
    const biocide = this.#oneIn(3) ? 'iodine' : 'silver';
    return this.#tell('dose', { stores: this.#some(), biocide, doseEach: litres(0.01) });
  }

  #limits(): AnyEntry {
    if (this.#oneIn(3)) {
      const row = { set: 'off', row: 'TOC row', atMost: 3, unit: 'mg/L', basis: 'as C' };
      return this.#tell('limit-typed', { ...row, copy: 'edition 2' });
    }
    return this.#tell('limits-chosen', { sets: [this.#pick(CHOICES)], exposureDays: 180, reason: 'medic' });
  }

  /** A vehicle with its tank comes and leaves; a container comes by hand; a stock is told anew. */
  #comes(): AnyEntry {
    const grade = this.#pick(GRADES);
    const amount = litres(5 + this.#below(15));
    const store = { capacityL: 60, usableRemainderL: 0.6, amount };
    if (this.#oneIn(6))
      return this.#tell(
        'opening',
        holmOpening({
          asOfMs: this.#nowMs,
          stores: [{ store: this.#pick(['C-01', 'C-04']), amount, grade }],
          ports: [],
        }),
      );
    if (this.#oneIn(2))
      return this.#tell('store-added', { ...store, store: 'C-05', kind: 'container', capacityL: 22, grade });
    if (this.fold.stores.get('FA')?.aboard === true)
      return this.#tell('visit-depart', { visit: 'Pannier 8', peopleDepart: 0, took: ['FA'] });
    return this.#tell('visit-berth', {
      ...{ visit: 'Pannier 8', peopleArrive: 0 },
      stores: [{ ...store, store: 'FA', kind: 'vehicleTank', grade: 'drinking' }],
    });
  }

  #hookup(): AnyEntry {
    const port = this.#pick(['tap feed', 'flush feed', 'waste port']);
    return this.#tell('hookup', { store: this.#pick(STORES), port } as Body<'hookup'>);
  }

  #setAside(): AnyEntry {
    const sample = `S-${1 + this.#below(this.#samples + 1)}`;
    return this.#tell('result-set-aside', { sample, reason: 'bottle of another store' });
  }
}
