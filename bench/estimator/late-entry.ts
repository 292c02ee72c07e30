// What a late entry costs: a book of a year in memory, and one more movement that happened so many days before its end.
import { Account, positionOf } from '../../src/account/index.ts';
import { type AnyEntry, entryId, MemoryStore, rowOf } from '../../src/book/index.ts';
import { OUTPOST, syntheticEntries } from './synthetic-book.ts';

export interface LateBook {
  readonly account: Account;
  readonly states: number;
  readonly entries: number;
  /** Keeps one more entry, and takes it to a position. Returns milliseconds from the entry that is kept to the position. */
  readonly late: (days: number) => Promise<number>;
}

const DAY_MS = 86_400_000;
const SEED = 2147;

/** A book with so many records a day, one in ten a reading. */
export async function lateBook({ days, aDay }: { days: number; aDay: number }): Promise<LateBook> {
  const told = syntheticEntries(days * aDay, SEED, aDay);
  const port = new MemoryStore({ bookId: 'bench', site: 'skerry', purpose: 'practice', createdAtMs: 0 });
  await port.append([fileEntry(told[0] as AnyEntry), ...told].map(kept), []);
  const opened = await Account.open(port);
  if (!opened.ok) throw new Error(JSON.stringify(opened.findings));
  const { account } = opened;
  let count = told.length;
  const late = async (daysLate: number): Promise<number> => {
    count += 1;
    const entry = lateEntry(told, count, daysLate);
    await port.append([kept(entry)], []);
    const started = performance.now();
    if (!(await account.take([entry]))) throw new Error('the account has to be opened anew');
    const position = positionOf(account.fold, account.fold.lastEntryMs ?? 0);
    const spent = performance.now() - started;
    if (position.closureMg !== 0 || position.entries !== count + 1)
      throw new Error('the late entry is not in the position');
    return spent;
  };
  return { account, states: account.fold.estimator.size, entries: count, late };
}

function kept(entry: AnyEntry) {
  return rowOf(entry, { text: JSON.stringify(entry), seal: '', keptAtMs: 0 });
}

function fileEntry(opening: AnyEntry): AnyEntry {
  const id = entryId(opening.happenedAtMs, new Uint8Array(10).fill(255));
  return { ...opening, id, site: 'file', number: 1, kind: 'outpost', body: { text: OUTPOST } } as AnyEntry;
}

/** A movement like the others; amounts of all late ones differ, so that none looks like a copy. */
function lateEntry(told: readonly AnyEntry[], number: number, daysLate: number): AnyEntry {
  const last = told.at(-1) as AnyEntry;
  const massMg = 300_000 + number;
  const body = {
    from: 'T-1',
    to: 'C-01',
    amount: { massMg, raw: { value: massMg, unit: 'mg', mgPerUnit: 1 } },
    instrument: 'meter-1',
  };
  const happenedAtMs = last.happenedAtMs - daysLate * DAY_MS;
  const bytes = Uint8Array.from({ length: 10 }, (_, at) => (number >>> (8 * (at % 4))) & 0xff);
  const id = entryId(last.enteredAtMs + 1, bytes);
  return { ...last, id, number, kind: 'movement', happenedAtMs, body } as AnyEntry;
}
