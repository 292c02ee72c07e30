// What a page waits for: an entry that is acknowledged, and Today on a book of ten thousand entries, beside one durable write and a bare answer.
import { mkdtempSync, rmSync } from 'node:fs';
import { Agent, createServer, request } from 'node:http';
import type { AddressInfo } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { findServer, nodeHash, openBook } from '../src/doors/disk/index.ts';
import { type Serving, serve } from '../src/doors/server/index.ts';
import { type BenchRow, quantileOf, row } from './bench-row.ts';
import { makeLongBook } from './long-practice-book.ts';

const ROUNDS = 200;
const WARM_UP = 20;

export async function bench(): Promise<readonly BenchRow[]> {
  const folder = mkdtempSync(join(tmpdir(), 'waterwright-bench-'));
  const path = join(folder, 'ten-thousand.book');
  await makeLongBook(path);
  const book = await openBook(path, { owner: 'bench', alone: true });
  const serving = await serve({
    book,
    tools: { hash: nodeHash, chance: () => crypto.getRandomValues(new Uint8Array(10)) },
    clock: { now: () => Date.now(), offsetMin: () => 0 },
    version: 'bench',
    build: 'bench',
    pageFolder: join(folder, 'no-page'),
    port: 0,
  });
  try {
    return await measured(serving, findServer(path)?.key ?? '');
  } finally {
    await serving.close();
    rmSync(folder, { recursive: true, force: true });
  }
}

async function measured({ port }: Serving, key: string): Promise<readonly BenchRow[]> {
  const bare = createServer((_, answer) => answer.end('{}'));
  await new Promise<void>((done) => bare.listen(0, '127.0.0.1', done));
  const barePort = (bare.address() as AddressInfo).port;
  const headers = { Authorization: `Bearer ${key}`, 'Content-Type': 'application/json' };
  const body = JSON.stringify({ request: { what: 'drink', amount: '8' } });
  const [bares, todays, stores, logs] = [[], [], [], []] as [number[], number[], number[], number[]];
  for (let round = -WARM_UP; round < ROUNDS; round += 1) {
    // In turn, so that what else the machine does falls on all alike.
    const times = [
      await timeOf({ port: barePort, path: '/', headers: {} }, 200),
      await timeOf({ port, path: '/api/today', headers }, 200),
      await timeOf({ port, path: '/api/stores', headers }, 200),
      await timeOf({ port, path: '/api/log', headers, body }, 201),
    ];
    if (round >= 0)
      for (const [k, list] of [bares, todays, stores, logs].entries()) list.push(times[k] ?? Number.NaN);
  }
  agent.destroy();
  await new Promise((done) => bare.close(done));
  return rowsOf({ bares, todays, stores, logs });
}

type Times = Readonly<Record<'bares' | 'todays' | 'stores' | 'logs', readonly number[]>>;

function rowsOf({ bares, todays, stores, logs }: Times): readonly BenchRow[] {
  const base = 'bare answer over HTTP, p50';
  const bareMs = quantileOf(bares, 0.5);
  const figure = (name: string, times: readonly number[], part: number, most?: number) =>
    row({
      name: `${name}, p${100 * part}`,
      value: quantileOf(times, part),
      unit: 'ms',
      ...(most !== undefined && { goal: { most } }),
    });
  return [
    row({ name: base, value: bareMs, unit: 'ms' }),
    figure('GET /api/today on 10 000 entries, warm', todays, 0.5, 50),
    figure('GET /api/today on 10 000 entries, warm', todays, 0.99),
    figure('GET /api/stores on 10 000 entries, warm', stores, 0.5, 50),
    figure('POST /api/log acknowledged, 10 000 entries', logs, 0.5, 50),
    figure('POST /api/log acknowledged, 10 000 entries', logs, 0.99, 200),
    row({ name: 'GET /api/today, p50', value: quantileOf(todays, 0.5) / bareMs, unit: '×', ratioOf: base }),
    row({ name: 'POST /api/log, p50', value: quantileOf(logs, 0.5) / bareMs, unit: '×', ratioOf: base }),
  ];
}

const agent = new Agent({ keepAlive: true, maxSockets: 1 });

interface Asked {
  readonly port: number;
  readonly path: string;
  readonly headers: Readonly<Record<string, string>>;
  readonly body?: string;
}

function timeOf({ port, path, headers, body }: Asked, wanted: number): Promise<number> {
  const started = performance.now();
  const method = body === undefined ? 'GET' : 'POST';
  return new Promise((done, fail) => {
    const asked = request({ host: '127.0.0.1', port, path, method, headers, agent }, (answer) => {
      answer.resume();
      answer.on('end', () => {
        if (answer.statusCode === wanted) done(performance.now() - started);
        else fail(new Error(`${method} ${path} answered ${answer.statusCode}`));
      });
    });
    asked.on('error', fail);
    asked.end(body);
  });
}
