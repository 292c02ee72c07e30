// What a calculator may look up in the book: the outpost file, a store as it stands, and the runs of a hose.
import type { BiocideState, Position, StorePosition } from '../../account/index.ts';
import type { Entry } from '../../book/index.ts';
import type { Hose } from '../../outpost/index.ts';
import { type Answer, yes } from '../answer.ts';
import { findName } from '../log/context.ts';
import type { GivenBy, Input } from './inputs.ts';

/** A push through a hose that somebody timed. */
export interface TimedRun {
  readonly entry: string;
  readonly massMg: number;
  readonly minutes: number;
  /** Null where the entry does not say it: then it was that of the outpost file. */
  readonly overCabinKPa: number | null;
}

/** What a gauge or a thermometer is good to: new at each reading, and the part that its readings share; one standard deviation. */
export interface ReaderDoubt {
  readonly u: number;
  /** Of a gauge a part of its reading, of a thermometer kelvins. */
  readonly shared: number;
}

/** A gauging by gas as it was read. */
export interface RawGauging {
  readonly entry: string;
  readonly body: Entry<'pvt'>['body'];
}

export interface FromBook {
  readonly position: Position;
  /** Names as they were typed: `{ store: 'r2' }`. */
  readonly names: ReadonlyMap<string, string>;
  /** Runs through the hose that is named. */
  readonly runs: readonly TimedRun[];
  /** The last gauging of the store that is named; null where there was none. */
  readonly lastGauging: RawGauging | null;
  /** What is known of the biocide in the store that is named; null where nothing is, or it was not asked for. */
  readonly biocide: BiocideState | null;
}

/** The store of a field; null where none is named. */
export function storeOf({ position, names }: FromBook, field: string): Answer<StorePosition | null> {
  const typed = names.get(field);
  if (typed === undefined) return yes(null);
  const id = findName(
    'store',
    typed,
    position.stores.map(({ facts }) => facts.id),
  );
  return id.ok ? yes(position.stores.find(({ facts }) => facts.id === id.value) ?? null) : id;
}

/** The hose of a field; null where none is named. */
export function hoseOf({ position, names }: FromBook, field: string): Answer<Hose | null> {
  const typed = names.get(field);
  if (typed === undefined) return yes(null);
  const id = findName('hose', typed, [...position.index.hoses.keys()]);
  return id.ok ? yes(position.index.hoses.get(id.value) ?? null) : id;
}

/** Collects values that are known; what the file leaves out is left out. */
export class Filled {
  readonly inputs: Input[] = [];

  fromFile(
    name: string,
    value: number | undefined,
    more: { readonly unit: string; readonly u?: number | undefined; readonly key: string },
  ): void {
    this.#add('outpost file', name, value, { ...more, entries: [] });
  }

  /** A value that the file implies, such as 0 for an error that is only in doubt. */
  fromFileOf(
    name: string,
    value: number,
    more: { readonly unit: string; readonly u: number; readonly key: string },
  ): void {
    this.#add('outpost file', name, value, { ...more, entries: [] });
  }

  fromBook(
    name: string,
    value: number | undefined,
    more: {
      readonly unit: string;
      readonly u?: number | undefined;
      readonly key: string;
      readonly entries: readonly string[];
    },
  ): void {
    this.#add('book', name, value, more);
  }

  #add(
    by: GivenBy,
    name: string,
    value: number | undefined,
    more: {
      readonly unit: string;
      readonly u?: number | undefined;
      readonly key: string;
      readonly entries: readonly string[];
    },
  ): void {
    if (value === undefined) return;
    const { unit, u, key, entries } = more;
    this.inputs.push({ name, value, u: u === undefined || u === 0 ? null : u, unit, by, from: key, entries });
  }
}

/** The cabin as the outpost file tells it; values in the units in which calculators take them. */
export function fillCabin(into: Filled, { position }: FromBook): void {
  const { cabinPressureAbsoluteKPa, cabinTemperatureC, cabinVolumeM3, gravity } =
    position.index.outpost.outpost;
  into.fromFile('cabin', cabinPressureAbsoluteKPa, { unit: 'kPa', key: 'the cabin' });
  into.fromFile('air', cabinTemperatureC, { unit: 'degC', key: 'the cabin' });
  into.fromFile('water', cabinTemperatureC, { unit: 'degC', key: 'the cabin' });
  into.fromFile('cabin-volume', cabinVolumeM3, { unit: 'm3', key: 'the cabin' });
  if (gravity === 'none') into.fromFile('gravity', 0, { unit: 'm/s2', key: 'the cabin' });
}

/** The instruments of a gauging by gas are known by these ids; a file that has others says nothing about their doubts here. */
const READERS = { bottle: 'bottle-gauge', tank: 'tank-gauge', warmth: 'gas-thermometers' } as const;

export function readerDoubt({ position }: FromBook, reader: keyof typeof READERS): ReaderDoubt | null {
  const instrument = position.index.instruments.get(READERS[reader]);
  const u = instrument?.random?.absolute;
  if (u === undefined) return null;
  const { relative, absolute } = instrument?.calibration ?? {};
  return { u, shared: (reader === 'warmth' ? absolute : relative) ?? 0 };
}
