// A process is killed between the hash of a code and its entry, and between the count of a try and its answer.
import { spawnSync } from 'node:child_process';
import { join } from 'node:path';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { checkBookFile, openBook } from '../../src/doors/disk/index.ts';
import { Console } from '../golden/cli/console.ts';

const CHILD = join(import.meta.dirname, 'killed-child.ts');
const TERMS = { nowMs: Date.UTC(2147, 4, 1), tries: 5, waitMs: 900_000 };
let console: Console;
let path: string;
beforeEach(async () => {
  console = await new Console().withPractice();
  path = join(console.folder, 'waterwright.book');
  const set = await console.run('book code set second', { replies: ['482159', '482159'] });
  expect(set.code).toBe(0);
});
afterEach(() => console.end());

function kill(when: string): void {
  const { signal, stderr } = spawnSync(process.execPath, [CHILD, path, when], { encoding: 'utf8' });
  expect({ signal, stderr: stderr.includes('Error') }).toEqual({ signal: 'SIGKILL', stderr: false });
}

async function reopened<T>(work: (book: Awaited<ReturnType<typeof openBook>>) => Promise<T>): Promise<T> {
  const book = await openBook(path, { owner: 'test' });
  try {
    expect((await checkBookFile(book)).findings).toEqual([]);
    return await work(book);
  } finally {
    book.close();
  }
}

test('between the hash and the entry: there is neither', async () => {
  const before = await reopened((book) => book.count());
  kill('hashed');
  await reopened(async (book) => {
    expect(await book.codes.has('medic')).toBe(false);
    expect(await book.count()).toBe(before);
  });
});

test('while a code is looked at: every try was counted, and the fifth makes it wait', async () => {
  for (let killed = 0; killed < 5; killed++) kill('trying');
  await reopened(async (book) => {
    const check = await book.codes.check('second', '482159', TERMS);
    expect(check).toEqual({ is: 'waits', leftMs: 900_000 });
  });
});
