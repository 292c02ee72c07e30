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

/** What is wrong in one estimate of one day, in its standard deviations, store by store; the last is their sum. */
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
  /** Two places for the body water's difference from its norm: that of the day, and that of the day before. */
  #body: { now: number; next: number };

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
    this.#body = { now: this.#estimator.add(0, uKg * uKg), next: this.#estimator.add(0, 0) };
    this.#equate('people', this.#body.now);
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
    this.#age(keptPerDay, freshKg);
    this.#equate('people', this.#body.now);
  }

  /**
   * next = kept × now + fresh. The estimator has no such step of its own: the next difference is added as good as unknown,
   * and a reading says that it and the last one go together; then the two places change their parts.
   */
  #age(kept: number, freshKg: number): void {
    const { now, next } = this.#body;
    this.#estimator.reset(next, 0, UNKNOWN);
    this.#estimator.read({ places: [next, now], weights: [1, -kept], value: 0, u: freshKg });
    this.#body = { now: next, next: now };
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

  /** (estimate − truth) / u of every store that is read, and of their sum. */
  misses(): Misses {
    const places = readStores.map(({ name }) => this.#places.get(name)!);
    const truths = readStores.map(({ name }) => this.#true.get(name)!);
    const each = places.map(
      (place, at) => (this.#estimator.mean(place) - truths[at]!) / Math.sqrt(this.#estimator.variance(place)),
    );
    const sum = this.#estimator.sum(places);
    return [
      ...each,
      (sum.mean - truths.reduce((total, truth) => total + truth, 0)) / Math.sqrt(sum.variance),
    ];
  }

  /** One standard deviation of every store that is read, and of their sum. */
  doubts(): readonly number[] {
    const places = readStores.map(({ name }) => this.#places.get(name)!);
    const variances = [
      ...places.map((place) => this.#estimator.variance(place)),
      this.#estimator.sum(places).variance,
    ];
    return variances.map((variance) => Math.sqrt(variance));
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
