// Table of requests that the server does not carry out, each sent to a server over the practice book.
import { createServer } from 'node:net';
import { type DiskBook, type ServerNote, StoreProblem } from '../../../src/doors/disk/index.ts';
import { RemoteBook } from '../../../src/doors/server/index.ts';
import type { ServerFindingCode, WordedFinding } from '../../../src/papers/index.ts';
import { type Answered, type Asking, changedBook, TestServer } from '../../server/harness.ts';
import { type Failure, failure, type Sample, type Samples, sample } from './sample.ts';

type Lines = readonly string[];
const JSON_TYPE = { 'Content-Type': 'application/json' };

/** Ports differ from run to run; on the page stands the usual one. */
function withUsualPort(finding: WordedFinding, port: number): WordedFinding {
  return JSON.parse(JSON.stringify(finding).replaceAll(`:${port}`, ':7480')) as WordedFinding;
}

async function withServer<T>(
  work: (server: TestServer) => Promise<T>,
  options: Parameters<typeof TestServer.start>[0] = {},
): Promise<T> {
  const server = await TestServer.start(options);
  try {
    return await work(server);
  } finally {
    await server.end();
  }
}

function firstRefused(answers: readonly Answered[], given: Lines, port: number): Failure {
  const [finding] = answers.flatMap(({ schema, data }) =>
    schema === 'error' ? (data as readonly WordedFinding[]) : [],
  );
  if (finding === undefined) throw new Error(`nothing was found in: ${given.join(' | ')}`);
  return { given, finding: withUsualPort(finding, port) };
}

/** Requests to a book that is silent until one of them was refused. */
function crowd(): Promise<Failure> {
  let speak = (): void => undefined;
  const silence = new Promise<null>((done) => {
    speak = () => done(null);
  });
  const work = async (server: TestServer): Promise<Failure> => {
    const all = Array.from({ length: 100 }, () =>
      server.ask('/api/book-port/find', { body: { site: 'corrie', number: 1 } }),
    );
    const refused = all.map(async (each) =>
      (await each).status === 503 ? each : Promise.reject(await each),
    );
    const first = await Promise.any(refused);
    speak();
    await Promise.all(all);
    return firstRefused([first], ['a hundred requests at once'], server.port);
  };
  return withServer(work, { spoil: (book) => changedBook(book, 'findNumber', () => silence) });
}

/** A book of which no entry can be looked up. */
function unreadable(book: DiskBook): DiskBook {
  return changedBook(book, 'findNumber', () => {
    throw new TypeError('x is not a function');
  });
}

function asked(when: string, given: Lines, path: string, asking: Asking = {}): Sample {
  return sample(when, () =>
    withServer(async (server): Promise<Failure> => {
      const answer = await server.ask(path, asking);
      const [finding] = answer.data as readonly WordedFinding[];
      if (finding === undefined) throw new Error(`nothing was found in: ${given.join(' | ')}`);
      return { given, finding: withUsualPort(finding, server.port) };
    }),
  );
}

async function problemOf(work: () => Promise<unknown>): Promise<StoreProblem> {
  try {
    await work();
  } catch (error) {
    if (error instanceof StoreProblem) return error;
    throw error;
  }
  throw new Error('nothing was in the way');
}

const NOWHERE: ServerNote = {
  pid: process.pid,
  address: 'http://127.0.0.1:9',
  key: 'k',
  build: 'from sources',
};
const open = (note: ServerNote) => RemoteBook.open('p.book', note, { readOnly: true, build: 'from sources' });

const requests = {
  'address-unknown': asked('Nothing is at that address.', ['GET /api/todya'], '/api/todya'),
  'method-wrong': asked(
    'The address is there and takes another method.',
    ['DELETE /api/today'],
    '/api/today',
    {
      method: 'DELETE',
      headers: JSON_TYPE,
    },
  ),
  'host-refused': asked(
    'A page came under another name: that is how a page elsewhere reaches what listens on this machine.',
    ['GET /api/today', 'Host: rebind.test'],
    '/api/today',
    { headers: { Host: 'rebind.test' } },
  ),
  'cross-site': asked(
    'A page of another origin asked.',
    ['GET /api/today', 'Origin: http://evil.test'],
    '/api/today',
    { headers: { Origin: 'http://evil.test' } },
  ),
  'token-needed': asked('Whoever asked was not let in.', ['GET /api/today'], '/api/today', {
    stranger: true,
  }),
  'launch-token-spent': asked(
    'The address was opened before, or is of another server.',
    ['POST /api/session {"token": "used"}'],
    '/api/session',
    { body: { token: 'used' }, stranger: true },
  ),
  'not-json': asked('A form was sent.', ['POST /api/log', 'Content-Type: text/plain'], '/api/log', {
    raw: '{}',
    headers: { 'Content-Type': 'text/plain' },
  }),
  'body-unreadable': asked('The body is no JSON.', ['POST /api/log {"request":'], '/api/log', {
    raw: '{"request":',
    headers: JSON_TYPE,
  }),
  'body-too-large': asked(
    'The body is larger than any request needs.',
    ['POST /api/log (1.1 MB)'],
    '/api/log',
    {
      raw: `"${'a'.repeat(1_100_000)}"`,
      headers: JSON_TYPE,
    },
  ),
  'request-field-wrong': asked(
    'A field has what it does not take.',
    ['POST /api/log {"request": {"what": "drnk"}}'],
    '/api/log',
    { body: { request: { what: 'drnk' } } },
  ),
  'request-field-unknown': asked(
    'The address has no such field.',
    ['GET /api/today?att=D13'],
    '/api/today?att=D13',
  ),
  'request-fields-clash': asked(
    'Two fields that say two different things.',
    ['GET /api/today?at=D13&as-of=D13'],
    '/api/today?at=D13&as-of=D13',
  ),
} satisfies Partial<Samples<ServerFindingCode>>;

const servers = {
  'server-crowded': sample('More requests wait than the server holds.', crowd),
  'server-failed': sample('The program itself failed; what it said stands in the log of the server.', () =>
    withServer(
      async (server) => firstRefused([await server.ask('/api/since')], ['GET /api/since'], server.port),
      {
        spoil: unreadable,
      },
    ),
  ),
  'server-silent': sample('The book is held by a server that does not answer.', async () =>
    failure(['waterwright today'], (await problemOf(() => open(NOWHERE))).finding),
  ),
  'server-refused': sample('The server of the book does not know this program.', () =>
    withServer(async (server) => {
      const note = { ...NOWHERE, address: server.serving.address };
      const problem = await problemOf(() => open(note));
      const { finding } = failure(['waterwright today'], problem.finding);
      return { given: ['waterwright today'], finding: withUsualPort(finding, server.port) };
    }),
  ),
  'server-of-other-build': sample('The program was renewed while its server ran on.', async () =>
    failure(['waterwright today'], (await problemOf(() => open({ ...NOWHERE, build: 'older' }))).finding),
  ),
  'no-port-free': sample('Every port that may be tried is taken.', async () => {
    const taken = createServer();
    await new Promise((done) => taken.once('error', done).listen(65_535, '127.0.0.1', () => done(null)));
    const problem = await problemOf(() => withServer(() => Promise.resolve(), { port: 65_535 }));
    taken.close();
    return failure(['waterwright serve --port 65535'], problem.finding);
  }),
} satisfies Partial<Samples<ServerFindingCode>>;

export const serverSamples: Samples<ServerFindingCode> = { ...requests, ...servers };
