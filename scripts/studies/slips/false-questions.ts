// How often a good entry is asked about: in the practice book as it is, and in clean logs by chance.
import { cleanBook } from './clean-book.ts';
import { type Asked, evening } from './evening.ts';
import { eveningOf, type Line, msOf, PRACTICE, written } from './field-log.ts';

/** Days of a clean log by chance: the waste tanks of one freighter last no longer. */
const CLEAN_DAYS = 28;

/**
 * Questions that the practice book is to bring: its documented oddities, and what really happened in it. By line, or by code where
 * the state of a store is meant.
 */
const DELIBERATE: Readonly<Record<string, string>> = {
  'duplicate-proposed E0035': 'the ground’s copy of a fill',
  'reserve-unreleased E0039': 'delivered water into the reserve before its sample is back',
  'tank-not-run-dry E0040': 'a tank called empty although the flow had not stopped',
  'air-does-not-close E0078': 'the separator fault, Day 18',
  'air-does-not-close E0089': 'the separator fault, Day 19',
  'air-does-not-close E0098': 'the separator fault, Day 20',
  'air-does-not-close E0100': 'the separator fault, Day 21',
  'air-does-not-close E0124': 'the first day of the inside leak',
  'reading-far-off E0145': 'the inside leak, seen at an emptied container',
  'unit-doubt E0191': '"water load 430", no unit',
  'unit-alarm E0221': 'the heater’s alarm',
  'opening-off E0037': 'the container that was booked full and never weighed',
  'opening-off E0230': 'the reserve tank that was not gauged for a long time',
  'reserve-drawn E0241': 'the reserve is drawn',
  'reserve-drawn E0245': 'the reserve is drawn',
  'reserve-drawn E0247': 'the reserve is drawn',
  'conditional-reserve ': 'the reserve tank that got unreleased water',
};
/** In a clean log by chance the reserve is drawn when no container is left: that is told, and true. */
const TRUE_IN_CHANCE: ReadonlySet<string> = new Set(['reserve-drawn']);

export interface FalseRate {
  readonly books: number;
  readonly entries: number;
  readonly questions: number;
  /** Questions to fifty good entries. */
  readonly perFifty: number;
  /** In the book with the most of them. */
  readonly worstPerFifty: number;
  readonly byCode: ReadonlyMap<string, number>;
}

export function practiceRate(): FalseRate & { readonly deliberate: number } {
  const { entries, asked } = lastEvening(PRACTICE);
  const isDeliberate = ({ code, key }: Asked) =>
    DELIBERATE[`${code} ${key.split(' ')[1] ?? ''}`] !== undefined;
  const strange = asked.filter((each) => !isDeliberate(each));
  return { ...rateOf([{ entries, strange }]), deliberate: asked.length - strange.length };
}

export function chanceRate(options: { readonly firstSeed: number; readonly books: number }): FalseRate {
  return rateOf(
    Array.from({ length: options.books }, (_, k) => {
      const { entries, asked } = lastEvening(cleanBook(options.firstSeed + k, CLEAN_DAYS));
      return { entries, strange: asked.filter(({ code }) => !TRUE_IN_CHANCE.has(code)) };
    }),
  );
}

function lastEvening(lines: readonly Line[]) {
  const latest = Math.max(...lines.map(({ t }) => msOf(t)));
  return evening(written(lines), eveningOf(latest));
}

function rateOf(
  books: readonly { readonly entries: number; readonly strange: readonly Asked[] }[],
): FalseRate {
  const entries = books.reduce((sum, book) => sum + book.entries, 0);
  const strange = books.flatMap((book) => book.strange);
  const byCode = new Map<string, number>();
  for (const { code, why } of strange) {
    const name = why === '' ? code : `${code} (${why})`;
    byCode.set(name, (byCode.get(name) ?? 0) + 1);
  }
  return {
    ...{ books: books.length, entries, questions: strange.length },
    perFifty: (50 * strange.length) / entries,
    worstPerFifty: Math.max(...books.map((book) => (50 * book.strange.length) / book.entries)),
    byCode,
  };
}
