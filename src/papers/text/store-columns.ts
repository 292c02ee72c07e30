// The columns of a table of stores, on Today and in the list.

import type { StoresSheet } from '../sheets/store.ts';
import type { StoreLine } from '../sheets/today.ts';
import * as words from '../words/en/labels.ts';
import { shortWord } from '../words/en/store-quality.ts';
import { saidKnown } from './age.ts';
import { stockOf } from './figures.ts';
import type { TextOptions } from './options.ts';
import type { Column } from './table.ts';

type StoreColumn = Column<StoreLine>;
const { columns } = words;

/** What may not be used must never go for want of room: the column of marks breaks its lines instead. */
const MARKS = { align: 'left', priority: 0, least: 12 } as const;

/** On Today the place stands among the notes, and emptied stores are told elsewhere. */
export function todayColumns(options: TextOptions): readonly StoreColumn[] {
  return [...stock(options), { head: columns.notes, ...MARKS, cell: todayNotes }];
}

/** The list shows every store by itself, with place and name where there is room. */
export function listColumns(options: TextOptions, quality: StoresSheet['quality']): readonly StoreColumn[] {
  return [
    ...stock(options),
    { head: columns.notes, ...MARKS, cell: listNotes },
    { head: columns.onWordOf, align: 'left', priority: 7, cell: ({ id }) => wordFor(quality[id]), least: 18 },
    { head: columns.standing, align: 'left', priority: 4, cell: ({ standing }) => standing },
    { head: columns.place, align: 'left', priority: 5, cell: ({ place }) => place },
    { head: columns.name, align: 'left', priority: 6, cell: ({ id, name }) => (name === id ? '' : name) },
  ];
}

function wordFor(quality: StoresSheet['quality'][string] | undefined): string {
  return quality === undefined ? '' : shortWord(quality);
}

function stock(options: TextOptions): readonly StoreColumn[] {
  return [
    { head: columns.store, align: 'left', priority: 0, cell: ({ id }) => id, least: 8 },
    { head: columns.grade, align: 'left', priority: 2, cell: ({ grade }) => grade ?? '' },
    {
      head: words.stockHead(options.units),
      align: 'figure',
      priority: 0,
      cell: (store) => {
        const { value, u95 } = stockOf(store, options);
        return { value, u95 };
      },
    },
    { head: columns.howKnown, align: 'left', priority: 3, cell: saidKnown },
  ];
}

function todayNotes({ mark, port, reserve, place }: StoreLine): string {
  const where = port ?? (reserve ? words.ofReserve : place);
  return joined(mark === 'EMPTY' ? '' : mark, where);
}

function listNotes({ mark, port, reserve }: StoreLine): string {
  return joined(mark, port ?? '', reserve ? words.ofReserve : '');
}

function joined(...notes: readonly string[]): string {
  return notes.filter((note) => note !== '').join(', ');
}
