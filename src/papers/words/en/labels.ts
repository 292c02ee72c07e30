// English for headings, columns and short phrases of the papers.
import type { Severity } from '../../../ground/units/index.ts';
import type { CoverFigure, SheetHead } from '../../sheets/today.ts';

/** How soon somebody must act; an error is told without such a word. */
export const levels: Readonly<Record<Severity, string>> = {
  error: '',
  'act-now': 'ACT NOW',
  'act-today': 'ACT TODAY',
  know: 'KNOW',
};

export const todayLabels = {
  needsYou: 'NEEDS YOU',
  nothing: 'Nothing needs you.',
  whereItIs: 'WHERE IT IS',
  doubt: 'every ± is 95 %',
  doubtSentence: 'Every ± is 95 %.',
  inAll: 'IN ALL',
  next: 'NEXT',
  rounded: '(each rounded by itself)',
  toAddUp: '(rounded so that they add up)',
  noStores:
    'No store is known yet. Enter the opening, or import a log that begins with it: waterwright import FILE.',
  noStoresTry: 'To try it first: waterwright init --practice.',
} as const;

/** Papers that a book can give. */
export const reportNames = {
  'sample-sheet':
    'a sample, from the bottle to its result; of a store or a point a blank one to fill by hand',
  certificate:
    'the water of a store: who released it, on which figures, until when; or why it is not released',
  'hold-notice': 'a hold: what is not to be used, what its water touched, what waits for it, the ways out',
  'hold-release': 'what left a hold, on whose word and which figures, and what stays on it',
  'trend-sheet': 'one parameter over time at a place: chart, table and words',
  quirks: 'what readings have taught of instruments, norms and openings, with the entries that taught it',
} as const;

export const columns = {
  store: 'STORE',
  name: 'NAME',
  kind: 'KIND',
  place: 'PLACE',
  grade: 'GRADE',
  mark: 'MARK',
  notes: 'NOTES',
  howKnown: 'HOW KNOWN',
  standing: 'CHECK',
  onWordOf: 'ON WHOSE WORD',
  age: 'AGE',
  entry: 'ENTRY',
  happened: 'HAPPENED',
  entered: 'ENTERED',
  by: 'BY',
  what: 'WHAT',
} as const;

/** `Drinking water we can count on`. */
export const coverOf = (grade: string): string =>
  `${grade.charAt(0).toUpperCase()}${grade.slice(1)} water we can count on`;

export const outcomes = 'in 19 of 20 outcomes';
export const saidDays = (days: string): string => `${days}\u00A0days`;
export const middle = (days: string | null): string =>
  days === null ? '(middle: it does not run out)' : `(middle\u00A0${days})`;
export const never = 'does not run out in 19 of 20 outcomes';
export const noCover = 'no figure yet: the book has not enough day lines to learn the daily use from';
export const outDay = (day: number): string => `out on Day\u00A0${day}`;
export const free = (figure: string): string => `${figure} free`;

export function useOf(figure: string, basis: CoverFigure['basis'], days: number | null): string {
  const from = days === null ? '' : `\u00A0from ${days}\u00A0days`;
  return `use ${figure}, ${basis === 'learned' ? `learned${from}` : 'by the norm of the outpost file'}`;
}

export const reserve = 'Reserve';
export const floor = (figure: string): string => `floor ${figure}`;
export const conditional = (stores: readonly string[]): string => `of it CONDITIONAL: ${stores.join(', ')}`;
export const toFloor = 'with it, down to its floor:';

export function headOf(head: SheetHead): {
  readonly place: string;
  readonly people: string;
  readonly book: string;
} {
  const people = head.peopleAboard === 1 ? '1\u00A0person' : `${head.peopleAboard}\u00A0people`;
  return {
    place: head.practice ? `${head.outpost} (practice)` : head.outpost,
    people,
    book: head.closedToDay === null ? '' : `closed to Day\u00A0${head.closedToDay}`,
  };
}

export const views: Readonly<Record<SheetHead['view'], string>> = {
  now: '',
  'as known at': 'as it was known at that time',
  'as of': 'as of that time, by all that is known now',
};

export const ofReserve = 'reserve';
export const each = 'each';
export const gradeUnknown = 'grade not known';
export const emptied = 'Emptied, or never used:';
export const andMore = (count: number): string => `and ${count} more`;
export const moreStores = 'waterwright store list';
export const moreFindings = 'waterwright book show --findings';
export const alike = (count: number): string => `(${count} like this)`;
export const dropped = (heads: readonly string[]): string =>
  `Not shown, for want of room: ${heads.join(', ').toLowerCase()}. A wider terminal or --plain shows ${heads.length === 1 ? 'it' : 'them'}.`;
export const densityIs = (kilograms: string): string => `1\u00A0L is ${kilograms}`;

export function visitOf(visit: {
  readonly visit: string;
  readonly berthDay: number;
  readonly departDay: number | null;
  readonly aboard: boolean;
}): string {
  const { visit: name, berthDay, departDay, aboard } = visit;
  if (!aboard) return `${name} berths on Day\u00A0${berthDay}`;
  return departDay === null ? `${name} is here` : `${name} leaves on Day\u00A0${departDay}`;
}

export const stockHead = (units: 'L' | 'kg'): string => (units === 'kg' ? 'MASS kg' : 'VOLUME L');

export const storeLabels = { heldBefore: 'grades so far', biocides: 'biocides so far' } as const;

export const errorLabels = {
  expected: 'expected',
  received: 'received',
  line: (line: string): string => `line ${line}`,
} as const;

export const bookLabels = {
  more: 'There are older entries. More of them: waterwright book show --most 500; one day: --day D13.',
  none: 'No entry fits. The whole book: waterwright book show.',
  undoneBy: (ref: string): string => `undone by ${ref}`,
  correctedBy: (ref: string): string => `corrected by ${ref}`,
  now: (text: string): string => `now: ${text}`,
  late: 'late',
  copied: (source: string): string => `from: ${source}`,
} as const;

interface KeptFacts {
  readonly text: string;
  readonly by: string;
  readonly happened: string;
}

export const keptLabels = {
  kept: ({ ref, text, by, happened }: KeptFacts & { readonly ref: string }): string =>
    `Entry ${ref}: ${text}, by ${by}, ${happened}.`,
  wouldKeep: ({ text, by, happened }: KeptFacts): string => `Would enter: ${text}, by ${by}, ${happened}.`,
  /** An amount after and before; what was only tried has not happened yet. */
  change: (kept: boolean, after: string, before: string): string =>
    kept ? `${after} (before ${before})` : `${after} then (now ${before})`,
  cover: (kept: boolean, grade: string, before: string | null, after: string | null): string =>
    `Cover of ${grade} water: ${keptLabels.change(kept, coverDays(after), coverDays(before))}, in 19 of 20 outcomes.`,
  undo: 'Undo: waterwright log undo',
  nothing: 'Nothing was written.',
} as const;

const coverDays = (days: string | null): string => (days === null ? 'no end' : `${days}\u00A0days`);

/** `ACT NOW 1` */
export function needsCounted(level: keyof typeof levels, count: number): string {
  return `${levels[level]}\u00A0${count}`;
}
