// A long book of Holm: days of drinks, moves, weighings and a day line, one like the other and no two the same.
import { type AnyDraft, type Body, entryId, type Kind } from '../../src/book/index.ts';
import { type Chance, seededChance } from '../../src/ground/maths/index.ts';
import { HOLM } from '../../tests/journeys/holm.ts';
import { at, dayLine, holmOpening, litres } from '../../tests/journeys/told.ts';

const MOVES = 12;
const STROKE_L = 0.025;
const MINUTE_MS = 60_000;
const DAY_MS = 86_400_000;
const ROLLS_OVER_AT = 1000;

/** Drafts of the first `count` entries: the file, the opening, and day after day. */
export function* longBook(count: number, seed: number): Generator<AnyDraft> {
  const teller = new Teller(seededChance({ seed }));
  let told = 0;
  for (const draft of teller.tell()) {
    if (told === count) return;
    told += 1;
    yield draft;
  }
}

/** Entries of further days behind an instant. */
export function draftsAfter(ms: number, count: number): readonly AnyDraft[] {
  const firstDay = Math.floor((ms - at(1, 0)) / DAY_MS) + 2;
  const teller = new Teller(seededChance({ seed: 9 }), AFTER);
  const drafts: AnyDraft[] = [];
  for (let day = firstDay; drafts.length < count; day++) drafts.push(...teller.day(day));
  return drafts.slice(0, count);
}

/** Ids of entries that come after a book begin here. */
const AFTER = 1_000_000_000;

class Teller {
  readonly #chance: Chance;
  #nowMs = at(0, 21);
  #count: number;
  #condensate = 990;

  constructor(chance: Chance, count = 0) {
    this.#chance = chance;
    this.#count = count;
  }

  *tell(): Generator<AnyDraft> {
    yield this.#draft('outpost', { text: HOLM });
    yield this.#draft('opening', holmOpening());
    for (let day = 1; ; day++) yield* this.day(day);
  }

  /** What is drunk is made, what is moved comes back, and waste is carried out: stocks stay where they are. */
  *day(day: number): Generator<AnyDraft> {
    this.#nowMs = at(day, 6);
    for (let k = 0; k < MOVES; k++) {
      yield this.#drink();
      yield this.#drink();
      yield this.#move(k);
    }
    yield this.#draft('weigh', { store: 'C-04', amount: this.#read(18), instrument: 'balance' });
    if (day % 7 === 0)
      yield this.#draft('stock-count', { count: `week ${day / 7}`, readings: this.#counted() });
    else yield this.#draft('note', { text: `Nothing to tell of Day ${day}` });
    yield this.#draft('movement', { from: 'W-01', to: 'outside', amount: litres(3, 0.1) });
    this.#nowMs = at(day, 21);
    yield this.#line(day);
  }

  #drink(): AnyDraft {
    const amount = litres(STROKE_L * (4 + this.#chance.integerBelow(8)));
    return this.#draft('movement', { from: 'tap', to: 'people', amount, use: 'drink' });
  }

  #move(k: number): AnyDraft {
    const [from, to] = k % 2 === 0 ? ['C-04', 'C-03'] : ['C-03', 'C-04'];
    return this.#draft('movement', {
      from,
      to,
      amount: litres(1 + 0.001 * this.#chance.integerBelow(9)),
      hose: 'H-1',
      method: 'flow meter',
    });
  }

  #read(valueL: number) {
    return litres(Math.max(0, valueL + 0.2 * this.#chance.normal()), 0.2);
  }

  #counted(): Body<'stock-count'>['readings'] {
    const stocks = { KB: 4, PB: 2, 'C-01': 20, 'C-03': 0.1, 'W-01': 5 };
    return Object.entries(stocks).map(([store, valueL]) => ({
      store,
      amount: this.#read(valueL),
      method: 'counted',
    }));
  }

  #line(day: number): AnyDraft {
    const strokes = 230 + this.#chance.integerBelow(20);
    const product = Math.round(100 * strokes * STROKE_L) / 100;
    this.#condensate = Math.round(10 * ((this.#condensate + product / 0.96) % ROLLS_OVER_AT)) / 10;
    return this.#draft(
      'day-line',
      dayLine(day, { condensate: this.#condensate, product, strokes, flushes: 0 }),
    );
  }

  #draft<K extends Kind>(kind: K, body: Body<K>): AnyDraft {
    this.#nowMs += 20 * MINUTE_MS;
    this.#count += 1;
    const bytes = Uint8Array.from({ length: 10 }, (_, place) => (this.#count >>> (8 * (place % 4))) & 255);
    return {
      id: entryId(this.#nowMs, bytes),
      version: 1,
      kind,
      happenedAtMs: this.#nowMs,
      happenedOffsetMin: 0,
      enteredAtMs: this.#nowMs,
      enteredOffsetMin: 0,
      by: 'keeper',
      body,
    } as unknown as AnyDraft;
  }
}
