// Table of the twelve kinds of slip: which lines can carry each, and how a person would have typed it.
import type { Chance } from '../../../src/ground/maths/index.ts';
import { dayOfLog, type Line, msOf, timeOf, type Written } from './field-log.ts';
import {
  at,
  familyOf,
  gradesOf,
  type NumberAt,
  numbersOf,
  type Path,
  signedOf,
  storesOf,
  withAt,
} from './fields.ts';

/** A log with one slip in it. */
export interface Slipped {
  readonly book: readonly Written[];
  /** The line that has the slip, and when it was written. */
  readonly line: string;
  readonly writtenMs: number;
  readonly stores: ReadonlySet<string>;
  readonly instruments: ReadonlySet<string>;
  /** What was typed instead of what. */
  readonly what: string;
}

interface SlipKind {
  readonly kind: string;
  readonly definition: string;
  readonly canCarry: (line: Line, book: readonly Written[]) => boolean;
  readonly put: (book: readonly Written[], of: Written, chance: Chance) => Slipped;
}

const MINUTE_MS = 60_000;
const DAY_MS = 1440 * MINUTE_MS;
const GROUND_MS = 330 * MINUTE_MS;

function pick<Item>(items: readonly Item[], chance: Chance): Item {
  const item = items[chance.integerBelow(items.length)];
  if (item === undefined) throw new Error('nothing to pick from');
  return item;
}

const rounded = (value: number): number => Number(value.toPrecision(6));

function namesOf(line: Line): string[] {
  return storesOf(line).map(({ id }) => id);
}

/** The book with a line in place of its old self, or beside it. */
function changed(
  book: readonly Written[],
  of: Written,
  line: Line,
  more: {
    stores?: readonly (string | null)[];
    instruments?: readonly (string | null)[];
    what: string;
    writtenMs?: number;
  },
): Slipped {
  const writtenMs = more.writtenMs ?? of.writtenMs;
  const mine = { line, writtenMs };
  const isBeside = line.id !== of.line.id;
  const whole = book.flatMap((each) => (each === of ? (isBeside ? [each, mine] : [mine]) : [each]));
  const named = (names: readonly (string | null)[] = []) => names.filter((name) => name !== null);
  return {
    book: whole,
    line: line.id,
    writtenMs,
    stores: new Set([...named(more.stores), ...namesOf(of.line), ...namesOf(line)]),
    instruments: new Set(named(more.instruments)),
    what: `${of.line.id} ${of.line.kind}: ${more.what}`,
  };
}

function withNumber(
  book: readonly Written[],
  of: Written,
  number: NumberAt,
  typed: number | string,
): Slipped {
  const { path, value, instrument, store } = number;
  const what = `${path.join('.')} ${typed} for ${value}`;
  return changed(book, of, withAt(of.line, path, typed), {
    stores: [store],
    instruments: [instrument],
    what,
  });
}

const hasDecimals = ({ value }: NumberAt): boolean => String(value).includes('.');
const watery = (line: Line): NumberAt[] => numbersOf(line).filter(({ unit }) => unit !== null);

/** Times of a line, all moved by one slip of a clock or a calendar. */
function shifted(book: readonly Written[], of: Written, byMs: number, what: string): Slipped {
  return changed(book, of, moved(book, of.line, byMs), { what, instruments: instrumentsOf(of.line) });
}

function instrumentsOf(line: Line): (string | null)[] {
  return numbersOf(line).map(({ instrument }) => instrument);
}

function moved(book: readonly Written[], line: Line, byMs: number): Line {
  const lines = book.map((each) => each.line);
  const times = Object.fromEntries(
    ['t', 'start', 'since'].flatMap((field) =>
      typeof line[field] === 'string' ? [[field, timeOf(msOf(line[field] as string) + byMs)]] : [],
    ),
  );
  return { ...line, ...times, day: dayOfLog(lines, msOf(line.t) + byMs) };
}

const isDated = ({ kind }: Line): boolean => kind !== 'opening_balance';

/** Stores of a family that were aboard when a line was written. */
function alikeAboard(book: readonly Written[], line: Line, id: string): string[] {
  const family = familyOf(id);
  const aboard = new Set<string>();
  for (const { line: each } of book) {
    if (msOf(each.t) > msOf(line.t)) continue;
    for (const list of ['stores', 'water_bags'])
      for (const { id: told } of (each[list] as readonly { id: string }[] | undefined) ?? [])
        aboard.add(told);
  }
  const inLine = namesOf(line);
  return [...aboard].filter((other) => family?.test(other) === true && !inLine.includes(other)).sort();
}

function swapPlaces(book: readonly Written[], line: Line): { path: Path; id: string }[] {
  return storesOf(line).filter(({ id }) => alikeAboard(book, line, id).length > 0);
}

/** A totaliser that was replaced: from one line on it shows what passed since the change, begun at nought at a drawn time of that day. */
function replaced(book: readonly Written[], of: Written, chance: Chance): Slipped {
  const field = 'condensate_totaliser_L';
  const days = book.filter(({ line }) => line.kind === 'daily');
  const place = days.indexOf(of);
  const total = (one: Written | undefined) => Number(one?.line[field] ?? book[0]?.line[field]);
  const before =
    place === 0
      ? Number(book.find(({ line }) => line.kind === 'opening_balance')?.line[field])
      : total(days[place - 1]);
  const counted = (total(of) - before + 1000) % 1000;
  const startsAt = (before + chance.uniform() * counted) % 1000;
  const later = new Set(days.slice(place));
  const typed = (one: Written) => Number(((total(one) - startsAt + 1000) % 1000).toFixed(1));
  const whole = book.map((one) =>
    later.has(one) ? { ...one, line: withAt(one.line, [field], typed(one)) } : one,
  );
  return {
    ...changed(book, of, of.line, {
      instruments: ['condensate'],
      what: `${field} ${typed(of)} for ${total(of)}, and so on from there`,
    }),
    book: whole,
  };
}

const LETTERS = ['D', 'T', 'I', 'K', 'W'];
const LABELS = ['drinking', 'technical', 'iodine', 'raw', 'WASTE'];

function otherGrade(told: string, chance: Chance): string {
  if (told.length > 2)
    return pick(
      LABELS.filter((label) => label.toLowerCase() !== told.toLowerCase()),
      chance,
    );
  return (
    pick(
      LETTERS.filter((letter) => letter !== told[0]),
      chance,
    ) + told.slice(1)
  );
}

export const SLIP_KINDS: readonly SlipKind[] = [
  {
    kind: 'x 10',
    definition: 'a number ten times too large or too small, half of each',
    canCarry: (line) => numbersOf(line).length > 0,
    put: (book, of, chance) => {
      const number = pick(numbersOf(of.line), chance);
      return withNumber(book, of, number, rounded(number.value * pick([10, 0.1], chance)));
    },
  },
  {
    kind: 'swapped ids',
    definition: 'another store of the same family that is aboard (C-06 for C-08), in one line',
    canCarry: (line, book) => swapPlaces(book, line).length > 0,
    put: (book, of, chance) => {
      const { path, id } = pick(swapPlaces(book, of.line), chance);
      const typed = pick(alikeAboard(book, of.line, id), chance);
      return changed(book, of, withAt(of.line, path, typed), {
        what: `${path.join('.')} ${typed} for ${id}`,
      });
    },
  },
  {
    kind: 'wrong unit',
    definition:
      'litres written as millilitres, pounds or gallons; millilitres as litres; counts as litres or millilitres',
    canCarry: (line) => watery(line).length > 0,
    put: (book, of, chance) => {
      const number = pick(watery(of.line), chance);
      const { unit, value } = number;
      const typed =
        unit === 'mL'
          ? value / 1000
          : unit === 'L'
            ? value * pick([1000, 0.9978 / 0.453_592_37, 1 / 3.785_411_784], chance)
            : value * (unit?.litresPerCount ?? 1) * pick([1, 1000], chance);
      const isWhole = typeof unit === 'object' && unit !== null;
      return withNumber(
        book,
        of,
        number,
        isWhole ? Math.max(1, Math.round(typed)) : Number(typed.toPrecision(3)),
      );
    },
  },
  {
    kind: 'wrong day',
    definition: 'the day before or the day after, in all times of the line',
    canCarry: isDated,
    put: (book, of, chance) => {
      const byDays = pick([-1, 1], chance);
      return shifted(book, of, byDays * DAY_MS, byDays < 0 ? 'a day early' : 'a day late');
    },
  },
  {
    kind: 'AM/PM',
    definition: 'the other half of the same day, in all times of the line',
    canCarry: isDated,
    put: (book, of) => {
      const isMorning = msOf(of.line.t) % DAY_MS < DAY_MS / 2;
      const typed = timeOf(msOf(of.line.t) + (isMorning ? DAY_MS / 2 : -DAY_MS / 2));
      return shifted(book, of, isMorning ? DAY_MS / 2 : -DAY_MS / 2, `${typed} for ${of.line.t}`);
    },
  },
  {
    kind: 'ground copy',
    definition: 'the line once more from the voice log of the ground, whose clock is 5:30 ahead',
    canCarry: isDated,
    put: (book, of) => {
      const line = {
        ...moved(book, of.line, GROUND_MS),
        id: `${of.line.id}b`,
        source: 'ground copy of voice log',
      };
      return changed(book, of, line, {
        what: `copied at ${line.t}`,
        writtenMs: Math.max(of.writtenMs, msOf(line.t)),
      });
    },
  },
  {
    kind: 'double tap',
    definition: 'the line twice, at the same minute or a minute later',
    canCarry: isDated,
    put: (book, of, chance) => {
      const laterMs = pick([0, MINUTE_MS], chance);
      const line = { ...of.line, t: timeOf(msOf(of.line.t) + laterMs), id: `${of.line.id}b` };
      return changed(book, of, line, { what: `again at ${line.t}` });
    },
  },
  {
    kind: 'lost minus',
    definition:
      'the other sign, in a field that takes either (the log has no number below zero, so a minus comes where none belongs)',
    canCarry: (line) => signedOf(line).length > 0,
    put: (book, of, chance) => {
      const number = pick(signedOf(of.line), chance);
      return withNumber(book, of, number, -number.value);
    },
  },
  {
    kind: 'counter replaced',
    definition:
      'the totaliser shows a new counter, begun at nought at some time of that day, and no entry says so',
    canCarry: ({ kind }) => kind === 'daily',
    put: replaced,
  },
  {
    kind: '+5:30',
    definition: 'the time of the ground’s clock, in all times of the line',
    canCarry: isDated,
    put: (book, of) =>
      shifted(book, of, GROUND_MS, `${timeOf(msOf(of.line.t) + GROUND_MS)} for ${of.line.t}`),
  },
  {
    kind: 'wrong grade',
    definition: 'another letter or label',
    canCarry: (line) => gradesOf(line).length > 0,
    put: (book, of, chance) => {
      const path = pick(gradesOf(of.line), chance);
      const told = String(at(of.line, path));
      const typed = otherGrade(told, chance);
      const store = path.length > 1 ? String(at(of.line, [...path.slice(0, -1), 'id'])) : null;
      return changed(book, of, withAt(of.line, path, typed), {
        stores: [store],
        what: `${path.join('.')} ${typed} for ${told}`,
      });
    },
  },
  {
    kind: 'decimal comma',
    definition: 'a comma for the point, half of them kept as text ("20,5"), half lost (205)',
    canCarry: (line) => numbersOf(line).some(hasDecimals),
    put: (book, of, chance) => {
      const number = pick(numbersOf(of.line).filter(hasDecimals), chance);
      const text = String(number.value);
      const typed = pick([text.replace('.', ','), Number(text.replace('.', ''))], chance);
      return withNumber(book, of, number, typed);
    },
  },
];

/** Every line that can carry a kind of slip is as likely as every other. */
export function putIn(kind: SlipKind, book: readonly Written[], chance: Chance): Slipped {
  const able = book.filter(({ line }) => kind.canCarry(line, book));
  return kind.put(book, pick(able, chance), chance);
}
