// A process that is killed while it works on a code: given the book and the moment, it kills itself there.
import { openBook } from '../../src/doors/disk/index.ts';

const [path = '', when = ''] = process.argv.slice(2);
const book = await openBook(path, { owner: 'killed' });
const terms = { nowMs: Date.UTC(2147, 4, 1), tries: 5, waitMs: 900_000 };
const die = (): void => void process.kill(process.pid, 'SIGKILL');

if (when === 'hashed') {
  await book.codes.set('medic', '739160', 'an entry that is never kept');
  die();
}
if (when === 'trying') {
  // The count is safe before the code is looked at, which takes far longer than this.
  setTimeout(die, 1);
  await book.codes.check('second', '111222', terms);
}
