// Every finding about the file of a book has its four sentences, for the data that the disk gives with it.
import { expect, test } from 'vitest';
import type { DiskFindingCode } from '../../../book/index.ts';
import type { FindingData } from '../../../ground/units/index.ts';
import { diskWords } from './disk.ts';

/** The data of each code as the door of the disk gives it; the tests of the door hold them against real files. */
const samples: Readonly<Record<DiskFindingCode, readonly FindingData[]>> = {
  'book-missing': [{ folder: '/corrie' }],
  'book-exists': [{}, { says: 'EEXIST' }],
  'folder-missing': [{ folder: '/corrie' }],
  'not-a-file': [{}],
  'book-empty': [{}],
  'not-a-book': [{ says: 'file is not a database' }],
  'book-foreign': [{}],
  'book-newer': [{ version: 2, known: 1 }],
  'book-damaged': [{ says: 'database disk image is malformed' }, {}],
  'page-damaged': [{ says: 'row 3 missing from index entry_by_time' }],
  'book-altered': [{ what: 'tables' }, { what: 'name' }],
  'recovery-needed': [{ says: 'attempt to write a readonly database' }],
  'read-only': [{ why: 'asked' }, { why: 'disk', place: '/corrie' }, { says: 'EROFS' }],
  'not-permitted': [
    { why: 'folder', place: '/corrie' },
    { why: 'file', place: '/corrie/a' },
    { says: 'EACCES' },
  ],
  'too-many-files': [{ says: 'EMFILE' }],
  'book-busy': [
    { pid: 4711, command: 'log day', sinceMs: Date.UTC(2147, 0, 1), waitedMs: 5000 },
    { pid: 4711, command: null, sinceMs: null, waitedMs: 120_000 },
    { pid: null, command: null, sinceMs: null, waitedMs: 0 },
  ],
  'book-moved': [{ says: 'attempt to write a readonly database' }],
  'disk-full': [{ says: 'database or disk is full' }],
  'disk-error': [{ call: 'sync' }, { call: 'ENODEV' }],
  'writing-stopped': [
    { because: 'disk-error', call: 'sync' },
    { because: 'receipt-ahead', receiptFile: '/corrie/a.receipt', site: 'corrie', knows: 3, receipt: 5 },
  ],
  'settings-refused': [{ setting: 'journal_mode', wanted: 'truncate', received: 'wal' }],
  'sqlite-too-old': [{ version: '3.40.1', needed: '3.51.3' }],
  'receipt-foreign': [{ bookId: 'a', receipt: 'b', count: 1 }],
  'receipt-unreadable': [{}],
  'receipt-left': [
    { count: 412, bookId: 'a' },
    { count: null, bookId: null },
  ],
  'receipt-not-written': [{ says: 'ENOSPC' }],
  'backup-exists': [{}],
  'backup-not-equal': [
    { because: 'chain-broken' },
    { because: 'seal', site: 'corrie', number: 7 },
    { because: null },
  ],
};

test.each(
  Object.entries(samples).flatMap(([code, list]) =>
    list.map((data) => [code as DiskFindingCode, data] as const),
  ),
)('%s %o', (code, data) => {
  const sentences = diskWords[code](data, { file: '/corrie/corrie.book' });
  for (const text of Object.values(sentences)) {
    expect(text.trim()).toBe(text);
    expect(text).toMatch(/\S/);
    expect(text).not.toMatch(/undefined|NaN|\[object|!|please|null/i);
  }
  expect(sentences.text).toMatch(/\.$/);
  expect(sentences.remedy).toMatch(/\.$/);
  expect(sentences.text).toContain('corrie');
});

test('a book that is held is said with whom, in what, since when, and how long it was waited for', () => {
  const data = { pid: 4711, command: 'log day', sinceMs: Date.UTC(2147, 0, 1), waitedMs: 5000 };
  const { text, expected } = diskWords['book-busy'](data, { file: 'corrie.book' });
  expect(text).toBe(
    'corrie.book is held by "log day" (process 4711), which has it open since 2147-01-01T00:00:00Z.',
  );
  expect(expected).toBe('the book free within 5\u00A0seconds');
});
