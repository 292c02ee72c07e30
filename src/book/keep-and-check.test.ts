// Keeping, sealing and checking: what is kept stays whole, and whatever is changed behind its back is found.
import { expect, test } from 'vitest';
import { makeDrafts, sealedAs } from '../../tests/contract/made-up-entries.ts';
import { checkBook, isCanonical } from './check.ts';
import type { AnyDraft } from './entry.ts';
import { keepDrafts } from './keep.ts';
import { MemoryStore } from './memory-store.ts';
import { type BookInfo, type BookPort, HeadMoved, IdTaken, type KeptEntry } from './port.ts';
import { FIRST_SEAL, plainHash } from './seal.ts';

const INFO: BookInfo = { bookId: 'b', site: 'corrie', purpose: 'practice', createdAtMs: 0 };
const BY = { hash: plainHash, keptAtMs: 5 };

/** A book of rows that somebody changed. */
function checked(rows: readonly KeptEntry[], receipt = [] as KeptEntry[]) {
  const port: BookPort = new MemoryStore(INFO);
  port.scan = async function* () {
    yield await Promise.resolve(rows);
  };
  port.heads = () => Promise.resolve(rows.slice(-1));
  port.findNumber = (_, number) => Promise.resolve(rows.find((row) => row.number === number) ?? null);
  return checkBook(port, { hash: plainHash, receipt });
}

test('each seal is worked out from the one before and the text, from 64 zeros on', async () => {
  const port = new MemoryStore(INFO);
  await keepDrafts(port, makeDrafts(1, 5), BY);
  let seal = FIRST_SEAL;
  for (let number = 1; number <= 5; number++) {
    const row = (await port.findNumber('corrie', number)) as KeptEntry;
    seal = plainHash(`${seal}\n${row.text}`);
    expect(row.seal).toBe(seal);
    expect(isCanonical(row)).toBe(true);
    expect(row.keptAtMs).toBe(5);
  }
});

test('a whole chain has no finding', async () => {
  const rows = sealedAs('corrie', makeDrafts(2, 20));
  const check = await checked(rows, [rows[12] as KeptEntry, rows[19] as KeptEntry]);
  expect(check).toMatchObject({ entries: 20, findings: [], heads: [{ site: 'corrie', number: 20 }] });
});

const changes: readonly [string, string, (row: KeptEntry) => Partial<KeptEntry>][] = [
  [
    'text',
    'chain-broken',
    (row) => ({
      text: row.text.replace('keeper', 'keepex').replace('medic', 'medix').replace('second', 'secone'),
    }),
  ],
  ['seal', 'chain-broken', (row) => ({ seal: row.seal.replace(/^./, (c) => (c === '0' ? '1' : '0')) })],
  ['id', 'columns-differ', (row) => ({ id: row.id.replace(/.$/, (c) => (c === '0' ? '1' : '0')) })],
  ['kind', 'columns-differ', () => ({ kind: 'release' })],
  ['happened-at', 'columns-differ', (row) => ({ happenedAtMs: row.happenedAtMs + 1 })],
  ['entered-at', 'columns-differ', (row) => ({ enteredAtMs: row.enteredAtMs - 1 })],
  ['number', 'chain-gap', (row) => ({ number: row.number + 1 })],
  ['text that is no JSON', 'text-not-canonical', (row) => ({ text: row.text.slice(1) })],
];
test.each(changes)('a changed %s is found', async (_, code, change) => {
  const rows = sealedAs('corrie', makeDrafts(3, 10));
  const row = rows[6] as KeptEntry;
  rows[6] = { ...row, ...change(row) };
  expect(rows[6]).not.toEqual(row);
  const { findings } = await checked(rows);
  expect(findings.map((finding) => finding.code)).toContain(code);
  expect(findings[0]?.entries).toEqual([rows[6].id]);
});

test('an entry that was taken out is found, and so is one that was put in', async () => {
  const rows = sealedAs('corrie', makeDrafts(4, 10));
  expect((await checked(rows.toSpliced(4, 1))).findings.map(({ code }) => code)).toContain('chain-gap');
  const twice = [...rows.slice(0, 5), rows[4] as KeptEntry, ...rows.slice(5)];
  expect((await checked(twice)).findings.map(({ code }) => code)).toContain('chain-gap');
});

test('a shortened chain is seen against the receipt only, and so is one that was written anew', async () => {
  const rows = sealedAs('corrie', makeDrafts(5, 10));
  const shortened = rows.slice(0, 7);
  expect((await checked(shortened)).findings).toEqual([]);
  expect((await checked(shortened, [rows[9] as KeptEntry])).findings).toMatchObject([
    { code: 'receipt-ahead', data: { site: 'corrie', knows: 7, receipt: 10 } },
  ]);
  const anew = sealedAs('corrie', makeDrafts(6, 12));
  expect((await checked(anew)).findings).toEqual([]);
  expect((await checked(anew, [rows[9] as KeptEntry])).findings).toMatchObject([
    { code: 'receipt-differs', data: { site: 'corrie', knows: 12, receipt: 10 } },
  ]);
});

test('of many findings fifty are listed, and the walk goes to the end', async () => {
  const rows = sealedAs('corrie', makeDrafts(7, 200)).map((row) => ({ ...row, seal: FIRST_SEAL }));
  const check = await checked(rows);
  expect(check.entries).toBe(200);
  expect(check.findings.length).toBeGreaterThanOrEqual(50);
  expect(check.findings.length).toBeLessThan(60);
});

test('when others append in between, the drafts are numbered anew; when they never stop, it is said', async () => {
  const drafts = makeDrafts(8, 6);
  for (const Interruption of [HeadMoved, IdTaken]) {
    const port = new MemoryStore(INFO);
    const append = port.append.bind(port);
    let calls = 0;
    port.append = (rows, heads) => {
      calls += 1;
      return calls < 3 ? Promise.reject(new Interruption('corrie')) : append(rows, heads);
    };
    expect(await keepDrafts(port, drafts, BY)).toMatchObject({ ok: true });
    expect([calls, await port.count()]).toEqual([3, 6]);
    port.append = () => Promise.reject(new Interruption('corrie'));
    await expect(keepDrafts(port, makeDrafts(9, 1), BY)).rejects.toBeInstanceOf(Interruption);
  }
});

test('drafts of one call that contradict each other are refused, equal ones are one entry', async () => {
  const port = new MemoryStore(INFO);
  const [draft] = makeDrafts(10, 1) as [AnyDraft];
  expect(await keepDrafts(port, [draft, { ...draft, by: 'another' }], BY)).toMatchObject({
    ok: false,
    findings: [{ code: 'id-reused', where: { entry: draft.id }, data: { keptNumber: null } }],
  });
  expect(await port.count()).toBe(0);
  expect(await keepDrafts(port, [draft, structuredClone(draft)], BY)).toMatchObject({
    ok: true,
    alreadyKept: [draft.id],
  });
  expect(await port.count()).toBe(1);
});
