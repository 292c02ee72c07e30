// Copies of a book: equal to it or not there at all, also while the book is being written.
import { existsSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { DatabaseSync } from 'node:sqlite';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { headAfter, makeDrafts, sealedAs } from '../../../tests/contract/made-up-entries.ts';
import { backupBook } from './backup.ts';
import { checkBookFile } from './check-file.ts';
import { createBook } from './create.ts';
import { openBook } from './open.ts';

const INFO = { bookId: 'a-book', site: 'corrie', purpose: 'book', createdAtMs: 0 } as const;
const rows = sealedAs('corrie', makeDrafts(1, 1200));
let folder = '';
let path = '';

beforeEach(async () => {
  folder = mkdtempSync(join(tmpdir(), 'waterwright-backup-'));
  path = join(folder, 'corrie.book');
  createBook(path, INFO);
  using book = await openBook(path, { owner: 'test' });
  await book.append(rows.slice(0, 1000), []);
});
afterEach(() => rmSync(folder, { recursive: true, force: true }));

test('the copy is a whole book with the same digest and a receipt of its own', async () => {
  const target = join(folder, 'copy.book');
  const backup = await backupBook(path, target);
  using book = await openBook(path, { owner: 'test', readOnly: true });
  using copy = await openBook(target, { owner: 'test' });
  expect(await copy.info()).toEqual(INFO);
  const [one, other] = [await checkBookFile(book), await checkBookFile(copy)];
  expect(other).toEqual(one);
  expect(backup).toEqual({
    path: target,
    entries: 1000,
    digest: one.digest,
    heads: [headAfter(rows.slice(0, 1000))],
  });
  expect(readFileSync(`${target}.receipt`, 'utf8')).toBe(readFileSync(`${path}.receipt`, 'utf8'));
  expect(copy.settings().journal_mode).toBe('truncate');
  await copy.append(rows.slice(1000), []);
  expect(await copy.count()).toBe(1200);
  expect(await book.count()).toBe(1000);
});

test('it can be made while another has the book open, and again when it has grown', async () => {
  using writer = await openBook(path, { owner: 'test' });
  for (let at = 1000; at < 1200; at += 50) {
    const target = join(folder, `copy-${at}.book`);
    expect((await backupBook(path, target)).entries).toBe(at);
    await writer.append(rows.slice(at, at + 50), []);
  }
});

test('nothing that is there is overwritten, and no half copy stays behind', async () => {
  const target = join(folder, 'copy.book');
  writeFileSync(target, 'mine');
  await expect(backupBook(path, target)).rejects.toMatchObject({ code: 'backup-exists' });
  expect(readFileSync(target, 'utf8')).toBe('mine');
  rmSync(target);
  writeFileSync(`${target}.receipt`, 'mine');
  await expect(backupBook(path, target)).rejects.toMatchObject({ code: 'backup-exists' });
  rmSync(`${target}.receipt`);
  await expect(backupBook(path, join(folder, 'none', 'copy.book'))).rejects.toMatchObject({
    code: 'folder-missing',
  });
  await expect(backupBook(join(folder, 'none.book'), target)).rejects.toMatchObject({ code: 'book-missing' });
  expect(readdirSync(folder).filter((name) => name.includes('copy') || name.endsWith('.new'))).toEqual([]);
});

test('a book that is not whole has no copy that says it is', async () => {
  const trigger = `CREATE TRIGGER entry_no_update BEFORE UPDATE ON entry
BEGIN SELECT RAISE(ABORT, 'an entry is never changed: correct it by another'); END`;
  const db = new DatabaseSync(path);
  db.exec(
    `DROP TRIGGER entry_no_update; UPDATE entry SET text = replace(text, '"keeper"', '"medic"'); ${trigger}`,
  );
  db.close();
  const target = join(folder, 'copy.book');
  await expect(backupBook(path, target)).rejects.toMatchObject({
    code: 'backup-not-equal',
    finding: { data: { because: 'chain-broken' } },
  });
  expect(existsSync(target)).toBe(false);
});
