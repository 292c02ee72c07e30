// The papers of a hold: the notice that hangs on its stores, and the release with what left it.

import { rowsOfStores } from '../../account/index.ts';
import {
  type AnyEntry,
  amend,
  amendmentsOf,
  type BookPort,
  type Entry,
  entryOf,
  type View,
} from '../../book/index.ts';
import { dayStartUtcMs, formatShortStamp } from '../../ground/units/index.ts';
import {
  type HoldLine,
  holdNoticePaper,
  holdReleasePaper,
  type LeftHold,
  type PaperDocument,
  type PaperFigure,
} from '../../papers/index.ts';
import { type Answer, yes } from '../answer.ts';
import { type Desk, type Moment, type Sight, viewOf } from '../desk.ts';
import { endedHold, holdLines } from '../quality/hold-lines.ts';
import { findHold, holdShow } from '../quality/holds.ts';
import { sampleLines } from '../quality/sample-lines.ts';
import { type Seen, seenAt } from '../quality/seen.ts';
import { headOf } from '../today.ts';
import { bookSeal } from './book-seal.ts';
import { paperRows } from './paper-rows.ts';
import { wordOfEntry } from './paper-words.ts';
import { figuresOfWay, sampleOfWay, type WayOut } from './way-figures.ts';

export interface HoldPaperQuery {
  readonly hold: string;
}

/** Asked without the lines of who drank, so that they cannot come onto it. */
export async function holdNotice(
  desk: Desk,
  { hold }: HoldPaperQuery,
  sight: Sight,
  moment: Moment,
): Promise<Answer<PaperDocument>> {
  const shown = await holdShow(desk, { hold, drank: false }, sight, moment);
  if (!shown.ok) return shown;
  return yes(holdNoticePaper({ book: await bookSeal(desk), sheet: shown.value }));
}

export async function holdRelease(
  desk: Desk,
  query: HoldPaperQuery,
  sight: Sight,
  moment: Moment,
): Promise<Answer<PaperDocument>> {
  const looked = await seenAt(desk, sight, moment);
  if (!looked.ok) return looked;
  const seen = looked.value;
  const lines = holdLines(seen);
  const found = findHold(seen, lines, query.hold);
  if (!found.ok) return found;
  const hold = lines.find((line) => line.hold === found.value) ?? endedHold(seen, found.value);
  const ways = await waysOutOf(seen.desk.port, viewOf(sight));
  const out = leftOf(seen, hold, ways);
  const left = out.map(({ line }) => line);
  const stores = left.map(({ store }) => store);
  const figures = [...figuresOf(seen, left), ...figuresOfWays(seen, out)];
  return yes(
    holdReleasePaper({
      head: headOf(desk, sight, seen.position),
      book: await bookSeal(desk),
      ...{ hold, left, figures },
      rows: paperRows(seen.fold, rowsOfStores(seen.fold, stores), {
        stores,
        measured: figures.map(({ figure }) => figure.parameter),
      }),
    }),
  );
}

const WAYS_OUT = ['release', 'downgrade', 'waiver'] as const;

async function waysOutOf(port: BookPort, view: View): Promise<readonly WayOut[]> {
  const amendments = await amendmentsOf(port, view);
  const found: AnyEntry[] = [];
  for await (const rows of port.scan({ order: 'total', kinds: WAYS_OUT }))
    for (const row of rows) {
      if (view.knownAtMs !== undefined && row.enteredAtMs > view.knownAtMs) continue;
      if (view.asOfMs !== undefined && row.happenedAtMs > view.asOfMs) continue;
      const entry = amend(entryOf(row), amendments);
      if (entry !== null) found.push(entry);
    }
  return found as unknown as readonly WayOut[];
}

interface Out {
  readonly way: WayOut;
  readonly line: LeftHold;
}

/** What left the hold and is not on it still: an entry that released nothing by its results is no way out. */
function leftOf(seen: Seen, hold: HoldLine, entries: readonly WayOut[]): readonly Out[] {
  const entry = seen.past.holds.findLast(({ body }) => body.hold === hold.hold);
  const sinceMs = entry?.happenedAtMs ?? 0;
  const members = new Set([
    ...(entry?.body.stores ?? []),
    ...(entry?.body.conditional ?? []),
    ...hold.stores.map(({ store }) => store),
  ]);
  const still = new Set(hold.stores.flatMap(({ as, store }) => (as === 'waived' ? [] : [store])));
  const last = new Map<string, Out>();
  for (const way of entries) {
    if (way.happenedAtMs < sinceMs || (way.body.hold !== undefined && way.body.hold !== hold.hold)) continue;
    for (const store of storesOf(way))
      if (members.has(store) && !still.has(store) && !last.has(store))
        last.set(store, { way, line: leftLine(seen, way, store) });
  }
  return [...last.values()];
}

function storesOf(way: WayOut): readonly string[] {
  return way.kind === 'downgrade' ? [way.body.store] : way.body.stores;
}

const BECAME = { release: 'released', downgrade: 'downgraded', waiver: 'waived' } as const;

function leftLine({ position, fold }: Seen, way: WayOut, store: string): LeftHold {
  const { dayRule } = position;
  const released = fold.stores.get(store)?.released;
  const isStanding = way.kind === 'release' && released?.entry === way.id;
  const untilMs = isStanding ? (released?.untilMs ?? null) : endOf(way, dayRule);
  const named = way.kind === 'release' ? samplesOf(way) : [];
  return {
    ...wordOfEntry(way, dayRule),
    store,
    how: BECAME[way.kind],
    // What the account found to prove it; of a release that stands no more, what the medic named.
    samples: isStanding ? (released?.samples ?? named) : named,
    until: untilMs === null ? null : formatShortStamp(untilMs, dayRule),
    toGrade: way.kind === 'downgrade' ? way.body.toGrade : null,
  };
}

/** A release that names no sample rests on the figures that it brought. */
function samplesOf(way: Entry<'release'>): readonly string[] {
  const { samples = [], values } = way.body;
  return samples.length === 0 && values.length > 0 ? [sampleOfWay(way)] : samples;
}

/** It ends with its last day. */
function endOf(way: WayOut, dayRule: Seen['position']['dayRule']): number | null {
  if (way.kind === 'downgrade' || way.body.untilDay === undefined) return null;
  return dayStartUtcMs(way.body.untilDay + 1, dayRule);
}

function figuresOf(seen: Seen, left: readonly LeftHold[]): readonly PaperFigure[] {
  return sampleLines(seen).flatMap(({ sample, taken, figures }) => {
    const stores = left.filter(({ samples }) => samples.includes(sample)).map(({ store }) => store);
    return stores.length === 0 ? [] : figures.map((figure) => ({ stores, sample, taken, figure }));
  });
}

/** Figures that came with a way out itself, once for all its stores. */
function figuresOfWays(seen: Seen, out: readonly Out[]): readonly PaperFigure[] {
  return [...new Set(out.map(({ way }) => way))].flatMap((way) =>
    figuresOfWay(
      seen,
      way,
      out.filter((one) => one.way === way).map(({ line }) => line.store),
    ),
  );
}
