// Table of drafts, lines and chains that a book does not take, or finds damaged.
import {
  type AnyDraft,
  acceptLines,
  type BookFinding,
  type BookFindingCode,
  type BookInfo,
  checkBook,
  type KeptEntry,
  keepDrafts,
  MemoryStore,
  plainHash,
  readDraft,
  readHeader,
} from '../../../src/book/index.ts';
import { makeDrafts, sealedAs } from '../../contract/made-up-entries.ts';
import { few } from './changed-lines.ts';
import { failure, type Samples, sample } from './sample.ts';

const INFO: BookInfo = { bookId: 'b', site: 'corrie', purpose: 'practice', createdAtMs: 0 };
const BY = { hash: plainHash, keptAtMs: 0, firstLine: 2 };
const drafts = makeDrafts(3, 12);
const note = drafts.find(({ kind }) => kind === 'note') as AnyDraft;
const rows = sealedAs('corrie', drafts);
const others = sealedAs('corrie', makeDrafts(9, 9));
const lineOf = (row: KeptEntry) => `{"entry":${row.text},"seal":"${row.seal}"}`;

async function bookOf(kept: readonly KeptEntry[]): Promise<MemoryStore> {
  const port = new MemoryStore(INFO);
  await port.append(kept, []);
  return port;
}

/** A draft that differs from a sound note in some fields. */
function drafted(change: object) {
  const read = readDraft({ ...note, ...change }, { line: 3 });
  const given = Object.entries(change).map(
    ([field, value]) => `a note with ${field}: ${JSON.stringify(value)}`,
  );
  return failure(given, read.ok ? undefined : read.findings[0]);
}

/** Lines of an export, read into a book that has some entries already. */
async function accepted(kept: readonly KeptEntry[], line: string, said: string) {
  const outcome = await acceptLines(await bookOf(kept), [line], BY);
  return failure([said, ...few([line])], outcome.ok ? undefined : outcome.findings[0]);
}

/** A book of nine entries in which one was changed behind its back. */
async function checked(code: BookFindingCode, change: Partial<KeptEntry>, said: string, receipt = rows) {
  const kept = rows.map((row) => (row.number === 4 ? { ...row, ...change } : row)).slice(0, 9);
  const { findings } = await checkBook(await bookOf(kept), {
    hash: plainHash,
    receipt: receipt.slice(8, 9),
  });
  return failure([said], found(findings, code));
}

function found(findings: readonly BookFinding[], code: BookFindingCode): BookFinding | undefined {
  return findings.find((each) => each.code === code);
}

export const bookSamples: Samples<BookFindingCode> = {
  'kind-unknown': sample(
    'An entry of a kind that is none.',
    () => drafted({ kind: 'nota' }),
    () => drafted({ kind: 'weather' }),
  ),
  'field-unknown': sample('An entry has a field that its kind does not have.', () => drafted({ litres: 3 })),
  'field-wrong': sample('A field of an entry is missing or not as it has to be.', () => drafted({ by: 7 })),
  'shape-newer': sample('An entry was written by a newer program.', () => drafted({ version: 9 })),
  'id-reused': sample('An id that the book has already, with other content under it.', async () => {
    const kept = await keepDrafts(await bookOf(rows), [{ ...note, by: 'medic' }], BY);
    return failure(
      [`the note with the id ${note.id} again, by the medic`],
      kept.ok ? undefined : kept.findings[0],
    );
  }),
  'number-reused': sample('Two books of one site went apart: the same number, two entries.', () =>
    accepted(rows, lineOf(others[0] as KeptEntry), 'a book with 12 entries of corrie, and the line'),
  ),
  'seal-broken': sample('A line of an export was changed on its way.', () =>
    accepted([], lineOf({ ...(rows[0] as KeptEntry), seal: 'f'.repeat(64) }), 'an empty book, and the line'),
  ),
  'chain-gap': sample('Lines of an export are missing before this one.', () =>
    accepted([], lineOf(rows[1] as KeptEntry), 'an empty book, and entry 2 of corrie as its first line'),
  ),
  'line-no-json': sample('A file that begins like no export of a book.', () => {
    const header = readHeader('Dear diary');
    return failure(['Dear diary'], header.ok ? undefined : header.finding);
  }),
  'chain-broken': sample('The check of a book: an entry was changed after it was kept.', () =>
    checked('chain-broken', { seal: 'f'.repeat(64) }, 'a book in which the seal of entry 4 was changed'),
  ),
  'columns-differ': sample('The check of a book: a row does not say what its sealed text says.', () =>
    checked('columns-differ', { kind: 'release' }, 'a book in which the row of entry 4 says another kind'),
  ),
  'text-not-canonical': sample('The check of a book: the text of an entry cannot be read.', () =>
    checked(
      'text-not-canonical',
      { text: '{' },
      'a book in which the text of entry 4 was cut after its first sign',
    ),
  ),
  'receipt-ahead': sample('An older copy of a book stands where a newer one was.', async () => {
    const port = await bookOf(rows.slice(0, 9));
    const { findings } = await checkBook(port, { hash: plainHash, receipt: rows.slice(11) });
    return failure(['a book of 9 entries, and a receipt for 12'], found(findings, 'receipt-ahead'));
  }),
  'receipt-differs': sample('Another story with the same numbers stands where the book was.', () =>
    checked('receipt-differs', {}, 'a book of 9 entries, and a receipt for the 9 of another book', others),
  ),
};
