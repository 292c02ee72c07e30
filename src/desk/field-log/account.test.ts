// The practice log in a book, and what the account makes of it: whole milligrams that close, and the oddities that are deliberate.
import { beforeAll, expect, test } from 'vitest';
import { corrieReader, LOG_LINES, OUTPOST_TEXT } from '../../../tests/field-log/corrie-log.ts';
import { Account, type Position, positionOf } from '../../account/index.ts';
import { type Draft, entryId, keepDrafts, kindVersion, MemoryStore, plainHash } from '../../book/index.ts';
import { readFieldLog } from './index.ts';

const readCorrie = corrieReader(readFieldLog);
const DAY_ONE_MS = Date.UTC(2147, 2, 1);
const MG_PER_L = 997_800;

/** Kept the day before, so that the book knows the outpost from the first line on. */
const outpostDraft: Draft<'outpost'> = {
  id: entryId(DAY_ONE_MS, new Uint8Array(10)),
  version: kindVersion('outpost'),
  kind: 'outpost',
  happenedAtMs: DAY_ONE_MS - 86_400_000,
  happenedOffsetMin: 0,
  enteredAtMs: DAY_ONE_MS - 86_400_000,
  enteredOffsetMin: 0,
  by: 'keeper',
  body: { text: OUTPOST_TEXT },
};

const port = new MemoryStore({ bookId: 'test', site: 'corrie', purpose: 'practice', createdAtMs: 0 });

beforeAll(async () => {
  const outcome = await keepDrafts(port, [outpostDraft, ...readCorrie().drafts], {
    hash: plainHash,
    keptAtMs: 0,
  });
  if (!outcome.ok) throw new Error('the practice log was not kept');
});

/** At the end of a day, as it had happened by then. */
async function positionOfDay(day: number): Promise<Position> {
  const atMs = DAY_ONE_MS + day * 86_400_000 - 1;
  const opened = await Account.open(port, { view: { asOfMs: atMs } });
  if (!opened.ok) throw new Error('no account');
  return positionOf(opened.account.fold, atMs);
}

function litres(position: Position, store: string): number {
  const found = position.stores.find(({ facts }) => facts.id === store);
  if (found === undefined) throw new Error(`${store} is not aboard`);
  return found.massMg / MG_PER_L;
}

test('the account closes to the milligram on every tenth day and on the last', async () => {
  for (const day of [1, 10, 20, 30, 40, 50, 60]) {
    const position = await positionOfDay(day);
    expect(position.closureMg).toBe(0);
    expect(position.accountsMg.get('unplaced') ?? 0).toBe(0);
  }
});

test('what the log has that is odd on purpose is found, each with its line', async () => {
  const { findings } = await positionOfDay(60);
  const found = new Set(
    findings.map(
      ({ code, data }) => `${code} ${/\[(.+)\]/.exec(`${data['ref']}`)?.[1] ?? data['ref'] ?? ''}`,
    ),
  );
  for (const wanted of [
    'duplicate-proposed E0035',
    'reserve-unreleased E0039',
    'tank-not-run-dry E0040',
    'reading-skipped E0112',
    'count-missing E0113',
    'refused-recorded E0175',
    'unit-doubt E0191',
    'unit-alarm E0221',
    'reserve-drawn E0241',
    'reserve-drawn E0245',
    'reserve-drawn E0247',
  ]) {
    expect(found).toContain(wanted);
  }
  const unknown = findings.filter(({ code }) => code.endsWith('-unknown') || code === 'before-opening');
  expect(unknown).toEqual([]);
});

test('stores come and go with their vehicles, and the run in two parts fills its container', async () => {
  const names = (position: Position) => position.stores.map(({ facts }) => facts.id);
  const [before, during, after] = [await positionOfDay(5), await positionOfDay(8), await positionOfDay(51)];
  expect(names(before)).not.toContain('FA');
  expect(names(during)).toEqual(expect.arrayContaining(['FA', 'FB', 'C-17']));
  expect(names(after)).not.toContain('FA');
  expect(names(after)).toContain('C-17');
  expect(Math.abs(litres(during, 'C-11') - 20.5)).toBeLessThan(0.6);
  expect(names(await positionOfDay(38))).toContain('V-1');
  expect(names(await positionOfDay(41))).not.toContain('V-1');
});

test('the hold of Day 14 is there on Day 15 and not on Day 13; R2 is conditional from then on', async () => {
  const held = (position: Position) =>
    position.stores.filter(({ hold }) => hold !== null).map(({ facts }) => facts.id);
  expect(held(await positionOfDay(13))).toEqual([]);
  const later = await positionOfDay(15);
  expect(held(later)).toEqual(['C-05', 'C-06', 'C-11', 'C-12', 'C-13', 'C-14', 'C-15', 'C-16']);
  const r2 = later.stores.find(({ facts }) => facts.id === 'R2');
  expect(r2?.hold).toBeNull();
  expect(r2?.conditional?.hold).toBe('Q-01');
  expect(held(await positionOfDay(20))).toEqual([]);
});

test('as known at Day 13, nothing that was written later is known', async () => {
  const knownAtMs = DAY_ONE_MS + 13 * 86_400_000 - 1;
  const opened = await Account.open(port, { view: { knownAtMs } });
  if (!opened.ok) throw new Error('no account');
  const lines = LOG_LINES.map((line) => JSON.parse(line) as { day: number });
  expect(opened.account.fold.entries).toBe(1 + lines.filter(({ day }) => day <= 13).length);
});
