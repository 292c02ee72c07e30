// A simulated outpost on the reference network, and the product's estimator that is told what its instruments say.
import { Estimator } from '../../src/account/index.ts';
import { type Chance, seededChance } from '../../src/ground/maths/index.ts';
import {
  bodyWater,
  type DailyFlow,
  dailyFlows,
  dayToDayRelative,
  driftPerRootDay,
  type FlowInstrument,
  instruments,
  readStores,
} from './reference-network.ts';

/** How the simulated world may differ from what the estimator is told; 1 and 0 for an honest world. */
export interface World {
  /** True random errors of flows over what is declared. */
  readonly randomTimes: number;
  /** Kilograms a day that leave the potable tank unseen. */
  readonly lossKg: number;
}

export const HONEST: World = { randomTimes: 1, lossKg: 0 };

/** What is looked at: every store that is read, what the crew carries beside its norm, the dispenser's calibration, and the sum of the stores. */
export const lookedAt: readonly string[] = [
  ...readStores.map(({ name }) => name),
  'crew body water',
  'dispenser calibration (relative)',
  'sum of all stores',
];

/** What is wrong in one estimate of one day, in its standard deviations, in the order of {@link lookedAt}. */
export type Misses = readonly number[];

/** An outpost with errors of its own, drawn from the seed. */
export class Outpost {
  readonly #chance: Chance;
  readonly #world: World;
  readonly #true = new Map<string, number>();
  readonly #trueCalibration = new Map<string, number>();
  readonly #repeated: readonly number[];
  #trueBody: number;

  readonly #estimator = new Estimator();
  readonly #places = new Map<string, number>();
  readonly #calibrations = new Map<string, number>();
  readonly #offsets: readonly number[];
  /** Place of the body water's difference from its norm. */
  readonly #body: number;

  constructor(seed: number, world: World = HONEST) {
    this.#chance = seededChance({ seed });
    this.#world = world;
    this.#repeated = readStores.map(({ uRepeatedKg }) => uRepeatedKg * this.#chance.normal());
    this.#offsets = readStores.map(({ uRepeatedKg }) =>
      uRepeatedKg === 0 ? -1 : this.#estimator.add(0, uRepeatedKg * uRepeatedKg),
    );
    for (const store of readStores)
      this.#open(store.name, store.startKg, store.uReadingKg + store.uRepeatedKg);
    for (const { name, calibrationRelative: u } of instruments) {
      this.#trueCalibration.set(name, u * this.#chance.normal());
      this.#calibrations.set(name, u === 0 ? -1 : this.#estimator.add(0, u * u));
    }
    const { uKg } = bodyWater;
    this.#trueBody = uKg * this.#chance.normal();
    // Water of the people is counted from its norm.
    this.#true.set('people', this.#trueBody);
    this.#places.set('people', this.#estimator.add(0, UNKNOWN));
    this.#body = this.#estimator.add(0, uKg * uKg);
    this.#equate('people', this.#body);
  }

  /** The store stands somewhere about its start, as well known as one rough reading. */
  #open(name: string, startKg: number, uKg: number): void {
    this.#true.set(name, startKg + uKg * this.#chance.normal());
    this.#places.set(name, this.#estimator.add(startKg, uKg * uKg));
  }

  /** One day: water moves, calibrations drift, everything is read. */
  day(): void {
    for (const flow of dailyFlows) this.#move(flow);
    this.#breathe();
    this.#shift('potable tank', -this.#world.lossKg);
    for (const instrument of instruments) this.#drift(instrument);
    readStores.forEach(({ name, uReadingKg }, at) => {
      const value = this.#true.get(name)! + this.#repeated[at]! + uReadingKg * this.#chance.normal();
      const offset = this.#offsets[at]!;
      const places = [this.#places.get(name)!, ...(offset === -1 ? [] : [offset])];
      this.#estimator.read({ places, value, u: uReadingKg });
    });
  }

  /** The truth is made first, and the instrument says what makes it out of it: m = (truth − noise) / (1 + b). */
  #move({ from, to, meanKg, instrument: name }: DailyFlow): void {
    const { randomRelative, randomKg } = instruments.find((each) => each.name === name)!;
    const chance = this.#chance;
    const trueKg = this.#wanted(from, meanKg) * (1 + dayToDayRelative * chance.normal());
    const noise = (randomRelative * trueKg + randomKg) * this.#world.randomTimes * chance.normal();
    const massKg = (trueKg - noise) / (1 + this.#trueCalibration.get(name)!);
    this.#shift(from, -trueKg);
    this.#shift(to, trueKg);
    this.#estimator.move({
      from: this.#placeOf(from),
      to: this.#placeOf(to),
      calibration: this.#calibrations.get(name)!,
      massKg,
      uKg: randomRelative * Math.abs(massKg) + randomKg,
    });
  }

  /** People keep tanks near their usual content: a fuller one gives more. Where water goes by itself the mean stands. */
  #wanted(from: string | null, meanKg: number): number {
    const usual = readStores.find(({ name }) => name === from);
    if (usual === undefined || from === 'potable tank') return meanKg;
    return Math.max(0.1 * meanKg, meanKg + 0.2 * (this.#true.get(from!)! - usual.startKg));
  }

  /** Vapour: nobody measures it. It is what leaves the people's water where their bodies want it. */
  #breathe(): void {
    const { uKg, keptPerDay } = bodyWater;
    const freshKg = uKg * Math.sqrt(1 - keptPerDay * keptPerDay);
    this.#trueBody = keptPerDay * this.#trueBody + freshKg * this.#chance.normal();
    const vapourKg = this.#true.get('people')! - this.#trueBody;
    this.#shift('people', -vapourKg);
    this.#shift('cabin air', vapourKg);
    const [from, to] = [this.#placeOf('people'), this.#placeOf('cabin air')];
    this.#estimator.move({ from, to, calibration: -1, massKg: 9.4, uKg: Math.sqrt(UNKNOWN) });
    this.#estimator.fade(this.#body, keptPerDay, freshKg * freshKg);
    this.#equate('people', this.#body);
  }

  #equate(store: string, difference: number): void {
    this.#estimator.read({
      places: [this.#places.get(store)!, difference],
      weights: [1, -1],
      value: 0,
      u: 0.001,
    });
  }

  #drift({ name, calibrationRelative }: FlowInstrument): void {
    const u = driftPerRootDay * calibrationRelative;
    this.#trueCalibration.set(name, this.#trueCalibration.get(name)! + u * this.#chance.normal());
    const place = this.#calibrations.get(name)!;
    if (place !== -1) this.#estimator.widen(place, u * u);
  }

  /** (estimate − truth) / u of all that is looked at. */
  misses(): Misses {
    const [doubts, truths] = [this.doubts(), this.#truths()];
    return this.#estimates().map((estimate, at) => (estimate - truths[at]!) / doubts[at]!);
  }

  /** One standard deviation of all that is looked at. */
  doubts(): readonly number[] {
    const variances = [
      ...this.#looked().map((place) => this.#estimator.variance(place)),
      this.#estimator.sum(this.#storePlaces()).variance,
    ];
    return variances.map((variance) => Math.sqrt(variance));
  }

  #estimates(): readonly number[] {
    return [
      ...this.#looked().map((place) => this.#estimator.mean(place)),
      this.#estimator.sum(this.#storePlaces()).mean,
    ];
  }

  #truths(): readonly number[] {
    const stores = readStores.map(({ name }) => this.#true.get(name)!);
    const sum = stores.reduce((total, truth) => total + truth, 0);
    return [...stores, this.#trueBody, this.#trueCalibration.get('dispenser')!, sum];
  }

  #storePlaces(): readonly number[] {
    return readStores.map(({ name }) => this.#places.get(name)!);
  }

  #looked(): readonly number[] {
    return [...this.#storePlaces(), this.#body, this.#calibrations.get('dispenser')!];
  }

  #placeOf(store: string | null): number {
    return store === null ? -1 : this.#places.get(store)!;
  }

  #shift(store: string | null, byKg: number): void {
    if (store !== null) this.#true.set(store, this.#true.get(store)! + byKg);
  }
}

/** The variance of what is as good as unknown, in kilograms squared: a thousand times what anything here is known to. */
const UNKNOWN = 1e4;
