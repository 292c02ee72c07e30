// A desk over a book of Corrie in memory, with water in its containers, to which tables can be brought.
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { MemoryStore, plainHash } from '../../src/book/index.ts';
import { Desk, importTable, log, type Moment, startBook, type TableOptions } from '../../src/desk/index.ts';
import { parseTable, TABLE_CAPS, type TableOutcome } from '../../src/doors/workers/index.ts';
import type { TableSheet } from '../../src/papers/index.ts';

const OUTPOST = readFileSync(join(import.meta.dirname, '../../examples/corrie/outpost.yaml'), 'utf8');
export const MOMENT: Moment = { nowUtcMs: Date.UTC(2147, 4, 20), offsetMin: 0, by: 'keeper' };
const BEGIN: Moment = { ...MOMENT, nowUtcMs: Date.UTC(2147, 2, 31, 22) };

export async function corrieDesk(port = corriePort()): Promise<Desk> {
  let count = 0;
  const chance = () => Uint8Array.from({ length: 10 }, (_, k) => Math.floor(++count / 256 ** (k % 3)) % 256);
  const desk = await Desk.open(port, { chance, hash: plainHash });
  const stores = Array.from({ length: 6 }, (_, k) => ({
    store: `C-0${k + 1}`,
    amount: '12 L+-0.4',
    grade: 'drinking',
  }));
  const ports = [{ port: 'dispenser feed', store: 'C-01' }];
  const fields = {
    asOf: '2147-03-31T21:00Z',
    peopleAboard: 4,
    stores,
    ports,
    counters: [{ instrument: 'condensate', value: 100 }],
  };
  for (const step of [
    await startBook(desk, BEGIN, { name: 'outpost.yaml', text: OUTPOST }),
    await log(desk, BEGIN, { what: 'told', kind: 'opening', fields }),
  ]) {
    if (!step.ok) throw new Error(JSON.stringify(step.findings));
  }
  return desk;
}

export function corriePort(): MemoryStore {
  return new MemoryStore({ bookId: 'tables', site: 'corrie', purpose: 'book', createdAtMs: 0 });
}

export const bytesOf = (text: string): Uint8Array => new TextEncoder().encode(text);

export function tableOf(text: string | Uint8Array, file = 'sheet.csv'): TableOutcome {
  return parseTable(file, typeof text === 'string' ? bytesOf(text) : text, TABLE_CAPS);
}

/** The import of a text, or the codes that stopped it. */
export async function imported(
  desk: Desk,
  text: string | Uint8Array,
  how: {
    readonly options?: TableOptions;
    readonly dryRun?: boolean;
    readonly late?: string;
    readonly moment?: Moment;
  } = {},
): Promise<TableSheet | readonly string[]> {
  const read = tableOf(text);
  if (!read.ok) return [read.finding.code];
  const { moment = MOMENT, ...rest } = how;
  const answer = await importTable(desk, moment, { table: read.table, sure: true, ...rest });
  return answer.ok ? answer.value : answer.findings.map(({ code }) => code);
}

/** The same, where nothing may stop it. */
export async function taken(
  desk: Desk,
  text: string | Uint8Array,
  how: Parameters<typeof imported>[2] = {},
): Promise<TableSheet> {
  const sheet = await imported(desk, text, how);
  if ('length' in sheet) throw new Error(`stopped by ${sheet.join(', ')}`);
  return sheet;
}
