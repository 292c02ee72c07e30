// A server in a process of its own, for tests that end it without warning. `early` acknowledges before the disk has the entry: the control.
import { nodeHash, openBook } from '../../src/doors/disk/index.ts';
import { serve } from '../../src/doors/server/index.ts';

const [path = '', how = ''] = process.argv.slice(2);
const book = await openBook(path, { owner: 'serve', alone: true });
if (how === 'early') {
  const append = book.append.bind(book);
  book.append = (...args) => {
    setTimeout(() => void append(...args), 500);
    return Promise.resolve();
  };
}
const serving = await serve({
  book,
  tools: { hash: nodeHash, chance: () => crypto.getRandomValues(new Uint8Array(10)) },
  clock: { now: () => Date.now(), offsetMin: () => 0 },
  version: '0.0.0',
  build: 'from sources',
  pageFolder: 'nowhere',
  port: 0,
});
process.stdout.write(`${serving.address}\n`);
