// Records every change that a process makes to the files of a folder, by strace.
import { readFileSync, rmSync } from 'node:fs';
import { need } from './needs.ts';
import { startWriter, type WriterSaid } from './run-writer.ts';
import { straceWords } from './strace-words.ts';
import { type DiskEvent, readEvents } from './system-calls.ts';
import type { WriterOrders } from './writer.ts';

/** Runs the writer and gives back its calls in their order, with what it said among them. */
export async function recordWriter(
  orders: WriterOrders,
  folder: string,
): Promise<{ readonly events: readonly DiskEvent[]; readonly said: WriterSaid }> {
  need('strace');
  const log = `${folder}.strace`;
  try {
    const said = await startWriter(orders, straceWords(log)).said;
    return { events: readEvents(readFileSync(log, 'latin1'), folder), said };
  } finally {
    rmSync(log, { force: true });
  }
}
