// Opening and making books: what is no book, or not a whole one, or a newer one, is told apart and left alone.
import { createHash } from 'node:crypto';
import {
  chmodSync,
  copyFileSync,
  existsSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  symlinkSync,
  truncateSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { DatabaseSync } from 'node:sqlite';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { makeDrafts, sealedAs } from '../../../tests/contract/made-up-entries.ts';
import type { BookInfo, DiskFindingCode } from '../../book/index.ts';
import { checkBookFile } from './check-file.ts';
import { createBook } from './create.ts';
import { openBook } from './open.ts';
import { DiskProblem } from './problem.ts';

const INFO: BookInfo = { bookId: 'a-book', site: 'corrie', purpose: 'book', createdAtMs: 5_585_673_600_000 };
let folder = '';
let path = '';

beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'waterwright-open-'));
  path = join(folder, 'corrie.book');
});
afterEach(() => rmSync(folder, { recursive: true, force: true }));

function hashOf(file: string): string {
  return createHash('sha256').update(readFileSync(file)).digest('hex');
}

async function problemOf(work: () => unknown): Promise<DiskProblem> {
  try {
    await work();
  } catch (error) {
    expect(error).toBeInstanceOf(DiskProblem);
    return error as DiskProblem;
  }
  throw new Error('it went through');
}

/** Opens a path that must be refused, and makes sure that the file is as it was. */
async function refusedAs(code: DiskFindingCode, file = path): Promise<DiskProblem> {
  const before = existsSync(file) && readdirSync(folder).length > 0 ? hashOfAny(file) : '';
  const problem = await problemOf(() => openBook(file, { owner: 'test' }));
  expect(problem.code).toBe(code);
  expect(problem.finding.where.file).toBe(file);
  expect(hashOfAny(file)).toBe(before);
  return problem;
}

function hashOfAny(file: string): string {
  try {
    return hashOf(file);
  } catch {
    return '';
  }
}

/** A book that something was done to with the means of SQLite itself. */
function altered(sql: string): void {
  createBook(path, INFO);
  const db = new DatabaseSync(path, { defensive: false });
  db.exec(sql);
  db.close();
}

describe('a fresh book', () => {
  test('is one file that says whose it is', async () => {
    createBook(path, INFO);
    expect(readdirSync(folder)).toEqual(['corrie.book']);
    using book = await openBook(path, { owner: 'test' });
    expect(await book.info()).toEqual(INFO);
    expect([book.findings(), book.whyNotWritten()]).toEqual([[], null]);
    const header = readFileSync(path);
    expect(header.toString('latin1', 68, 72)).toBe('Wate');
    expect(header.readUInt32BE(60)).toBe(1);
  });

  test('is set, and the settings read back, at the first open and at every later one', async () => {
    createBook(path, INFO);
    for (const waitMs of [5000, 5000, 120]) {
      using book = await openBook(path, { owner: 'test', waitMs });
      expect(book.settings()).toEqual({
        journal_mode: 'truncate',
        synchronous: 3,
        foreign_keys: 1,
        recursive_triggers: 1,
        trusted_schema: 0,
        cell_size_check: 1,
        mmap_size: 0,
        fullfsync: 1,
        cache_size: -16_000,
        busy_timeout: waitMs,
      });
    }
  });

  test('is not made over a file, nor in a folder that is not there', async () => {
    writeFileSync(path, 'a shopping list');
    const before = hashOf(path);
    expect((await problemOf(() => createBook(path, INFO))).code).toBe('book-exists');
    expect(hashOf(path)).toBe(before);
    const nowhere = join(folder, 'none', 'corrie.book');
    expect((await problemOf(() => createBook(nowhere, INFO))).code).toBe('folder-missing');
    const inFile = join(path, 'corrie.book');
    expect((await problemOf(() => createBook(inFile, INFO))).code).toBe('folder-missing');
    expect(readdirSync(folder)).toEqual(['corrie.book']);
  });

  test('is reached through a link, and what stands beside it stands beside the file', async () => {
    mkdirSync(join(folder, 'real'));
    createBook(join(folder, 'real', 'corrie.book'), INFO);
    symlinkSync(join(folder, 'real', 'corrie.book'), path);
    const book = await openBook(path, { owner: 'test' });
    await book.append(sealedAs('corrie', makeDrafts(1, 2)), []);
    book.close();
    expect(readdirSync(folder).toSorted()).toEqual(['corrie.book', 'real']);
    expect(readdirSync(join(folder, 'real'))).toContain('corrie.book.receipt');
  });
});

describe('what cannot be opened is named', () => {
  test('nothing there, no folder, a folder, an empty file', async () => {
    await refusedAs('book-missing');
    await refusedAs('folder-missing', join(folder, 'none', 'a.book'));
    await refusedAs('not-a-file', folder);
    writeFileSync(path, '');
    await refusedAs('book-empty');
  });

  test('another file, and the database of another program', async () => {
    writeFileSync(path, 'Dear diary, today we drank 12 litres.'.repeat(100));
    await refusedAs('not-a-book');
    rmSync(path);
    const db = new DatabaseSync(path);
    db.exec('CREATE TABLE water (litres REAL)');
    db.close();
    await refusedAs('book-foreign');
  });

  test('a newer book is refused politely, with both versions', async () => {
    altered('PRAGMA user_version = 3');
    expect((await refusedAs('book-newer')).finding.data).toMatchObject({ version: 3, known: 2 });
  });

  test.each([
    ['a trigger gone', 'DROP TRIGGER entry_no_update'],
    ['an index gone', 'DROP INDEX entry_by_kind'],
    ['a table more', 'CREATE TABLE more (a TEXT)'],
    ['a view more', 'CREATE VIEW more AS SELECT 1'],
    ['another version', 'PRAGMA user_version = 0'],
    [
      'another site',
      `DROP TRIGGER about_no_update; UPDATE about SET site = 'corrif';
      CREATE TRIGGER about_no_update BEFORE UPDATE ON about
BEGIN SELECT RAISE(ABORT, 'a book is never renamed'); END`,
    ],
    [
      'no name',
      `DROP TRIGGER about_no_delete; DELETE FROM about; CREATE TRIGGER about_no_delete BEFORE DELETE ON about
BEGIN SELECT RAISE(ABORT, 'a book is never renamed'); END`,
    ],
  ])('a book with %s was altered', async (_, sql) => {
    altered(sql);
    await refusedAs('book-altered');
  });

  test('a book cut short is damaged, at every length', async () => {
    createBook(path, INFO);
    const whole = readFileSync(path);
    const codes = new Map<number, string>();
    for (const length of [1, 50, 99, 100, 511, 512, 1000, 4095, 4096, 5000, 8192, whole.length - 1]) {
      writeFileSync(path, whole.subarray(0, length));
      const problem = await problemOf(() => openBook(path, { owner: 'test' }));
      codes.set(length, problem.code);
      expect(['book-damaged', 'not-a-book'], `${length} ${problem.message}`).toContain(problem.code);
    }
    expect(codes.get(8192)).toBe('book-damaged');
  });

  test('a file that comes with another journal mode is set right, or refused where it may not be written', async () => {
    altered('PRAGMA journal_mode = WAL');
    const error = await problemOf(() => openBook(path, { owner: 'test', readOnly: true }));
    expect(error.finding).toMatchObject({
      code: 'settings-refused',
      data: { setting: 'journal_mode', wanted: 'truncate', received: 'wal' },
    });
    using book = await openBook(path, { owner: 'test' });
    expect(book.settings().journal_mode).toBe('truncate');
  });
});

describe('a written book', () => {
  test('refuses to change or delete what it holds, even to SQL', async () => {
    createBook(path, INFO);
    const book = await openBook(path, { owner: 'test' });
    await book.append(sealedAs('corrie', makeDrafts(1, 3)), []);
    book.close();
    const before = hashOf(path);
    const db = new DatabaseSync(path);
    db.exec('PRAGMA recursive_triggers = ON');
    for (const [sql, says] of [
      ['UPDATE entry SET kept_ms = 0 WHERE number = 2', /never changed/],
      ['DELETE FROM entry', /never deleted/],
      [
        `INSERT OR REPLACE INTO entry SELECT site, number, id, kind, 0, 0, 0, text, seal FROM entry`,
        /never deleted/,
      ],
      [`UPDATE about SET site = 'elsewhere'`, /never renamed/],
      ['DELETE FROM about', /never renamed/],
      [`INSERT INTO about SELECT 2, book_id, site, purpose, created_ms, seal FROM about`, /one name/],
      [`REPLACE INTO about SELECT 1, book_id, 'elsewhere', purpose, created_ms, seal FROM about`, /one name/],
      [`INSERT INTO entry SELECT site, 4.5, 'x', kind, 0, 0, 0, text, seal FROM entry LIMIT 1`, /INTEGER/],
      [`INSERT INTO entry SELECT site, 4, 'x', kind, 0, 0, 0, text, seal FROM entry LIMIT 1`, /CHECK/],
      [
        `INSERT INTO entry SELECT site, 0, replace(id, '-', '_'), kind, 0, 0, 0, text, seal FROM entry LIMIT 1`,
        /CHECK/,
      ],
    ] as const)
      expect(() => db.exec(sql), sql).toThrow(says);
    db.close();
    expect(hashOf(path)).toBe(before);
  });

  test('does not hide an entry that a stranger replaced, which no trigger sees where it is turned off', async () => {
    createBook(path, INFO);
    using book = await openBook(path, { owner: 'test' });
    await book.append(sealedAs('corrie', makeDrafts(1, 3)), []);
    const db = new DatabaseSync(path);
    db.exec(
      `INSERT OR REPLACE INTO entry SELECT site, number, id, kind, 0, 0, 0, text, seal FROM entry WHERE number = 2`,
    );
    db.close();
    const { findings } = await checkBookFile(book);
    expect(findings).toMatchObject([{ code: 'columns-differ', data: { site: 'corrie', number: 2 } }]);
  });

  test('reads without writing a byte, beside itself too', async () => {
    createBook(path, INFO);
    const writer = await openBook(path, { owner: 'test' });
    await writer.append(sealedAs('corrie', makeDrafts(1, 3)), []);
    writer.close();
    const before = readdirSync(folder).map((name) => `${name} ${hashOf(join(folder, name))}`);
    using book = await openBook(path, { owner: 'test', readOnly: true });
    expect(await book.count()).toBe(3);
    await expect(book.append(sealedAs('corrie', makeDrafts(2, 1)), [])).rejects.toMatchObject({
      code: 'read-only',
      finding: { data: { why: 'asked' } },
    });
    book.close();
    expect(readdirSync(folder).map((name) => `${name} ${hashOf(join(folder, name))}`)).toEqual(before);
  });

  test('takes back an interrupted write before anything is read, also for a reader', async () => {
    createBook(path, INFO);
    const rows = sealedAs('corrie', makeDrafts(1, 900));
    const book = await openBook(path, { owner: 'test' });
    await book.append(rows.slice(0, 20), []);
    book.close();
    // A second file caught in the middle of a write that already reached the book file.
    const db = new DatabaseSync(path);
    db.exec('PRAGMA cache_size = 10; PRAGMA journal_mode = TRUNCATE; BEGIN');
    const insert = db.prepare('INSERT INTO entry VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?)');
    for (const row of rows.slice(20))
      insert.run(
        row.site,
        row.number,
        row.id,
        row.kind,
        row.happenedAtMs,
        row.enteredAtMs,
        0,
        row.text,
        row.seal,
      );
    const caught = join(folder, 'caught.book');
    copyFileSync(path, caught);
    copyFileSync(`${path}-journal`, `${caught}-journal`);
    db.exec('ROLLBACK');
    db.close();
    expect(hashOf(caught)).not.toBe(hashOf(path));
    expect(readFileSync(`${caught}-journal`).length).toBeGreaterThan(512);
    using reader = await openBook(caught, { owner: 'test', readOnly: true });
    expect(await reader.count()).toBe(20);
    expect(await reader.findNumber('corrie', 21)).toBeNull();
  });

  test('that lost its end while it was open is not read as if it were whole', async () => {
    createBook(path, INFO);
    using book = await openBook(path, { owner: 'test' });
    await book.append(sealedAs('corrie', makeDrafts(1, 300)), []);
    truncateSync(path, 8192);
    const problem = await problemOf(() => Array.fromAsync(book.scan({ order: 'site' })));
    expect(['book-damaged', 'disk-error']).toContain(problem.code);
  });

  test('that was moved away while it was open takes nothing more', async () => {
    createBook(path, INFO);
    using book = await openBook(path, { owner: 'test' });
    copyFileSync(path, `${path}.copy`);
    rmSync(path);
    copyFileSync(`${path}.copy`, path);
    const problem = await problemOf(() => book.append(sealedAs('corrie', makeDrafts(1, 1)), []));
    expect(problem.code).toBe('book-moved');
  });

  test('uses one sorted index for each scan, and sorts nothing by itself', async () => {
    createBook(path, INFO);
    using book = await openBook(path, { owner: 'test' });
    const statements = await import('./statements.ts');
    const scans = Object.entries(statements).filter(([name]) => name.startsWith('PAGE_'));
    expect(scans).toHaveLength(5);
    for (const [name, sql] of [...scans, ['FIND', statements.FIND], ['HEAD', statements.HEAD_OF_SITE]] as [
      string,
      string,
    ][]) {
      const plan = book.withDatabase((db) => db.prepare(`EXPLAIN QUERY PLAN ${sql}`).all()) as {
        detail: string;
      }[];
      expect(plan, name).toHaveLength(1);
      expect(plan[0]?.detail, name).toMatch(/^SEARCH entry USING INDEX/);
    }
  });
});

test('a folder that may not be written opens for reading, and says why it takes nothing', async () => {
  createBook(path, INFO);
  chmodSync(path, 0o444);
  // The rights of root are tested with another person's in the tests of faults; here the system decides.
  using book = await openBook(path, { owner: 'test' });
  const isRoot = process.getuid?.() === 0;
  expect(book.whyNotWritten()?.code).toBe(isRoot ? undefined : 'not-permitted');
  expect(await book.count()).toBe(0);
});
