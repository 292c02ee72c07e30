// The command `serve`: the address, the port that was taken, the book that is served already, what stands in the way, and a clean end.
import { type ChildProcess, spawn, spawnSync } from 'node:child_process';
import { existsSync, readFileSync, statSync } from 'node:fs';
import { createServer, type Server } from 'node:net';
import { join } from 'node:path';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { serverLog, serverLogPath } from '../../src/doors/cli/index.ts';
import { noteServer, openBook } from '../../src/doors/disk/index.ts';
import { Console } from '../golden/cli/console.ts';

const MAIN = join(import.meta.dirname, '../../src/doors/cli/main.ts');
const ADDRESS = /^http:\/\/127\.0\.0\.1:(\d+)\/\?token=[\w-]{43}$/m;

let console: Console;
beforeEach(async () => {
  console = await new Console().withPractice();
});
afterEach(() => console.end());

function listening(port: number): Promise<Server> {
  return new Promise((done, fail) => {
    const server = createServer().once('error', fail);
    server.listen(port, '127.0.0.1', () => done(server));
  });
}

async function freePort(): Promise<number> {
  const server = await listening(0);
  const { port } = server.address() as { port: number };
  await new Promise((done) => server.close(done));
  return port;
}

test('it prints one line with the address, says what it is for, and ends cleanly', async () => {
  const port = await freePort();
  const ran = await console.run(`serve --port ${port}`);
  expect(ran.code).toBe(0);
  expect(ran.out.trim()).toMatch(ADDRESS);
  expect(ADDRESS.exec(ran.out)?.[1]).toBe(`${port}`);
  expect(ran.err).toContain('Serving waterwright.book to this machine only.');
  expect(ran.err).toContain('Stopped. What was acknowledged is in the book.');
  expect(
    ['server', 'owner'].filter((name) => existsSync(join(console.folder, `waterwright.book.${name}`))),
  ).toEqual([]);
  const json = await console.run(`serve --port ${port} --json`);
  expect([json.err, JSON.parse(json.out)]).toMatchObject(['', { schema: 'serving', version: 1, data: {} }]);
  expect((await console.run(`serve --port ${port} --quiet`)).err).toBe('');
});

test('it notes who was refused in a log that only its owner can read, a line each', () => {
  const terminal = { env: { XDG_STATE_HOME: join(console.folder, 'state') }, now: () => 0 } as never;
  const note = serverLog(terminal);
  note({
    what: 'refused',
    status: 401,
    method: 'GET',
    path: '/api/a\r\n{"what":"let in"}',
    code: 'token-needed',
  });
  note({
    what: 'failed',
    status: 500,
    method: 'GET',
    path: '/',
    code: 'server-failed',
    error: new Error('a\nb'),
  });
  const path = serverLogPath(terminal);
  const lines = readFileSync(path, 'utf8').split('\n');
  expect(lines).toHaveLength(3);
  expect(JSON.parse(lines[0] ?? '')).toMatchObject({
    at: '1970-01-01T00:00:00.000Z',
    what: 'refused',
    status: 401,
  });
  expect(JSON.parse(lines[1] ?? '').error).toContain('a\nb');
  expect(statSync(path).mode & 0o777).toBe(0o600);
});

test('a port that is taken: it says so, and which it took', async () => {
  const port = await freePort();
  const other = await listening(port);
  try {
    const ran = await console.run(`serve --port ${port}`);
    const took = ADDRESS.exec(ran.out)?.[1];
    expect(took).not.toBe(`${port}`);
    expect(ran.err.replaceAll('\n', ' ')).toContain(`Port ${port} was taken, this is port ${took}.`);
  } finally {
    await new Promise((done) => other.close(done));
  }
});

test('start shows Today in short, then serves', async () => {
  const ran = await console.run('start');
  expect(ran.code).toBe(0);
  expect(ran.out).toContain('Drinking water we can count on');
  expect(ran.out).toMatch(/^NEEDS YOU {2}ACT NOW \d+, ACT TODAY \d+/m);
  expect(ran.out).not.toContain('WHERE IT IS');
  expect(ran.out).toMatch(ADDRESS);
});

interface Served {
  readonly child: ChildProcess;
  readonly address: string;
  readonly err: () => string;
  readonly ended: Promise<number | null>;
}

/** The program itself, in a process of its own. */
async function serveInProcess(): Promise<Served> {
  const env = { ...process.env, XDG_CACHE_HOME: join(console.folder, 'cache') };
  const child = spawn(process.execPath, [MAIN, 'serve', '--book', join(console.folder, 'waterwright.book')], {
    env,
  });
  let err = '';
  child.stderr.on('data', (text: Buffer) => {
    err += text.toString();
  });
  const ended = new Promise<number | null>((done) => child.once('exit', done));
  const address = await new Promise<string>((done, fail) => {
    child.stdout.once('data', (text: Buffer) => done(text.toString().trim()));
    void ended.then((code) => fail(new Error(`it ended with ${code}: ${err}`)));
  });
  return { child, address, err: () => err, ended };
}

test('while it serves, others go through it; Ctrl-C ends it after the work in hand', {
  timeout: 60_000,
}, async () => {
  const served = await serveInProcess();
  const again = await console.run('serve');
  expect([again.code, again.err]).toEqual([
    0,
    'This book is served already. The address is a fresh one; it lets one page in.\n',
  ]);
  expect(again.out.trim()).toMatch(ADDRESS);
  expect(again.out.trim()).not.toBe(served.address);
  expect((await console.run('log drink 8')).out).toContain('Entry corrie 204');
  expect((await console.run('book check')).out).toContain('Every chain is whole: 204 entries.');
  expect((await console.run('book backup copy.book')).code).toBe(0);
  expect((await console.run('book export -o whole.jsonl')).code).toBe(0);
  expect((await console.run('import whole.jsonl')).out).toContain('204');
  // Twenty writes are under way when somebody presses Ctrl-C.
  const writes = Array.from({ length: 20 }, (_, k) => console.run(`log note --text "note ${k}"`));
  await writes[0];
  served.child.kill('SIGINT');
  const codes = (await Promise.all(writes)).map(({ code }) => code);
  expect(await served.ended).toBe(0);
  expect(served.err()).toContain('Stopped. What was acknowledged is in the book.');
  expect(existsSync(join(console.folder, 'waterwright.book.server'))).toBe(false);
  const kept = codes.filter((code) => code === 0).length;
  expect(kept).toBeGreaterThan(0);
  const shown = await console.run('book show --kind note --most 100');
  expect([...shown.out.matchAll(/note \d+(?= |$)/gm)].length).toBeGreaterThanOrEqual(kept);
  expect((await console.run('book check')).code).toBe(0);
});

test('a program that writes past the server is told who has the book', { timeout: 60_000 }, async () => {
  const served = await serveInProcess();
  try {
    const sqlite = `const { DatabaseSync } = require('node:sqlite');
      const db = new DatabaseSync(process.argv[1], { timeout: 200 });
      try { db.prepare('SELECT count(*) FROM entry').get(); } catch (error) { console.log(error.message); }`;
    const ran = spawnSync(process.execPath, ['-e', sqlite, join(console.folder, 'waterwright.book')], {
      encoding: 'utf8',
    });
    expect(ran.stdout).toContain('database is locked');
  } finally {
    served.child.kill('SIGTERM');
    expect(await served.ended).toBe(0);
  }
});

test('a server that does not answer: a finding, exit code 75, and nothing changed', async () => {
  const path = join(console.folder, 'waterwright.book');
  const book = await openBook(path, { owner: 'serve', alone: true });
  try {
    const port = await freePort();
    noteServer(path, {
      pid: process.pid,
      address: `http://127.0.0.1:${port}`,
      key: 'k',
      build: 'from sources',
    });
    const ran = await console.run('log drink 8');
    expect([ran.code, ran.out]).toEqual([75, '']);
    expect(ran.err).toContain('[server-silent]');
    noteServer(path, { pid: process.pid, address: `http://127.0.0.1:${port}`, key: 'k', build: 'another' });
    const other = await console.run('today');
    expect([other.code, other.err.includes('[server-of-other-build]')]).toEqual([75, true]);
    expect(await book.count()).toBe(203);
  } finally {
    book.close();
  }
});
