// Word of changes: of what anybody keeps, through the page's address or through the command line; after a lost line from where it was lost.
import { afterEach, beforeEach, expect, test } from 'vitest';
import { Console } from '../golden/cli/console.ts';
import { TestServer } from './harness.ts';

let server: TestServer;
beforeEach(async () => {
  server = await TestServer.start({ patience: { heartbeatMs: 50 } });
});
afterEach(() => server.end());

interface Told {
  readonly id: string;
  readonly event: string;
  readonly data: { readonly entries: number; readonly digest: string };
}

/** A listener as a browser is one. */
class Ear {
  readonly told: Told[] = [];
  beats = 0;
  ended = false;
  readonly #stop = new AbortController();

  constructor(address: string, headers: Readonly<Record<string, string>>) {
    void this.#listen(address, headers)
      .catch(() => undefined)
      .finally(() => {
        this.ended = true;
      });
  }

  async #listen(address: string, headers: Readonly<Record<string, string>>): Promise<void> {
    const answer = await fetch(`${address}/api/changes`, { headers, signal: this.#stop.signal });
    expect(answer.headers.get('content-type')).toBe('text/event-stream; charset=utf-8');
    let text = '';
    for await (const piece of answer.body ?? []) {
      text += new TextDecoder().decode(piece);
      const blocks = text.split('\n\n');
      text = blocks.pop() ?? '';
      for (const block of blocks) this.#take(block);
    }
  }

  #take(block: string): void {
    if (block.startsWith(':')) this.beats += 1;
    const field = (name: string) => new RegExp(`^${name}: (.*)$`, 'm').exec(block)?.[1] ?? '';
    if (field('data') === '') return;
    this.told.push({
      id: field('id'),
      event: field('event'),
      data: JSON.parse(field('data')) as Told['data'],
    });
  }

  stop(): void {
    this.#stop.abort();
  }
}

function listen(lastId?: string): Ear {
  const headers = { Authorization: `Bearer ${server.key}` };
  return new Ear(
    server.serving.address,
    lastId === undefined ? headers : { ...headers, 'Last-Event-ID': lastId },
  );
}

const drink = () => server.ask('/api/log', { body: { request: { what: 'drink', amount: '8' } } });

test('who listens hears where the book stands, then of each entry, and between them that the line is there', async () => {
  const ear = listen();
  await expect.poll(() => ear.told.length).toBe(1);
  expect(ear.told[0]).toMatchObject({ event: 'here', data: { entries: 203 } });
  await drink();
  await expect.poll(() => ear.told.length).toBe(2);
  expect(ear.told[1]).toMatchObject({
    event: 'changed',
    data: { entries: 204, digest: await server.digest() },
  });
  await expect.poll(() => ear.beats).toBeGreaterThan(2);
  ear.stop();
});

test('what was refused, and what was only tried, is no change', async () => {
  const ear = listen();
  await expect.poll(() => ear.told.length).toBe(1);
  await server.ask('/api/log', { body: { request: { what: 'drink', amount: 'x' } } });
  await server.ask('/api/log', { body: { request: { what: 'drink', amount: '8' }, with: { dryRun: true } } });
  await drink();
  await expect.poll(() => ear.told.length).toBe(2);
  expect(ear.told.map(({ data }) => data.entries)).toEqual([203, 204]);
  ear.stop();
});

test('an entry of the command line is heard, and every figure of the server has it', async () => {
  const console = new Console();
  const ear = listen();
  await expect.poll(() => ear.told.length).toBe(1);
  const before = (await server.ask('/api/today')).data as { total: { value: number } };
  const ran = await console.run(['log', 'fill', 'c11', '20.5L', '--from', 'outside', '--book', server.path]);
  expect({ code: ran.code, err: ran.err }).toEqual({ code: 0, err: '' });
  await expect.poll(() => ear.told.length).toBe(2);
  expect(ear.told[1]).toMatchObject({ event: 'changed', data: { entries: 204 } });
  const after = (await server.ask('/api/today')).data as {
    total: { value: number };
    head: { entries: number };
  };
  expect(after.head.entries).toBe(204);
  expect(after.total.value - before.total.value).toBeCloseTo(20.5, 1);
  const direct = await console.run(['today', '--json', '--book', server.path]);
  expect((JSON.parse(direct.out) as { data: unknown }).data).toEqual((await server.ask('/api/today')).data);
  ear.stop();
  await console.end();
});

test('a listener that lost its line is told at once what it missed, and nothing when it missed nothing', async () => {
  const first = listen();
  await expect.poll(() => first.told.length).toBe(1);
  const { id } = first.told[0] as Told;
  first.stop();
  const nothing = listen(id);
  await expect.poll(() => nothing.told.length).toBe(1);
  expect(nothing.told[0]?.event).toBe('here');
  nothing.stop();
  await drink();
  const missed = listen(id);
  await expect.poll(() => missed.told.length).toBe(1);
  expect(missed.told[0]).toMatchObject({ event: 'changed', data: { entries: 204 } });
  missed.stop();
});

test('lines end when the server does', async () => {
  const own = await TestServer.start();
  const ears = [1, 2, 3].map(() => new Ear(own.serving.address, { Authorization: `Bearer ${own.key}` }));
  await expect.poll(() => ears.every(({ told }) => told.length === 1)).toBe(true);
  await own.end();
  await expect.poll(() => ears.every(({ ended }) => ended)).toBe(true);
});
