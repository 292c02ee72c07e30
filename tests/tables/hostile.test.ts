// A thousand hostile files: none ends the program, none takes two seconds, none moves a drop; each is refused or waits with a reason.
import { spawnSync } from 'node:child_process';
import { join } from 'node:path';
import { afterAll, expect, test } from 'vitest';
import type { AnyEntry } from '../../src/book/index.ts';
import { bookDigest, entryOf, plainHash } from '../../src/book/index.ts';
import { type Desk, importTable } from '../../src/desk/index.ts';
import { TABLE_CAPS, TableReader } from '../../src/doors/workers/index.ts';
import type { Finding } from '../../src/ground/units/index.ts';
import { wordFinding } from '../../src/papers/index.ts';
import { recordCounts } from '../verification/record.ts';
import { bytesOf, corrieDesk, MOMENT } from './corrie-desk.ts';
import { chanceOf, FAMILIES } from './hostile-files.ts';

const FILES = 1000;
const SEED = 22;
const MOST_MS = 2000;
/** What an import that keeps no amount may add. */
const OF_THE_INBOX = new Set(['waiting-line', 'column-matching']);

const reader = new TableReader();
afterAll(() => reader.close());

const digestOf = async (desk: Desk): Promise<string> => bookDigest(plainHash, await desk.port.heads());

/** Whole milligrams of every account, so that nothing can move unseen. */
async function ledgerOf(desk: Desk): Promise<string> {
  const opened = await desk.account();
  if (!opened.ok) throw new Error('the book does not open');
  const { fold } = opened.value;
  return JSON.stringify([...fold.stores.keys()].map((id) => [id, fold.ledger.balanceMg(`store:${id}`)]));
}

/** Every finding has its sentences and its file. */
function saidAt(finding: Finding, file: string): string {
  const { text, expected, received, remedy } = wordFinding(finding, { dayRule: null });
  expect([text, expected, received, remedy].join(' ')).not.toMatch(/undefined|NaN,|\[object/);
  expect(finding.where.file).toBe(file);
  return finding.code;
}

async function entriesAfter(desk: Desk, count: number): Promise<readonly AnyEntry[]> {
  const entries: AnyEntry[] = [];
  for await (const rows of desk.port.scan({ order: 'site' })) entries.push(...rows.map(entryOf));
  return entries.slice(count);
}

test('a thousand hostile files', { timeout: 300_000 }, async () => {
  const names = Object.keys(FAMILIES);
  const counts: Record<string, number> = {
    files: 0,
    refused: 0,
    'with lines that wait': 0,
    'of nothing to take': 0,
  };
  const codes = new Set<string>();
  let slowestMs = 0;
  let desk = await corrieDesk();
  let before = {
    digest: await digestOf(desk),
    ledger: await ledgerOf(desk),
    entries: await desk.port.count(),
  };
  for (let k = 0; k < FILES; k++) {
    const name = names[k % names.length] as string;
    const made = FAMILIES[name]?.(chanceOf(SEED * 1000 + k)) ?? '';
    const bytes = typeof made === 'string' ? bytesOf(made) : made;
    const started = performance.now();
    const read = await reader.read(`${k}.csv`, bytes);
    const answer = read.ok ? await importTable(desk, MOMENT, { table: read.table, sure: true }) : null;
    slowestMs = Math.max(slowestMs, performance.now() - started);
    counts['files'] = (counts['files'] ?? 0) + 1;
    const findings = read.ok ? (answer?.ok === false ? answer.findings : []) : [read.finding];
    for (const finding of findings) codes.add(saidAt(finding, `${k}.csv`));
    if (answer?.ok !== true) {
      expect(findings.length, `${name} ${k} is said nothing of`).toBeGreaterThan(0);
      expect(await digestOf(desk), `${name} ${k} was refused and changed the book`).toBe(before.digest);
      counts['refused'] = (counts['refused'] ?? 0) + 1;
      continue;
    }
    const added = await entriesAfter(desk, before.entries);
    expect(
      added.filter(({ kind }) => !OF_THE_INBOX.has(kind)),
      `${name} ${k} made entries`,
    ).toEqual([]);
    expect(await ledgerOf(desk), `${name} ${k} moved water`).toBe(before.ledger);
    const waits = answer.value.waiting > 0;
    counts[waits ? 'with lines that wait' : 'of nothing to take'] =
      (counts[waits ? 'with lines that wait' : 'of nothing to take'] ?? 0) + 1;
    for (const { reasons } of answer.value.preview) for (const { code } of reasons) codes.add(code);
    if (waits)
      expect(answer.value.preview.every((line) => line.what !== 'waits' || line.reasons.length > 0)).toBe(
        true,
      );
    if (added.length === 0) continue;
    desk = await corrieDesk();
    before = { digest: await digestOf(desk), ledger: await ledgerOf(desk), entries: await desk.port.count() };
  }
  expect(({} as { polluted?: unknown }).polluted).toBeUndefined();
  expect(slowestMs).toBeLessThan(MOST_MS);
  expect(counts['refused']).toBeGreaterThan(300);
  expect(counts['with lines that wait']).toBeGreaterThan(150);
  expect(codes.size).toBeGreaterThan(20);
  recordCounts('hostile-tables', import.meta.filename, {
    seed: SEED,
    counts: {
      ...counts,
      families: names.length,
      'kinds of finding': codes.size,
      'milliseconds allowed for each': MOST_MS,
    },
  });
});

test('control: with the caps off one file ends its reader, and the program goes on', {
  timeout: 60_000,
}, async () => {
  const far = Number.MAX_SAFE_INTEGER;
  const off = { bytes: far, rows: far, columns: far, cellLength: far, timeMs: 2000, memoryMb: 32 };
  const wide = bytesOf(`${'a,'.repeat(6_000_000)}\n`.repeat(2));
  const open = new TableReader(off);
  const first = await open.read('wide.csv', wide);
  expect(first.ok ? 'read' : first.finding.code).toMatch(/^table-(too-slow|reader-ended)$/);
  // The next file finds a reader as if nothing had been.
  expect((await open.read('next.csv', bytesOf('a;b\n1;2\n'))).ok).toBe(true);
  await open.close();
  const capped = await reader.read('wide.csv', wide);
  expect(capped.ok ? 'read' : capped.finding.code).toBe(
    wide.length > TABLE_CAPS.bytes ? 'table-too-large' : 'table-columns-too-many',
  );
});

test('control: without a thread of its own the same file ends the program', { timeout: 60_000 }, () => {
  const door = join(import.meta.dirname, '../../src/doors/workers/index.ts');
  const script = `
    const { parseTable } = await import(${JSON.stringify(`file://${door}`)});
    const far = Number.MAX_SAFE_INTEGER;
    const caps = { bytes: far, rows: far, columns: far, cellLength: far, timeMs: far, memoryMb: far };
    const wide = new TextEncoder().encode(('a,'.repeat(6_000_000) + '\\n').repeat(2));
    parseTable('wide.csv', wide, caps);
  `;
  const ran = spawnSync(process.execPath, ['--max-old-space-size=32', '--input-type=module', '-e', script], {
    encoding: 'utf8',
  });
  expect(ran.status).not.toBe(0);
});

test('a cap is told with its place: bytes, lines, columns, letters', async () => {
  const small = new TableReader({ ...TABLE_CAPS, bytes: 200, rows: 3, columns: 3, cellLength: 20 });
  const codeOf = async (text: string) => {
    const read = await small.read('a.csv', bytesOf(text));
    return read.ok
      ? 'read'
      : `${read.finding.code} ${read.finding.where.line ?? ''} ${read.finding.where.column ?? ''}`.trim();
  };
  expect(await codeOf('a;b\n1;2\n3;4\n')).toBe('read');
  expect(await codeOf('a;b\n1;2\n3;4\n5;6\n')).toBe('table-rows-too-many 4');
  expect(await codeOf('a;b;c\n1;2;3\n')).toBe('read');
  expect(await codeOf('a;b;c;d\n1;2;3;4\n')).toBe('table-columns-too-many 1');
  expect(await codeOf(`a;b\n1;${'x'.repeat(20)}\n`)).toBe('read');
  expect(await codeOf(`a;b\n1;${'x'.repeat(21)}\n`)).toBe('table-cell-too-long 2 2');
  expect(await codeOf(`a;b\n${'1;2\n'.repeat(49)}`)).toBe('table-rows-too-many 4');
  expect(await codeOf(`a;b\n${'1;2\n'.repeat(50)}`)).toBe('table-too-large');
  await small.close();
});
