// Every finding about entries has its four sentences, filled in from the data that the book itself gives.
import { expect, test } from 'vitest';
import { makeDrafts, sealedAs } from '../../../../tests/contract/made-up-entries.ts';
import {
  type AnyDraft,
  acceptLines,
  type BookFinding,
  type BookFindingCode,
  type BookInfo,
  checkBook,
  exportLines,
  type KeptEntry,
  keepDrafts,
  MemoryStore,
  plainHash,
  readDraft,
  readHeader,
} from '../../../book/index.ts';
import { bookWords } from './book.ts';

const INFO: BookInfo = { bookId: 'b', site: 'corrie', purpose: 'practice', createdAtMs: 0 };
const BY = { hash: plainHash, keptAtMs: 0, firstLine: 2 };
const drafts = makeDrafts(3, 12);
const note = drafts.find(({ kind }) => kind === 'note') as AnyDraft;
const rows = sealedAs('corrie', drafts);
const lineOf = (row: KeptEntry) => `{"entry":${row.text},"seal":"${row.seal}"}`;

async function bookOf(kept: readonly KeptEntry[]): Promise<MemoryStore> {
  const port = new MemoryStore(INFO);
  await port.append(kept, []);
  return port;
}

function drafted(change: object): readonly BookFinding[] {
  const read = readDraft({ ...note, ...change }, { line: 3 });
  return read.ok ? [] : read.findings;
}

async function accepted(
  kept: readonly KeptEntry[],
  lines: readonly string[],
): Promise<readonly BookFinding[]> {
  const outcome = await acceptLines(await bookOf(kept), lines, BY);
  return outcome.ok ? [] : outcome.findings;
}

async function checked(change: Partial<KeptEntry>, receipt = rows): Promise<readonly BookFinding[]> {
  const kept = rows.map((row) => (row.number === 4 ? { ...row, ...change } : row)).slice(0, 9);
  return (await checkBook(await bookOf(kept), { hash: plainHash, receipt: receipt.slice(8, 9) })).findings;
}

/** A failing sample for each code. */
const samples: Readonly<
  Record<BookFindingCode, () => Promise<readonly BookFinding[]> | readonly BookFinding[]>
> = {
  'kind-unknown': () => drafted({ kind: 'nota' }),
  'field-unknown': () => drafted({ litres: 3 }),
  'field-wrong': () => drafted({ by: '' }),
  'shape-newer': () => drafted({ version: 9 }),
  'id-reused': async () => {
    const kept = await keepDrafts(await bookOf(rows), [{ ...note, by: 'another' }], BY);
    return kept.ok ? [] : kept.findings;
  },
  'number-reused': () => accepted(rows, [lineOf(sealedAs('corrie', makeDrafts(9, 1))[0] as KeptEntry)]),
  'seal-broken': () => accepted([], [lineOf({ ...(rows[0] as KeptEntry), seal: 'f'.repeat(64) })]),
  'chain-gap': () => accepted([], [lineOf(rows[1] as KeptEntry)]),
  'line-no-json': () => {
    const header = readHeader('Dear diary');
    return header.ok ? [] : [header.finding];
  },
  'chain-broken': () => checked({ seal: 'f'.repeat(64) }),
  'columns-differ': () => checked({ kind: 'release' }),
  'text-not-canonical': () => checked({ text: '{' }),
  'receipt-ahead': async () =>
    (await checkBook(await bookOf(rows.slice(0, 9)), { hash: plainHash, receipt: rows.slice(11) })).findings,
  'receipt-differs': () => checked({}, sealedAs('corrie', makeDrafts(9, 9))),
};

test.each(Object.keys(samples) as BookFindingCode[])('%s', async (code) => {
  const finding = (await samples[code]()).find((each) => each.code === code) as BookFinding;
  expect(finding).toBeDefined();
  const sentences = bookWords[code](finding.data, finding.where);
  for (const text of Object.values(sentences)) {
    expect(text.trim()).toBe(text);
    expect(text).toMatch(/\S/);
    expect(text).not.toMatch(/undefined|NaN|\[object|!|please|null/i);
  }
  expect(sentences.text).toMatch(/\.$/);
  expect(sentences.remedy).toMatch(/\.$/);
  if (finding.where.line !== undefined) expect(sentences.text).toContain(`Line ${finding.where.line}`);
});

test('a field that is wrong says what was wanted, in words', () => {
  const said = (change: object) => {
    const [finding] = drafted(change) as [BookFinding];
    return bookWords['field-wrong'](finding.data, finding.where).text;
  };
  expect(said({ by: 7 })).toBe('Line 3: The field "by" of note is 7; wanted is a text.');
  expect(said({ version: 0 })).toBe('Line 3: The field "version" of note is 0; wanted is at least 1.');
  expect(said({ by: undefined })).toContain('missing');
});

test('an export is told apart from its lines', async () => {
  const [header] = await Array.fromAsync(exportLines(await bookOf([])));
  expect(readHeader(header as string).ok).toBe(true);
});
