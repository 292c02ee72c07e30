// A synthetic book of about sixty states: containers, tanks and meters at Skerry, and seeded entries of which one in ten is a reading.
import type { AnyEntry } from '../../src/book/index.ts';
import { entryId } from '../../src/book/index.ts';
import { type Chance, seededChance } from '../../src/ground/maths/index.ts';
import { type Outpost, readOutpost } from '../../src/outpost/index.ts';

const CONTAINERS = 40;
const METERS = 10;
const MG_PER_KG = 1_000_000;
const DAY_ONE_MS = Date.UTC(2147, 0, 1);
const MINUTE_MS = 60_000;
const ENTRIES_A_DAY = 140;

const two = (n: number): string => String(n).padStart(2, '0');
const containers = Array.from({ length: CONTAINERS }, (_, at) => `C-${two(at + 1)}`);
const tanks = ['T-1', 'T-2', 'T-3'];
const meters = Array.from({ length: METERS }, (_, at) => `meter-${at + 1}`);

export const OUTPOST = `format: waterwright outpost
version: 1
outpost:
  name: Skerry
  kind: hut under a dome
  gravity: partial
  clockOffset: '+00:00'
  dayOne: 2147-01-01
  dayLineAt: '21:00'
  people: 4
  cabinVolumeM3: 90
  cabinPressureAbsoluteKPa: 101.3
  cabinTemperatureC: 20
  waterDensityKgPerM3: 1000
  waterDensityAtC: 20
places:
  - { id: hut }
grades:
  - { id: drinking, letter: D, name: drinking water, rank: 1, biocide: none, mayFlowInto: [drinking, waste] }
  - { id: waste, letter: W, name: waste, rank: 2, mayFlowInto: [waste], terminal: true }
biocides: []
stores:
  - { ids: [${tanks.join(', ')}], kind: tank, place: hut, capacityL: 400, usableRemainderL: 4, usableRemainderDoubtL: 0.5, holds: drinking,
      gaugedBy: gas injection, gauge: gas-injection, ratingOverCabinKPa: 100,
      gauging: { tankVolumeL: 400, tankVolumeDoubtL: 2, shellDoubtL: 2, bladderSeatingDoubtL: 1, injectionDoubtL: 1 } }
  - { id: R-1, kind: tank, place: hut, capacityL: 100, usableRemainderL: 4, usableRemainderDoubtL: 0.5, holds: drinking, reserve: true,
      gaugedBy: gas injection, gauge: gas-injection, ratingOverCabinKPa: 100,
      gauging: { tankVolumeL: 100, tankVolumeDoubtL: 2, shellDoubtL: 2, bladderSeatingDoubtL: 1, injectionDoubtL: 1 } }
  - { ids: [${containers.join(', ')}], kind: container, place: hut, capacityL: 22, fillL: 20.5, usableRemainderL: 0.6,
      usableRemainderDoubtL: 0.2, holds: drinking, gaugedBy: weighing, gauge: balance, ratingOverCabinKPa: 70 }
ports: []
instruments:
  - { id: balance, measures: content, unit: L, random: { absolute: 0.17 }, calibration: { absolute: 0.1 }, statedDoubt: 0.2,
      reading: content, logMethod: balance }
  - { id: gas-injection, measures: content, unit: L, doubtFromStore: true, statedDoubt: 3, reading: content }
${meters.map((id) => `  - { id: ${id}, measures: flow, unit: L, random: { absolute: 0.03 }, calibration: { relative: 0.01 }, reading: amount, logMethod: ${id} }`).join('\n')}
units: []
norms: { people: 4, vapourCollectedLPerPersonDay: 1.7, tapLPerPersonDay: 2.7, flushesPerPersonDay: 6 }
normFlows: []
hoses: []
couplings: []
people:
  - { office: chief, at: aboard }
  - { office: keeper, at: aboard }
  - { office: second, at: aboard }
  - { office: medic, at: aboard, releases: true }
secondPersonActs: [relabel, waiver, treatment]
policy:
  reserve: { floorL: 0, counts: [R-1], mayBeDrawnBy: chief }
  planningLPerPersonDay: 2.7
  survivalLPerPersonDay: 2
  deliveredWater: { usableOnLoadersCertificate: true, releasedForReserveOnlyByOwnSample: true }
`;

export function syntheticOutpost(): Outpost {
  const read = readOutpost(OUTPOST, { file: 'synthetic outpost of the bench' });
  if (!read.ok) throw new Error(JSON.stringify(read.findings));
  return read.outpost;
}

/** Seeded entries in their order: an opening, then movements, and one reading in ten. */
export function syntheticEntries(
  count: number,
  seed: number,
  entriesADay = ENTRIES_A_DAY,
): readonly AnyEntry[] {
  const book = new Writer(seed, Math.floor((24 * 60) / entriesADay) * MINUTE_MS);
  return Array.from({ length: count }, (_, at) => (at === 0 ? book.opening() : book.next()));
}

/** Keeps the true contents, so that what it writes makes sense. */
class Writer {
  readonly #chance: Chance;
  readonly #contentMg = new Map<string, number>();
  #number = 0;
  readonly #apartMs: number;
  #now = DAY_ONE_MS;

  constructor(seed: number, apartMs: number) {
    this.#chance = seededChance({ seed });
    this.#apartMs = apartMs;
  }

  opening(): AnyEntry {
    for (const store of containers) this.#contentMg.set(store, 12 * MG_PER_KG);
    for (const store of tanks) this.#contentMg.set(store, 200 * MG_PER_KG);
    const stores = [...this.#contentMg].map(([store, massMg]) => ({
      store,
      amount: { ...amount(massMg), uMg: MG_PER_KG / 4 },
      grade: 'drinking',
    }));
    const body = {
      asOfMs: DAY_ONE_MS,
      peopleAboard: 4,
      stores,
      ports: [],
      counters: [],
      service: [],
      visits: [],
    };
    return this.#entry('opening', body);
  }

  next(): AnyEntry {
    this.#now += this.#apartMs;
    return this.#chance.uniform() < 0.1 ? this.#weigh() : this.#movement();
  }

  #weigh(): AnyEntry {
    const store = this.#one(containers);
    const massMg = Math.round((this.#contentMg.get(store) ?? 0) + 0.2 * MG_PER_KG * this.#chance.normal());
    return this.#entry('weigh', { store, amount: amount(Math.max(0, massMg)), method: 'balance' });
  }

  /** From a fuller store to an emptier one, so that none runs dry or over in a year. */
  #movement(): AnyEntry {
    const all = [...containers, ...tanks];
    const [one, other] = [this.#one(all), this.#one(all)];
    const isOrdered = this.#share(one) >= this.#share(other);
    const [from, to] = isOrdered ? [one, other] : [other, one];
    const instrument = this.#one(meters);
    const massMg = Math.round((0.05 + 0.5 * this.#chance.uniform()) * MG_PER_KG);
    if (from !== to) {
      this.#contentMg.set(from, (this.#contentMg.get(from) ?? 0) - massMg);
      this.#contentMg.set(to, (this.#contentMg.get(to) ?? 0) + massMg);
    }
    return this.#entry('movement', { from, to, amount: amount(massMg), instrument });
  }

  #share(store: string): number {
    return (this.#contentMg.get(store) ?? 0) / (tanks.includes(store) ? 400 : 22);
  }

  #one(names: readonly string[]): string {
    return names[this.#chance.integerBelow(names.length)] ?? '';
  }

  #entry(kind: AnyEntry['kind'], body: unknown): AnyEntry {
    this.#number += 1;
    const number = this.#number;
    const id = entryId(
      this.#now,
      Uint8Array.from({ length: 10 }, (_, at) => (number >>> (8 * (at % 4))) & 0xff),
    );
    const when = {
      happenedAtMs: this.#now,
      happenedOffsetMin: 0,
      enteredAtMs: this.#now,
      enteredOffsetMin: 0,
    };
    return {
      id,
      site: 'skerry',
      number,
      version: 1,
      kind,
      ...when,
      by: 'keeper',
      body,
    } as unknown as AnyEntry;
  }
}

function amount(massMg: number) {
  return { massMg, raw: { value: massMg / MG_PER_KG, unit: 'L', mgPerUnit: MG_PER_KG } };
}
