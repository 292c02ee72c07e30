// The SQLite file against the contract of the port, and one digest for one book in both stores.
import { spawn } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { type BookInfo, checkBook, MemoryStore, plainHash } from '../../src/book/index.ts';
import { createBook, type DiskBook, nodeHash, openBook } from '../../src/doors/disk/index.ts';
import { describeBookPort, INFO } from './book-port.ts';
import { makeDrafts, sealedAs } from './made-up-entries.ts';

async function openFresh(info: BookInfo): Promise<{ port: DiskBook; close: () => Promise<void> }> {
  const folder = mkdtempSync(join(tmpdir(), 'waterwright-contract-'));
  const path = join(folder, 'corrie.book');
  createBook(path, info);
  const port = await openBook(path, { owner: 'contract' });
  return {
    port,
    close: () => {
      port.close();
      rmSync(folder, { recursive: true });
      return Promise.resolve();
    },
  };
}

describeBookPort('disk', openFresh);

test('a book in memory and its twin on disk have one digest, however the entries arrived', async () => {
  const { port: disk, close } = await openFresh(INFO);
  const memory = new MemoryStore(INFO);
  const chains = ['corrie', 'north-ridge'].map((site, at) => sealedAs(site, makeDrafts(50 + at, 400)));
  await memory.append(chains.flat(), []);
  for (let at = 0; at < 400; at += 100)
    for (const chain of chains.toReversed()) await disk.append(chain.slice(at, at + 100), []);
  const [one, other] = [
    await checkBook(memory, { hash: plainHash }),
    await checkBook(disk, { hash: nodeHash }),
  ];
  expect(one.digest).toBe(other.digest);
  expect(one).toEqual(other);
  await close();
});

test('three processes that write at once lose nothing and leave no gap', async () => {
  const folder = mkdtempSync(join(tmpdir(), 'waterwright-writers-'));
  const path = join(folder, 'corrie.book');
  createBook(path, INFO);
  const script = join(import.meta.dirname, 'keep-many.ts');
  const writers = [1, 2, 3].map((seed) =>
    spawn(process.execPath, ['--no-warnings', script, path, `${seed}`, '80'], {
      stdio: ['pipe', 'pipe', 'inherit'],
    }),
  );
  await Promise.all(writers.map((writer) => new Promise((ready) => writer.stdout.once('data', ready))));
  for (const writer of writers) writer.stdin.end('go');
  const ends = await Promise.all(writers.map((writer) => new Promise((end) => writer.once('close', end))));
  expect(ends).toEqual([0, 0, 0]);
  {
    using book = await openBook(path, { owner: 'contract' });
    const check = await checkBook(book, { hash: plainHash });
    expect(check).toMatchObject({ entries: 240, findings: [], heads: [{ site: 'corrie', number: 240 }] });
    for (const draft of [1, 2, 3].flatMap((seed) => makeDrafts(seed, 80)))
      expect(await book.find(draft.id)).not.toBeNull();
    // They took turns: the chain is not three blocks one behind the other.
    const owners = (await Array.fromAsync(book.scan({ order: 'site' }))).flat().map((row) => row.id);
    const seeds = new Map([1, 2, 3].flatMap((seed) => makeDrafts(seed, 80).map(({ id }) => [id, seed])));
    const turns = owners.filter(
      (id, at) => at > 0 && seeds.get(id) !== seeds.get(owners[at - 1] ?? ''),
    ).length;
    expect(turns).toBeGreaterThan(10);
  }
  rmSync(folder, { recursive: true });
});
