// English for the stock count.
import { formatFigure } from '../../../ground/units/index.ts';
import type { CountedStore, CountItem, CountResult, CountSheet, TakenReading } from '../../sheets/count.ts';
import type { SheetFigure } from '../../sheets/figure.ts';
import { counted, listed, saidSpan, saidValue } from './said.ts';

export const countLabels = {
  place: 'PLACE',
  store: 'STORE',
  counted: 'COUNTED',
  book: 'BOOK',
  difference: 'DIFFERENCE',
  verdict: 'VERDICT',
  part: 'PART',
  count: 'COUNT',
  hidden: 'The figures of the book stay hidden until a reading is typed.',
  next: 'Type readings: waterwright count add C-01 20.3L C-02 -, where - is not read; or waterwright count add alone, which asks one by one. At the end: waterwright count finish.',
  none: 'No stock count is under way. To begin one: waterwright count start.',
  walk: '- is not read, < goes back, Enter keeps what stands in brackets, Ctrl-C keeps all for later.',
  again: 'Type it again to keep it.',
  wouldBe: 'Nothing was written.',
} as const;

/** How a store is read, short enough for a column. */
const ways: ReadonlyMap<string, string> = new Map([
  ['weighing', 'weigh'],
  ['declared full', 'by eye'],
  ['loaded mass then meter', 'no gauge'],
  ['nothing', 'no gauge'],
  ['', 'not said'],
]);

export function saidWay({ kind, readBy, unit }: CountItem): string {
  if (kind === 'part') return unit === '' ? 'count' : unit;
  return ways.get(readBy) ?? readBy;
}

export const saidMinutes = ({ minutes }: CountItem): string =>
  minutes === null ? '' : `${minutes}\u00A0min`;

export function countHead({ begun, read, items, minutesLeft }: CountSheet): string {
  const left =
    minutesLeft === null || read === items
      ? ''
      : `; the rest takes ${saidSpan(minutesLeft)} of crew time by the outpost file`;
  return `STOCK COUNT${begun === null ? '' : ` begun ${begun}`}: ${read} of ${items} typed${left}.`;
}

const said = (figure: SheetFigure): string => formatFigure(figure, { style: 'screen' });

const verdicts: Readonly<Record<CountedStore['verdict'], string>> = {
  agrees: 'they agree',
  'a little off': 'a little off',
  'far off': 'far off',
};

/** In a column: what is more than can be stands before how far it is from the book. */
export function saidVerdict({ verdict, overCapacity }: CountedStore): string {
  return overCapacity ? 'more than it holds' : verdict;
}

/** `C-07 20.3 ± 0.4 L; the book has 20.9 ± 0.4 L: they agree.` */
export function countedInWords(store: CountedStore): string {
  const { id, counted: read, book, difference, verdict, overCapacity } = store;
  const off = verdict === 'agrees' ? '' : `, by ${said(difference)}`;
  const over = overCapacity ? ', and more than it can hold' : '';
  return `${id} ${said(read)}; the book has ${said(book)}: ${verdicts[verdict]}${off}${over}.`;
}

export function takenInWords({ id, store, part, before }: TakenReading): string {
  const now =
    store !== null
      ? countedInWords(store)
      : part !== null
        ? `${id}: ${saidValue(part.count, part.unit)}.`
        : `${id}: not read.`;
  if (before === null) return now;
  return `${now} Before, it was typed as ${before === '-' ? 'not read' : before}.`;
}

export function promptInWords(
  item: CountItem,
  at: { readonly place: number; readonly of: number; readonly before: string | null },
): string {
  const { id, name, kind, unit } = item;
  const about = [...(name === id || name === '' ? [] : [name]), saidWay(item), saidMinutes(item)];
  const asked = kind === 'store' ? 'content with its unit' : unit === '' ? 'how many' : `how many ${unit}`;
  const kept = at.before === null ? '' : ` [${at.before}]`;
  return `  ${at.place}/${at.of}  ${id} (${about.filter((text) => text !== '').join(', ')}), ${asked}${kept}: `;
}

export const keptForLater = (typed: number): string =>
  `Kept for later: ${counted(typed, 'reading')}. Nothing stands in the book yet. Go on with: waterwright count add`;

export const inBookAlready = (begun: string, ref: string): string =>
  `The count begun ${begun} is in the book: entry ${ref}.`;

export function swappedInWords([a, b]: readonly [string, string]): string {
  return `${a} and ${b} look swapped: each reading fits what the book has of the other. Look at both labels, and read both again.`;
}

export function countFoot(result: CountResult): readonly string[] {
  const { kept, entries, notRead, gone, second, stores, parts, at } = result;
  const what = listed([
    ...(stores.length === 0 ? [] : [counted(stores.length, 'store')]),
    ...(parts.length === 0 ? [] : [counted(parts.length, 'part')]),
  ]);
  const signed =
    second === null ? 'Signed by one person.' : `Second person: ${second.office}, ${second.confirmation}.`;
  const refs = `${entries.length === 1 ? 'entry' : 'entries'} ${listed(entries)}`;
  return [
    kept
      ? `Entered: ${what}, as readings of ${at} (${refs}). They move no water. ${signed}`
      : `Would enter ${what}, as readings of ${at}. ${signed} ${countLabels.wouldBe}`,
    ...(notRead.length === 0 ? [] : [`Not read: ${listed(notRead)}.`]),
    ...(gone.length === 0 ? [] : [`Read, and no longer aboard, so not entered: ${listed(gone)}.`]),
    ...(kept ? [`To take one back: waterwright log undo ${numberOf(entries[0] ?? 'NUMBER')}`] : []),
  ];
}

/** An entry of this site is named by its number alone. */
function numberOf(ref: string): string {
  return ref.split(' ').at(-1) ?? ref;
}
