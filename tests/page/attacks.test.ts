// The same attacks from a real browser: a rebound name, a page elsewhere, and a page on another port of this machine, which gets the cookie sent along.
import { createServer, type Server } from 'node:http';
import type { AddressInfo } from 'node:net';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { GUARDS, type Guard } from '../../src/doors/server/index.ts';
import { TestServer } from '../server/harness.ts';
import { recordCounts } from '../verification/record.ts';
import { openBrowser } from './browser.ts';

const tally = {
  attacks: 0,
  'attacks that reached the book': 0,
  controls: 0,
  'controls that reached the book': 0,
};

let browser: Browser;
let elsewhere: Server;
beforeAll(async () => {
  elsewhere = createServer((_, answer) => {
    answer.setHeader('Content-Type', 'text/html');
    answer.end('<!doctype html><title>elsewhere</title>');
  });
  await new Promise<void>((done) => elsewhere.listen(0, '127.0.0.1', done));
  browser = await openBrowser(['--host-resolver-rules=MAP rebind.test 127.0.0.1, MAP evil.test 127.0.0.1']);
}, 60_000);
afterAll(async () => {
  await browser.close();
  await new Promise((done) => elsewhere.close(done));
});

interface Attack {
  readonly name: string;
  /** Guards that have to be off before it succeeds. */
  readonly stoppedBy: readonly Guard['name'][];
  /** Carries it out on a page of a browser that the server has let in; true where it reached the book. */
  readonly reaches: (page: Page, server: TestServer) => Promise<boolean>;
}

const otherPort = () => (elsewhere.address() as AddressInfo).port;
const BODY = JSON.stringify({ request: { what: 'told', kind: 'note', fields: { text: 'from elsewhere' } } });

/** Sends what needs no leave of the other side. */
async function sends(page: Page, server: TestServer, type: string): Promise<boolean> {
  const before = await entriesOf(server);
  await page.evaluate(
    ([address, body, asType]) =>
      fetch(`${address}/api/log`, {
        method: 'POST',
        mode: 'no-cors',
        credentials: 'include',
        headers: { 'Content-Type': asType ?? '' },
        body: body ?? '',
      }).then(
        () => true,
        () => false,
      ),
    [server.serving.address, BODY, type] as const,
  );
  return (await entriesOf(server)) > before;
}

async function entriesOf(server: TestServer): Promise<number> {
  const book = (await server.ask('/api/health')).data as { entries: number };
  return book.entries;
}

const ATTACKS: readonly Attack[] = [
  {
    name: 'a page whose name was pointed at this machine reads Today',
    stoppedBy: ['host', 'token'],
    reaches: async (page, server) => {
      await page.goto(`http://rebind.test:${server.port}/`);
      return page.evaluate(() =>
        fetch('/api/today').then(async (answer) => answer.ok && (await answer.text()).includes('"cover"')),
      );
    },
  },
  {
    name: 'a page elsewhere writes, as a form may',
    stoppedBy: ['cross-site', 'json-only', 'token'],
    reaches: async (page, server) => {
      await page.goto(`http://evil.test:${otherPort()}/`);
      return sends(page, server, 'text/plain');
    },
  },
  {
    name: 'a page on another port of this machine writes, and the browser sends the cookie along',
    stoppedBy: ['cross-site', 'json-only'],
    reaches: async (page, server) => {
      await page.goto(`http://127.0.0.1:${otherPort()}/`);
      return sends(page, server, 'text/plain');
    },
  },
];

/** A browser that knows nothing but what the server let in. */
async function carriedOut(attack: Attack, server: TestServer): Promise<boolean> {
  const context = await browser.newContext();
  try {
    const [name = '', value = ''] = (await server.letIn()).split('=');
    await context.addCookies([
      { name, value, domain: '127.0.0.1', path: '/', httpOnly: true, sameSite: 'Strict' },
    ]);
    return await attack.reaches(await context.newPage(), server);
  } finally {
    await context.close();
  }
}

async function withServer<T>(guards: readonly Guard[], work: (server: TestServer) => Promise<T>): Promise<T> {
  const server = await TestServer.start({ guards });
  try {
    return await work(server);
  } finally {
    await server.end();
  }
}

describe.each(ATTACKS)('$name', (attack) => {
  test('it does not reach the book', async () => {
    const reached = await withServer(GUARDS, (server) => carriedOut(attack, server));
    tally.attacks += 1;
    tally['attacks that reached the book'] += Number(reached);
    expect(reached).toBe(false);
  });

  test.each(attack.stoppedBy)('nor with %s alone on guard', async (name) => {
    const left = GUARDS.filter((guard) => guard.name === name || !attack.stoppedBy.includes(guard.name));
    expect(await withServer(left, (server) => carriedOut(attack, server))).toBe(false);
  });

  test('control: with those guards off it does', async () => {
    const left = GUARDS.filter(({ name }) => !attack.stoppedBy.includes(name));
    const reached = await withServer(left, (server) => carriedOut(attack, server));
    tally.controls += 1;
    tally['controls that reached the book'] += Number(reached);
    expect(reached).toBe(true);
  });
});

test('what was counted', () => {
  expect(tally).toEqual({
    attacks: ATTACKS.length,
    'attacks that reached the book': 0,
    controls: ATTACKS.length,
    'controls that reached the book': ATTACKS.length,
  });
  recordCounts('server-browser', import.meta.filename, { counts: tally });
});
