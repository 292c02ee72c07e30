// A copy of a book: made by SQLite itself while others may write, checked whole, and only then given its name.
import { accessSync, constants, rmSync, statSync } from 'node:fs';
import { dirname } from 'node:path';
import type { CheckResult } from '../../book/index.ts';
import { checkBookFile, type FileCheck } from './check-file.ts';
import type { DiskBook } from './disk-book.ts';
import { nameDurably, syncFile } from './durable-file.ts';
import { openBook } from './open.ts';
import { DiskProblem } from './problem.ts';
import { receiptPath, writeReceipt } from './receipt.ts';
import { systemCode, systemProblem } from './sqlite-error.ts';
import { COPY_INTO } from './statements.ts';

export interface Backup {
  readonly path: string;
  readonly entries: number;
  readonly digest: string;
  readonly heads: CheckResult['heads'];
}

/**
 * Copies a book to a new place, and reads the copy back before it says that it is one.
 * @throws DiskProblem `backup-exists` when there is a file, `backup-not-equal` when the copy is not whole or not the same
 */
export async function backupBook(path: string, target: string): Promise<Backup> {
  const book = await openBook(path, { owner: 'book backup', readOnly: true });
  try {
    return await copyBook(book, target);
  } finally {
    book.close();
  }
}

/** The same of a book that is open, as one that is served is. */
export async function copyBook(book: DiskBook, target: string): Promise<Backup> {
  for (const taken of [target, receiptPath(target)])
    if (statSync(taken, { throwIfNoEntry: false }) !== undefined)
      throw new DiskProblem('backup-exists', taken);
  const code = systemCode(() => accessSync(dirname(target), constants.W_OK));
  if (code !== null) throw systemProblem(code, target);
  const fresh = `${target}.${process.pid}.new`;
  try {
    rmSync(fresh, { force: true });
    book.withDatabase((db) => db.prepare(COPY_INTO).run(fresh));
    syncFile(fresh);
    const copy = await readBack(book, fresh, target);
    nameDurably(fresh, target);
    writeReceipt(target, await book.info(), copy.heads);
    return { path: target, entries: copy.entries, digest: copy.digest, heads: copy.heads };
  } catch (error) {
    rmSync(fresh, { force: true });
    throw told(error, target);
  }
}

/** The seal at each head covers all that is before it: a whole copy whose heads are in the book is the book up to there. */
async function readBack(book: DiskBook, fresh: string, target: string): Promise<FileCheck> {
  const copy = await openBook(fresh, { owner: 'book backup', readOnly: true });
  try {
    const check = await checkBookFile(copy);
    const [finding] = check.findings;
    if (finding !== undefined || !check.isReadToEnd)
      throw new DiskProblem('backup-not-equal', target, { because: finding?.code ?? null });
    for (const { site, number, seal } of check.heads)
      if ((await book.findNumber(site, number))?.seal !== seal)
        throw new DiskProblem('backup-not-equal', target, { because: 'seal', site, number });
    return check;
  } finally {
    copy.close();
  }
}

/** What went wrong while writing went wrong at the copy, not at the book. */
function told(error: unknown, target: string): unknown {
  if (error instanceof DiskProblem)
    return error.code === 'disk-full' ? new DiskProblem('disk-full', target, error.finding.data) : error;
  return systemProblem(String((error as { code?: unknown } | null)?.code), target) ?? error;
}
