// The receipt beside a book: it never leads, and a book that is behind it, or another one, is noticed.
import { copyFileSync, existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { headAfter, makeDrafts, sealedAs } from '../../../tests/contract/made-up-entries.ts';
import type { BookInfo } from '../../book/index.ts';
import { checkBookFile } from './check-file.ts';
import { createBook } from './create.ts';
import { openBook } from './open.ts';

const INFO: BookInfo = { bookId: 'a-book', site: 'corrie', purpose: 'book', createdAtMs: 0 };
let folder = '';
let path = '';
let receipt = '';
const rows = sealedAs('corrie', makeDrafts(1, 60));

beforeEach(async () => {
  folder = mkdtempSync(join(tmpdir(), 'waterwright-receipt-'));
  path = join(folder, 'corrie.book');
  receipt = `${path}.receipt`;
  createBook(path, INFO);
  await append(0, 40);
});
afterEach(() => rmSync(folder, { recursive: true, force: true }));

async function append(from: number, to: number): Promise<void> {
  using book = await openBook(path, { owner: 'test' });
  await book.append(rows.slice(from, to), []);
}

test('it is written at the close, and says where the chains stand', () => {
  expect(JSON.parse(readFileSync(receipt, 'utf8'))).toEqual({
    format: 'waterwright receipt',
    version: 1,
    bookId: 'a-book',
    purpose: 'book',
    count: 40,
    heads: [headAfter(rows.slice(0, 40))],
  });
});

test('a book that only was read, or that lost its receipt, gets no new one until it is written', async () => {
  rmSync(receipt);
  (await openBook(path, { owner: 'test' })).close();
  expect(existsSync(receipt)).toBe(false);
  await append(40, 41);
  expect(JSON.parse(readFileSync(receipt, 'utf8'))).toMatchObject({ count: 41 });
});

test('while entries come in it follows a second behind, never before the commit', async () => {
  using book = await openBook(path, { owner: 'test' });
  await book.append(rows.slice(40, 41), []);
  expect(JSON.parse(readFileSync(receipt, 'utf8'))).toMatchObject({ count: 40 });
  await new Promise((done) => setTimeout(done, 1050));
  await book.append(rows.slice(41, 42), []);
  expect(JSON.parse(readFileSync(receipt, 'utf8'))).toMatchObject({ count: 42 });
  await book.append(rows.slice(42, 43), []);
  expect(JSON.parse(readFileSync(receipt, 'utf8'))).toMatchObject({ count: 42 });
});

test('an older copy put back in place is noticed: it can be read and is not written', async () => {
  copyFileSync(path, `${path}.old`);
  await append(40, 60);
  copyFileSync(`${path}.old`, path);
  using book = await openBook(path, { owner: 'test' });
  const data = { site: 'corrie', knows: 40, receipt: 60 };
  expect(book.findings()).toMatchObject([{ code: 'receipt-ahead', severity: 'act-now', data }]);
  expect(await book.count()).toBe(40);
  expect(book.whyNotWritten()).toMatchObject({
    code: 'writing-stopped',
    finding: { data: { because: 'receipt-ahead', receiptFile: receipt, ...data } },
  });
  await expect(book.append(rows.slice(40, 41), [])).rejects.toMatchObject({ code: 'writing-stopped' });
  expect((await checkBookFile(book)).findings).toMatchObject([{ code: 'receipt-ahead' }]);
  book.close();
  // The witness of the newer copy is left as it is, and the way out is to take it away.
  expect(JSON.parse(readFileSync(receipt, 'utf8'))).toMatchObject({ count: 60 });
  rmSync(receipt);
  await append(40, 45);
});

test('a book that was written anew with as many entries is another story, and is noticed', async () => {
  const other = sealedAs('corrie', makeDrafts(2, 50));
  rmSync(path);
  const kept = readFileSync(receipt);
  rmSync(receipt);
  createBook(path, INFO);
  {
    using book = await openBook(path, { owner: 'test' });
    await book.append(other, []);
  }
  writeFileSync(receipt, kept);
  using book = await openBook(path, { owner: 'test' });
  expect(book.findings()).toMatchObject([{ code: 'receipt-differs', data: { knows: 50, receipt: 40 } }]);
  expect(book.whyNotWritten()?.code).toBe('writing-stopped');
});

test('the receipt of another book is not overwritten, and holds the writing up', async () => {
  const text = readFileSync(receipt, 'utf8').replace('a-book', 'another');
  writeFileSync(receipt, text);
  using book = await openBook(path, { owner: 'test' });
  expect(book.findings()).toMatchObject([
    { code: 'receipt-foreign', data: { bookId: 'a-book', receipt: 'another' } },
  ]);
  await expect(book.append(rows.slice(40, 41), [])).rejects.toMatchObject({ code: 'writing-stopped' });
  book.close();
  expect(readFileSync(receipt, 'utf8')).toBe(text);
});

test.each(['', 'no JSON', '{}', '{"format":"waterwright receipt","version":9}', 'x'.repeat(2_000_000)])(
  'a receipt that cannot be read is said, and replaced at the next entry (%#)',
  async (text) => {
    writeFileSync(receipt, text);
    const book = await openBook(path, { owner: 'test' });
    expect(book.findings()).toMatchObject([{ code: 'receipt-unreadable', where: { file: receipt } }]);
    await book.append(rows.slice(40, 41), []);
    book.close();
    expect(JSON.parse(readFileSync(receipt, 'utf8'))).toMatchObject({ count: 41 });
  },
);

test('a receipt without its book stops a new book from taking its place; that of a practice book does not', async () => {
  rmSync(path);
  expect(() => createBook(path, INFO)).toThrow(/receipt-left/);
  expect(existsSync(path)).toBe(false);
  writeFileSync(receipt, readFileSync(receipt, 'utf8').replace('"book"', '"practice"'));
  createBook(path, { ...INFO, bookId: 'new', purpose: 'practice' });
  expect(existsSync(receipt)).toBe(false);
  using book = await openBook(path, { owner: 'test' });
  expect(book.findings()).toEqual([]);
});

test('a receipt that another process is writing at the moment is left to it, one left behind is cleared', async () => {
  writeFileSync(`${receipt}.new`, 'half');
  await append(40, 41);
  expect(JSON.parse(readFileSync(receipt, 'utf8'))).toMatchObject({ count: 40 });
  expect(readFileSync(`${receipt}.new`, 'utf8')).toBe('half');
  const { utimesSync } = await import('node:fs');
  utimesSync(`${receipt}.new`, 1, 1);
  await append(41, 42);
  expect(JSON.parse(readFileSync(receipt, 'utf8'))).toMatchObject({ count: 42 });
  expect(existsSync(`${receipt}.new`)).toBe(false);
});
