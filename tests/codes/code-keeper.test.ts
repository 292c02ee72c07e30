// One contract for every keeper of codes: the plain one in memory, that of the disk, and that of the disk behind a server.
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, describe, expect, test } from 'vitest';
import { keepDrafts } from '../../src/book/index.ts';
import { type CodeKeeper, Desk, log, type TryTerms } from '../../src/desk/index.ts';
import { createBook, findServer, nodeHash, openBook } from '../../src/doors/disk/index.ts';
import { RemoteBook, serve } from '../../src/doors/server/index.ts';
import { HOLM } from '../journeys/holm.ts';
import { draftOf } from '../journeys/kept.ts';
import { MemoryCodes } from './memory-codes.ts';

const MINUTE = 60_000;
const T0 = Date.UTC(2147, 4, 1, 8, 0);
const terms = (atMin: number): TryTerms => ({ nowMs: T0 + atMin * MINUTE, tries: 5, waitMs: 15 * MINUTE });

interface Kept {
  readonly codes: CodeKeeper;
  readonly set: (office: string, code: string) => Promise<void>;
}

const ends: (() => Promise<void> | void)[] = [];
afterEach(async () => {
  for (const end of ends.splice(0).reverse()) await end();
});

function folder(): string {
  const made = mkdtempSync(join(tmpdir(), 'waterwright-codes-'));
  ends.push(() => rmSync(made, { recursive: true, force: true }));
  return made;
}

let count = 0;
const chance = () => Uint8Array.from({ length: 10 }, (_, k) => (k === 9 ? ++count : count >> 8) % 256);

async function bookWithOutpost(path: string) {
  createBook(path, { bookId: 'b', site: 'holm', purpose: 'book', createdAtMs: T0 });
  const book = await openBook(path, { owner: 'test', alone: true });
  const outpost = draftOf('outpost', { text: HOLM }, { atMs: T0, count: 1 });
  const kept = await keepDrafts(book, [outpost], { hash: nodeHash, keptAtMs: T0 });
  expect(kept.ok).toBe(true);
  return book;
}

async function setThrough(desk: Desk, codes: CodeKeeper, office: string, code: string): Promise<void> {
  const moment = {
    nowUtcMs: T0,
    offsetMin: 0,
    by: office,
    lastWord: async (drafts: Parameters<NonNullable<Parameters<typeof log>[1]['lastWord']>>[0]) => {
      for (const { id } of drafts) await codes.set(office, code, id);
      return { ok: true as const, value: drafts };
    },
  };
  const body = { office, because: 'first' };
  const answer = await log(desk, moment, { what: 'kind', kind: 'code-set', body });
  if (!answer.ok) throw new Error(JSON.stringify(answer.findings));
}

const keepers: Readonly<Record<string, () => Promise<Kept>>> = {
  'in memory': () => {
    const codes = new MemoryCodes();
    return Promise.resolve({ codes, set: (office, code) => codes.set(office, code) });
  },
  'on disk': async () => {
    const book = await bookWithOutpost(join(folder(), 'h.book'));
    ends.push(() => book.close());
    const desk = await Desk.open(book, { chance, codes: book.codes });
    return { codes: book.codes, set: (office, code) => setThrough(desk, book.codes, office, code) };
  },
  'behind a server': async () => {
    const path = join(folder(), 'h.book');
    const book = await bookWithOutpost(path);
    const clock = { now: () => T0, offsetMin: () => 0 };
    const told = { version: '0', build: 'b', pageFolder: join(path, '..', 'no-page'), port: 0 };
    const serving = await serve({ book, tools: { chance }, clock, ...told });
    ends.push(() => serving.close());
    const note = findServer(path);
    if (note === null) throw new Error('no note');
    const remote = await RemoteBook.open(path, note, { readOnly: false, build: 'b' });
    ends.push(() => remote.close());
    const desk = await Desk.open(remote, { chance, codes: remote.codes });
    return { codes: remote.codes, set: (office, code) => setThrough(desk, remote.codes, office, code) };
  },
};

describe.each(Object.entries(keepers))('%s', (_, open) => {
  test('an office without a code has none, and nothing is counted', async () => {
    const { codes } = await open();
    expect(await codes.has('medic')).toBe(false);
    expect(await codes.check('medic', '4821', terms(0))).toEqual({ is: 'none' });
    expect(await codes.holders(terms(0))).toEqual([]);
  });

  test('the right code is right, and each office has its own', async () => {
    const { codes, set } = await open();
    await set('medic', '4821');
    await set('second', '7391');
    expect(await codes.check('medic', '4821', terms(0))).toEqual({ is: 'right' });
    expect(await codes.check('second', '7391', terms(0))).toEqual({ is: 'right' });
    expect(await codes.check('medic', '7391', terms(0))).toEqual({ is: 'wrong', left: 4 });
    expect(await codes.check('chief', '4821', terms(0))).toEqual({ is: 'none' });
    expect((await codes.holders(terms(0))).map(({ office }) => office)).toEqual(['medic', 'second']);
  });

  test('five wrong ones in a row: no code is looked at for fifteen minutes, then there are five again', async () => {
    const { codes, set } = await open();
    await set('medic', '4821');
    for (const left of [4, 3, 2, 1, 0])
      expect(await codes.check('medic', '0011', terms(0))).toEqual({ is: 'wrong', left });
    expect(await codes.check('medic', '4821', terms(5))).toEqual({ is: 'waits', leftMs: 10 * MINUTE });
    expect((await codes.holders(terms(5)))[0]?.waitsMs).toBe(10 * MINUTE);
    expect(await codes.check('medic', '4821', terms(14.99))).toMatchObject({ is: 'waits' });
    expect(await codes.check('medic', '0011', terms(15))).toEqual({ is: 'wrong', left: 4 });
    expect(await codes.check('medic', '4821', terms(15))).toEqual({ is: 'right' });
    expect((await codes.holders(terms(15)))[0]?.waitsMs).toBe(0);
  });

  test('a right code takes the count of wrong ones back', async () => {
    const { codes, set } = await open();
    await set('medic', '4821');
    for (const _ of [1, 2, 3, 4]) await codes.check('medic', '0011', terms(0));
    expect(await codes.check('medic', '4821', terms(0))).toEqual({ is: 'right' });
    expect(await codes.check('medic', '0011', terms(0))).toEqual({ is: 'wrong', left: 4 });
  });

  test('a new code counts from its entry on; the last five are known, a sixth is forgotten', async () => {
    const { codes, set } = await open();
    for (const code of ['4821', '5932', '6043', '7154', '8265', '9376']) await set('medic', code);
    expect(await codes.check('medic', '8265', terms(0))).toMatchObject({ is: 'wrong' });
    expect(await codes.check('medic', '9376', terms(0))).toEqual({ is: 'right' });
    expect(await codes.wasUsed('medic', '5932')).toBe(true);
    expect(await codes.wasUsed('medic', '4821')).toBe(false);
    expect(await codes.wasUsed('second', '5932')).toBe(false);
  });
});

test('on disk the count outlives the process, and a clock that was set back makes nobody wait for ever', async () => {
  const path = join(folder(), 'h.book');
  const book = await bookWithOutpost(path);
  const desk = await Desk.open(book, { chance, codes: book.codes });
  await setThrough(desk, book.codes, 'medic', '4821');
  for (const _ of [1, 2, 3, 4, 5]) await book.codes.check('medic', '0011', terms(0));
  book.close();
  const again = await openBook(path, { owner: 'test' });
  ends.push(() => again.close());
  expect(await again.codes.check('medic', '4821', terms(1))).toEqual({ is: 'waits', leftMs: 14 * MINUTE });
  const year = 365 * 24 * 60;
  expect(await again.codes.check('medic', '4821', terms(-year))).toEqual({
    is: 'waits',
    leftMs: 15 * MINUTE,
  });
  expect(await again.codes.check('medic', '4821', terms(15 - year))).toEqual({ is: 'right' });
});

test('a code whose entry never comes never counts, and one of another entry neither', async () => {
  const book = await bookWithOutpost(join(folder(), 'h.book'));
  ends.push(() => book.close());
  const desk = await Desk.open(book, { chance, codes: book.codes });
  await book.codes.set('medic', '4821', 'an id that no entry has');
  const body = { office: 'medic', because: 'first' };
  const alone = { nowUtcMs: T0, offsetMin: 0, by: 'medic' };
  expect((await log(desk, alone, { what: 'kind', kind: 'code-set', body })).ok).toBe(true);
  expect(await book.codes.has('medic')).toBe(false);
});
