// The practice book up to its last day, in memory.
import { MemoryStore, plainHash } from '../../src/book/index.ts';
import { Desk, type Moment, startPractice } from '../../src/desk/index.ts';
import { LOG_LINES, OUTPOST_TEXT } from '../field-log/corrie-log.ts';

export const MOMENT: Moment = { nowUtcMs: Date.UTC(2147, 3, 30), offsetMin: 0, by: 'keeper' };

export async function corrieDesk(): Promise<Desk> {
  let count = 0;
  const chance = () => Uint8Array.from({ length: 10 }, (_, k) => Math.floor(++count / 256 ** (k % 3)) % 256);
  const port = new MemoryStore({ bookId: 'practice', site: 'corrie', purpose: 'practice', createdAtMs: 0 });
  const desk = await Desk.open(port, { chance, hash: plainHash });
  const begun = await startPractice(desk, MOMENT, {
    outpost: { name: 'outpost.yaml', text: OUTPOST_TEXT },
    log: { name: 'field-log.jsonl', lines: LOG_LINES },
  });
  if (!begun.ok) throw new Error(JSON.stringify(begun.findings));
  return desk;
}
