// The end of a stock count: the differences, and one entry with the readings of the stores, one for each part; all or none.
import type { Position } from '../account/index.ts';
import type { AnyDraft, Body } from '../book/index.ts';
import { dayOf, formatShortStamp, msPerDay } from '../ground/units/index.ts';
import type { CountedStore, CountResult } from '../papers/index.ts';
import { type Answer, no, yes } from './answer.ts';
import { type CountBook, countBook } from './count-book.ts';
import { type ReadItem, readItem } from './count-reading.ts';
import { type CountUnderWay, itemsByPlace } from './count-sheet.ts';
import { type Desk, type Moment, positionAt } from './desk.ts';
import { deskFinding } from './desk-finding.ts';
import { type Context, readMoment } from './log/context.ts';
import { objections } from './log/intention.ts';
import { makeDraft } from './log/make.ts';
import type { RequestWith } from './log/request.ts';
import { headOf } from './today.ts';

/** The entry that a count came to, as people name it; null while it is not in the book. */
export async function countInBook(desk: Desk, count: Pick<CountUnderWay, 'id'>): Promise<string | null> {
  const found = await desk.port.find(count.id);
  return found === null ? null : `${found.site} ${found.number}`;
}

/** @param more `yes`: the readings are of now, although the count was begun on another day */
export async function finishCount(
  desk: Desk,
  moment: Moment,
  count: CountUnderWay,
  more: RequestWith & { readonly yes?: boolean } = {},
): Promise<Answer<CountResult>> {
  const opened = await bookAt(desk, moment, more.at);
  if (!opened.ok) return opened;
  const book = opened.value;
  const read = readAll(book, count);
  if (!read.ok) return read;
  const { items, gone } = read.value;
  if (!items.some(({ amount, part }) => amount !== null || part !== null))
    return no('wrong use', deskFinding('count-empty'));
  const old = more.at === undefined && more.yes !== true ? ofAnotherDay(book.context, count) : null;
  if (old !== null) return old;
  const drafts = await draftsOf(book, count, items, more);
  if (!drafts.ok) return drafts;
  const result = resultOf(desk, moment, book, { items, gone });
  if (more.dryRun === true) return yes({ ...result, kept: false, entries: [] });
  const kept = await desk.keep(drafts.value, moment);
  if (!kept.ok) return kept;
  return yes({
    ...result,
    kept: true,
    second: kept.value.kept[0]?.second ?? null,
    entries: kept.value.kept.map(({ site, number }) => `${site} ${number}`),
  });
}

interface BookAt extends CountBook {
  /** For when the readings are entered. */
  readonly atMs: number;
  /** Where the book was looked at. */
  readonly sight: Parameters<typeof headOf>[1];
}

/** The book at the moment of the readings: now, or when somebody says that they were. */
async function bookAt(desk: Desk, moment: Moment, at: string | undefined): Promise<Answer<BookAt>> {
  const opened = await countBook(desk, moment);
  if (!opened.ok) return opened;
  const { context, position } = opened.value;
  const happened = readMoment(context, at);
  if (!happened.ok) return happened;
  const atMs = happened.value.utcMs;
  if (at === undefined || atMs >= position.atMs)
    return yes({ context, position, atMs, sight: { kind: 'now' } });
  const sight = { kind: 'as of', ms: atMs } as const;
  const seen = await positionAt(desk, sight, moment);
  return seen.ok ? yes({ context, position: seen.value, atMs, sight }) : seen;
}

/** In the order of the sheet. What has left the outpost since it was read is told and entered by nobody. */
function readAll(
  book: BookAt,
  count: CountUnderWay,
): Answer<{ readonly items: readonly ReadItem[]; readonly gone: readonly string[] }> {
  const items: ReadItem[] = [];
  const sheet = itemsByPlace(book.position, count).flatMap((place) => place.items);
  for (const item of sheet) {
    const read = readItem(book, item, item.typed ?? '-');
    if (!read.ok) return read;
    items.push(read.value);
  }
  const gone = [...count.typed.keys()].filter((id) => !sheet.some((item) => item.id === id));
  return yes({ items, gone });
}

/** A count that goes past midnight is one count; one that is older is asked about. */
const ONE_COUNT_MS = msPerDay / 2;

function ofAnotherDay({ fold, presentMs }: Context, { begunMs }: CountUnderWay): Answer<never> | null {
  const [day, today] = [dayOf(begunMs, fold.dayRule), dayOf(presentMs, fold.dayRule)];
  const isClosed = fold.closedDays.has(day);
  if (day === today || (presentMs - begunMs < ONE_COUNT_MS && !isClosed)) return null;
  return no('ask first', deskFinding('count-of-another-day', { day, begunMs, nowMs: presentMs, isClosed }));
}

type Bodies = { readonly kind: 'stock-count' | 'part-counted'; readonly body: unknown };

async function draftsOf(
  { context }: BookAt,
  count: CountUnderWay,
  items: readonly ReadItem[],
  more: RequestWith,
): Promise<Answer<AnyDraft[]>> {
  const drafts: AnyDraft[] = [];
  for (const { kind, body } of bodiesOf(context, count, items)) {
    const draft = await makeDraft(context, { what: 'kind', kind, body }, more);
    if (!draft.ok) return draft;
    const against = objections(context.fold, draft.value);
    if (against.length > 0) return no('refused', ...against);
    drafts.push(drafts.length === 0 ? { ...draft.value, id: count.id } : draft.value);
  }
  return yes(drafts);
}

function bodiesOf({ fold }: Context, count: CountUnderWay, items: readonly ReadItem[]): readonly Bodies[] {
  const readings: Body<'stock-count'>['readings'] = items.flatMap(({ id, amount, item }) =>
    amount === null ? [] : [{ store: id, amount, method: item.readBy === '' ? 'counted' : item.readBy }],
  );
  const name = `begun ${formatShortStamp(count.begunMs, fold.dayRule)}`;
  return [
    ...(readings.length === 0 ? [] : [{ kind: 'stock-count' as const, body: { count: name, readings } }]),
    ...items.flatMap(({ part }) =>
      part === null ? [] : [{ kind: 'part-counted' as const, body: bodyOf(part) }],
    ),
  ];
}

function bodyOf({ id, count, unit }: NonNullable<ReadItem['part']>): Body<'part-counted'> {
  return { part: id, count, ...(unit !== '' && { unit }) };
}

function resultOf(
  desk: Desk,
  moment: Moment,
  { position, sight, atMs }: BookAt,
  read: { readonly items: readonly ReadItem[]; readonly gone: readonly string[] },
): Omit<CountResult, 'kept' | 'entries'> {
  const stores = read.items.flatMap(({ store }) => store ?? []);
  return {
    head: headOf(desk, sight, position satisfies Position),
    at: formatShortStamp(atMs, position.dayRule),
    stores,
    parts: read.items.flatMap(({ part }) => part ?? []),
    swapped: swappedAmong(stores),
    notRead: read.items.filter(({ text }) => text === '-').map(({ id }) => id),
    gone: read.gone,
    second: moment.second ?? null,
  };
}

/**
 * Pairs of which each reading is far off its own store and agrees with what the book has of the other one: then their
 * differences are equal and opposite, and the likeliest cause is a label.
 */
export function swappedAmong(stores: readonly CountedStore[]): (readonly [string, string])[] {
  const off = stores.filter(({ verdict }) => verdict === 'far off');
  return off.flatMap((a, k) =>
    off
      .slice(k + 1)
      .filter((b) => fits(a, b) && fits(b, a))
      .map((b) => [a.id, b.id] as const),
  );
}

function fits({ counted }: CountedStore, { book }: CountedStore): boolean {
  const [a, b] = [counted.u95 ?? 0, book.u95 ?? 0];
  return Math.abs(counted.value - book.value) <= Math.sqrt(a * a + b * b);
}
