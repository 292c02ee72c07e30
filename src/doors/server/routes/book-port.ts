// Table of the addresses by which the command line goes through a running server: the port of the book, and what only its owner can do.
import * as z from 'zod';
import {
  type AnyEntry,
  acceptLines,
  type BookFinding,
  entryOf,
  FIRST_SEAL,
  type Head,
  HeadMoved,
  headOf,
  IdTaken,
  type KeptEntry,
} from '../../../book/index.ts';
import type { Answer } from '../../../desk/index.ts';
import type { Finding } from '../../../ground/units/index.ts';
import { checkBookFile, copyBook, type DiskBook, DiskProblem, nodeHash } from '../../disk/index.ts';
import type { ServedBook } from '../served-book.ts';
import {
  checkShape,
  copyShape,
  headShape,
  infoShape,
  portAnswer,
  rowShape,
  scanShape,
} from '../shapes/port.ts';
import { type Route, route } from './route.ts';

type Because = 'head moved' | 'id taken' | 'disk' | 'rows';
export type PortAnswer<T> =
  | { readonly ok: true; readonly value: T }
  | { readonly ok: false; readonly because: Because; readonly findings: readonly Finding[] };

/** Rows of a scan that are given at once. */
const PAGE = 1000;

/** What the store throws is what it has to say: it is told, and the one who asked throws it again. */
async function told<T>(work: () => Promise<T>): Promise<Answer<PortAnswer<T>>> {
  try {
    return { ok: true, value: { ok: true, value: await work() } };
  } catch (error) {
    if (error instanceof RowsRefused) return not('rows', error.findings);
    if (error instanceof DiskProblem) return not('disk', [error.finding]);
    if (error instanceof HeadMoved) return not('head moved', []);
    if (error instanceof IdTaken) return not('id taken', []);
    throw error;
  }
}

function not(because: Because, findings: readonly Finding[]): Answer<PortAnswer<never>> {
  return { ok: true, value: { ok: false, because, findings } };
}

/** Rows that are no continuation of the book: a fault of the program that sent them. */
class RowsRefused extends Error {
  override readonly name = 'RowsRefused';
  readonly findings: readonly BookFinding[];

  constructor(findings: readonly BookFinding[]) {
    super('the rows are no continuation of the book');
    this.findings = findings;
  }
}

export function looking<T>(
  served: ServedBook,
  work: (book: DiskBook) => Promise<T>,
): Promise<Answer<PortAnswer<T>>> {
  return served.look(() => told(() => work(served.book)));
}

const PORT: readonly Route[] = [
  route({
    method: 'get',
    path: '/api/book-port/about',
    does: 'What the book says about itself, how many entries it has, and the head of each chain.',
    schema: 'port-about',
    answer: portAnswer(z.strictObject({ info: infoShape, count: z.int(), heads: z.array(headShape) })),
    run: (served) =>
      looking(served, async (book) => ({
        info: await book.info(),
        count: await book.count(),
        heads: await book.heads(),
      })),
  }),
  route({
    method: 'post',
    path: '/api/book-port/find',
    does: 'One entry, by its id or by its site and number.',
    schema: 'port-row',
    body: z.union([
      z.strictObject({ id: z.string().max(200) }),
      z.strictObject({ site: z.string().max(200), number: z.int() }),
    ]),
    answer: portAnswer(rowShape.nullable()),
    example: { body: { site: 'corrie', number: 1 } },
    run: (served, { body }) =>
      looking(served, (book) =>
        'id' in body ? book.find(body.id) : book.findNumber(body.site, body.number),
      ),
  }),
  route({
    method: 'post',
    path: '/api/book-port/scan',
    does: 'The next rows of a scan.',
    schema: 'port-rows',
    body: scanShape,
    answer: portAnswer(z.array(rowShape)),
    example: { body: { order: 'site', batch: 2 } },
    run: (served, { body }) =>
      looking(served, async (book) => {
        for await (const rows of book.scan({ batch: PAGE, ...body })) return rows;
        return [];
      }),
  }),
  route({
    method: 'post',
    path: '/api/book-port/append',
    does: 'Keeps rows that go on where the chains end: all of them or none.',
    schema: 'port-kept',
    takesFile: true,
    keeps: true,
    body: z.strictObject({ rows: z.array(rowShape).min(1), heads: z.array(headShape) }),
    answer: portAnswer(z.int().describe('rows that were kept')),
    example: {
      body: {
        rows: [
          {
            id: 'a',
            kind: 'note',
            site: 'corrie',
            number: 1,
            happenedAtMs: 0,
            enteredAtMs: 0,
            keptAtMs: 0,
            text: '{}',
            seal: '',
          },
        ],
        heads: [{ site: 'corrie', number: 0, seal: '' }],
      },
    },
    run: (served, { body }) => served.change((desk) => told(() => append(served, desk, body))),
  }),
];

/** The rows are read, sealed and numbered anew here, and have to come out as they came: a book is worth more than trust. */
async function append(
  { book }: ServedBook,
  desk: ServedBook['desk'],
  { rows, heads }: { readonly rows: readonly KeptEntry[]; readonly heads: readonly Head[] },
): Promise<number> {
  const now = await book.heads();
  for (const expected of heads) {
    const head = headOf(now, expected.site, FIRST_SEAL);
    if (head.number !== expected.number || head.seal !== expected.seal) throw new HeadMoved(expected.site);
  }
  for (const { id } of rows) if ((await book.find(id)) !== null) throw new IdTaken(id);
  const lines = rows.map(({ text, seal }) => `{"entry":${text},"seal":${JSON.stringify(seal)}}`);
  const keptAtMs = rows[0]?.keptAtMs ?? 0;
  const accepted = await acceptLines(book, lines, { hash: nodeHash, keptAtMs, firstLine: 1 });
  if (!accepted.ok) throw new RowsRefused(accepted.findings);
  await desk.took(rows.map(entryOf) as AnyEntry[]);
  return accepted.accepted;
}

const OWNERS: readonly Route[] = [
  route({
    method: 'post',
    path: '/api/book-port/check',
    does: 'Whether the file is whole: pages, chains, receipt.',
    schema: 'port-check',
    body: z.strictObject({}),
    answer: portAnswer(checkShape),
    example: { body: {} },
    run: (served) => looking(served, (book) => checkBookFile(book)),
  }),
  route({
    method: 'post',
    path: '/api/book-port/copy',
    does: 'A copy of the book at a path where nothing is yet, read back and checked.',
    schema: 'port-copy',
    body: z.strictObject({ target: z.string().min(1).max(4000) }),
    answer: portAnswer(copyShape),
    example: { body: { target: '/nowhere/copy.book' } },
    run: (served, { body }) => looking(served, (book) => copyBook(book, body.target)),
  }),
  route({
    method: 'post',
    path: '/api/book-port/launch',
    does: 'An address that lets one page in, once.',
    schema: 'port-launch',
    body: z.strictObject({}),
    answer: z.strictObject({ address: z.string() }),
    example: { body: {} },
    run: (served) => Promise.resolve({ ok: true, value: { address: served.launchAddress() } }),
  }),
];

export const BOOK_PORT: readonly Route[] = [...PORT, ...OWNERS];
