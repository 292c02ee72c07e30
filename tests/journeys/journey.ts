// Journeys: a list of small acts becomes the entries of a story, with late ones, copies, undo and corrections.
import { type AnyEntry, type Body, type Kind, kindVersion } from '../../src/book/index.ts';
import type { Act } from './acts.ts';
import { Meters } from './meters.ts';
import { at, idOf } from './told.ts';
import type { World } from './world.ts';

export { type Act, anyJourney } from './acts.ts';

const MINUTE_MS = 60_000;

/** A story: its entries in the order in which they were written down, from two sites. */
export interface Journey {
  readonly world: World;
  readonly arrived: readonly AnyEntry[];
}

interface Written {
  readonly entry: Omit<AnyEntry, 'number' | 'enteredAtMs'>;
  readonly arrivesAfter: number;
}

/** Writes the entries of a story. Numbers and times of writing are given in the order of arrival. */
export function journeyOf(world: World, acts: readonly Act[]): Journey {
  const teller = new Teller(world);
  teller.begin();
  for (const act of acts) teller.tell(act);
  return { world, arrived: arrive(teller.written) };
}

function arrive(written: readonly Written[]): AnyEntry[] {
  const order = written
    .map((each, k) => ({ ...each, k }))
    .sort((x, y) => x.arrivesAfter - y.arrivesAfter || x.k - y.k);
  const numbers = new Map<string, number>();
  let nowMs = 0;
  return order.map(({ entry }) => {
    nowMs = Math.max(nowMs, entry.happenedAtMs);
    const number = (numbers.get(entry.site) ?? 0) + 1;
    numbers.set(entry.site, number);
    return { ...entry, number, enteredAtMs: nowMs } as AnyEntry;
  });
}

type Of<K extends Kind> = { readonly kind: K; readonly body: Body<K> };

class Teller {
  readonly written: Written[] = [];
  readonly #world: World;
  readonly #meters: Meters;
  readonly #onPort = new Map<string, number>();
  readonly #copied = new Set<string>();
  #nowMs: number;
  #acts = 0;
  #visits = 0;

  constructor(world: World) {
    this.#world = world;
    this.#meters = new Meters(world);
    this.#nowMs = world.opening.asOfMs;
  }

  begin(): void {
    this.#write({ kind: 'outpost', body: { text: this.#world.outpost } }, 0);
    this.#write({ kind: 'opening', body: this.#world.opening }, 0);
  }

  tell(act: Act): void {
    this.#acts += 1;
    this.#nowMs += act.minutes * MINUTE_MS;
    this.#meters.run(act.minutes, act.c / 999);
    this[act.what](act);
  }

  /** Amounts are all different, so that only a copy looks like a copy. */
  #amount(choice: number): { massMg: number; raw: { value: number; unit: string; mgPerUnit: number } } {
    const massMg = 20_000 * choice + this.#acts;
    return { massMg, raw: { value: massMg / this.#world.mgPerL, unit: 'L', mgPerUnit: this.#world.mgPerL } };
  }

  #store(choice: number): string {
    const { stores } = this.#world;
    const all = [...stores, ...Array.from({ length: this.#visits }, (_, k) => `X-${k + 1}`)];
    return all[choice % all.length] ?? '';
  }

  #write<K extends Kind>({ kind, body }: Of<K>, lateness: number, more: Partial<AnyEntry> = {}): void {
    const k = this.written.length;
    const entry = {
      id: idOf(at(0, 0), k + 1),
      site: 'holm',
      version: kindVersion(kind),
      kind,
      happenedAtMs: this.#nowMs,
      happenedOffsetMin: 0,
      enteredOffsetMin: 0,
      by: 'keeper',
      origin: { format: 'journey', ref: `J${k + 1}` },
      ...more,
      body,
    };
    this.written.push({ entry: entry as unknown as Written['entry'], arrivesAfter: k + lateness });
  }

  move({ a, b, c, late: lateness }: Act): void {
    const ends = ['outside', 'unaccounted', 'lost'];
    const from = this.#store(a);
    const to = c % 5 === 0 ? (ends[b % ends.length] ?? 'outside') : this.#store(b);
    this.#write(
      { kind: 'movement', body: { from, to, amount: this.#amount(c % 400) } },
      lateness,
      c % 7 === 0 ? { site: 'ground', by: 'planner' } : {},
    );
  }

  drink({ a, late: lateness }: Act): void {
    this.#write(
      {
        kind: 'movement',
        body: { from: this.#world.tap.unit, to: 'people', amount: this.#amount(a % 40), use: 'drink' },
      },
      lateness,
    );
  }

  use({ a, b, late: lateness }: Act): void {
    this.#write(
      {
        kind: 'movement',
        body: { from: this.#store(a), to: 'people', amount: this.#amount(b % 60), use: 'hygiene' },
      },
      lateness,
    );
  }

  nowhere({ a, b, late: lateness }: Act): void {
    this.#write(
      { kind: 'movement', body: { from: this.#store(a), to: 'no such', amount: this.#amount(b % 60) } },
      lateness,
    );
  }

  /** Measured by two means or three, of which one now and then tells something else. */
  twice({ a, b, c, late: lateness }: Act): void {
    const amount = this.#amount(40 + (c % 300));
    const other = (kg: number) => {
      const massMg = amount.massMg + Math.round(kg * 1e6);
      return { massMg, raw: { value: massMg, unit: 'mg', mgPerUnit: 1 } };
    };
    const alsoRead = [
      { amount: { ...other(((b % 7) - 3) / 20), uMg: 100_000 }, method: 'weight before and after' },
      { amount: other(c % 6 === 0 ? 3 : 0.1), instrument: 'fill-meter' },
    ].slice(0, 1 + (b % 2));
    const body = { from: this.#store(a), to: this.#store(b), amount, instrument: 'fill-meter', alsoRead };
    this.#write({ kind: 'movement', body }, lateness);
  }

  #instrument(choice: number): string {
    const { counters, spots } = this.#world;
    const all = [...counters, ...spots].map(({ id }) => id);
    return [...all, 'fill-meter', 'balance', 'no such'][choice % (all.length + 3)] ?? '';
  }

  calibrate({ a, b, c, late: lateness }: Act): void {
    const instrument = this.#instrument(a);
    const doubts = {
      ...(b % 2 === 0 && { calibrationRelative: 0.002 + (c % 10) / 1000 }),
      ...(b % 3 === 0 && { calibrationAbsolute: 0.05 }),
      ...(c % 3 === 0 && instrument === this.#world.tap.counter && { litresPerCount: 0.0247 }),
    };
    this.#write({ kind: 'instrument-calibrated', body: { instrument, ...doubts } }, lateness);
  }

  /** Somebody reads the old one of the tap; of the others not always. */
  replace({ a, b, c, late: lateness }: Act): void {
    const { counters, tap } = this.#world;
    const { id = '' } = counters[a % counters.length] ?? {};
    const isRead = id === tap.counter || b % 2 === 0;
    const endedAt = isRead ? this.#meters.read(id) : null;
    const startsAt = c % 20;
    this.#meters.replace(id, startsAt);
    const body = { instrument: id, serial: `N-${this.#acts}`, endedAt, startsAt };
    this.#write({ kind: 'instrument-replaced', body }, lateness);
  }

  /** A line now and then has no reading of one counter, or of the air. */
  line({ a, b, late: lateness }: Act): void {
    const { counters, spots } = this.#world;
    const missing = new Set(a % 4 === 0 ? [counters[b % counters.length]?.id ?? ''] : []);
    const readings = [
      ...counters.map(({ id }) => ({
        instrument: id,
        value: missing.has(id) ? null : this.#meters.read(id),
      })),
      ...spots.map(({ id, least, most }) => ({
        instrument: id,
        value: a % 7 === 0 ? null : least + ((most - least) * (b % 100)) / 100,
      })),
    ];
    const day = Math.floor((this.#nowMs - at(1, 0)) / (1440 * MINUTE_MS)) + 1;
    this.#write(
      { kind: 'day-line', body: { day, peopleAboard: this.#world.opening.peopleAboard, readings } },
      lateness,
    );
    this.#meters.line(missing);
  }

  /** The store on a port is called empty, with its counters, and the next one is hooked up. */
  swap({ a, b, late: lateness }: Act): void {
    const { ports } = this.#world;
    const place = ports[a % ports.length];
    if (place === undefined) return;
    const turn = this.#onPort.get(place.port) ?? 0;
    this.#onPort.set(place.port, turn + 1);
    const [old, next] = [
      place.stores[turn % place.stores.length] ?? '',
      place.stores[(turn + 1) % place.stores.length] ?? '',
    ];
    const counters =
      b % 6 === 0 ? [] : place.counters.map((id) => ({ instrument: id, value: this.#meters.read(id) }));
    if (place.counters.length === 0)
      this.#write(
        { kind: 'declared-full', body: { store: old, amount: this.#amount(900), port: place.port } },
        lateness,
      );
    else this.#write({ kind: 'declared-empty', body: { store: old, port: place.port, counters } }, lateness);
    if (b % 11 !== 0) this.#write({ kind: 'hookup', body: { store: next, port: place.port } }, lateness);
  }

  weigh({ a, b, late: lateness }: Act): void {
    const amount = a % 9 === 0 ? null : this.#amount(b);
    this.#write({ kind: 'weigh', body: { store: this.#store(a), amount, instrument: 'balance' } }, lateness);
  }

  full({ a, late: lateness }: Act): void {
    this.#write(
      { kind: 'declared-full', body: { store: this.#store(a), amount: this.#amount(960) } },
      lateness,
    );
  }

  hold({ a, b, c, late: lateness }: Act): void {
    this.#write(
      {
        kind: 'hold',
        body: {
          hold: `Q-${c % 3}`,
          stores: [this.#store(a)],
          conditional: [this.#store(b)],
          reason: 'count',
        },
      },
      lateness,
    );
  }

  release({ a, b, c, late: lateness }: Act): void {
    this.#write(
      {
        kind: 'release',
        body: { hold: `Q-${c % 3}`, stores: [...new Set([this.#store(a), this.#store(b)])], values: [] },
      },
      lateness,
    );
  }

  berth({ b, late: lateness }: Act): void {
    this.#visits += 1;
    const store = {
      store: `X-${this.#visits}`,
      kind: 'vehicleTank',
      capacityL: 200,
      usableRemainderL: 6,
      grade: b % 2 === 0 ? 'drinking' : 'technical',
      amount: { ...this.#amount(9000), uMg: 2_000_000 },
    };
    this.#write(
      { kind: 'visit-berth', body: { visit: `Skiff ${this.#visits}`, peopleArrive: 0, stores: [store] } },
      lateness,
    );
  }

  depart({ a, late: lateness }: Act): void {
    if (this.#visits === 0) return;
    this.#write(
      { kind: 'visit-depart', body: { visit: `Skiff ${(a % this.#visits) + 1}`, peopleDepart: 0, took: [] } },
      lateness,
    );
  }

  /** Takes back anything that was told, an undo or a correction among it; sometimes dated before it. */
  undo({ a, b, late: lateness }: Act): void {
    const target = this.written[2 + (a % Math.max(1, this.written.length - 2))];
    if (target === undefined) return;
    this.#write(
      { kind: 'undo', body: { target: target.entry.id } },
      lateness,
      b % 8 === 0 ? { happenedAtMs: this.#nowMs - 2000 * MINUTE_MS } : {},
    );
  }

  correct({ a, b, c, late: lateness }: Act): void {
    const moved = this.written.filter(({ entry }) => entry.kind === 'movement');
    const target = moved[a % Math.max(1, moved.length)];
    if (target === undefined) return;
    const body = {
      ...(target.entry.body as Body<'movement'>),
      amount: this.#amount(c % 400),
      ...(b % 3 === 0 && { to: this.#store(b) }),
    };
    this.#write({ kind: 'correction', body: { target: target.entry.id, reason: 'slip', body } }, lateness);
  }

  /** The ground's copy of a movement: minutes later, or by its own clock. One copy of each. */
  copy({ a, b, late: lateness }: Act): void {
    const moved = this.written.filter(
      ({ entry }) =>
        entry.kind === 'movement' &&
        entry.source === undefined &&
        (entry.body as Body<'movement'>).from !== this.#world.tap.unit,
    );
    const target = moved[a % Math.max(1, moved.length)]?.entry;
    if (target === undefined || this.#copied.has(target.id)) return;
    this.#copied.add(target.id);
    const happenedAtMs = target.happenedAtMs + (b % 2 === 0 ? 5 : 330) * MINUTE_MS;
    this.#write({ kind: 'movement', body: target.body as Body<'movement'> }, lateness, {
      by: 'planner',
      source: 'copied on the ground',
      site: 'ground',
      happenedAtMs,
    });
  }

  decide({ a, b, late: lateness }: Act): void {
    const copies = this.written.filter(({ entry }) => entry.source !== undefined);
    const second = copies[a % Math.max(1, copies.length)]?.entry;
    const first = this.written.find(
      ({ entry }) => entry !== second && entry.source === undefined && entry.body === second?.body,
    )?.entry;
    if (first === undefined || second === undefined) return;
    this.#write(
      {
        kind: 'duplicate-decision',
        body: { first: first.id, second: second.id, decision: b % 2 === 0 ? 'merge' : 'both are true' },
      },
      lateness,
    );
  }

  run({ a, b, c, late: lateness }: Act): void {
    const run = `run ${this.#acts}`;
    const ends = { from: this.#store(a), to: this.#store(b) };
    this.#write({ kind: 'run-start', body: { run, ...ends } }, lateness);
    this.#write(
      { kind: 'run-pause', body: { run, ...ends, amount: this.#amount(c % 200), lineContentMg: 300_000 } },
      lateness,
    );
    this.#nowMs += 30 * MINUTE_MS;
    if (c % 4 !== 0)
      this.#write({ kind: 'run-finish', body: { run, ...ends, amount: this.#amount(c % 300) } }, lateness);
  }

  push({ a, b, c, late: lateness }: Act): void {
    const from = [this.#store(a), this.#store(a + 1)].map((store, k) => ({
      store,
      amount: this.#amount((c + k) % 200),
    }));
    const massMg = from.reduce((sum, leg) => sum + leg.amount.massMg, 0);
    const amount = { massMg, raw: { value: massMg, unit: 'mg', mgPerUnit: 1 } };
    this.#write({ kind: 'push', body: { from, to: [{ store: this.#store(b), amount }], amount } }, lateness);
  }

  sample({ a, late: lateness }: Act): void {
    this.#write(
      {
        kind: 'sample',
        body: { store: this.#store(a), sample: `S-${this.#acts}`, tests: [], volumeMg: 100_000 + this.#acts },
      },
      lateness,
    );
  }

  count({ a, b, c, late: lateness }: Act): void {
    const readings = [...new Set([this.#store(a), this.#store(b)])].map((store) => ({
      store,
      amount: this.#amount(c),
      method: 'counted',
    }));
    this.#write({ kind: 'stock-count', body: { count: `count ${this.#acts}`, readings } }, lateness);
  }

  relabel({ a, b, late: lateness }: Act): void {
    const grades = ['drinking', 'technical', 'waste'];
    this.#write(
      {
        kind: 'relabel',
        body: {
          store: this.#store(a),
          fromLabel: 'any',
          toGrade: grades[b % 3] ?? 'waste',
          twoPersons: true,
        },
      },
      lateness,
    );
  }

  claim({ a, late: lateness }: Act): void {
    this.#write(
      {
        kind: 'source-change',
        body: {
          counter: this.#world.tap.counter,
          store: 'R1',
          sinceMs: 0,
          amount: this.#amount(a % 60),
          reserve: true,
        },
      },
      lateness,
    );
  }

  /** Stocks told anew in the middle. */
  opening({ a, late: lateness }: Act): void {
    if (a % 6 !== 0) return;
    this.#write(
      { kind: 'opening', body: { ...this.#world.opening, asOfMs: this.#nowMs, counters: [] } },
      lateness,
    );
  }

  /** A day or a month is closed: its paper stands, and the past goes on. */
  close({ a, b, late: lateness }: Act): void {
    const day = Math.floor((this.#nowMs - at(1, 0)) / (1440 * MINUTE_MS)) - (b % 3);
    const body = { day, what: a % 4 === 0 ? ('month' as const) : ('day' as const), figures: [] };
    this.#write({ kind: 'day-close', body }, lateness);
  }
}
