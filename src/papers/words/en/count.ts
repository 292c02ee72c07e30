// English for the stock count.
import { formatFigure } from '../../../ground/units/index.ts';
import type { CountedStore, CountResult, CountSheet } from '../../sheets/count.ts';
import { counted, listed } from './said.ts';

export const countLabels = {
  place: 'PLACE',
  store: 'STORE',
  name: 'NAME',
  readBy: 'READ BY',
  typed: 'TYPED',
  counted: 'COUNTED L',
  book: 'BOOK L',
  difference: 'DIFFERENCE L',
  verdict: 'VERDICT',
  part: 'PART',
  count: 'COUNT',
  hidden: 'The book’s figures stay hidden until a reading is typed.',
  next: 'Type a reading: waterwright count add C-01 20.3L, or - where it was not read. At the end: waterwright count finish.',
  none: 'No stock count is under way. To begin one: waterwright count start.',
} as const;

export function countHead({ begun, read, items }: CountSheet): string {
  return `STOCK COUNT${begun === null ? '' : `, begun ${begun}`}: ${read} of ${items} read`;
}

/** `C-07 20.3 ± 0.4 L; the book has 20.9 ± 0.4 L: it agrees.` */
export function countedInWords({ id, counted: read, book, difference, verdict }: CountedStore): string {
  if (read === null || difference === null) return `${id} not read.`;
  const said = (figure: { value: number; u95: number; unit: string }) =>
    formatFigure(figure, { style: 'screen' });
  const off = verdict === 'agrees' ? '' : ` (${said(difference)})`;
  return `${id} ${said(read)}; the book has ${said(book)}: ${verdict}${off}.`;
}

export function swappedInWords([a, b]: readonly [string, string]): string {
  return `${a} and ${b} look swapped: each reading fits the other store. Look at their labels.`;
}

export function countFoot({ kept, entries, notRead, second, stores, parts }: CountResult): string[] {
  const what = [
    ...(stores.length === 0 ? [] : [counted(stores.length, 'store')]),
    ...(parts.length === 0 ? [] : [counted(parts.length, 'part')]),
  ];
  const signed = second === null ? 'Signed by one person.' : `Second: ${second}, declared, not verified.`;
  return [
    kept
      ? `Entered: ${listed(what)}, as readings (${listed(entries)}). No water was moved by it. ${signed}`
      : `Would enter ${listed(what)} as readings. ${signed} Nothing was written.`,
    ...(notRead.length === 0 ? [] : [`Not read: ${listed(notRead)}.`]),
  ];
}
