// The SQLite file against the contract of the port, and one digest for one book in both stores.
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
