// Who asks: another name, another origin, a stranger, a form. Each attack is refused, and each succeeds when its guard alone is off.
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { GUARDS, type Guard } from '../../src/doors/server/index.ts';
import { recordCounts } from '../verification/record.ts';
import { type Answered, type Asking, codesOf, TestServer } from './harness.ts';

let server: TestServer;
beforeAll(async () => {
  server = await TestServer.start();
});
afterAll(() => server.end());

const DRINK = { request: { what: 'drink', amount: '8' } };

interface Attack {
  readonly name: string;
  readonly guard: Guard['name'];
  readonly status: number;
  readonly code: string;
  readonly path: string;
  /** What a browser sends for that page, made for a server. */
  readonly asking: (of: { readonly port: number; readonly cookie: string }) => Asking;
}

/** A page that was let in has the cookie: a browser sends it along with what another page asks, wherever it may. */
const ATTACKS: readonly Attack[] = [
  ...['rebind.test', '192.168.1.7', '127.0.0.1.rebind.test', 'localhost.'].map(
    (name): Attack => ({
      name: `a read under the name ${name}`,
      guard: 'host',
      status: 421,
      code: 'host-refused',
      path: '/api/today',
      asking: ({ port, cookie }) => ({ headers: { Host: `${name}:${port}`, Cookie: cookie } }),
    }),
  ),
  {
    name: 'a read under the right name with another port',
    guard: 'host',
    status: 421,
    code: 'host-refused',
    path: '/api/today',
    asking: ({ port, cookie }) => ({ headers: { Host: `127.0.0.1:${port + 1}`, Cookie: cookie } }),
  },
  {
    name: 'a write of a rebound page, whose origin equals its name',
    guard: 'host',
    status: 421,
    code: 'host-refused',
    path: '/api/log',
    asking: ({ port, cookie }) => ({
      body: DRINK,
      headers: { Host: `rebind.test:${port}`, 'Sec-Fetch-Site': 'same-origin', Cookie: cookie },
    }),
  },
  ...['http://evil.test', 'null', 'http://127.0.0.1:1', 'https://127.0.0.1:PORT', 'http://localhost'].map(
    (origin): Attack => ({
      name: `a write of a page at ${origin}`,
      guard: 'cross-site',
      status: 403,
      code: 'cross-site',
      path: '/api/log',
      asking: ({ port, cookie }) => ({
        body: DRINK,
        headers: { Origin: origin.replace('PORT', `${port}`), Cookie: cookie },
      }),
    }),
  ),
  ...['cross-site', 'same-site', '', 'same-origin, cross-site'].map(
    (site): Attack => ({
      name: `a read of which the browser says Sec-Fetch-Site: ${site}`,
      guard: 'cross-site',
      status: 403,
      code: 'cross-site',
      path: '/api/today',
      asking: ({ cookie }) => ({ headers: { 'Sec-Fetch-Site': site, Cookie: cookie } }),
    }),
  ),
  {
    name: 'listening from another page',
    guard: 'cross-site',
    status: 403,
    code: 'cross-site',
    path: '/api/changes',
    asking: ({ cookie }) => ({ headers: { 'Sec-Fetch-Site': 'cross-site', Cookie: cookie } }),
  },
  {
    name: 'a read by a link that was followed from elsewhere',
    guard: 'cross-site',
    status: 403,
    code: 'cross-site',
    path: '/api/today',
    asking: ({ cookie }) => ({
      headers: {
        'Sec-Fetch-Site': 'cross-site',
        'Sec-Fetch-Mode': 'navigate',
        'Sec-Fetch-Dest': 'document',
        Cookie: cookie,
      },
    }),
  },
  {
    name: 'a read by whoever was not let in',
    guard: 'token',
    status: 401,
    code: 'token-needed',
    path: '/api/today',
    asking: () => ({ stranger: true }),
  },
  ...['Bearer wrong', 'Bearer ', 'Basic a2V5', 'Bearer a b'].map(
    (authorization): Attack => ({
      name: `a read with Authorization: ${authorization}`,
      guard: 'token',
      status: 401,
      code: 'token-needed',
      path: '/api/today',
      asking: () => ({ headers: { Authorization: authorization } }),
    }),
  ),
  {
    name: 'a read with the cookie of another server',
    guard: 'token',
    status: 401,
    code: 'token-needed',
    path: '/api/today',
    asking: ({ port }) => ({ stranger: true, headers: { Cookie: `waterwright-${port}=${'a'.repeat(43)}` } }),
  },
  {
    name: 'a page that asks for raw rows, in which stands who drank',
    guard: 'token',
    status: 401,
    code: 'token-needed',
    path: '/api/book-port/about',
    asking: ({ cookie }) => ({ stranger: true, headers: { Cookie: cookie } }),
  },
  ...[
    'text/plain',
    'application/x-www-form-urlencoded',
    'multipart/form-data',
    'application/json, text/plain',
  ].map(
    (type): Attack => ({
      name: `a form of another page that sends ${type}`,
      guard: 'json-only',
      status: 415,
      code: 'not-json',
      path: '/api/log',
      asking: ({ cookie }) => ({
        raw: JSON.stringify(DRINK),
        headers: { 'Content-Type': type, Cookie: cookie },
      }),
    }),
  ),
];

const tally = { attacks: 0, 'attacks that were refused': 0, 'controls that succeeded': 0 };

async function carriedOut(attack: Attack, on: TestServer): Promise<Answered> {
  const asking = attack.asking({ port: on.port, cookie: await on.letIn() });
  // What a browser does has no key of programs.
  const named = asking.headers?.['Authorization'] !== undefined;
  return on.ask(attack.path, named ? asking : { ...asking, stranger: true });
}

describe('each attack', () => {
  test.each(ATTACKS)('$name is refused, and changes nothing', async (attack) => {
    const before = await server.digest();
    const ran = await carriedOut(attack, server);
    expect({ status: ran.status, codes: codesOf(ran) }).toEqual({
      status: attack.status,
      codes: [attack.code],
    });
    expect(await server.digest()).toBe(before);
    tally.attacks += 1;
    tally['attacks that were refused'] += 1;
  });

  describe.each([...new Set(ATTACKS.map(({ guard }) => guard))])('with %s off', (guard) => {
    let open: TestServer;
    beforeAll(async () => {
      open = await TestServer.start({ guards: GUARDS.filter(({ name }) => name !== guard) });
    });
    afterAll(() => open.end());

    test.each(ATTACKS.filter((attack) => attack.guard === guard))(
      'control: $name succeeds',
      async (attack) => {
        const ran = await carriedOut(attack, open);
        expect([200, 201]).toContain(ran.status);
        tally['controls that succeeded'] += 1;
      },
    );
  });
});

test('every guard has attacks', () => {
  expect([tally.attacks, tally['controls that succeeded']]).toEqual([ATTACKS.length, ATTACKS.length]);
  recordCounts('server-guards', import.meta.filename, { counts: tally });
  const attacked = new Set(ATTACKS.map(({ guard }) => guard));
  expect([...attacked].sort()).toEqual(GUARDS.map(({ name }) => name).sort());
});

test('the page itself is let through: by its cookie, from its own origin, and by a link from elsewhere', async () => {
  const cookie = await server.letIn();
  const own = `http://localhost:${server.port}`;
  const asked = await server.ask('/api/log', {
    body: DRINK,
    stranger: true,
    headers: {
      Cookie: cookie,
      Host: `localhost:${server.port}`,
      Origin: own,
      'Sec-Fetch-Site': 'same-origin',
    },
  });
  expect(asked.status).toBe(201);
  const link = { 'Sec-Fetch-Site': 'cross-site', 'Sec-Fetch-Mode': 'navigate', 'Sec-Fetch-Dest': 'document' };
  expect((await server.ask('/?token=a', { stranger: true, headers: link })).status).toBe(200);
  expect(
    (await server.ask('/', { stranger: true, headers: { 'Sec-Fetch-Site': 'cross-site' } })).status,
  ).toBe(403);
});

test('a second Origin is no way around', async () => {
  const { port } = server;
  const origins = await server.ask('/api/today', {
    headers: { Origin: [`http://127.0.0.1:${port}`, 'http://evil.test'] },
  });
  expect(origins.status).toBe(403);
});
