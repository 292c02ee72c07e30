// What answers carry and what they never do: header lines, statuses, other people's words, who drank, and nothing of the machine.
import { chmodSync, existsSync, mkdirSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { type DiskBook, DiskProblem, findServer, noteServer } from '../../src/doors/disk/index.ts';
import { routes } from '../../src/doors/server/index.ts';
import { recordCounts } from '../verification/record.ts';
import { type Answered, changedBook, codesOf, TestServer } from './harness.ts';
import { HOSTILE } from './hostile.ts';

const ROUTES = await routes();

let server: TestServer;
beforeAll(async () => {
  server = await TestServer.start();
});
afterAll(() => server.end());

const log = (request: unknown, more: object = {}) => server.ask('/api/log', { body: { request, ...more } });

describe('header lines', () => {
  const ASKED: readonly (readonly [string, () => Promise<Answered>])[] = [
    ['the page', () => server.ask('/', { stranger: true })],
    ['a sheet', () => server.ask('/api/today')],
    ['what is not there', () => server.ask('/api/nothing')],
    ['a file that is not there', () => server.ask('/nothing.js')],
    ['a stranger', () => server.ask('/api/today', { stranger: true })],
    ['another name', () => server.ask('/api/today', { headers: { Host: 'rebind.test' } })],
    [
      'a bad body',
      () => server.ask('/api/log', { raw: '{', headers: { 'Content-Type': 'application/json' } }),
    ],
    ['a wrong method', () => server.ask('/api/today', { method: 'DELETE' })],
    ['word of changes', () => server.ask('/api/changes')],
    ['the description', () => server.ask('/api/openapi.json')],
  ];

  test.each(ASKED)('of %s', async (_name, ask) => {
    const { headers } = await ask();
    const csp = String(headers['content-security-policy']);
    expect(csp).toContain("default-src 'none'");
    expect(csp).toContain("frame-ancestors 'none'");
    expect(csp).not.toContain('unsafe');
    expect(headers).toMatchObject({
      'x-content-type-options': 'nosniff',
      'referrer-policy': 'no-referrer',
      'cross-origin-opener-policy': 'same-origin',
      'cross-origin-resource-policy': 'same-origin',
    });
    expect(Object.keys(headers).filter((name) => name.startsWith('access-control-'))).toEqual([]);
    expect(headers['x-powered-by'] ?? headers['server']).toBeUndefined();
  });

  test('data are stored nowhere; the page is asked for anew each time', async () => {
    expect((await server.ask('/api/today')).headers['cache-control']).toBe('no-store');
    const page = await server.ask('/', { stranger: true });
    expect(page.headers['cache-control']).toBe('no-cache');
    const again = await server.ask('/', {
      stranger: true,
      headers: { 'If-None-Match': String(page.headers['etag']) },
    });
    expect([again.status, again.text]).toEqual([304, '']);
  });
});

describe('methods', () => {
  const METHODS = ['PUT', 'PATCH', 'DELETE', 'OPTIONS', 'TRACE', 'CONNECT'] as const;

  test.each(METHODS.filter((method) => method !== 'CONNECT'))('%s is taken nowhere', async (method) => {
    const before = await server.digest();
    const paths = [
      ...new Set(ROUTES.map(({ path }) => path.replaceAll(/\{\w+\}/g, 'R1'))),
      '/api/session',
      '/',
    ];
    for (const path of paths) {
      const ran = await server.ask(path, { method, headers: { 'Content-Type': 'application/json' } });
      expect({ path, status: ran.status }).toEqual({ path, status: 405 });
      expect(ran.headers['allow']).toMatch(/^(GET|POST)/);
    }
    expect(await server.digest()).toBe(before);
  });

  test('no GET changes anything', async () => {
    const before = await server.digest();
    const gets = ROUTES.filter(({ method }) => method === 'get');
    for (const { path, example } of gets) {
      await server.ask(path.replaceAll(/\{(\w+)\}/g, (_, name: string) => example.params?.[name] ?? ''));
    }
    expect(gets.length).toBeGreaterThan(12);
    expect(await server.digest()).toBe(before);
  });
});

describe('statuses', () => {
  const drink = { what: 'drink', amount: '8' };
  const ASKED: readonly (readonly [string, number, string, () => Promise<Answered>])[] = [
    ['a slip in the query', 400, 'request-field-unknown', () => server.ask('/api/today?att=D13')],
    ['a time that is none', 400, 'time-unreadable', () => server.ask('/api/today?at=yesterday-ish')],
    ['a store that is not there', 404, 'not-in-book', () => server.ask('/api/stores/c99')],
    [
      'what a rule refuses',
      409,
      'second-needed',
      () => log({ what: 'relabel', store: 'c02', grade: 'technical' }),
    ],
    [
      'an amount without a unit',
      422,
      'unit-missing',
      () => log({ what: 'weigh', store: 'c02', amount: '20' }),
    ],
    ['an office that is none', 422, 'office-unknown', () => log(drink, { by: 'nobody' })],
    ['a field that the server sets itself', 400, 'request-field-unknown', () => log({ ...drink, site: 'x' })],
    [
      'a body that was made elsewhere',
      400,
      'request-field-wrong',
      () => log({ what: 'kind', kind: 'note', body: {} }),
    ],
  ];

  test.each(ASKED)('%s: %i %s', async (_name, status, code, ask) => {
    const before = await server.digest();
    const ran = await ask();
    expect({ status: ran.status, code: codesOf(ran)[0] }).toEqual({ status, code });
    expect(await server.digest()).toBe(before);
  });

  test.each(['site', 'number', 'seal', 'id', 'enteredAtMs', 'keptAtMs', 'purpose', 'confirmation'])(
    'nobody sets %s from outside',
    async (field) => {
      for (const body of [
        { request: drink, [field]: 1 },
        { request: { ...drink, [field]: 1 } },
        { request: drink, with: { [field]: 1 } },
      ]) {
        expect((await server.ask('/api/log', { body })).status).toBe(400);
      }
    },
  );

  test('what was kept is 201, what was only tried is 200 and not kept', async () => {
    const before = await server.digest();
    expect((await log(drink, { with: { dryRun: true } })).status).toBe(200);
    expect(await server.digest()).toBe(before);
    expect((await log(drink)).status).toBe(201);
    expect(await server.digest()).not.toBe(before);
  });
});

describe('prototypes', () => {
  const keys = ['__proto__', 'constructor', 'prototype'];
  const bodies = keys.flatMap((key) => [
    `{"${key}":{"x":1},"request":{"what":"drink","amount":"8"}}`,
    `{"request":{"what":"drink","amount":"8","${key}":{"x":1}}}`,
    `{"request":{"what":"told","kind":"note","fields":{"text":"a","${key}":{"x":1}}}}`,
    `{"request":{"what":"day","readings":{"${key}":"1"}}}`,
    `{"request":{"what":"drink","amount":"8"},"with":{"${key}":{"dryRun":true}}}`,
  ]);

  test.each(bodies)('%s', async (raw) => {
    const before = await server.digest();
    const ran = await server.ask('/api/log', { raw, headers: { 'Content-Type': 'application/json' } });
    expect([400, 404, 422]).toContain(ran.status);
    expect(await server.digest()).toBe(before);
    expect(({} as Record<string, unknown>)['x']).toBeUndefined();
  });
});

describe('other people’s words', () => {
  test(`${HOSTILE.length} hostile texts stay text`, async () => {
    expect(HOSTILE.length).toBeGreaterThanOrEqual(60);
    for (const text of HOSTILE) {
      const kept = await log({ what: 'told', kind: 'note', fields: { text } });
      expect({ text, status: kept.status, type: kept.headers['content-type'] }).toEqual({
        text,
        status: 201,
        type: 'application/json',
      });
      expect((kept.data as { line: { text: string } }).line.text).toBe(`note: ${text}`);
      for (const path of [
        `/api/stores/${encodeURIComponent(text)}`,
        `/api/kinds/${encodeURIComponent(text)}`,
        `/${encodeURIComponent(text)}`,
      ]) {
        const ran = await server.ask(path);
        expect({ text, path, plain: [200, 400, 404].includes(ran.status) }).toEqual({
          text,
          path,
          plain: true,
        });
        expect(ran.headers['content-type']).toMatch(/^(application\/json|text\/html; charset=utf-8)$/);
        if (ran.status !== 200) expect(ran.schema).toBe('error');
      }
    }
    const { data } = await server.ask('/api/book?most=200');
    const lines = (data as { lines: { text: string }[] }).lines.map((line) => line.text);
    expect(HOSTILE.filter((text) => !lines.includes(`note: ${text}`))).toEqual([]);
    recordCounts('server-hostile-texts', import.meta.filename, {
      counts: { texts: HOSTILE.length, 'texts that came back otherwise': 0 },
    });
  });
});

describe('other people’s words in header lines', () => {
  const plain = HOSTILE.filter((text) => /^[\x20-\x7e]+$/.test(text));

  test(`${plain.length} of them are refused where they stand, and stand in no header line of the answer`, async () => {
    expect(plain.length).toBeGreaterThan(55);
    for (const text of plain) {
      for (const name of [
        'Origin',
        'Sec-Fetch-Site',
        'Authorization',
        'Content-Type',
        'Last-Event-ID',
        'X-Forwarded-Host',
      ]) {
        const ran = await server.ask('/api/today', { stranger: true, headers: { [name]: text } });
        expect({ text, name, refused: [401, 403].includes(ran.status) }).toEqual({
          text,
          name,
          refused: true,
        });
        expect(
          Object.values(ran.headers)
            .flat()
            .filter((value) => value?.includes(text)),
        ).toEqual([]);
        expect(ran.headers['content-type']).toBe('application/json');
      }
    }
  });
});

describe('who drank', () => {
  test('stands in no answer that a page can get', async () => {
    const cookie = await server.letIn();
    const kept = await log({ what: 'drink', amount: '8', person: 'medic' }, { by: 'second' });
    expect(kept.status).toBe(201);
    const pages = ROUTES.filter(
      ({ method, path }) => method === 'get' && !path.startsWith('/api/book-port/'),
    );
    const texts: string[] = [kept.text];
    for (const { path, example } of pages) {
      const whole = path.replaceAll(/\{(\w+)\}/g, (_, name: string) => example.params?.[name] ?? '');
      // A paper is always of something.
      const of = example.query?.['of'] === undefined ? '' : `?of=${example.query['of']}`;
      const ran = await server.ask(whole + of, { stranger: true, headers: { Cookie: cookie } });
      expect({ path, status: ran.status }).toEqual({ path, status: 200 });
      // Names of offices are no secret: only that one of them drank is.
      if (path !== '/api/offices') texts.push(ran.text);
    }
    expect(texts.length).toBeGreaterThan(10);
    expect(texts.filter((text) => /"person"|medic[^"]*drank|drink[^"]*medic/.test(text))).toEqual([]);
    const rows = await server.ask('/api/book-port/scan', {
      stranger: true,
      body: { order: 'site' },
      headers: { Cookie: cookie },
    });
    expect(rows.status).toBe(401);
    const own = await server.ask('/api/book-port/scan', { body: { order: 'site', batch: 1000 } });
    expect(own.text).toContain('\\"person\\":\\"medic\\"');
  });
});

describe('nothing of the machine', () => {
  test('a fault of the program tells no path, no query and no stack, and its owner hears of it', async () => {
    const secret = 'SELECT text FROM entry; /srv/keeper/private.book';
    const fault = { on: false, says: secret };
    const broken = await TestServer.start({ spoil: (book) => failing(book, fault) });
    fault.on = true;
    try {
      const paths = ['/api/book', '/api/stores/R1', '/api/since?by=keeper', '/api/day-form'];
      for (const path of paths) {
        const ran = await broken.ask(path);
        expect({ path, status: ran.status, codes: codesOf(ran) }).toEqual({
          path,
          status: 500,
          codes: ['server-failed'],
        });
        expect(ran.text).not.toMatch(/SELECT|srv|private|at .*\.ts:|node:/);
      }
      const told = broken.events.filter(({ what }) => what === 'failed').map(({ error }) => String(error));
      expect(told).toEqual(paths.map(() => `Error: ${secret}`));
      expect((await broken.ask('/api/health')).status).toBe(200);
    } finally {
      await broken.end();
    }
  });

  test('a fault of the disk names the file and not where it lies', async () => {
    const full = await TestServer.start({
      spoil: (book) =>
        changedBook(book, 'append', () => {
          throw new DiskProblem('disk-full', '/srv/keeper/private/p.book', {
            says: '/srv/keeper/private/p.book-journal',
          });
        }),
    });
    try {
      const ran = await full.ask('/api/log', { body: { request: { what: 'drink', amount: '8' } } });
      expect({ status: ran.status, codes: codesOf(ran) }).toEqual({ status: 500, codes: ['disk-full'] });
      expect(ran.text).toContain('p.book');
      expect(ran.text).not.toContain('/srv');
    } finally {
      await full.end();
    }
  });
});

/** It cannot be read any more as soon as the fault is on. */
function failing(book: DiskBook, fault: { on: boolean; readonly says: string }): DiskBook {
  const unless = (name: 'scan' | 'findNumber') => (book: DiskBook) => {
    const own = book[name].bind(book) as (...args: never[]) => unknown;
    return changedBook(book, name, (...args: never[]) => {
      if (fault.on) throw new Error(fault.says);
      return own(...args);
    });
  };
  return unless('findNumber')(unless('scan')(book));
}

describe('the files of the page', () => {
  test('only those of its folder, by their own names', async () => {
    const folder = join(server.folder, 'pages');
    mkdirSync(join(folder, 'assets'), { recursive: true });
    writeFileSync(join(folder, 'index.html'), '<!doctype html><title>page</title>');
    writeFileSync(join(folder, 'assets', 'a-1.js'), 'export {};');
    writeFileSync(join(folder, 'secret.sqlite'), 'no');
    writeFileSync(join(server.folder, 'outside.js'), 'outside');
    const own = await TestServer.start({ pageFolder: folder });
    try {
      expect((await own.ask('/', { stranger: true })).text).toContain('<title>page</title>');
      expect((await own.ask('/assets/a-1.js', { stranger: true })).headers['content-type']).toBe(
        'text/javascript; charset=utf-8',
      );
      expect(
        (await own.ask('/stores/R1', { stranger: true, headers: { Accept: 'text/html' } })).text,
      ).toContain('<title>page</title>');
      const tried = [
        '/secret.sqlite',
        '/../outside.js',
        '/assets/../../outside.js',
        '/%2e%2e/outside.js',
        '/..%2foutside.js',
        '/assets/..%5c..%5coutside.js',
        '//outside.js',
        '/assets//a-1.js',
        '/assets/a-1.js/',
        '/assets',
        '/a-1.js%00.html',
        '/.%2e/outside.js',
        '/C:/outside.js',
        '/assets/%61-1.js.map',
      ];
      for (const path of tried) {
        const ran = await own.ask(path, { stranger: true });
        expect({
          path,
          status: ran.status,
          out: ran.text.includes('outside') && ran.schema !== 'error',
        }).toEqual({ path, status: 404, out: false });
      }
    } finally {
      await own.end();
    }
  });
});

describe('the note beside the book', () => {
  test('only its owner can read it, and it goes with the server', async () => {
    const own = await TestServer.start();
    const path = `${own.path}.server`;
    expect(statSync(path).mode & 0o777).toBe(0o600);
    expect(findServer(own.path)?.address).toBe(own.serving.address);
    await own.serving.close();
    expect(existsSync(path)).toBe(false);
    rmSync(own.folder, { recursive: true, force: true });
  });

  test('one that others can read, that names a dead process, or another place, counts for nothing', () => {
    const path = `${server.path}.server`;
    const text = readFileSync(path, 'utf8');
    const note = JSON.parse(text) as Parameters<typeof noteServer>[1];
    const tried: readonly (() => void)[] = [
      () => chmodSync(path, 0o644),
      () => noteServer(server.path, { ...note, pid: 999_999_999 }),
      () => noteServer(server.path, { ...note, pid: 1 }),
      () => noteServer(server.path, { ...note, address: 'http://rebind.test:7480' }),
      () => writeFileSync(path, '{', { mode: 0o600 }),
    ];
    for (const spoil of tried) {
      spoil();
      expect(findServer(server.path)).toBeNull();
      rmSync(path, { force: true });
      noteServer(server.path, note);
    }
    expect(findServer(server.path)).toEqual(note);
  });
});

describe('what the owner hears of', () => {
  test('who was let in and who was refused, and no slip of a request', async () => {
    const own = await TestServer.start();
    try {
      await own.letIn();
      await own.ask('/api/today', { stranger: true });
      await own.ask('/api/today', { headers: { Host: 'rebind.test' } });
      await own.ask('/api/nothing');
      await own.ask('/api/stores/c99');
      await own.ask('/api/today%0D%0Aforged', { stranger: true });
      expect(own.events.map(({ what, status, code }) => `${what} ${status} ${code}`)).toEqual([
        'let in 204 ',
        'refused 401 token-needed',
        'refused 421 host-refused',
        'refused 401 token-needed',
      ]);
      expect(own.events.every(({ path }) => !/[\r\n]/.test(path))).toBe(true);
    } finally {
      await own.end();
    }
  });
});

describe('being let in', () => {
  test('a launch token lets one page in, once', async () => {
    const token = new URL(server.serving.launchAddress()).searchParams.get('token');
    const trade = () => server.ask('/api/session', { body: { token }, stranger: true });
    const first = await trade();
    expect([first.status, first.text]).toEqual([204, '']);
    expect(String(first.headers['set-cookie'])).toMatch(
      /^waterwright-\d+=[\w-]{43}; HttpOnly; SameSite=Strict; Path=\/$/,
    );
    const second = await trade();
    expect([second.status, codesOf(second)]).toEqual([401, ['launch-token-spent']]);
  });

  test('what it was let in by stands in no answer and in no event', async () => {
    const address = server.serving.launchAddress();
    const token = new URL(address).searchParams.get('token') ?? '';
    const page = await server.ask(address.slice(address.indexOf('/?')), { stranger: true });
    expect(page.text).not.toContain(token);
    await server.ask(`/api/today?token=${token}`, { stranger: true });
    expect(JSON.stringify(server.events)).not.toContain(token);
    expect(JSON.stringify(server.events)).not.toContain(server.key);
  });

  test('the page that says that it is done is not let in any more', async () => {
    const cookie = await server.letIn();
    const ask = () => server.ask('/api/today', { stranger: true, headers: { Cookie: cookie } });
    expect((await ask()).status).toBe(200);
    const end = await server.ask('/api/session/end', {
      body: {},
      stranger: true,
      headers: { Cookie: cookie },
    });
    expect([end.status, end.headers['clear-site-data']]).toEqual([204, '"cache", "storage"']);
    expect((await ask()).status).toBe(401);
  });
});
