// A server that is killed 50 ms after it has acknowledged an entry has lost nothing; one that acknowledges too early is found out.
import { type ChildProcess, spawn } from 'node:child_process';
import { cpSync, mkdtempSync, rmSync } from 'node:fs';
import { request } from 'node:http';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { build } from 'esbuild';
import { afterAll, afterEach, beforeAll, beforeEach, expect, test } from 'vitest';
import { checkBookFile, findServer, openBook } from '../../src/doors/disk/index.ts';
import { Console } from '../golden/cli/console.ts';
import { recordCounts } from '../verification/record.ts';

/** Bundled once, as the program is: each start then reads one file and not hundreds. */
const CHILD_FOLDER = mkdtempSync(join(tmpdir(), 'waterwright-kill-child-'));
const CHILD = join(CHILD_FOLDER, 'serve-child.mjs');
const ROUNDS = 12;
const AFTER_ACK_MS = 50;

beforeAll(async () => {
  await build({
    entryPoints: [join(import.meta.dirname, 'serve-child.ts')],
    outfile: CHILD,
    bundle: true,
    format: 'esm',
    platform: 'node',
    target: 'node26',
    tsconfigRaw: { compilerOptions: { verbatimModuleSyntax: true } },
    // Packages in CommonJS ask for Node's own modules by require, which a module of the new kind has not.
    banner: {
      js: "import { createRequire } from 'node:module'; const require = createRequire(import.meta.url);",
    },
  });
});
afterAll(() => rmSync(CHILD_FOLDER, { recursive: true, force: true }));

let folder: string;
let path: string;
beforeEach(async () => {
  folder = mkdtempSync(join(tmpdir(), 'waterwright-kill-'));
  path = join(folder, 'p.book');
  const console = await new Console().withPractice('p.book');
  cpSync(join(console.folder, 'p.book'), path);
  await console.end();
});
afterEach(() => rmSync(folder, { recursive: true, force: true }));

interface Child {
  readonly process: ChildProcess;
  readonly address: string;
  readonly key: string;
}

async function start(how: 'as it is' | 'early'): Promise<Child> {
  const child = spawn(process.execPath, [CHILD, path, how], { stdio: ['ignore', 'pipe', 'inherit'] });
  const address = await new Promise<string>((done, fail) => {
    child.stdout?.once('data', (text: Buffer) => done(text.toString().trim()));
    child.once('exit', (code) => fail(new Error(`the server ended with ${code}`)));
  });
  const note = findServer(path);
  if (note === null) throw new Error('the server left no note');
  return { process: child, address, key: note.key };
}

/** The ids of entries that were acknowledged. */
function keep({ address, key }: Child, note: string): Promise<string> {
  const body = JSON.stringify({ request: { what: 'told', kind: 'note', fields: { text: note } } });
  return new Promise((done, fail) => {
    const headers = { Authorization: `Bearer ${key}`, 'Content-Type': 'application/json' };
    const asked = request(`${address}/api/log`, { method: 'POST', headers, agent: false }, (answer) => {
      let text = '';
      answer.on('data', (piece: Buffer) => {
        text += piece.toString();
      });
      answer.on('end', () => {
        if (answer.statusCode !== 201) fail(new Error(text));
        else done((JSON.parse(text) as { data: { line: { id: string } } }).data.line.id);
      });
    });
    asked.on('error', fail);
    asked.end(body);
  });
}

function killed(child: ChildProcess): Promise<void> {
  return new Promise((done) => {
    child.once('exit', () => done());
    child.kill('SIGKILL');
  });
}

/** Acknowledged entries that the book does not have, and what is wrong with it. */
async function lostOf(
  acknowledged: readonly string[],
): Promise<{ lost: number; findings: readonly string[] }> {
  const book = await openBook(path, { owner: 'test' });
  try {
    const found = await Promise.all(acknowledged.map((id) => book.find(id)));
    const check = await checkBookFile(book);
    return {
      lost: found.filter((entry) => entry === null).length,
      findings: check.findings.map(({ code }) => code),
    };
  } finally {
    book.close();
  }
}

const waited = (ms: number) => new Promise((done) => setTimeout(done, ms));

test(`${ROUNDS} kills: nothing that was acknowledged is lost, the chain is whole, and the next server starts at once`, {
  timeout: 90_000,
}, async () => {
  const acknowledged: string[] = [];
  for (let round = 0; round < ROUNDS; round += 1) {
    const child = await start('as it is');
    const many = 1 + (round % 4);
    for (let k = 0; k < many; k += 1) acknowledged.push(await keep(child, `round ${round}, ${k}`));
    // Half of the rounds with a write that is under way, whose end nobody has heard of.
    const underWay =
      round % 2 === 0 ? Promise.resolve('') : keep(child, `round ${round}, under way`).catch(() => '');
    await waited(round % 2 === 0 ? AFTER_ACK_MS : 0);
    await killed(child.process);
    const heard = await underWay;
    if (heard !== '') acknowledged.push(heard);
    expect({ round, ...(await lostOf(acknowledged)) }).toEqual({ round, lost: 0, findings: [] });
  }
  expect(acknowledged.length).toBeGreaterThanOrEqual(24);
  const counts = { kills: ROUNDS, 'entries acknowledged': acknowledged.length, 'entries lost': 0 };
  recordCounts('server-kills', import.meta.filename, { counts });
});

test('control: a server that acknowledges before the disk has the entry loses it', {
  timeout: 30_000,
}, async () => {
  const child = await start('early');
  const acknowledged = [await keep(child, 'too early')];
  await waited(AFTER_ACK_MS);
  await killed(child.process);
  const { lost } = await lostOf(acknowledged);
  expect(lost).toBe(1);
  recordCounts('server-kills-control', import.meta.filename, { counts: { kills: 1, 'entries lost': lost } });
});
