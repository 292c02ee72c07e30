// What comes over the wire: requests that two readers would read differently, too much of everything, and senders who never finish.
import { connect } from 'node:net';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { codesOf, TestServer } from './harness.ts';

let server: TestServer;
beforeAll(async () => {
  server = await TestServer.start({ patience: { headersMs: 400, requestMs: 800 } });
});
afterAll(() => server.end());

/** Sends bytes as they are and gives everything that comes back until the other side closes, or this one has waited enough. */
function raw(port: number, text: string, waitMs = 1500): Promise<{ text: string; closed: boolean }> {
  return new Promise((done) => {
    let got = '';
    const socket = connect(port, '127.0.0.1', () => socket.write(text, 'latin1'));
    const timer = setTimeout(() => {
      socket.destroy();
      done({ text: got, closed: false });
    }, waitMs);
    socket.on('data', (piece) => {
      got += piece.toString('latin1');
    });
    socket.on('error', () => undefined);
    socket.on('close', () => {
      clearTimeout(timer);
      done({ text: got, closed: true });
    });
  });
}

const BODY = JSON.stringify({ request: { what: 'drink', amount: '8' } });

function request(lines: readonly string[], body = '', to = server): string {
  const head = [
    'POST /api/log HTTP/1.1',
    `Host: 127.0.0.1:${to.port}`,
    `Authorization: Bearer ${to.key}`,
    'Content-Type: application/json',
    ...lines,
  ];
  return `${head.join('\r\n')}\r\n\r\n${body}`;
}

const inner = () => request([`Content-Length: ${BODY.length}`], BODY);
const chunked = `${BODY.length.toString(16)}\r\n${BODY}\r\n0\r\n\r\n`;

/** Each might be one request to a reader and two to another. */
const DOUBTFUL: readonly (readonly [name: string, text: () => string])[] = [
  ['both lengths', () => request([`Content-Length: ${BODY.length}`, 'Transfer-Encoding: chunked'], chunked)],
  [
    'both lengths, the other way round',
    () => request(['Transfer-Encoding: chunked', 'Content-Length: 4'], chunked),
  ],
  ['two lengths that differ', () => request([`Content-Length: ${BODY.length}`, 'Content-Length: 0'], BODY)],
  ['two lengths in one line', () => request([`Content-Length: ${BODY.length}, 0`], BODY)],
  ['a length with a sign', () => request([`Content-Length: +${BODY.length}`], BODY)],
  ['a negative length', () => request(['Content-Length: -1'], BODY)],
  ['a length in hexadecimal', () => request([`Content-Length: 0x${BODY.length.toString(16)}`], BODY)],
  ['a blank before the colon', () => request([`Content-Length : ${BODY.length}`], BODY)],
  ['a folded line', () => request(['X-A: b', ` Content-Length: ${BODY.length}`], BODY)],
  ['bare line feeds', () => request([`Content-Length: ${BODY.length}`], BODY).replaceAll('\r\n', '\n')],
  ['a bare carriage return in a value', () => request([`X-A: b\rContent-Length: ${BODY.length}`], BODY)],
  ['a NUL in a value', () => request(['X-A: b\0c', `Content-Length: ${BODY.length}`], BODY)],
  ['chunked spelt otherwise', () => request(['Transfer-Encoding: xchunked'], chunked)],
  ['chunked twice', () => request(['Transfer-Encoding: chunked, chunked'], chunked)],
  ['chunked not last', () => request(['Transfer-Encoding: chunked, identity'], chunked)],
  ['a tab before chunked', () => request(['Transfer-Encoding:\x0bchunked'], chunked)],
  [
    'a chunk length that is none',
    () => request(['Transfer-Encoding: chunked'], `zz\r\n${BODY}\r\n0\r\n\r\n`),
  ],
  ['a chunk longer than told', () => request(['Transfer-Encoding: chunked'], `1\r\n${BODY}\r\n0\r\n\r\n`)],
  ['two hosts', () => request([`Host: rebind.test:${server.port}`, `Content-Length: ${BODY.length}`], BODY)],
  ['no host', () => request([`Content-Length: ${BODY.length}`], BODY).replace(/Host: .*\r\n/, '')],
  [
    'a whole address of elsewhere',
    () =>
      inner()
        .replace('POST /api/log', 'POST http://rebind.test/api/log')
        .replace(/Host: .*\r\n/, 'Host: rebind.test\r\n'),
  ],
  ['a name that is no token', () => request(['X(A): b', `Content-Length: ${BODY.length}`], BODY)],
  ['HTTP/0.9', () => 'GET /api/today\r\n\r\n'],
];

describe('a request that can be read in two ways', () => {
  test.each(DOUBTFUL)('%s', async (_name, text) => {
    const before = await server.digest();
    const ran = await raw(server.port, text());
    const status = /^HTTP\/1\.1 (\d{3})/.exec(ran.text)?.[1] ?? 'closed';
    expect(['400', '421', '413', '417', '431', '505', 'closed']).toContain(status);
    expect(await server.digest()).toBe(before);
  });

  test('control: the same request written plainly is carried out', async () => {
    const before = await server.digest();
    const plain = await raw(server.port, inner());
    expect(plain.text).toMatch(/^HTTP\/1\.1 201/);
    expect(await server.digest()).not.toBe(before);
    expect((await raw(server.port, request(['Transfer-Encoding: chunked'], chunked))).text).toMatch(
      /^HTTP\/1\.1 201/,
    );
  });
});

describe('who never finishes', () => {
  test('a sender of one header letter at a time is closed, and others are served meanwhile', async () => {
    const slow = raw(
      server.port,
      `GET /api/today HTTP/1.1\r\nHost: 127.0.0.1:${server.port}\r\nX-Slow: `,
      5000,
    );
    expect((await server.ask('/api/health')).status).toBe(200);
    expect((await slow).closed).toBe(true);
  });

  test('a sender who stops in the body is closed', async () => {
    expect((await raw(server.port, request(['Content-Length: 1000'], '{'), 5000)).closed).toBe(true);
  });

  test('control: with more patience both stay open', async () => {
    const patient = await TestServer.start({ patience: { headersMs: 60_000, requestMs: 60_000 } });
    try {
      const [head, body] = await Promise.all([
        raw(patient.port, 'GET / HTTP/1.1\r\nX-Slow: ', 2500),
        raw(patient.port, request(['Content-Length: 1000'], '{', patient), 2500),
      ]);
      expect([head.closed, body.closed]).toEqual([false, false]);
    } finally {
      await patient.end();
    }
  });
});

describe('too much', () => {
  test('of header lines', async () => {
    const ran = await raw(server.port, `GET / HTTP/1.1\r\nHost: a\r\nX-Long: ${'a'.repeat(20_000)}\r\n\r\n`);
    expect(ran.text).toMatch(/^HTTP\/1\.1 431/);
  });

  test('of a body, told or not told beforehand', async () => {
    const before = await server.digest();
    const large = JSON.stringify({
      request: { what: 'drink', amount: '8' },
      with: { note: 'a'.repeat(1_100_000) },
    });
    const told = await server.ask('/api/log', {
      raw: large,
      headers: { 'Content-Type': 'application/json' },
    });
    expect([told.status, codesOf(told)]).toEqual([413, ['body-too-large']]);
    const untold = await server.ask('/api/log', {
      raw: large,
      headers: { 'Content-Type': 'application/json', 'Transfer-Encoding': 'chunked' },
    });
    expect([untold.status, codesOf(untold)]).toEqual([413, ['body-too-large']]);
    expect(await server.digest()).toBe(before);
  });

  test('of depth: a body nested beyond every form is refused and not followed', async () => {
    const deep = `{"request":{"what":"told","kind":"note","fields":{"text":${'['.repeat(20_000)}${']'.repeat(20_000)}}}}`;
    const ran = await server.ask('/api/log', { raw: deep, headers: { 'Content-Type': 'application/json' } });
    expect([400, 422]).toContain(ran.status);
  });

  test('of listeners: the one after the last is told to come again, and a place is free when one leaves', async () => {
    const lines: Response[] = [];
    const listen = () => {
      const stop = new AbortController();
      const headers = { Authorization: `Bearer ${server.key}` };
      return fetch(`${server.serving.address}/api/changes`, { headers, signal: stop.signal }).then(
        (answer) => ({ answer, stop }),
      );
    };
    const open = [];
    for (let k = 0; k < 32; k += 1) open.push(await listen());
    lines.push(...open.map(({ answer }) => answer));
    expect(lines.map(({ status }) => status)).toEqual(Array.from({ length: 32 }, () => 200));
    const more = await listen();
    expect(more.answer.status).toBe(503);
    open[0]?.stop.abort();
    await expect
      .poll(async () => {
        const again = await listen();
        again.stop.abort();
        return again.answer.status;
      })
      .toBe(200);
    for (const { stop } of open) stop.abort();
  });
});

test('no other machine is heard: the port is open on the loopback address alone', async () => {
  const { networkInterfaces } = await import('node:os');
  const others = Object.values(networkInterfaces())
    .flatMap((all) => all ?? [])
    .filter(({ internal, family }) => !internal && family === 'IPv4');
  const tried = ['127.0.0.2', ...others.map(({ address }) => address)];
  for (const address of tried) {
    const ran = await new Promise((done) => {
      const socket = connect(server.port, address, () => {
        socket.destroy();
        done('open');
      });
      socket.on('error', (error: NodeJS.ErrnoException) => done(error.code));
    });
    expect({ address, ran }).toEqual({ address, ran: 'ECONNREFUSED' });
  }
});
