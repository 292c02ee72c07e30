// Checking a book file whole: its pages and indexes first, then every chain, then the receipt beside it.
import {
  type BookFinding,
  type CheckResult,
  checkBook,
  type DiskFindingCode,
  type Hash,
} from '../../book/index.ts';
import type { Finding } from '../../ground/units/index.ts';
import type { DiskBook } from './disk-book.ts';
import { nodeHash } from './hash.ts';
import { type DiskFinding, DiskProblem, diskFinding } from './problem.ts';
import { CHECK_PAGES } from './statements.ts';

export interface FileCheck extends Omit<CheckResult, 'findings'> {
  /** False where a page could not be read: then there may be more entries, and the digest is that of the readable ones. */
  readonly isReadToEnd: boolean;
  readonly findings: readonly Finding<BookFinding['code'] | DiskFindingCode>[];
}

export async function checkBookFile(book: DiskBook, hash: Hash = nodeHash): Promise<FileCheck> {
  const pages = checkPages(book);
  const beside = book.findings();
  try {
    const chains = await checkBook(book, { hash });
    return { ...chains, isReadToEnd: true, findings: [...pages, ...chains.findings, ...beside] };
  } catch (error) {
    if (!(error instanceof DiskProblem)) throw error;
    const findings = [...pages, error.finding, ...beside];
    return { entries: 0, digest: '', heads: [], isReadToEnd: false, findings };
  }
}

/** What SQLite says about its own pages: the chains see content, this sees indexes that would hide an entry from a scan. */
export function checkPages(book: DiskBook): readonly DiskFinding[] {
  try {
    const rows = book.withDatabase((db) => db.prepare(CHECK_PAGES).all()) as { integrity_check: string }[];
    return rows
      .map((row) => row.integrity_check)
      .filter((says) => says !== 'ok')
      .map((says) => diskFinding('page-damaged', book.path, { says }));
  } catch (error) {
    if (!(error instanceof DiskProblem)) throw error;
    return [diskFinding('page-damaged', book.path, { says: error.message })];
  }
}
