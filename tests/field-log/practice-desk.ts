// The practice book of Corrie in memory, as the keeper has it after sixty days, and how a test asks something of it.
import { MemoryStore } from '../../src/book/index.ts';
import {
  Desk,
  type LogRequest,
  log,
  type Moment,
  type RequestWith,
  startPractice,
} from '../../src/desk/index.ts';
import { LOG_LINES, OUTPOST_TEXT } from './corrie-log.ts';

export const KEEPER: Moment = { nowUtcMs: Date.UTC(2147, 4, 1), offsetMin: 0, by: 'keeper' };

export async function practiceDesk(): Promise<Desk> {
  const port = new MemoryStore({ bookId: 'b', site: 'corrie', purpose: 'practice', createdAtMs: 0 });
  let count = 0;
  const chance = () => Uint8Array.from({ length: 10 }, (_, k) => Math.floor(++count / 256 ** (k % 3)) % 256);
  const desk = await Desk.open(port, { chance });
  const made = await startPractice(desk, KEEPER, {
    outpost: { name: 'outpost.yaml', text: OUTPOST_TEXT },
    log: { name: 'field-log.jsonl', lines: LOG_LINES },
  });
  if (!made.ok) throw new Error('no practice book');
  return desk;
}

/** Asks, and keeps what is not refused. */
export function ask(desk: Desk, request: LogRequest, more: RequestWith = {}, by = 'keeper') {
  return log(desk, { ...KEEPER, by }, request, more);
}

/** The kind of problem and the codes with their rule or field; `kept` where nothing spoke against it. */
export async function saidOf(answer: ReturnType<typeof ask>): Promise<string> {
  const found = await answer;
  if (found.ok) return found.value.kept ? 'kept' : 'tried';
  const codes = found.findings.map(({ code, data, where }) =>
    [code, data['rule'] ?? where.field].filter((part) => part !== undefined).join(' '),
  );
  return `${found.problem}: ${codes.join(', ')}`;
}
