// The daybook: entries to read, findings of the whole book, the close of a day.
import { freeStock, type Position, reserveStock } from '../account/index.ts';
import {
  type AnyEntry,
  amendmentsOf,
  entryOf,
  type KeptEntry,
  type ScanQuery,
  type View,
} from '../book/index.ts';
import { dayOf, dayStartUtcMs } from '../ground/units/index.ts';
import type { BookLine, BookSheet, KeptSheet, WordedFinding } from '../papers/index.ts';
import { type Answer, yes } from './answer.ts';
import { bookLine, type LineContext, refsIn } from './book-line.ts';
import { coveredGrades } from './covered-grades.ts';
import { type Desk, type Moment, positionAt, type Sight, viewOf } from './desk.ts';
import { findName } from './log/context.ts';
import { log } from './log/log.ts';
import { headOf, wordOf } from './today.ts';

export interface BookQuery {
  /** Only this outpost day. */
  readonly day?: number;
  readonly kind?: string;
  readonly store?: string;
  /** Only entries whose line has these letters somewhere, in whatever case: number, words, note, name in a file. */
  readonly find?: string;
  /** At most so many, the youngest ones. */
  readonly most?: number;
}

const MOST_LINES = 40;

export async function showBook(
  desk: Desk,
  query: BookQuery,
  sight: Sight,
  moment: Moment,
): Promise<Answer<BookSheet>> {
  const seen = await positionAt(desk, sight, moment);
  if (!seen.ok) return seen;
  const position = seen.value;
  const store =
    query.store === undefined
      ? yes(undefined)
      : findName(
          'store',
          query.store,
          position.stores.map((each) => each.facts.id),
        );
  if (!store.ok) return store;
  const view = viewOf(sight);
  const wanted = { ...query, store: store.value };
  const amendments = await amendmentsOf(desk.port, view);
  const context = {
    dayRule: position.dayRule,
    mgPerL: position.mgPerL,
    instruments: position.index.instruments,
    amendments,
  };
  const says = finder(query.find, context);
  const { chosen, passed } = await chooseEntries(desk, position, { query: wanted, view, says });
  const refs = await refsIn(desk.port, chosen);
  const lines: BookLine[] = chosen.map((entry) => bookLine(entry, { ...context, ...refs }));
  return yes({ head: headOf(desk, sight, position), lines, more: passed > chosen.length });
}

/** Whether the line of an entry has what is looked for; amounts as they are printed, spaces of any kind alike. */
function finder(find: string | undefined, context: LineContext): (entry: AnyEntry) => boolean {
  const plain = (text: string) => text.replace(/\s+/g, ' ').toLowerCase();
  const wanted = plain(find ?? '').trim();
  if (wanted === '') return () => true;
  return (entry) => {
    const { ref, fileRef, id, kind, text, now, by, note, happened } = bookLine(entry, context);
    const all = [ref, ref.replace(' ', ':'), fileRef, id, kind, text, now, by, note, happened];
    return all.some((part) => part !== null && plain(part).includes(wanted));
  };
}

interface Wanted {
  readonly query: Omit<BookQuery, 'store'> & { readonly store: string | undefined };
  readonly view: View;
  readonly says: (entry: AnyEntry) => boolean;
}

/** The youngest entries that a query asks for, and how many there are of them in all. */
async function chooseEntries(
  desk: Desk,
  position: Position,
  { query, view, says }: Wanted,
): Promise<{ chosen: AnyEntry[]; passed: number }> {
  const chosen: AnyEntry[] = [];
  let passed = 0;
  for await (const rows of desk.port.scan(scanOf(query, position))) {
    for (const row of rows) {
      if (!isIn(view, row) || !isWanted(query, row, position)) continue;
      const entry = entryOf(row);
      if (!says(entry)) continue;
      passed += 1;
      chosen.push(entry);
      if (chosen.length > (query.most ?? MOST_LINES)) chosen.shift();
    }
  }
  return { chosen, passed };
}

function scanOf({ day, kind }: Wanted['query'], { dayRule }: Position): ScanQuery {
  const after =
    day === undefined
      ? {}
      : { after: { happenedAtMs: dayStartUtcMs(day, dayRule) - 1, site: '\uffff', number: 0 } };
  return { order: 'total', ...after, ...(kind !== undefined && { kinds: [kind] }) };
}

function isIn(view: View, row: KeptEntry): boolean {
  if (view.knownAtMs !== undefined && row.enteredAtMs > view.knownAtMs) return false;
  return view.asOfMs === undefined || row.happenedAtMs <= view.asOfMs;
}

/** The id of a store stands in quotes in the text of every entry that names it. */
function isWanted({ day, store }: Wanted['query'], row: KeptEntry, { dayRule }: Position): boolean {
  if (day !== undefined && dayOf(row.happenedAtMs, dayRule) !== day) return false;
  return store === undefined || row.text.includes(`"${store}"`);
}

/** Every finding of the book, in the order of time: also those that Today does not show any more. */
export async function allFindings(
  desk: Desk,
  sight: Sight,
  moment: Moment,
): Promise<Answer<readonly WordedFinding[]>> {
  const seen = await positionAt(desk, sight, moment);
  if (!seen.ok) return seen;
  const position = seen.value;
  return yes(
    [...position.findings].sort((a, b) => a.atMs - b.atMs).map((finding) => wordOf(position, finding)),
  );
}

/** Freezes the paper of a day: its figures as they are believed now. The past stays open to late entries. */
export async function closeDay(
  desk: Desk,
  moment: Moment,
  request: { readonly day?: number; readonly dryRun?: boolean },
): Promise<Answer<KeptSheet>> {
  const seen = await positionAt(desk, { kind: 'now' }, moment);
  if (!seen.ok) return seen;
  const position = seen.value;
  const day = request.day ?? dayOf(position.lastLineMs ?? position.atMs, position.dayRule);
  const figures = [
    ...coveredGrades(position).map((grade) => ({ name: `free ${grade}`, ...freeStock(position, grade) })),
    { name: 'reserve', ...reserveStock(position) },
  ].map(({ name, massMg, uMg }) => ({ name, massMg, uMg }));
  return log(
    desk,
    moment,
    { what: 'kind', kind: 'day-close', body: { day, what: 'day', figures } },
    request.dryRun === true ? { dryRun: true } : {},
  );
}
