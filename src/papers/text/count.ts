// The stock count as a text: the sheet to walk with, and the differences at the end.
import type { CountedStore, CountItem, CountResult, CountSheet } from '../sheets/count.ts';
import { countFoot, countHead, countLabels as labels, swappedInWords } from '../words/en/count.ts';
import { proseWidth, type TextOptions } from './options.ts';
import { page, record } from './page.ts';
import { signed } from './signs.ts';
import { type Column, table } from './table.ts';
import { headLines } from './today-head.ts';
import { wrap } from './wrap.ts';

export function countSheetText(sheet: CountSheet, options: TextOptions): string {
  if (options.style === 'plain')
    return page(
      sheet.places.flatMap(({ place, items }) =>
        items.map(({ kind, id, readBy, typed }) => record(['item', place, kind, id, readBy, typed ?? ''])),
      ),
      options,
    );
  const prose = (text: string) => wrap(signed(text, options.style), proseWidth(options));
  if (sheet.begun === null) return page(prose(labels.none), options);
  return page(
    [
      ...headLines(sheet.head, options),
      '',
      ...prose(countHead(sheet)),
      ...prose(labels.hidden),
      ...sheet.places.flatMap(({ place, items }) => [
        '',
        place,
        ...table(itemColumns, items, options)
          .lines.slice(1)
          .map((line) => `  ${line}`),
      ]),
      '',
      ...prose(labels.next),
    ],
    options,
  );
}

/** A blank to write on where nothing was typed yet. */
const BLANK = '________';

const itemColumns: readonly Column<CountItem>[] = [
  { head: labels.store, align: 'left', priority: 0, cell: ({ id }) => id },
  { head: labels.typed, align: 'right', priority: 0, cell: ({ typed }) => typed ?? BLANK },
  { head: labels.readBy, align: 'left', priority: 1, cell: ({ readBy }) => readBy },
  { head: labels.name, align: 'left', priority: 2, cell: ({ id, name }) => (name === id ? '' : name) },
];

export function countResultText(result: CountResult, options: TextOptions): string {
  if (options.style === 'plain') return page(plainLines(result), options);
  const prose = (text: string) => wrap(signed(text, options.style), proseWidth(options));
  const { stores, parts, swapped } = result;
  return page(
    [
      ...headLines(result.head, options),
      ...(stores.length === 0 ? [] : ['', ...table(resultColumns, stores, options).lines]),
      ...(parts.length === 0 ? [] : ['', ...table(partColumns, parts, options).lines]),
      ...(swapped.length === 0 ? [] : ['', ...swapped.flatMap((pair) => prose(swappedInWords(pair)))]),
      '',
      ...countFoot(result).flatMap(prose),
    ],
    options,
  );
}

const figure = (one: { readonly value: number; readonly u95: number } | null) =>
  one === null ? '' : { value: one.value, u95: one.u95 };

const resultColumns: readonly Column<CountedStore>[] = [
  { head: labels.place, align: 'left', priority: 3, cell: ({ place }) => place },
  { head: labels.store, align: 'left', priority: 0, cell: ({ id }) => id },
  { head: labels.counted, align: 'figure', priority: 0, cell: ({ counted }) => figure(counted) },
  { head: labels.book, align: 'figure', priority: 0, cell: ({ book }) => figure(book) },
  { head: labels.difference, align: 'figure', priority: 1, cell: ({ difference }) => figure(difference) },
  { head: labels.verdict, align: 'left', priority: 0, cell: ({ verdict }) => verdict },
];

const partColumns: readonly Column<{ readonly id: string; readonly count: number }>[] = [
  { head: labels.part, align: 'left', priority: 0, cell: ({ id }) => id },
  { head: labels.count, align: 'right', priority: 0, cell: ({ count }) => `${count}` },
];

/** counted store L ± book-L ± difference-L ± verdict · part id count · swapped a b · not-read id. */
function plainLines({ stores, parts, swapped, notRead, kept }: CountResult): string[] {
  const both = (one: { readonly value: number; readonly u95: number } | null) =>
    one === null ? ['', ''] : [`${one.value}`, `${one.u95}`];
  return [
    record([kept ? 'kept' : 'would-keep', `${stores.length}`, `${parts.length}`]),
    ...stores.map(({ id, counted, book, difference, verdict }) =>
      record(['counted', id, ...both(counted), ...both(book), ...both(difference), verdict]),
    ),
    ...parts.map(({ id, count }) => record(['part', id, `${count}`])),
    ...swapped.map(([a, b]) => record(['swapped', a, b])),
    ...notRead.map((id) => record(['not-read', id])),
  ];
}
