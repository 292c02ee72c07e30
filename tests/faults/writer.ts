// The process that is killed, cut off or lied to: it appends entries of a known chain, and says so only after each append returned.
import { openSync, writeSync } from 'node:fs';
import type { KeptEntry } from '../../src/book/index.ts';
import { createBook, type DiskBook, DiskProblem, nodeHash, openBook } from '../../src/doors/disk/index.ts';
import { makeDrafts, sealedAs } from '../contract/made-up-entries.ts';

export interface WriterOrders {
  readonly path: string;
  readonly create?: boolean;
  /** Entries of each append; a 0 closes the book and opens it again. Ends at the first append that the chain has no rows for. */
  readonly plan: readonly number[];
  /** The broken control: says that an append is done before it is. */
  readonly ackEarly?: boolean;
  /** Person to become before the book is touched. */
  readonly uid?: number;
  /** Open files until the system has no more. */
  readonly exhaust?: boolean;
}

export const SEED = 2147;
export const LONGEST_CHAIN = 2000;
export const INFO = {
  bookId: '017f22e2-79b0-7cc3-98c4-dc0c0c07398f',
  site: 'corrie',
  purpose: 'book',
  createdAtMs: Date.UTC(2147, 0, 1),
} as const;

/** The one chain that every writer writes, so that whoever looks later knows each letter of it. */
export function chainOf(length: number): KeptEntry[] {
  return sealedAs('corrie', makeDrafts(SEED, length), undefined, nodeHash);
}

function say(line: string): void {
  writeSync(1, `${line}\n`);
}

function sayProblem(error: unknown): void {
  say(`err ${error instanceof DiskProblem ? error.code : `UNCLEAR ${String(error)}`}`);
}

async function appendNext(
  book: DiskBook,
  rows: readonly KeptEntry[],
  count: number,
  ackEarly: boolean,
): Promise<void> {
  const [head] = await book.heads();
  const from = head?.number ?? 0;
  const next = rows.slice(from, from + count);
  if (next.length < count) throw new RangeError('the chain is at its end');
  if (ackEarly) say(`ack ${from + count}`);
  await book.append(next, [head ?? { site: 'corrie', number: 0, seal: '0'.repeat(64) }]);
  if (!ackEarly) say(`ack ${from + count}`);
}

async function run(orders: WriterOrders): Promise<void> {
  const { path, plan } = orders;
  const rows = chainOf(LONGEST_CHAIN);
  if (orders.uid !== undefined) {
    process.setgroups?.([]);
    process.setgid?.(orders.uid);
    process.setuid?.(orders.uid);
  }
  if (orders.exhaust === true) useUpFiles();
  if (orders.create === true) {
    createBook(path, INFO);
    say('ack 0');
  }
  const open = () => openBook(path, { owner: 'faults', waitMs: 1000 });
  let book = await open();
  say(`open ${book.whyNotWritten()?.code ?? 'to write'}`);
  for (const count of plan) {
    try {
      if (count > 0) await appendNext(book, rows, count, orders.ackEarly === true);
      else {
        book.close();
        book = await open();
      }
    } catch (error) {
      if (error instanceof RangeError) break;
      sayProblem(error);
    }
  }
  book.close();
  say('done');
}

function useUpFiles(): void {
  try {
    for (;;) openSync('/dev/null', 'r');
  } catch {
    // Now there are no more.
  }
}

const [orders] = process.argv.slice(2);
if (orders !== undefined && import.meta.main) await run(JSON.parse(orders) as WriterOrders).catch(sayProblem);
