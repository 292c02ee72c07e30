// Making a book where none is: whole and empty under a passing name, then given its name in one step.
import { accessSync, constants, realpathSync, rmSync, statSync } from 'node:fs';
import { basename, dirname, join } from 'node:path';
import type { BookInfo } from '../../book/index.ts';
import { openDatabase } from './connection.ts';
import { nameDurably, syncFile } from './durable-file.ts';
import { sealOfInfo } from './identify.ts';
import { DiskProblem } from './problem.ts';
import { readReceipt, receiptPath, removeReceipt } from './receipt.ts';
import { CREATE_ALL } from './schema.ts';
import { asProblem, systemCode, systemProblem } from './sqlite-error.ts';
import { BEGIN, COMMIT, WRITE_ABOUT } from './statements.ts';

/**
 * Makes an empty book. The file appears whole or not at all, and no file that is there is touched.
 * @throws DiskProblem `book-exists`, `folder-missing`, `receipt-left`, or what the disk says
 */
export function createBook(path: string, info: BookInfo): void {
  const folder = findFolder(path);
  const file = join(folder, basename(path));
  if (statSync(file, { throwIfNoEntry: false }) !== undefined) throw new DiskProblem('book-exists', file);
  makeRoomForReceipt(file);
  const fresh = `${file}.${process.pid}.new`;
  try {
    rmSync(fresh, { force: true });
    writeEmptyBook(fresh, info);
    syncFile(fresh);
    nameDurably(fresh, file);
  } catch (error) {
    systemCode(() => rmSync(fresh, { force: true }));
    throw asProblem(systemProblem(systemCodeOf(error), file) ?? error, file);
  }
}

function findFolder(path: string): string {
  let folder = dirname(path);
  const code = systemCode(() => {
    folder = realpathSync(dirname(path));
  });
  const problem = systemProblem(code, path);
  if (problem !== null) throw problem;
  if (!statSync(folder).isDirectory()) throw new DiskProblem('folder-missing', path, { folder });
  const refused = systemProblem(
    systemCode(() => accessSync(folder, constants.W_OK)),
    path,
  );
  if (refused !== null) throw refused;
  return folder;
}

/** A receipt without its book says that a book was here. That of a practice book may go; that of a real one may not. */
function makeRoomForReceipt(file: string): void {
  const left = readReceipt(file);
  if (left === null) return;
  if (left === 'unreadable' || left.purpose === 'book')
    throw new DiskProblem('receipt-left', receiptPath(file), {
      count: left === 'unreadable' ? null : left.count,
      bookId: left === 'unreadable' ? null : left.bookId,
    });
  removeReceipt(file);
}

/** No journal: until the file has its name, a power cut loses nothing that anybody was promised. */
function writeEmptyBook(fresh: string, info: BookInfo): void {
  const db = openDatabase(fresh, { readOnly: false, waitMs: 0 });
  try {
    db.exec('PRAGMA journal_mode = MEMORY; PRAGMA synchronous = EXTRA; PRAGMA fullfsync = ON;');
    db.exec(BEGIN);
    db.exec(CREATE_ALL);
    db.prepare(WRITE_ABOUT).run(info.bookId, info.site, info.purpose, info.createdAtMs, sealOfInfo(info));
    db.exec(COMMIT);
  } finally {
    db.close();
  }
}

function systemCodeOf(error: unknown): string | null {
  const code = (error as { code?: unknown } | null)?.code;
  return typeof code === 'string' && /^E[A-Z]+$/.test(code) ? code : null;
}
