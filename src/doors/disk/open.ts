// Opening a book that is there.
import { realpathSync, statSync } from 'node:fs';
import { againstReceipt, type BookFinding } from '../../book/index.ts';
import { type Connection, connect, needsRecovery, recover } from './connection.ts';
import { DiskBook } from './disk-book.ts';
import { findOwner } from './owner.ts';
import { BookBusy, type DiskFinding, DiskProblem, diskFinding } from './problem.ts';
import { readReceipt, receiptPath } from './receipt.ts';
import { asProblem, isBusy, systemCode, systemProblem } from './sqlite-error.ts';
import { whyNotWritable } from './writable.ts';

/** How long a second writer waits for the first. */
const DEFAULT_WAIT_MS = 5000;

export interface OpenOptions {
  /** The command that opens it, named to whoever has to wait for it. */
  readonly owner: string;
  readonly readOnly?: boolean;
  readonly waitMs?: number;
  /** Holds the book for this process alone, as a server does. */
  readonly alone?: boolean;
}

/**
 * Opens a book. A place that cannot be written, or a receipt that speaks against the file, is no reason not to read it:
 * the book opens, `whyNotWritten()` says what is the matter, and an append throws that.
 * @throws DiskProblem when there is no book, or not one that can be read
 * @throws BookBusy when another process holds the file for longer than `waitMs`
 */
export async function openBook(path: string, options: OpenOptions): Promise<DiskBook> {
  const waitMs = options.waitMs ?? DEFAULT_WAIT_MS;
  const file = findFile(path);
  const refusal = options.readOnly === true ? askedToRead(file) : whyNotWritable(file);
  const alone = options.alone === true && refusal === null;
  const connection = connectOrRecover(file, { readOnly: refusal !== null, waitMs, alone });
  const parts = { connection, refusal, findings: [], waitMs, command: options.owner };
  const findings = await holdAgainstReceipt(new DiskBook(file, parts), file);
  const doubt = findings.find(({ code }) => code !== 'receipt-unreadable');
  const book = new DiskBook(file, {
    ...parts,
    findings,
    refusal: refusal ?? (doubt === undefined ? null : doubted(file, doubt)),
  });
  if (alone) book.noteOwner();
  return book;
}

/** The file itself, behind any link: what stands beside it stands beside that. */
function findFile(path: string): string {
  let file = path;
  const code = systemCode(() => {
    file = realpathSync(path);
  });
  const problem = systemProblem(code, path);
  if (problem !== null) throw problem;
  const look = statSync(file);
  if (!look.isFile()) throw new DiskProblem('not-a-file', file);
  if (look.size === 0) throw new DiskProblem('book-empty', file);
  return file;
}

function askedToRead(file: string): DiskProblem {
  return new DiskProblem('read-only', file, { why: 'asked' });
}

interface ConnectWish {
  readonly readOnly: boolean;
  readonly alone: boolean;
  readonly waitMs: number;
}

/** An interrupted write is taken back first, where that is possible: a reader must not see half of it. */
function connectOrRecover(file: string, wish: ConnectWish): Connection {
  try {
    return connect(file, wish);
  } catch (error) {
    if (!needsRecovery(error) || whyNotWritable(file) !== null) throw told(error, file, wish.waitMs);
  }
  try {
    recover(file, wish.waitMs);
    return connect(file, wish);
  } catch (error) {
    throw told(error, file, wish.waitMs);
  }
}

function told(error: unknown, file: string, waitMs: number): unknown {
  return isBusy(error) ? new BookBusy(file, findOwner(file), waitMs) : asProblem(error, file);
}

async function holdAgainstReceipt(
  book: DiskBook,
  file: string,
): Promise<readonly (BookFinding | DiskFinding)[]> {
  const receipt = readReceipt(file);
  if (receipt === null) return [];
  const path = receiptPath(file);
  if (receipt === 'unreadable') return [diskFinding('receipt-unreadable', path)];
  const { bookId } = await book.info();
  if (receipt.bookId !== bookId)
    return [diskFinding('receipt-foreign', path, { bookId, receipt: receipt.bookId, count: receipt.count })];
  return againstReceipt(book, receipt.heads);
}

function doubted(file: string, doubt: BookFinding | DiskFinding): DiskProblem {
  return new DiskProblem('writing-stopped', file, {
    because: doubt.code,
    receiptFile: receiptPath(file),
    ...doubt.data,
  });
}
