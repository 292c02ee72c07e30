// The names of one outpost, found as people write them in headings and cells.
import type { Fold } from '../../account/index.ts';
import { isPool } from '../../account/index.ts';
import type { Instrument } from '../../outpost/index.ts';
import { dayInstruments } from '../log/day-body.ts';

/** Letters and digits count, case does not. */
export function bare(text: string): string {
  return text.toLowerCase().replace(/[^a-z0-9]/g, '');
}

/** Words of a text, bare. */
export function wordsOf(text: string): readonly string[] {
  return text
    .toLowerCase()
    .split(/[^a-z0-9\u00b1%+-]+/)
    .filter((word) => word !== '');
}

const MOST_LOOKED = 2000;

export class Vocabulary {
  readonly fold: Fold;
  readonly dayInstruments: readonly Instrument[];
  readonly #instruments: ReadonlyMap<string, readonly string[]>;
  readonly #stores: ReadonlyMap<string, readonly string[]>;
  readonly #ends: ReadonlyMap<string, readonly string[]>;
  readonly #looked = new Map<string, string | null>();

  constructor(fold: Fold) {
    this.fold = fold;
    const { outpost } = fold.index;
    this.dayInstruments = dayInstruments(outpost.instruments);
    this.#instruments = table(
      outpost.instruments.flatMap(({ id, name, logField }) =>
        [id, name, logField].flatMap((word) => (word === undefined ? [] : [[word, id] as const])),
      ),
    );
    const aboard = [...fold.stores.values()].filter((store) => store.aboard).map((store) => store.facts.id);
    this.#stores = table(aboard.map((id) => [id, id]));
    this.#ends = table(
      [...aboard, ...fold.ports.keys(), ...fold.index.units.keys()].map((id) => [id, id] as const),
    );
  }

  get instrumentNames(): readonly string[] {
    return [...this.fold.index.instruments.keys()];
  }

  get storeNames(): readonly string[] {
    return [...this.#stores.values()].flat();
  }

  get endNames(): readonly string[] {
    return [...this.#ends.values()].flat();
  }

  instrument(word: string): string | null {
    return only(this.#instruments, word);
  }

  store(word: string): string | null {
    return this.#found('store', word, () => only(this.#stores, word));
  }

  /** A store, a port, a unit or a pool. */
  end(word: string): string | null {
    if (isPool(word)) return word;
    return this.#found('end', word, () =>
      isPool(word.toLowerCase()) ? word.toLowerCase() : only(this.#ends, word),
    );
  }

  /** A table says the same few names over and over. */
  #found(what: string, word: string, find: () => string | null): string | null {
    const key = `${what} ${word}`;
    const known = this.#looked.get(key);
    if (known !== undefined) return known;
    const found = find();
    if (this.#looked.size < MOST_LOOKED) this.#looked.set(key, found);
    return found;
  }

  /** Meters of the day line whose name has all of these words in it. */
  metersWith(words: readonly string[]): readonly string[] {
    return this.dayInstruments
      .filter(({ id, name, logField }) => {
        const has = new Set(
          [id, name, logField ?? ''].flatMap((text) =>
            wordsOf(text.replaceAll('_', ' ').replaceAll('-', ' ')),
          ),
        );
        return words.every((word) => has.has(word));
      })
      .map(({ id }) => id);
  }

  /** Meters of the day line that count in this unit. */
  metersIn(unit: string): readonly string[] {
    return this.dayInstruments.filter((each) => each.unit === unit).map(({ id }) => id);
  }
}

function table(
  pairs: readonly (readonly [word: string, id: string])[],
): ReadonlyMap<string, readonly string[]> {
  const found = new Map<string, readonly string[]>();
  for (const [word, id] of pairs) {
    const ids = found.get(bare(word)) ?? [];
    if (bare(word) !== '' && !ids.includes(id)) found.set(bare(word), [...ids, id]);
  }
  return found;
}

function only(found: ReadonlyMap<string, readonly string[]>, word: string): string | null {
  const ids = found.get(bare(word)) ?? [];
  return ids.length === 1 ? (ids[0] ?? null) : (ids.find((id) => id === word) ?? null);
}
