// The stock count as a text: the sheet to walk with, what was just typed, and the differences at the end.
import type {
  CountedPart,
  CountedStore,
  CountItem,
  CountResult,
  CountSheet,
  CountTakenSheet,
} from '../sheets/count.ts';
import type { SheetFigure } from '../sheets/figure.ts';
import * as words from '../words/en/count.ts';
import { amountOf, fieldsOf } from './figures.ts';
import { seriesOf } from './ids.ts';
import { proseWidth, type TextOptions, tableWidth } from './options.ts';
import { page, record } from './page.ts';
import { signed } from './signs.ts';
import { type Column, table } from './table.ts';
import { headLines } from './today-head.ts';
import { wrap } from './wrap.ts';

const { countLabels: labels } = words;

function prose(text: string, options: TextOptions): readonly string[] {
  return wrap(signed(text, options.style), proseWidth(options));
}

export function countSheetText(sheet: CountSheet, options: TextOptions): string {
  if (sheet.begun === null)
    return options.style === 'plain' ? '' : page(prose(labels.none, options), options);
  if (options.style === 'plain') return page(plainItems(sheet), options);
  const head = [...headLines(sheet.head, options), '', ...prose(words.countHead(sheet), options)];
  return page(
    [
      ...head,
      ...prose(labels.hidden, options),
      ...placeLines(sheet, options),
      '',
      ...prose(labels.next, options),
    ],
    options,
  );
}

/** item place kind id way minutes typed. */
function plainItems({ places }: CountSheet): readonly string[] {
  return places.flatMap(({ place, items }) =>
    items.map((item) => {
      const { kind, id, minutes, typed } = item;
      const fields = ['item', place, kind, id, words.saidWay(item), `${minutes ?? ''}`, typed ?? ''];
      return record(fields.map((field) => signed(field, 'plain')));
    }),
  );
}

/** Stores and parts are laid out each as one table, so that columns stand under each other from place to place. */
function placeLines({ places }: CountSheet, options: TextOptions): readonly string[] {
  const rowsOf = new Map<CountItem, string>();
  for (const kind of ['store', 'part'] as const) {
    const items = places.flatMap((place) => place.items.filter((item) => item.kind === kind));
    const rows = table(itemColumns, items, { ...options, width: tableWidth(options) - 2 }).lines.slice(1);
    // On the narrowest of pages a row takes several lines: there each stands for itself.
    const isEven = rows.length === items.length;
    for (const [k, item] of items.entries()) rowsOf.set(item, isEven ? (rows[k] ?? '') : bare(item, options));
  }
  return places.flatMap(({ place, items }) => [
    '',
    ...prose(place, options),
    ...items.flatMap((item) => (rowsOf.get(item) ?? '').split('\n').map((line) => `  ${line}`)),
  ]);
}

function bare({ id, typed }: CountItem, options: TextOptions): string {
  return wrap(signed(`${id} ${typed ?? BLANK}`, options.style), tableWidth(options) - 2).join('\n');
}

/** A blank to write on where nothing was typed yet. */
const BLANK = '________';

const itemColumns: readonly Column<CountItem>[] = [
  { head: '', align: 'left', priority: 0, cell: ({ id }) => id },
  { head: '', align: 'left', priority: 0, cell: ({ typed }) => typed ?? BLANK },
  { head: '', align: 'left', priority: 1, cell: words.saidWay },
  { head: '', align: 'right', priority: 2, cell: words.saidMinutes },
  { head: '', align: 'left', priority: 3, cell: ({ id, name }) => (name === id ? '' : name) },
];

export function countTakenText({ readings }: CountTakenSheet, options: TextOptions): string {
  if (options.style !== 'plain')
    return page(
      readings.flatMap((each) => prose(words.takenInWords(each), options)),
      options,
    );
  return page(
    readings.map(({ id, text, store, part }) => {
      if (store !== null) return countedRecord(store);
      if (part !== null) return record(['part', id, `${part.count}`, part.unit]);
      return record(['not-read', id, text]);
    }),
    options,
  );
}

export function countResultText(result: CountResult, options: TextOptions): string {
  if (options.style === 'plain') return page(plainLines(result), options);
  const { stores, parts, swapped } = result;
  return page(
    [
      ...headLines(result.head, options),
      ...(stores.length === 0 ? [] : ['', ...table(resultColumns(options), stores, options).lines]),
      ...(parts.length === 0 ? [] : ['', ...table(partColumns, parts, options).lines]),
      ...(swapped.length === 0
        ? []
        : ['', ...swapped.flatMap((pair) => prose(words.swappedInWords(pair), options))]),
      '',
      ...words
        .countFoot({ ...result, notRead: seriesOf(result.notRead) })
        .flatMap((line) => prose(line, options)),
    ],
    options,
  );
}

function resultColumns(options: TextOptions): readonly Column<CountedStore>[] {
  const figure = (one: SheetFigure) => {
    const { value, u95 } = amountOf(one, options);
    return { value, u95 };
  };
  const unit = options.units;
  return [
    { head: labels.place, align: 'left', priority: 3, cell: ({ place }) => place },
    { head: labels.store, align: 'left', priority: 0, cell: ({ id }) => id },
    {
      head: `${labels.counted} ${unit}`,
      align: 'figure',
      priority: 0,
      cell: (store) => figure(store.counted),
    },
    { head: `${labels.book} ${unit}`, align: 'figure', priority: 1, cell: (store) => figure(store.book) },
    {
      head: `${labels.difference} ${unit}`,
      align: 'figure',
      priority: 2,
      cell: (store) => figure(store.difference),
    },
    { head: labels.verdict, align: 'left', priority: 0, cell: words.saidVerdict, least: 8 },
  ];
}

const partColumns: readonly Column<CountedPart>[] = [
  { head: labels.part, align: 'left', priority: 0, cell: ({ id }) => id, least: 8 },
  {
    head: labels.count,
    align: 'right',
    priority: 0,
    cell: ({ count, unit }) => (unit === '' ? `${count}` : `${count}\u00A0${unit}`),
  },
];

/** kept or would-keep, time, second · counted store L ± book-L ± difference-L ± verdict · part id count unit · swapped a b · not-read id · gone id · entry ref. */
function plainLines(result: CountResult): readonly string[] {
  const { stores, parts, swapped, notRead, gone, kept, at, second, entries } = result;
  return [
    record([kept ? 'kept' : 'would-keep', signed(at, 'plain'), second?.office ?? '']),
    ...stores.map(countedRecord),
    ...parts.map(({ id, count, unit }) => record(['part', signed(id, 'plain'), `${count}`, unit])),
    ...swapped.map(([a, b]) => record(['swapped', a, b])),
    ...notRead.map((id) => record(['not-read', signed(id, 'plain')])),
    ...gone.map((id) => record(['gone', signed(id, 'plain')])),
    ...entries.map((ref) => record(['entry', ref])),
  ];
}

function countedRecord(store: CountedStore): string {
  const { id, counted, book, difference } = store;
  const figures = [counted, book, difference].flatMap(fieldsOf);
  return record(['counted', signed(id, 'plain'), ...figures, words.saidVerdict(store)]);
}
