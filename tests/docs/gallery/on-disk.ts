// A folder of its own for a sample of the disk, and the finding that is told there, without the names of this machine.
import { mkdtempSync, realpathSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { DiskFindingCode, KeptEntry } from '../../../src/book/index.ts';
import { createBook, type DiskBook, DiskProblem, openBook } from '../../../src/doors/disk/index.ts';
import type { Finding, FindingData } from '../../../src/ground/units/index.ts';
import { makeDrafts, sealedAs } from '../../contract/made-up-entries.ts';
import { failure, type Sample, sample } from './sample.ts';

const INFO = { bookId: 'a-book', site: 'corrie', purpose: 'book', createdAtMs: 0 } as const;

export const entries: readonly KeptEntry[] = sealedAs('corrie', makeDrafts(1, 60));

/** The folder, and the book that may stand in it. */
export class Folder {
  readonly path: string;
  readonly book: string;

  constructor(path: string) {
    this.path = path;
    this.book = join(path, 'corrie.book');
  }

  at(name: string): string {
    return join(this.path, name);
  }

  /** Makes the book, with the first of the entries in it. */
  async make(count = 3, change: Partial<typeof INFO> | { bookId: string } = {}): Promise<void> {
    createBook(this.book, { ...INFO, ...change });
    if (count > 0) await this.open({}, (book) => book.append(entries.slice(0, count), []));
  }

  /** Opens the book, works with it and closes it. */
  async open<T>(
    how: { readonly readOnly?: boolean; readonly waitMs?: number },
    work: (book: DiskBook) => T | Promise<T>,
  ): Promise<T> {
    using book = await openBook(this.book, { owner: 'log day', ...how });
    return await work(book);
  }
}

type Work = (folder: Folder) => Promise<Finding | undefined> | Finding | undefined;

/** Does something on a disk, and takes what it ends with: a finding, or a problem that was thrown. */
export function diskSample(code: DiskFindingCode, when: string, given: string, work: Work): Sample {
  return sample(when, async () => {
    const folder = new Folder(realpathSync(mkdtempSync(join(tmpdir(), 'waterwright-gallery-'))));
    try {
      const finding = await found(code, () => work(folder));
      return failure([given], finding === undefined ? undefined : nameless(finding, folder.path));
    } finally {
      rmSync(folder.path, { recursive: true, force: true });
    }
  });
}

async function found(code: DiskFindingCode, work: () => ReturnType<Work>): Promise<Finding | undefined> {
  try {
    return await work();
  } catch (error) {
    if (error instanceof DiskProblem && error.code === code) return error.finding;
    throw error;
  }
}

/** Paths are told from the folder on; the number and the start of this process are another in every run. */
function nameless(finding: Finding, folder: string): Finding {
  const bare = (text: string) => text.replaceAll(`${folder}/`, '').replaceAll(folder, '.');
  const data: FindingData = Object.fromEntries(
    Object.entries(finding.data).map(([key, value]) => [
      key,
      typeof value === 'string' ? bare(value) : value,
    ]),
  );
  const where = finding.where.file === undefined ? {} : { file: bare(finding.where.file) };
  const process = 'pid' in data ? { pid: 4711, sinceMs: Date.UTC(2147, 3, 15, 21) } : {};
  return { ...finding, where: { ...finding.where, ...where }, data: { ...data, ...process } };
}
