// Disks that are full, may only be read, or belong to somebody else: one clear message, nothing lost, and reading goes on.
import { createHash } from 'node:crypto';
import { chmodSync, existsSync, mkdtempSync, readdirSync, readFileSync, rmSync, statSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { backupBook, createBook, type DiskBook, DiskProblem, openBook } from '../../src/doors/disk/index.ts';
import { recordCounts } from '../verification/record.ts';
import { need } from './needs.ts';
import { startWriter } from './run-writer.ts';
import { onSmallDisk, type SmallDisk, type SmallDiskKind } from './small-disk.ts';
import { whatIsWrong } from './whole-book.ts';
import { chainOf, INFO, LONGEST_CHAIN } from './writer.ts';

const KINDS: readonly SmallDiskKind[] = ['tmpfs', 'ext4 with blocks of 1 KiB', 'ext4 with blocks of 4 KiB'];
const chain = chainOf(LONGEST_CHAIN);
const anyEnd = new Set(Array.from({ length: LONGEST_CHAIN + 1 }, (_, at) => at));

function fingerprint(folder: string): string[] {
  return readdirSync(folder)
    .filter((name) => statSync(join(folder, name)).isFile() && name !== 'filler')
    .toSorted()
    .map(
      (name) =>
        `${name} ${createHash('sha256')
          .update(readFileSync(join(folder, name)))
          .digest('hex')}`,
    );
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

async function makeBook(path: string, entries: number): Promise<void> {
  createBook(path, INFO);
  using book = await openBook(path, { owner: 'faults' });
  await book.append(chain.slice(0, entries), []);
}

/** Appends one entry after another until the disk takes no more; gives back the number reached, and the problem. */
async function appendUntilFull(
  book: DiskBook,
  from: number,
): Promise<{ acked: number; problem: DiskProblem }> {
  for (let acked = from; acked < LONGEST_CHAIN; acked++) {
    try {
      await book.append(chain.slice(acked, acked + 1), []);
    } catch (error) {
      expect(error).toBeInstanceOf(DiskProblem);
      return { acked, problem: error as DiskProblem };
    }
  }
  throw new Error('the disk was never full');
}

async function fillsWhileWriting(disk: SmallDisk): Promise<number> {
  const path = join(disk.folder, 'corrie.book');
  await makeBook(path, 100);
  disk.fill(96 * 1024);
  const book = await openBook(path, { owner: 'faults' });
  const { acked, problem } = await appendUntilFull(book, 100);
  expect(problem.code).toBe('disk-full');
  // Half an import does not fit either, and does not stay behind.
  expect((await problemOf(() => book.append(chain.slice(acked, acked + 500), []))).code).toBe('disk-full');
  expect(await book.count()).toBe(acked);
  expect(book.whyNotWritten()).toBeNull();
  disk.unfill();
  await book.append(chain.slice(acked, acked + 10), []);
  book.close();
  expect(await whatIsWrong(path, { chain, acked: acked + 10, ends: new Set([acked + 10]) })).toBeNull();
  return acked;
}

async function fullBeforeOpening(disk: SmallDisk): Promise<void> {
  const path = join(disk.folder, 'corrie.book');
  await makeBook(path, 100);
  disk.fill(0);
  const before = fingerprint(disk.folder);
  {
    using reader = await openBook(path, { owner: 'faults', readOnly: true });
    expect(await reader.count()).toBe(100);
  }
  {
    using writer = await openBook(path, { owner: 'faults' });
    const { acked, problem } = await appendUntilFull(writer, 100);
    expect([acked, problem.code]).toEqual([100, 'disk-full']);
    expect(await writer.count()).toBe(100);
  }
  expect(fingerprint(disk.folder).filter((line) => !/owner|-journal/.test(line))).toEqual(
    before.filter((line) => !/owner|-journal/.test(line)),
  );
  expect((await problemOf(() => createBook(join(disk.folder, 'new.book'), INFO))).code).toBe('disk-full');
  expect(existsSync(join(disk.folder, 'new.book'))).toBe(false);
  const copy = await problemOf(() => backupBook(path, join(disk.folder, 'copy.book')));
  expect([copy.code, copy.finding.where.file]).toEqual(['disk-full', join(disk.folder, 'copy.book')]);
  expect(readdirSync(disk.folder).filter((name) => /copy|new/.test(name))).toEqual([]);
  disk.unfill();
  expect(await whatIsWrong(path, { chain, acked: 100, ends: new Set([100]) })).toBeNull();
}

let scenarios = 0;

describe.each(KINDS)('a small disk, %s', (kind) => {
  test('that fills up while entries come in', async () => {
    await onSmallDisk(kind, async (disk) => {
      const acked = await fillsWhileWriting(disk);
      console.log(`${kind}: full at entry ${acked}, which was refused; went on when there was room`);
      scenarios += 1;
    });
  });

  test('that was full before the book was opened', async () => {
    await onSmallDisk(kind, async (disk) => {
      await fullBeforeOpening(disk);
      scenarios += 1;
    });
  });

  test('that may only be read', async () => {
    await onSmallDisk(kind, async (disk) => {
      const path = join(disk.folder, 'corrie.book');
      await makeBook(path, 100);
      disk.remount('ro');
      const before = fingerprint(disk.folder);
      using book = await openBook(path, { owner: 'faults' });
      expect(book.whyNotWritten()).toMatchObject({ code: 'read-only', finding: { data: { why: 'disk' } } });
      const problem = await problemOf(() => book.append(chain.slice(100, 101), []));
      expect(problem.code).toBe('read-only');
      expect(await book.count()).toBe(100);
      expect(await whatIsWrong(path, { chain, acked: 100, ends: new Set([100]) })).toBeNull();
      expect((await problemOf(() => createBook(join(disk.folder, 'new.book'), INFO))).code).toBe('read-only');
      expect(fingerprint(disk.folder)).toEqual(before);
      book.close();
      disk.remount('rw');
      scenarios += 1;
    });
  });

  test('that may only be read, with a write on it that was interrupted', async () => {
    await onSmallDisk(kind, async (disk) => {
      const path = join(disk.folder, 'corrie.book');
      await makeBook(path, 100);
      // Killed in the sync of the book, when the journal is complete.
      need('strace');
      const strace = [
        'strace',
        '-f',
        '-qq',
        '-o',
        '/dev/null',
        '-e',
        'trace=fsync',
        '-e',
        'inject=fsync:signal=KILL:when=1',
        '-P',
        path,
      ];
      await startWriter({ path, plan: [1, 1, 1] }, strace).said;
      expect(statSync(`${path}-journal`).size).toBeGreaterThan(512);
      disk.remount('ro');
      const before = fingerprint(disk.folder);
      expect((await problemOf(() => openBook(path, { owner: 'faults' }))).code).toBe('recovery-needed');
      expect(fingerprint(disk.folder)).toEqual(before);
      disk.remount('rw');
      expect(await whatIsWrong(path, { chain, acked: 100, ends: new Set([100, 101]) })).toBeNull();
      scenarios += 1;
    });
  });
});

describe('a book that', () => {
  let folder = '';
  let path = '';
  beforeEach(async () => {
    folder = mkdtempSync(join(tmpdir(), 'waterwright-limits-'));
    path = join(folder, 'corrie.book');
    await makeBook(path, 50);
  });
  afterEach(() => rmSync(folder, { recursive: true, force: true }));

  test.each([
    ['the file belongs to somebody else', () => chmodSync(folder, 0o777)],
    ['the folder belongs to somebody else', () => chmodSync(path, 0o666)],
  ])('another person opens: %s', async (_, prepare) => {
    chmodSync(folder, 0o755);
    prepare();
    const before = fingerprint(folder);
    const said = await startWriter({ path, plan: [1, 1], uid: 65_534 }).said;
    expect(said, said.stderr).toMatchObject({
      opened: 'not-permitted',
      errors: ['not-permitted', 'not-permitted'],
      acks: 0,
      done: true,
    });
    expect(fingerprint(folder)).toEqual(before);
    scenarios += 1;
  });

  test('another person may not even read', async () => {
    chmodSync(folder, 0o755);
    chmodSync(path, 0o600);
    const said = await startWriter({ path, plan: [1], uid: 65_534 }).said;
    expect(said).toMatchObject({ opened: null, errors: ['not-permitted'], acks: 0 });
    scenarios += 1;
  });

  test('reaches the longest file that the system allows', async () => {
    need('prlimit');
    const limit = statSync(path).size + 20_000;
    const said = await startWriter({ path, plan: Array.from({ length: 80 }, () => 1) }, [
      'prlimit',
      `--fsize=${limit}`,
    ]).said;
    expect(said.errors[0], said.stderr).toBe('disk-error');
    expect(new Set(said.errors.slice(1))).toEqual(new Set(['writing-stopped']));
    expect(said.acked).toBeGreaterThan(50);
    expect(await whatIsWrong(path, { chain, acked: said.acked, ends: anyEnd })).toBeNull();
    scenarios += 1;
  });

  test('is opened when there is no free place for an open file', async () => {
    need('prlimit');
    const before = fingerprint(folder);
    const said = await startWriter({ path, plan: [1], exhaust: true }, ['prlimit', '--nofile=64']).said;
    expect(said, said.stderr).toMatchObject({ opened: null, errors: ['too-many-files'], acks: 0 });
    expect(fingerprint(folder)).toEqual(before);
    scenarios += 1;
  });
});

test('all of these were tried', () => {
  console.log(`disks that are full, read-only or of others: ${scenarios} scenarios`);
  expect(scenarios).toBe(KINDS.length * 4 + 5);
  recordCounts('full-disk', import.meta.filename, { counts: { scenarios } });
});
