// What an import of a table costs: from the bytes of a file to entries that are safe on the disk, with every check between.
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { type AnyDraft, type AnyEntry, type BookPort, keepDrafts, readDraft } from '../src/book/index.ts';
import { Desk, importTable, log, startBook } from '../src/desk/index.ts';
import { createBook, nodeHash, openBook } from '../src/doors/disk/index.ts';
import { TableReader } from '../src/doors/workers/index.ts';
import { type BenchRow, quantileOf, row } from './bench-row.ts';

const ROWS = 100_000;
const ROUNDS = 3;
const NOW_MS = Date.UTC(2150, 0, 1);

export async function bench(): Promise<readonly BenchRow[]> {
  const folder = mkdtempSync(join(tmpdir(), 'waterwright-bench-'));
  try {
    const bytes = new TextEncoder().encode(sheet());
    const runs: Run[] = [];
    for (let k = 0; k < ROUNDS; k++) runs.push(await importOnce(join(folder, `${k}.book`), bytes));
    const rate = (ms: number): number => ROWS / (ms / 1000);
    const rates = runs.map(({ readMs, durableMs }) => rate(readMs + durableMs));
    const of = (name: string, values: readonly number[]) =>
      row({ name, value: quantileOf(values, 0.5), unit: 'rows/s' });
    return [
      row({
        name: `table of ${ROWS} acts: read, matched, checked, sealed, durable; median of ${ROUNDS}`,
        value: quantileOf(rates, 0.5),
        unit: 'rows/s',
        goal: { least: 50_000 },
      }),
      row({ name: 'the same, least', value: Math.min(...rates), unit: 'rows/s' }),
      of(
        'bytes to rows, in their thread',
        runs.map(({ readMs }) => rate(readMs)),
      ),
      of(
        'rows to durable entries',
        runs.map(({ durableMs }) => rate(durableMs)),
      ),
      of(
        'drafts that are there already, checked, sealed, durable',
        runs.map(({ appendMs }) => rate(appendMs)),
      ),
      of(
        'the whole import, with the account moved on',
        runs.map(({ readMs, importMs }) => rate(readMs + importMs)),
      ),
      of(
        'the same table again, every row known',
        runs.map(({ againMs }) => rate(againMs)),
      ),
      row({
        name: 'processor time of a row, the account with it',
        value: quantileOf(
          runs.map(({ cpuMs }) => (1000 * cpuMs) / ROWS),
          0.5,
        ),
        unit: 'µs',
      }),
    ];
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

interface Run {
  /** Processor time of the whole import, which a busy machine does not stretch. */
  readonly cpuMs: number;
  readonly readMs: number;
  /** From the rows to the commit. */
  readonly durableMs: number;
  /** The same until the account has moved on with every entry. */
  readonly importMs: number;
  /** Drafts that are there already, checked, sealed and appended to another book: what no import can be faster than. */
  readonly appendMs: number;
  readonly againMs: number;
}

/** Acts of an outpost, one every ten minutes: movements, drinks, weighings and notes, as a keeper would write them. */
function sheet(): string {
  const lines = ['When;What;From;To;Store;Amount (L);By;Notes'];
  for (let k = 0; k < ROWS; k++) {
    const at = new Date(Date.UTC(2147, 3, 1) + k * 600_000).toISOString().slice(0, 16).replace('T', ' ');
    lines.push(`${at};${actOf(k)};keeper;line ${k}`);
  }
  return `${lines.join('\n')}\n`;
}

function actOf(k: number): string {
  const store = (shift: number) => `C-${String(1 + ((k + shift) % 6)).padStart(2, '0')}`;
  if (k % 10 === 0) return `weighed;;;${store(0)};${(180 + (k % 20)) / 10}`.replace('.', ',');
  if (k % 10 < 6) return `moved;${store(0)};${store(1)};;${(5 + (k % 20)) / 10}`.replace('.', ',');
  return k % 10 < 9 ? 'drank;;;;200 mL' : `note;;;${store(0)};`;
}

async function importOnce(path: string, bytes: Uint8Array): Promise<Run> {
  createBook(path, { bookId: 'bench', site: 'corrie', purpose: 'book', createdAtMs: 0 });
  using book = await openBook(path, { owner: 'bench' });
  let committedAt = Number.NaN;
  const watched: BookPort = {
    info: () => book.info(),
    heads: () => book.heads(),
    count: () => book.count(),
    find: (id) => book.find(id),
    findNumber: (site, number) => book.findNumber(site, number),
    scan: (query) => book.scan(query),
    append: async (entries, heads) => {
      await book.append(entries, heads);
      committedAt = performance.now();
    },
  };
  const desk = await begun(watched);
  const reader = new TableReader();
  await reader.read('warm.csv', new TextEncoder().encode('a;b\n1;2\n'));
  const started = performance.now();
  const read = await reader.read('acts.csv', bytes);
  const readMs = performance.now() - started;
  await reader.close();
  if (!read.ok) throw new Error(read.finding.code);
  const take = async (): Promise<{
    ms: number;
    durableMs: number;
    taken: number;
    known: number;
    waiting: number;
  }> => {
    const from = performance.now();
    const answer = await importTable(desk, MOMENT, { table: read.table, sure: true });
    if (!answer.ok) throw new Error(answer.findings.map(({ code }) => code).join(' '));
    const { taken, known, waiting } = answer.value;
    return { ms: performance.now() - from, durableMs: committedAt - from, taken, known, waiting };
  };
  const cpuBefore = process.cpuUsage();
  const first = await take();
  const cpu = process.cpuUsage(cpuBefore);
  if (first.taken !== ROWS) throw new Error(`${first.taken} rows were taken, ${first.waiting} wait`);
  const again = await take();
  if (again.known !== ROWS) throw new Error(`${again.known} rows were known`);
  const appendMs = await appendedAgain(book, `${path}.again`);
  const cpuMs = (cpu.user + cpu.system) / 1000;
  return { cpuMs, readMs, durableMs: first.durableMs, importMs: first.ms, againMs: again.ms, appendMs };
}

async function appendedAgain(book: BookPort, path: string): Promise<number> {
  const drafts: AnyDraft[] = [];
  for await (const rows of book.scan({ order: 'site' }))
    for (const row of rows) {
      const { site: _site, number: _number, ...draft } = JSON.parse(row.text) as AnyEntry;
      drafts.push(draft as AnyDraft);
    }
  createBook(path, { bookId: 'again', site: 'corrie', purpose: 'book', createdAtMs: 0 });
  using other = await openBook(path, { owner: 'bench' });
  const from = performance.now();
  const read = drafts.map((draft) => readDraft(draft)).flatMap((each) => (each.ok ? [each.draft] : []));
  const kept = await keepDrafts(other, read, { hash: nodeHash, keptAtMs: 0 });
  if (!kept.ok || kept.kept.length !== drafts.length) throw new Error('an entry was not kept again');
  return performance.now() - from;
}

const MOMENT = { nowUtcMs: NOW_MS, offsetMin: 0, by: 'keeper' };

/** A book of Corrie with water in its containers, so that what is moved is there. */
async function begun(book: BookPort): Promise<Desk> {
  let count = 0;
  const chance = (): Uint8Array => {
    count += 1;
    return Uint8Array.from({ length: 10 }, (_, k) => Math.floor(count / 256 ** k) % 256);
  };
  const desk = await Desk.open(book, { hash: nodeHash, chance });
  const text = readFileSync(join(import.meta.dirname, '../examples/corrie/outpost.yaml'), 'utf8');
  const begin = { ...MOMENT, nowUtcMs: Date.UTC(2147, 2, 31, 22) };
  const stores = Array.from({ length: 6 }, (_, k) => ({
    store: `C-0${k + 1}`,
    amount: '12 L+-0.4',
    grade: 'drinking',
  }));
  const fields = {
    asOf: '2147-03-31T21:00Z',
    peopleAboard: 4,
    stores,
    ports: [{ port: 'dispenser feed', store: 'C-01' }],
  };
  const steps = [
    await startBook(desk, begin, { name: 'outpost.yaml', text }),
    await log(desk, begin, { what: 'told', kind: 'opening', fields }),
  ];
  for (const step of steps) if (!step.ok) throw new Error(step.findings.map(({ code }) => code).join(' '));
  return desk;
}
