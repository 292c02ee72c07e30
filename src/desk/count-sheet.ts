// The sheet of a stock count: stores in the order of the places of the outpost file, parts behind them, and never a figure of the book.
import type { Position, StorePosition } from '../account/index.ts';
import { formatShortStamp } from '../ground/units/index.ts';
import type { CountItem, CountSheet } from '../papers/index.ts';
import { type Answer, yes } from './answer.ts';
import { countBook } from './count-book.ts';
import { type Desk, type Moment, positionAt } from './desk.ts';
import { findName } from './log/context.ts';
import { headOf } from './today.ts';

/** What was typed so far, by the id of a store or of a part; `-` is: not read. */
export type TypedReadings = ReadonlyMap<string, string>;

/** A count as the door keeps it between two calls: the book knows of it only when it is finished. */
export interface CountUnderWay {
  /** Id that the first entry of the count will have: by it a count that is in the book already is known again. */
  readonly id: string;
  /** UTC milliseconds, in the book's own time. */
  readonly begunMs: number;
  readonly by: string;
  /** Only these places; null: all. */
  readonly places: readonly string[] | null;
  readonly typed: TypedReadings;
}

/** Where parts stand on the sheet. */
export const PARTS = 'parts';
/** Kilograms of it count as a part, though the outpost file has it in a section of its own. */
const OXYGEN = 'bottled oxygen';

/** Begins a count of some places, or of all. */
export async function beginCount(
  desk: Desk,
  moment: Moment,
  places: readonly string[],
): Promise<Answer<CountUnderWay>> {
  const opened = await countBook(desk, moment);
  if (!opened.ok) return opened;
  const { context, position } = opened.value;
  const names = itemsByPlace(position, { places: null, typed: new Map() }).map(({ place }) => place);
  const chosen: string[] = [];
  for (const typed of places) {
    const place = findName('place', typed, names);
    if (!place.ok) return place;
    if (!chosen.includes(place.value)) chosen.push(place.value);
  }
  const begunMs = context.presentMs;
  return yes({
    id: desk.newId(begunMs),
    begunMs,
    by: moment.by,
    places: chosen.length === 0 ? null : chosen,
    typed: new Map(),
  });
}

export async function countSheet(
  desk: Desk,
  moment: Moment,
  count: CountUnderWay | null,
): Promise<Answer<CountSheet>> {
  const seen = await positionAt(desk, { kind: 'now' }, moment);
  if (!seen.ok) return seen;
  const position = seen.value;
  const places = itemsByPlace(position, count ?? { places: null, typed: new Map() });
  const items = places.flatMap((place) => place.items);
  const left = items.flatMap(({ typed, minutes }) => (typed === null && minutes !== null ? [minutes] : []));
  return yes({
    head: headOf(desk, { kind: 'now' }, position),
    begun: count === null ? null : formatShortStamp(count.begunMs, position.dayRule),
    places,
    read: items.filter(({ typed }) => typed !== null).length,
    items: items.length,
    minutesLeft: left.length === 0 ? null : left.reduce((sum, each) => sum + each, 0),
  });
}

/** Places that the outpost file does not name, such as a vehicle, come behind those that it does; what was typed is shown wherever it is. */
export function itemsByPlace(
  position: Position,
  count: Pick<CountUnderWay, 'places' | 'typed'>,
): CountSheet['places'] {
  const known = position.index.outpost.places.map(({ id }) => id);
  const others = position.stores.map(({ facts }) => facts.place).filter((place) => !known.includes(place));
  const inPlace = (place: string) =>
    place === PARTS
      ? partItems(position, count.typed)
      : position.stores
          .filter(({ facts }) => facts.place === place)
          .map((store) => storeItem(position, store, count.typed));
  return [...new Set([...known, ...others, PARTS])]
    .map((place) => {
      const isAsked = count.places === null || count.places.includes(place);
      return { place, items: inPlace(place).filter(({ typed }) => isAsked || typed !== null) };
    })
    .filter(({ items }) => items.length > 0);
}

function storeItem(position: Position, { facts }: StorePosition, typed: TypedReadings): CountItem {
  const store = position.index.stores.get(facts.id);
  const task = position.index.tasks.get(store?.readingTask ?? '');
  return {
    kind: 'store',
    id: facts.id,
    // A number at the end says again what stands before it.
    name: facts.name.endsWith(` ${facts.id}`) ? facts.name.slice(0, -facts.id.length - 1) : facts.name,
    readBy: store?.gaugedBy ?? '',
    unit: '',
    minutes: task === undefined ? null : task.minutes * task.people,
    typed: typed.get(facts.id) ?? null,
  };
}

function partItems({ index }: Position, typed: TypedReadings): readonly CountItem[] {
  const { parts, bottledOxygen } = index.outpost;
  const named = [
    ...parts.map(({ id }) => ({ id, unit: '' })),
    ...(bottledOxygen === undefined || parts.some(({ id }) => id === OXYGEN)
      ? []
      : [{ id: OXYGEN, unit: 'kg' }]),
  ];
  return named.map(({ id, unit }) => ({
    kind: 'part',
    id,
    name: id,
    readBy: '',
    unit,
    minutes: null,
    typed: typed.get(id) ?? null,
  }));
}
