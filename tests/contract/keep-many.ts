// A process that keeps entries one by one in a book that others write too.
import { readFileSync } from 'node:fs';
import { keepDrafts } from '../../src/book/index.ts';
import { nodeHash, openBook } from '../../src/doors/disk/index.ts';
import { makeDrafts } from './made-up-entries.ts';

const [path = '', seed = '', count = ''] = process.argv.slice(2);
using book = await openBook(path, { owner: `keep-many ${seed}`, waitMs: 10_000 });
// All writers start together, when the one that watches them says so.
process.stdout.write('ready');
readFileSync(0);
for (const draft of makeDrafts(Number(seed), Number(count))) {
  const outcome = await keepDrafts(book, [draft], { hash: nodeHash, keptAtMs: 0 });
  // A breath between two entries, in which another may have its turn.
  await new Promise((done) => setTimeout(done, 2));
  if (!outcome.ok || outcome.kept.length !== 1) throw new Error(JSON.stringify(outcome));
}
