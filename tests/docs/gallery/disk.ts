// Table of files, folders and disks that stand in the way of a book.
import { copyFileSync, mkdirSync, readFileSync, rmSync, truncateSync, writeFileSync } from 'node:fs';
import { DatabaseSync } from 'node:sqlite';
import type { DiskFindingCode } from '../../../src/book/index.ts';
import { backupBook, checkBookFile, createBook, DiskProblem } from '../../../src/doors/disk/index.ts';
import { diskSample, entries, type Folder } from './on-disk.ts';
import { failure, type Samples, writtenOut } from './sample.ts';

const NEW = { bookId: 'new', site: 'corrie', purpose: 'book', createdAtMs: 0 } as const;

/** Something done to the file with the means of SQLite itself. */
function behindItsBack(folder: Folder, sql: string): void {
  const db = new DatabaseSync(folder.book, { defensive: false });
  try {
    db.exec(sql);
  } finally {
    db.close();
  }
}

const opened = (folder: Folder) => folder.open({}, (book) => book.findings()[0]);
const appended = (folder: Folder) =>
  folder.open({}, (book) => book.append(entries.slice(3, 4), [])).then(none);
const none = () => undefined;

/** The finding as the door of the disk makes it. */
function asTold(code: DiskFindingCode, given: string, data: ConstructorParameters<typeof DiskProblem>[2]) {
  return failure([given], new DiskProblem(code, 'corrie.book', data).finding);
}

const theFile = {
  'book-missing': diskSample(
    'book-missing',
    'No file is at the path of the book.',
    'open corrie.book, which is not there',
    opened,
  ),
  'book-exists': diskSample(
    'book-exists',
    'A new book would take the place of a file.',
    'make corrie.book where a shopping list of that name is',
    (folder) => {
      writeFileSync(folder.book, 'a shopping list');
      return folder.make().then(none);
    },
  ),
  'folder-missing': diskSample(
    'folder-missing',
    'The folder of the path is not there.',
    'make none/corrie.book',
    (folder) => {
      createBook(folder.at('none/corrie.book'), NEW);
      return undefined;
    },
  ),
  'not-a-file': diskSample(
    'not-a-file',
    'The path leads to a folder.',
    'open corrie.book, which is a folder',
    (folder) => {
      mkdirSync(folder.book);
      return opened(folder);
    },
  ),
  'book-empty': diskSample(
    'book-empty',
    'The file has no bytes: it was never written, or lost.',
    'open an empty corrie.book',
    (folder) => {
      writeFileSync(folder.book, '');
      return opened(folder);
    },
  ),
  'not-a-book': diskSample(
    'not-a-book',
    'The file is something else.',
    'open a diary named corrie.book',
    (folder) => {
      writeFileSync(folder.book, 'Dear diary, today we drank 12 litres.'.repeat(100));
      return opened(folder);
    },
  ),
  'book-foreign': diskSample(
    'book-foreign',
    'The file is the database of another program.',
    'open a database with a table of its own',
    (folder) => {
      behindItsBack(folder, 'CREATE TABLE water (litres REAL)');
      return opened(folder);
    },
  ),
  'book-newer': diskSample(
    'book-newer',
    'The book was made by a newer program.',
    'open a book of version 2',
    async (folder) => {
      await folder.make();
      behindItsBack(folder, 'PRAGMA user_version = 3');
      return opened(folder);
    },
  ),
  'book-damaged': diskSample(
    'book-damaged',
    'The file is cut short, or its pages do not fit together.',
    'open a book of which the first 8192 bytes are left',
    async (folder) => {
      await folder.make();
      truncateSync(folder.book, 8192);
      return opened(folder);
    },
  ),
  'page-damaged': diskSample(
    'page-damaged',
    'The check of a book: a page is not as it was written.',
    'check a book with one flipped bit in the index by time',
    async (folder) => {
      await folder.make();
      flipBit(folder);
      return folder.open({}, async (book) =>
        (await checkBookFile(book)).findings.find(({ code }) => code === 'page-damaged'),
      );
    },
  ),
  'book-altered': diskSample(
    'book-altered',
    'Somebody changed the file by other means.',
    'open a book whose guard against changes was dropped',
    async (folder) => {
      await folder.make();
      behindItsBack(folder, 'DROP TRIGGER entry_no_update');
      return opened(folder);
    },
  ),
} satisfies Partial<Samples<DiskFindingCode>>;

/** One bit in the last entry of the index by time, the seventh page of the file. */
function flipBit(folder: Folder): void {
  const bytes = readFileSync(folder.book);
  const at = 7 * 4096 - 1;
  bytes[at] = (bytes[at] as number) ^ 1;
  writeFileSync(folder.book, bytes);
}

const writing = {
  'recovery-needed': writtenOut(
    'An interrupted write is in the way, and the place may only be read.',
    'it takes a disk that was mounted for reading only; tests/faults/full-disk.test.ts earns it there.',
    asTold(
      'recovery-needed',
      'open a book on a read-only disk, with the journal of a killed writer beside it',
      { says: 'attempt to write a readonly database' },
    ),
  ),
  'read-only': diskSample(
    'read-only',
    'The book was opened to be read, or its disk may only be read.',
    'enter a line into a book that was opened to be read',
    async (folder) => {
      await folder.make();
      return folder.open({ readOnly: true }, (book) => book.append(entries.slice(3, 4), [])).then(none);
    },
  ),
  'not-permitted': writtenOut(
    'The file or its folder belongs to somebody else.',
    'the account that runs the tests may do everything on some machines; tests/faults/full-disk.test.ts earns it as another person.',
    asTold('not-permitted', 'open a book in a folder of somebody else', { why: 'folder', place: 'books' }),
  ),
  'too-many-files': writtenOut(
    'The system has no place left for an open file.',
    'it takes a process at its limit; tests/faults/full-disk.test.ts earns it in one.',
    asTold('too-many-files', 'open a book when 64 files are open and 64 are allowed', { says: 'EMFILE' }),
  ),
  'book-busy': diskSample(
    'book-busy',
    'Another process writes to the book for longer than one may wait.',
    'enter a line while log day is in the middle of its own',
    async (folder) => {
      await folder.make();
      return folder.open({}, async (holder) => {
        await holder.append(entries.slice(3, 4), []);
        holder.withDatabase((db) => db.exec('BEGIN IMMEDIATE'));
        return folder.open({ waitMs: 1000 }, (book) => book.append(entries.slice(4, 5), [])).then(none);
      });
    },
  ),
  'book-moved': diskSample(
    'book-moved',
    'The file was moved or replaced while it was open.',
    'enter a line after another copy took the place of the file',
    async (folder) => {
      await folder.make();
      return folder.open({}, (book) => {
        copyFileSync(folder.book, folder.at('copy.book'));
        rmSync(folder.book);
        copyFileSync(folder.at('copy.book'), folder.book);
        return book.append(entries.slice(3, 4), []).then(none);
      });
    },
  ),
  'disk-full': diskSample(
    'disk-full',
    'There is no room for one more entry.',
    'enter 57 lines into a book that may not grow',
    async (folder) => {
      await folder.make();
      return folder.open({}, (book) => {
        book.withDatabase((db) => db.exec('PRAGMA max_page_count = 1'));
        return book.append(entries.slice(3), []).then(none);
      });
    },
  ),
  'disk-error': diskSample(
    'disk-error',
    'A call of the disk failed.',
    'open a book beside which a folder stands in the place of its journal',
    async (folder) => {
      await folder.make();
      rmSync(folder.at('corrie.book-journal'), { force: true });
      mkdirSync(folder.at('corrie.book-journal'));
      return appended(folder);
    },
  ),
  'writing-stopped': diskSample(
    'writing-stopped',
    'Something was found or happened after which nothing more may be written.',
    'enter a line into an older copy that was put back',
    async (folder) => {
      await olderCopy(folder);
      return appended(folder);
    },
  ),
  'settings-refused': diskSample(
    'settings-refused',
    'The file cannot be brought to the settings under which it is safe.',
    'open a book with a write-ahead log, to be read',
    async (folder) => {
      await folder.make(0);
      behindItsBack(folder, 'PRAGMA journal_mode = WAL');
      return folder.open({ readOnly: true }, none);
    },
  ),
  'sqlite-too-old': writtenOut(
    'The SQLite under the program has a fault that can damage a file.',
    'no old SQLite comes with the tests.',
    asTold('sqlite-too-old', 'open a book with SQLite 3.40.1', { version: '3.40.1', needed: '3.51.3' }),
  ),
} satisfies Partial<Samples<DiskFindingCode>>;

async function olderCopy(folder: Folder): Promise<void> {
  await folder.make();
  copyFileSync(folder.book, folder.at('old.book'));
  await folder.open({}, (book) => book.append(entries.slice(3, 9), []));
  copyFileSync(folder.at('old.book'), folder.book);
}

const receipts = {
  'receipt-foreign': diskSample(
    'receipt-foreign',
    'The receipt beside the book is that of another book.',
    'open a book with the receipt of another beside it',
    async (folder) => {
      await folder.make();
      const receipt = folder.at('corrie.book.receipt');
      writeFileSync(receipt, readFileSync(receipt, 'utf8').replace('a-book', 'another'));
      return opened(folder);
    },
  ),
  'receipt-unreadable': diskSample(
    'receipt-unreadable',
    'The receipt cannot be read.',
    'open a book with {} as its receipt',
    async (folder) => {
      await folder.make();
      writeFileSync(folder.at('corrie.book.receipt'), '{}');
      return opened(folder);
    },
  ),
  'receipt-left': diskSample(
    'receipt-left',
    'A new book would be made where the receipt of a lost one is.',
    'make corrie.book where only a receipt is left',
    async (folder) => {
      await folder.make();
      rmSync(folder.book);
      return folder.make().then(none);
    },
  ),
  'receipt-not-written': diskSample(
    'receipt-not-written',
    'The entries are kept, and their receipt could not be written.',
    'enter a line where a folder stands in the place of the receipt',
    async (folder) => {
      await folder.make(0);
      mkdirSync(folder.at('corrie.book.receipt'));
      return folder.open({}, async (book) => {
        await book.append(entries.slice(0, 1), []);
        book.close();
        return book.findings().find(({ code }) => code === 'receipt-not-written');
      });
    },
  ),
  'backup-exists': diskSample(
    'backup-exists',
    'A copy would take the place of a file.',
    'copy a book to copy.book, which is there',
    async (folder) => {
      await folder.make();
      writeFileSync(folder.at('copy.book'), 'mine');
      return backupBook(folder.book, folder.at('copy.book')).then(none);
    },
  ),
  'backup-not-equal': diskSample(
    'backup-not-equal',
    'The copy is not whole, or not the same as the book.',
    'copy a book of which an entry was changed behind its back',
    async (folder) => {
      await folder.make();
      const [guard] = guards(folder);
      behindItsBack(
        folder,
        `DROP TRIGGER entry_no_update; UPDATE entry SET seal = replace(seal, substr(seal, 1, 1), 'x') WHERE number = 2; ${guard}`,
      );
      return backupBook(folder.book, folder.at('copy.book')).then(none);
    },
  ),
} satisfies Partial<Samples<DiskFindingCode>>;

/** The guard against changes, as it has to stand in the file again so that only the entry is changed. */
function guards(folder: Folder): readonly string[] {
  const db = new DatabaseSync(folder.book);
  try {
    const rows = db.prepare("SELECT sql FROM sqlite_schema WHERE name = 'entry_no_update'").all() as {
      sql: string;
    }[];
    return rows.map(({ sql }) => sql);
  } finally {
    db.close();
  }
}

export const diskSamples: Samples<DiskFindingCode> = { ...theFile, ...writing, ...receipts };
