// Where the water is: what is in use and what is special in a table, the others in a few lines, the emptied ones in one.
import { roundFigure } from '../../ground/units/index.ts';
import type { StoreLine } from '../sheets/today.ts';
import * as words from '../words/en/labels.ts';
import { saidAgeRange } from './age.ts';
import { said, stockOf } from './figures.ts';
import { seriesOf } from './ids.ts';
import { proseWidth, type TextOptions, tableWidth } from './options.ts';
import { signed } from './signs.ts';
import { todayColumns } from './store-columns.ts';
import { table } from './table.ts';
import { hanging } from './wrap.ts';

/** Rows of the table; what comes after them is only counted. */
const MOST_ROWS = 16;
/** Kinds that a table would only grow long with. */
const many: ReadonlySet<string> = new Set(['container', 'wasteContainer', 'softBag', 'buffer']);

interface Sorted {
  /** In use, part of the reserve, or one of its kind. */
  readonly rows: readonly StoreLine[];
  /** Many alike: full ones in the rack. */
  readonly packed: readonly StoreLine[];
  readonly empty: readonly StoreLine[];
}

export function sortStores(stores: readonly StoreLine[]): Sorted {
  const empty = stores.filter((store) => isEmpty(store));
  const rest = stores.filter((store) => !empty.includes(store));
  const packed = rest.filter((store) => store.port === null && !store.reserve && many.has(store.kind));
  const rows = rest.filter((store) => !packed.includes(store));
  // What is drawn from stands first: it is what changes from hour to hour.
  return { rows: [...rows.filter(isOnPort), ...rows.filter((store) => !isOnPort(store))], packed, empty };
}

const isOnPort = ({ port }: StoreLine): boolean => port !== null;

/** Emptied, or never used and without a drop in it; less than nothing is no emptiness but a question. */
function isEmpty({ emptied, grade, volume, held, conditional, port }: StoreLine): boolean {
  if (held || conditional || port !== null) return false;
  if (volume.u95 !== null && volume.value < -volume.u95) return false;
  return emptied || (grade === null && roundFigure(volume).value.replace(/[0.-]/g, '') === '');
}

export function storeLines(stores: readonly StoreLine[], options: TextOptions): string[] {
  const { rows, packed, empty } = sortStores(stores);
  const shown = rows.slice(0, MOST_ROWS);
  const { lines, dropped } = table(todayColumns(options), shown, {
    ...options,
    width: tableWidth(options) - 2,
  });
  return [
    ...(shown.length === 0 ? [] : lines.map((line) => `  ${line}`)),
    ...(rows.length <= MOST_ROWS ? [] : more(rows.length - MOST_ROWS, options)),
    ...packedLines(packed, options),
    ...emptyLines(empty, options),
    ...(dropped.length === 0 ? [] : hanging('', signed(words.dropped(dropped), options.style), at(options))),
  ];
}

function at(options: TextOptions) {
  return { width: proseWidth(options), indent: 2 };
}

function more(count: number, options: TextOptions): string[] {
  return hanging('', signed(`${words.andMore(count)}: ${words.moreStores}`, options.style), at(options));
}

/** `technical, reckoned 27 to 41 d: C-08 20.9 ± 0.4 L, C-09 and C-10 each 20.8 ± 0.4 L`. */
function packedLines(stores: readonly StoreLine[], options: TextOptions): string[] {
  return groupsBy(stores, ({ mark, grade }) => `${markOf(mark)}|${grade ?? ''}`).flatMap((group) => {
    const [first] = group;
    if (first === undefined) return [];
    const names = [markOf(first.mark), first.grade ?? words.gradeUnknown].filter((name) => name !== '');
    const known = groupsBy(group, ({ howKnown }) => howKnown).map(
      (alike) => `${saidAges(alike)}: ${packedFigures(alike, options).join(', ')}`,
    );
    const text = `${names.join(', ')}, ${known.join('; ')}`;
    return hanging('', signed(text, options.style), at(options));
  });
}

/** An emptied store that stands here has a figure that asks a question; the word would hide it. */
const markOf = (mark: StoreLine['mark']): string => (mark === 'EMPTY' ? '' : mark);

function packedFigures(group: readonly StoreLine[], options: TextOptions): string[] {
  return groupsBy(group, (store) => said(stockOf(store, options), options)).map((alike) => {
    const ids = seriesOf(alike.map(({ id }) => id)).join(', ');
    const [first] = alike;
    const figure = first === undefined ? '' : said(stockOf(first, options), options);
    return alike.length === 1 ? `${ids}\u00A0${figure}` : `${ids}\u00A0${words.each}\u00A0${figure}`;
  });
}

/** The youngest and the oldest age of a group, where they differ. */
function saidAges(group: readonly StoreLine[]): string {
  const ages = group.flatMap(({ age }) => (age === null ? [] : [age]));
  const [first] = group;
  if (first === undefined || ages.length === 0) return first?.howKnown ?? '';
  return `${first.howKnown} ${saidAgeRange(Math.min(...ages), Math.max(...ages))}`;
}

/** Emptied stores hold no more than their rests, each with its own ± in the list of stores. */
function emptyLines(empty: readonly StoreLine[], options: TextOptions): string[] {
  if (empty.length === 0) return [];
  const ids = seriesOf(empty.map(({ id }) => id)).join(', ');
  return hanging('', signed(`${words.emptied} ${ids}`, options.style), at(options));
}

/** Groups in the order of their first members. */
function groupsBy(stores: readonly StoreLine[], key: (store: StoreLine) => string): readonly StoreLine[][] {
  const groups = new Map<string, StoreLine[]>();
  for (const store of stores) groups.set(key(store), [...(groups.get(key(store)) ?? []), store]);
  return [...groups.values()];
}
