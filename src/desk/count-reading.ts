// Readings of a stock count as they are typed: read, held against what can be, and only then against the book.
import { readingDoubtMg, type StorePosition } from '../account/index.ts';
import type { Amount } from '../book/index.ts';
import { type Finding, parseNumber } from '../ground/units/index.ts';
import type { CountedPart, CountedStore, CountItem } from '../papers/index.ts';
import { type Answer, no, type Problem, yes } from './answer.ts';
import { type CountBook, countBook } from './count-book.ts';
import { itemsByPlace } from './count-sheet.ts';
import type { Desk, Moment } from './desk.ts';
import { deskFinding } from './desk-finding.ts';
import { volumeFigure } from './figures.ts';
import { findName, readAmount } from './log/context.ts';

/** A reading that was understood. */
export interface CountReading {
  readonly id: string;
  /** As it is kept between two calls; `-` is: not read. */
  readonly text: string;
  readonly store: CountedStore | null;
  readonly part: CountedPart | null;
}

/** One thing on the sheet with its reading, as an entry will have it. */
export interface ReadItem extends CountReading {
  readonly item: CountItem;
  /** Of a store that was read. */
  readonly amount: Amount | null;
}

const NOT_READ: ReadonlySet<string> = new Set(['-', 'not-read', 'not read']);

/**
 * Reads what was typed, all or none. What is over the capacity or far off the book is asked about, unless `keep` says
 * that it stands as it is.
 */
export async function readCounted(
  desk: Desk,
  moment: Moment,
  said: readonly { readonly name: string; readonly text: string }[],
  options: { readonly keep: boolean },
): Promise<Answer<readonly CountReading[]>> {
  const opened = await countBook(desk, moment);
  if (!opened.ok) return opened;
  const book = opened.value;
  const items = itemsByPlace(book.position, { places: null, typed: new Map() }).flatMap((each) => each.items);
  const read: CountReading[] = [];
  const wrong: { problem: Problem; findings: readonly Finding[] }[] = [];
  const asked: Finding[] = [];
  for (const { name, text } of said) {
    const one = readOne(book, items, { name, text });
    if (!one.ok) wrong.push(one);
    else {
      const { id, text: kept, store, part } = one.value;
      read.push({ id, text: kept, store, part });
      if (store !== null) asked.push(...doubts(book, one.value));
    }
  }
  const [first] = wrong;
  if (first !== undefined) return no(first.problem, ...wrong.flatMap(({ findings }) => findings));
  return asked.length === 0 || options.keep ? yes(read) : no('ask first', ...asked);
}

function readOne(
  book: CountBook,
  items: readonly CountItem[],
  said: { readonly name: string; readonly text: string },
): Answer<ReadItem> {
  const id = findName(
    'store or part',
    said.name,
    items.map((item) => item.id),
  );
  if (!id.ok) return id;
  return readItem(book, items.find((item) => item.id === id.value) as CountItem, said.text);
}

/** Reads the text for one thing on the sheet. */
export function readItem(book: CountBook, item: CountItem, typed: string): Answer<ReadItem> {
  const text = typed.trim();
  const nothing = { item, id: item.id, text, store: null, part: null, amount: null };
  if (NOT_READ.has(text.toLowerCase())) return yes({ ...nothing, text: '-' });
  if (item.kind === 'part') {
    const part = readPart(item, text);
    return part.ok ? yes({ ...nothing, part: part.value }) : part;
  }
  const amount = readAmount(book.context, text, { field: item.id });
  if (!amount.ok) return amount;
  if (amount.value.uMg === undefined && WITHOUT_GAUGE.has(item.readBy)) {
    const data = { store: item.id, received: text.slice(0, 40) };
    return no('bad input', deskFinding('count-needs-doubt', data, { where: { store: item.id } }));
  }
  return yes({
    ...nothing,
    amount: amount.value,
    store: countedOf(book, { item, text, amount: amount.value }),
  });
}

/** Nothing tells how well such a store was read but the person who read it. */
const WITHOUT_GAUGE: ReadonlySet<string> = new Set(['nothing', 'loaded mass then meter']);

/** More than an entry takes of a part. */
const MOST_PARTS = 1_000_000;

function readPart({ id, unit }: CountItem, text: string): Answer<CountedPart> {
  const number = unit !== '' && text.endsWith(unit) ? text.slice(0, -unit.length) : text;
  const read = parseNumber(number, { where: { field: id } });
  if (!read.ok) return no('bad input', read.finding);
  const { value } = read;
  const isWhole = unit !== '' || Number.isInteger(value);
  if (value >= 0 && value <= MOST_PARTS && isWhole) return yes({ id, count: value, unit });
  const expected = unit === '' ? 'a whole number from 0 on' : `a number of ${unit} from 0 on`;
  const data = { field: id, received: text.slice(0, 40), expected };
  return no('bad input', deskFinding('field-needed', data, { where: { field: id } }));
}

/** Within two standard deviations of their difference they agree; beyond three something is wrong with one of them. */
const AGREES = 2;
const FAR_OFF = 3;

/**
 * The reading against the book. What the two have in common, such as the calibration of one balance, is counted in
 * both: so the doubt of the difference is rather too wide than too narrow.
 */
function countedOf(
  { context, position }: CountBook,
  read: { readonly item: CountItem; readonly text: string; readonly amount: Amount },
): CountedStore {
  const { item, text, amount } = read;
  const store = position.stores.find(({ facts }) => facts.id === item.id) as StorePosition;
  const readUMg = readingDoubtMg(context.fold, item.id, amount);
  const uMg = Math.sqrt(readUMg * readUMg + store.uMg * store.uMg);
  const offMg = amount.massMg - store.massMg;
  const inputs = [{ name: 'typed', value: text, unit: '' }];
  const figure = (massMg: number, u: number, entries: readonly string[]) =>
    volumeFigure(position, { massMg, uMg: u }, { entries, method: 'stock-count', inputs });
  return {
    id: item.id,
    place: store.facts.place,
    counted: figure(amount.massMg, readUMg, []),
    book: volumeFigure(position, store, { entries: store.because, method: 'estimator', inputs: [] }),
    difference: figure(offMg, uMg, store.because),
    verdict: verdictOf(Math.abs(offMg), uMg),
    overCapacity: amount.massMg > store.facts.capacityMg,
  };
}

function verdictOf(offMg: number, uMg: number): CountedStore['verdict'] {
  if (offMg <= AGREES * uMg) return 'agrees';
  return offMg <= FAR_OFF * uMg ? 'a little off' : 'far off';
}

function doubts({ context, position }: CountBook, { store, amount }: ReadItem): readonly Finding[] {
  const book = position.stores.find(({ facts }) => facts.id === store?.id);
  if (store === null || amount === null || book === undefined) return [];
  const { mgPerL } = position;
  const where = { store: store.id };
  if (store.overCapacity) {
    const data = { store: store.id, massMg: amount.massMg, capacityMg: book.facts.capacityMg, mgPerL };
    return [deskFinding('count-over-capacity', data, { where })];
  }
  if (store.verdict !== 'far off') return [];
  const data = {
    store: store.id,
    readMg: amount.massMg,
    readU95Mg: 2 * readingDoubtMg(context.fold, store.id, amount),
    bookMg: book.massMg,
    bookU95Mg: 2 * book.uMg,
    mgPerL,
  };
  return [deskFinding('count-far-off', data, { where })];
}
