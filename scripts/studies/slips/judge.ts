// Was a slip caught? At the import that brings it, or at the one a day later, by a question that the book without it does not have.
import { seededChance } from '../../../src/ground/maths/index.ts';
import { type Asked, type Evening, evening, type Without } from './evening.ts';
import { eveningOf, nextEvening, PRACTICE, type Written, written } from './field-log.ts';
import { putIn, SLIP_KINDS, type Slipped } from './put-in.ts';

export type Caught = 'at entry' | 'within a day' | 'missed';

export interface Judged {
  readonly number: number;
  readonly kind: string;
  readonly what: string;
  readonly caught: Caught;
  /** Code of the question that caught it first. */
  readonly by: string | null;
  /** Questions that came with it and do not name it: shown with what was missed. */
  readonly beside: readonly string[];
}

/** Puts slips one by one into fresh copies of the practice book. */
export function slipStudy(options: {
  readonly seed: number;
  readonly slips: number;
  readonly without?: Without;
}): Judged[] {
  const book = written(PRACTICE);
  const clean = new CleanEvenings(book, options.without);
  return Array.from({ length: options.slips }, (_, number) => {
    const kind = SLIP_KINDS[number % SLIP_KINDS.length];
    if (kind === undefined) throw new Error('no kinds of slips');
    const slipped = putIn(kind, book, seededChance({ seed: options.seed, stream: number + 1 }));
    return { number, kind: kind.kind, ...judge(slipped, clean, options.without) };
  });
}

class CleanEvenings {
  readonly #known = new Map<number, ReadonlySet<string>>();
  readonly #book: readonly Written[];
  readonly #without: Without | undefined;

  constructor(book: readonly Written[], without: Without | undefined) {
    this.#book = book;
    this.#without = without;
  }

  keysAt(eveningMs: number): ReadonlySet<string> {
    const known =
      this.#known.get(eveningMs) ??
      new Set(evening(this.#book, eveningMs, this.#without).asked.map(({ key }) => key));
    this.#known.set(eveningMs, known);
    return known;
  }
}

function judge(
  slipped: Slipped,
  clean: CleanEvenings,
  without: Without | undefined,
): Omit<Judged, 'number' | 'kind'> {
  const first = eveningOf(slipped.writtenMs);
  const beside: string[] = [];
  for (const [caught, eveningMs] of [
    ['at entry', first],
    ['within a day', nextEvening(first)],
  ] as const) {
    const fresh = freshAt(evening(slipped.book, eveningMs, without), clean.keysAt(eveningMs));
    const naming = fresh.find((asked) => names(asked, slipped));
    if (naming !== undefined) return { what: slipped.what, caught, by: naming.code, beside: [] };
    beside.push(...fresh.map(({ key }) => key));
  }
  return { what: slipped.what, caught: 'missed', by: null, beside: [...new Set(beside)] };
}

function freshAt(seen: Evening, clean: ReadonlySet<string>): Asked[] {
  return seen.asked.filter(({ key }) => !clean.has(key));
}

/** The line itself, its store as it was typed or should have been, or the instrument that was read. */
function names(asked: Asked, { line, stores, instruments }: Slipped): boolean {
  return (
    asked.lines.includes(line) ||
    (asked.store !== null && stores.has(asked.store)) ||
    (asked.instrument !== null && instruments.has(asked.instrument))
  );
}
