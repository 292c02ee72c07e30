// The stock count: a sheet in the order of the places that hides the book's figures, then readings, and never a movement.
import { type Position, readingDoubtMg, type StorePosition } from '../account/index.ts';
import type { AnyDraft, Body } from '../book/index.ts';
import { formatShortStamp, parseNumber } from '../ground/units/index.ts';
import type { CountedStore, CountItem, CountResult, CountSheet } from '../papers/index.ts';
import { type Answer, no, yes } from './answer.ts';
import { type Desk, type Moment, positionAt } from './desk.ts';
import { deskFinding } from './desk-finding.ts';
import { type Context, findName, readAmount } from './log/context.ts';
import { objections } from './log/intention.ts';
import { makeDraft } from './log/make.ts';
import type { RequestWith } from './log/request.ts';
import { headOf } from './today.ts';

/** What was typed so far, by the id of a store or of a part. `-` stands for: not read. */
export type Typed = ReadonlyMap<string, string>;

const NOT_READ: ReadonlySet<string> = new Set(['-', 'not-read', 'not read']);

export async function countSheet(
  desk: Desk,
  moment: Moment,
  count: { readonly begunMs: number | null; readonly typed: Typed },
): Promise<Answer<CountSheet>> {
  const seen = await positionAt(desk, { kind: 'now' }, moment);
  if (!seen.ok) return seen;
  const position = seen.value;
  const places = placesOf(position, count.typed);
  const items = places.flatMap((place) => place.items);
  return yes({
    head: headOf(desk, { kind: 'now' }, position),
    begun: count.begunMs === null ? null : formatShortStamp(count.begunMs, position.dayRule),
    places,
    read: items.filter(({ typed }) => typed !== null).length,
    items: items.length,
  });
}

/** Stores by the places of the outpost file in its order, what came with a visit behind them, and the parts last. */
function placesOf(position: Position, typed: Typed): CountSheet['places'] {
  const { outpost } = position.index;
  const known = outpost.places.map(({ id }) => id);
  const others = position.stores.map(({ facts }) => facts.place).filter((place) => !known.includes(place));
  const parts: CountItem[] = outpost.parts.map(({ id }) => ({
    kind: 'part',
    id,
    name: id,
    readBy: '',
    typed: typed.get(id) ?? null,
  }));
  return [
    ...[...known, ...new Set(others)].map((place) => ({
      place,
      items: position.stores
        .filter(({ facts }) => facts.place === place)
        .map((store) => itemOf(position, store, typed)),
    })),
    { place: 'parts', items: parts },
  ].filter(({ items }) => items.length > 0);
}

function itemOf(position: Position, { facts }: StorePosition, typed: Typed): CountItem {
  return {
    kind: 'store',
    id: facts.id,
    name: facts.name,
    readBy: position.index.stores.get(facts.id)?.gaugedBy ?? '',
    typed: typed.get(facts.id) ?? null,
  };
}

/** One reading as it was typed, held against what can be; for a store then the book's figure beside it. */
export async function countOne(
  desk: Desk,
  moment: Moment,
  said: { readonly name: string; readonly text: string },
): Promise<Answer<{ readonly id: string; readonly text: string; readonly store: CountedStore | null }>> {
  const opened = await contextOf(desk, moment);
  if (!opened.ok) return opened;
  const { context, position } = opened.value;
  const stores = position.stores.map(({ facts }) => facts.id);
  const parts = position.index.outpost.parts.map(({ id }) => id);
  const id = findName('store or part', said.name, [...stores, ...parts]);
  if (!id.ok) return id;
  const text = said.text.trim();
  if (NOT_READ.has(text.toLowerCase())) return yes({ id: id.value, text: '-', store: null });
  if (!stores.includes(id.value)) {
    const count = readCount(text, id.value);
    return count.ok ? yes({ id: id.value, text, store: null }) : count;
  }
  const store = countedOf(context, position, id.value, text);
  return store.ok ? yes({ id: id.value, text, store: store.value }) : store;
}

function readCount(text: string, part: string): Answer<number> {
  const read = parseNumber(text, { where: { field: part } });
  if (!read.ok) return no('bad input', read.finding);
  if (read.value >= 0) return yes(read.value);
  const data = { field: part, received: text.slice(0, 40), expected: 'a count from 0 on' };
  return no('bad input', deskFinding('field-needed', data, { where: { field: part } }));
}

interface Opened {
  readonly context: Context;
  readonly position: Position;
}

async function contextOf(desk: Desk, moment: Moment): Promise<Answer<Opened>> {
  const opened = await desk.account();
  if (!opened.ok) return opened;
  const { fold } = opened.value;
  if (fold.openingMs === null) return no('wrong use', deskFinding('book-not-begun', { what: 'opening' }));
  const seen = await positionAt(desk, { kind: 'now' }, moment);
  if (!seen.ok) return seen;
  return yes({
    context: { desk, fold, moment, presentMs: desk.enteringMs(fold, moment) },
    position: seen.value,
  });
}

/** Within two of the doubt of their difference they agree; beyond three something is wrong with one of them. */
const AGREES = 2;
const FAR_OFF = 3;

function countedOf(context: Context, position: Position, id: string, text: string): Answer<CountedStore> {
  const amount = readAmount(context, text, { field: id });
  if (!amount.ok) return amount;
  const store = position.stores.find(({ facts }) => facts.id === id) as StorePosition;
  const { massMg } = amount.value;
  const readUMg = readingDoubtMg(context.fold, id, amount.value);
  const uMg = Math.sqrt(readUMg * readUMg + store.uMg * store.uMg);
  const offMg = massMg - store.massMg;
  const off = Math.abs(offMg);
  const litres = (mg: number, u: number) =>
    ({ value: mg / position.mgPerL, u95: (2 * u) / position.mgPerL, unit: 'L' }) as const;
  return yes({
    id,
    place: store.facts.place,
    counted: litres(massMg, readUMg),
    book: litres(store.massMg, store.uMg),
    difference: litres(offMg, uMg),
    verdict: massMg > store.facts.capacityMg ? 'far off' : verdictOf(off, uMg),
  });
}

function verdictOf(offMg: number, uMg: number): CountedStore['verdict'] {
  if (offMg <= AGREES * uMg) return 'agrees';
  return offMg <= FAR_OFF * uMg ? 'a little off' : 'far off';
}

/** Posts the count: one entry with the readings of the stores, one for each part; all or none. */
export async function finishCount(
  desk: Desk,
  moment: Moment,
  count: { readonly name: string; readonly typed: Typed },
  more: RequestWith = {},
): Promise<Answer<CountResult>> {
  const opened = await contextOf(desk, moment);
  if (!opened.ok) return opened;
  const { context, position } = opened.value;
  if (count.typed.size === 0) return no('wrong use', deskFinding('count-empty'));
  const read = readAll(context, position, count.typed);
  if (!read.ok) return read;
  const { stores, readings, parts, notRead } = read.value;
  const drafts = await draftsOf(context, { name: count.name, readings, parts }, more);
  if (!drafts.ok) return drafts;
  const result = {
    head: headOf(desk, { kind: 'now' }, position),
    stores,
    parts,
    swapped: swappedAmong(stores),
    notRead,
    second: moment.second?.office ?? null,
  };
  if (more.dryRun === true) return yes({ ...result, kept: false, entries: [] });
  const kept = await desk.keep(drafts.value, moment);
  if (!kept.ok) return kept;
  return yes({
    ...result,
    kept: true,
    entries: kept.value.kept.map(({ site, number }) => `${site} ${number}`),
  });
}

interface AllRead {
  readonly stores: readonly CountedStore[];
  readonly readings: Body<'stock-count'>['readings'];
  readonly parts: readonly { readonly id: string; readonly count: number }[];
  readonly notRead: readonly string[];
}

/** In the order of the sheet. A store that has left since it was read is said, and nothing is posted. */
function readAll(context: Context, position: Position, typed: Typed): Answer<AllRead> {
  const stores: CountedStore[] = [];
  const readings: Body<'stock-count'>['readings'] = [];
  const parts: { id: string; count: number }[] = [];
  const notRead: string[] = [];
  const items = placesOf(position, typed).flatMap((place) => place.items);
  for (const gone of typed.keys())
    if (!items.some(({ id }) => id === gone))
      return no(
        'not in book',
        deskFinding('not-in-book', { what: 'store or part', name: gone.slice(0, 80), nearest: [] }),
      );
  for (const { kind, id, readBy, typed: text } of items) {
    if (text === null || text === '-') notRead.push(id);
    else if (kind === 'part') {
      const read = readCount(text, id);
      if (!read.ok) return read;
      parts.push({ id, count: read.value });
    } else {
      const counted = countedOf(context, position, id, text);
      const amount = readAmount(context, text, { field: id });
      if (!counted.ok) return counted;
      if (!amount.ok) return amount;
      stores.push(counted.value);
      readings.push({ store: id, amount: amount.value, method: readBy === '' ? 'counted' : readBy });
    }
  }
  return yes({ stores, readings, parts, notRead });
}

async function draftsOf(
  context: Context,
  what: Pick<AllRead, 'readings' | 'parts'> & { readonly name: string },
  more: RequestWith,
): Promise<Answer<AnyDraft[]>> {
  const bodies = [
    ...(what.readings.length === 0
      ? []
      : [{ kind: 'stock-count' as const, body: { count: what.name, readings: what.readings } }]),
    ...what.parts.map(({ id, count }) => ({ kind: 'part-counted' as const, body: { part: id, count } })),
  ];
  if (bodies.length === 0) return no('wrong use', deskFinding('count-empty'));
  const drafts: AnyDraft[] = [];
  for (const body of bodies) {
    const draft = await makeDraft(context, { what: 'kind', ...body }, more);
    if (!draft.ok) return draft;
    const against = objections(context.fold, draft.value);
    if (against.length > 0) return no('refused', ...against);
    drafts.push(draft.value);
  }
  return yes(drafts);
}

/** Pairs far off of which each reading agrees with what the book has of the other store. */
function swappedAmong(stores: readonly CountedStore[]): (readonly [string, string])[] {
  const off = stores.filter(({ verdict }) => verdict === 'far off');
  return off.flatMap((a, k) =>
    off
      .slice(k + 1)
      .filter((b) => fits(a, b) && fits(b, a))
      .map((b) => [a.id, b.id] as const),
  );
}

function fits(a: CountedStore, b: CountedStore): boolean {
  if (a.counted === null) return false;
  const u95 = Math.sqrt(a.counted.u95 * a.counted.u95 + b.book.u95 * b.book.u95);
  return Math.abs(a.counted.value - b.book.value) <= u95;
}
