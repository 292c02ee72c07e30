// What a contact trace costs in a book of a hundred thousand entries: forward from a bad store, and back to where a store's water came from.
import { historyOf, originsOf, suspicionAt, traceContacts, type WaterHistory } from '../src/account/index.ts';
import { type AnyDraft, type BookInfo, keepDrafts, MemoryStore } from '../src/book/index.ts';
import { nodeHash } from '../src/doors/disk/index.ts';
import { longBook } from './account/long-book.ts';
import { type BenchRow, quantileOf, row } from './bench-row.ts';

const ENTRIES = 100_000;
const SEED = 2147;
const ROUNDS = 25;
const INFO: BookInfo = { bookId: 'bench', site: 'holm', purpose: 'practice', createdAtMs: 0 };

export async function bench(): Promise<readonly BenchRow[]> {
  const port = new MemoryStore(INFO);
  const drafts: AnyDraft[] = [...longBook(ENTRIES, SEED)];
  const outcome = await keepDrafts(port, drafts, { hash: nodeHash, keptAtMs: 0 });
  if (!outcome.ok || outcome.kept.length !== ENTRIES) throw new Error('the book was not kept');
  const started = performance.now();
  const read = await historyOf(port);
  const readMs = performance.now() - started;
  if (!read.ok) throw new Error('the book cannot be read');
  const { history } = read;
  return [
    row({ name: `history of ${ENTRIES} entries read, with the estimator`, value: readMs, unit: 'ms' }),
    row({ name: 'steps in that history', value: history.steps.length, unit: 'steps' }),
    figure(history, 'forward from a sample of the first day, the longest way, p50', forward),
    figure(history, 'back to where the water of a store came from, p50', backward),
  ];
}

/** The whole trace after the book is read: windows, cuts, every step behind the sample, contacts with their ways. */
function forward(history: WaterHistory): number {
  const firstMs = history.steps[0]?.atMs ?? 0;
  const suspicion = suspicionAt(history, { store: 'C-04' }, firstMs + 3_600_000);
  return traceContacts(history, suspicion).trace.contacts.length;
}

function backward(history: WaterHistory): number {
  return originsOf(history, 'C-03')?.origins.length ?? 0;
}

function figure(history: WaterHistory, name: string, what: (history: WaterHistory) => number): BenchRow {
  const times = Array.from({ length: ROUNDS }, () => {
    const started = performance.now();
    const found = what(history);
    const spent = performance.now() - started;
    if (found < 1) throw new Error(`${name}: nothing was found`);
    return spent;
  });
  return row({ name, value: quantileOf(times, 0.5), unit: 'ms', goal: { most: 50 } });
}
