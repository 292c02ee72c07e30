// The practice book of Corrie as plain entries, to be changed all at once and reckoned again.
import { Account, type Fold, type Position, positionOf } from '../../src/account/index.ts';
import { type AnyEntry, entryOf, MemoryStore } from '../../src/book/index.ts';
import { Desk, startPractice } from '../../src/desk/index.ts';
import { type Outpost, readOutpost } from '../../src/outpost/index.ts';
import { LOG_LINES, OUTPOST_TEXT } from '../field-log/corrie-log.ts';
import { bookOf } from '../journeys/checks.ts';

/** Entries of the practice book, in the order in which they count. */
export async function practiceEntries(): Promise<readonly AnyEntry[]> {
  const port = new MemoryStore({ bookId: 'b', site: 'corrie', purpose: 'practice', createdAtMs: 0 });
  let count = 0;
  const chance = () => {
    count += 1;
    return Uint8Array.from({ length: 10 }, (_, at) => (count >> (8 * (at % 4))) & 0xff);
  };
  const desk = await Desk.open(port, { chance });
  const made = await startPractice(
    desk,
    { nowUtcMs: 0, offsetMin: 0, by: 'keeper' },
    { outpost: { name: 'outpost.yaml', text: OUTPOST_TEXT }, log: { name: 'log', lines: LOG_LINES } },
  );
  if (!made.ok) throw new Error(JSON.stringify(made.findings));
  const entries: AnyEntry[] = [];
  for await (const rows of port.scan({ order: 'total' })) entries.push(...rows.map(entryOf));
  return entries;
}

export interface Reckoned {
  readonly fold: Fold;
  readonly position: Position;
}

let files = 0;

/** A file that was read is remembered by its text: each time another one, so that every change is made. */
function withOwnFile(entry: AnyEntry): AnyEntry {
  if (entry.kind !== 'outpost') return entry;
  files += 1;
  return { ...entry, body: { ...entry.body, text: `${entry.body.text}\n# file ${files}\n` } };
}

/** @param change what the outpost is made into after its file was read */
export async function reckoned(
  entries: readonly AnyEntry[],
  change: (outpost: Outpost) => Outpost = (outpost) => outpost,
): Promise<Reckoned> {
  // A book takes the entries of a site in the order of their numbers.
  const arrived = entries.map(withOwnFile).sort((a, b) => a.number - b.number);
  const opened = await Account.open(await bookOf(arrived), {
    readOutpost: (text) => {
      const read = readOutpost(text, { file: 'outpost.yaml' });
      return read.ok ? { ...read, outpost: change(read.outpost) } : read;
    },
  });
  if (!opened.ok) throw new Error(JSON.stringify(opened.findings));
  const { fold } = opened.account;
  return { fold, position: positionOf(fold, fold.lastEntryMs ?? 0) };
}

type Value = unknown;

/** Every value in an entry, however deep, through a function of its key. */
export function changedThroughout<T>(value: T, change: (value: Value, key: string) => Value, key = ''): T {
  const changed = change(value, key);
  if (changed !== value) return changed as T;
  if (Array.isArray(value)) return value.map((each) => changedThroughout(each, change, key)) as T;
  if (typeof value !== 'object' || value === null) return value;
  return Object.fromEntries(
    Object.entries(value).map(([name, each]) => [name, changedThroughout(each, change, name)]),
  ) as T;
}

/** Numbers without a gap, site by site, in the order given. */
export function numbered(entries: readonly AnyEntry[]): readonly AnyEntry[] {
  const last = new Map<string, number>();
  return entries.map((entry) => {
    const number = (last.get(entry.site) ?? 0) + 1;
    last.set(entry.site, number);
    return { ...entry, number } as AnyEntry;
  });
}
