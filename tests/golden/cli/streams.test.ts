// What goes to which stream: data alone on standard output, JSON whole, colour on a terminal only, ASCII where the locale asks.
import { spawn, spawnSync } from 'node:child_process';
import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { expectGolden } from '../record.ts';
import { Console, record } from './console.ts';

let console: Console;
beforeEach(async () => {
  console = await new Console().withPractice();
});
afterEach(() => console.end());

const READING = [
  'today',
  'today --at D13',
  'store list',
  'store show R2',
  'book show --most 3',
  'book show --findings',
  'book check',
  'log drink 8 --dry-run',
];
const WRITING = [
  'log drink 8',
  'log undo',
  'log day --set strokes=430',
  'log note --text a',
  'book close',
  'book backup b.book',
];

test.each([...READING, ...WRITING])(
  '%s --json is one object, and nothing else on either stream',
  async (line) => {
    if (line === 'log undo') await console.run('log drink 8');
    const { code, out, err } = await console.run(`${line} --json`);
    expect([code, err, out.split('\n').length]).toEqual([0, '', 2]);
    const { schema, version, data } = JSON.parse(out) as Record<string, unknown>;
    expect([typeof schema, version, typeof data]).toEqual(['string', 1, 'object']);
  },
);

test('a figure of --json carries value, u95, unit and because', async () => {
  const { data } = JSON.parse((await console.run('today --json')).out) as { data: Record<string, never> };
  const { cover, stores, total, closureMg, findings } = data as unknown as {
    cover: Record<string, Record<string, unknown>>;
    stores: readonly Record<string, Record<string, unknown>>[];
    total: Record<string, unknown>;
    closureMg: number;
    findings: readonly Record<string, unknown>[];
  };
  expect(Object.keys(cover).sort()).toEqual(['drinking', 'technical']);
  for (const figure of Object.values(cover)) {
    expect([figure['q05'], figure['q50'], figure['q95']].every((days) => typeof days === 'number')).toBe(
      true,
    );
  }
  expect(stores.length).toBeGreaterThan(20);
  for (const store of stores) {
    expect(Object.keys(store)).toEqual(
      expect.arrayContaining([
        'id',
        'name',
        'grade',
        'held',
        'conditional',
        'mass',
        'volume',
        'howKnown',
        'age',
      ]),
    );
  }
  const figures = [total, ...stores.flatMap(({ mass, volume }) => [mass ?? {}, volume ?? {}])];
  for (const figure of figures)
    expect(Object.keys(figure).sort()).toEqual(['because', 'u95', 'unit', 'value']);
  expect(stores.find(({ id }) => (id as unknown) === 'R2')).toMatchObject({ held: false, conditional: true });
  expect(closureMg).toBe(0);
  expect(findings.length).toBeGreaterThan(0);
});

test.each(['log fill c99', 'log drink', 'tody', 'today --book none.book', 'log weigh c02 20'])(
  '%s --json tells what is wrong as one object on standard error',
  async (line) => {
    const { out, err } = await console.run(`${line} --json`);
    expect(out).toBe('');
    const { schema, version, data } = JSON.parse(err) as {
      schema: string;
      version: number;
      data: readonly object[];
    };
    expect([schema, version]).toEqual(['error', 1]);
    for (const finding of data) {
      expect(Object.keys(finding)).toEqual(
        expect.arrayContaining([
          'code',
          'severity',
          'where',
          'expected',
          'received',
          'remedy',
          'entries',
          'text',
        ]),
      );
    }
  },
);

const ESCAPE = '\u001B';

test('colour comes on a terminal, and on nothing else', async () => {
  const seen = async (options: Parameters<Console['run']>[1], line = 'today') =>
    (await console.run(line, options)).out.includes(ESCAPE);
  expect(await seen({ isTty: true })).toBe(true);
  expect(await seen({})).toBe(false);
  expect(await seen({ isTty: true, env: { NO_COLOR: '1' } })).toBe(false);
  expect(await seen({ isTty: true, env: { NO_COLOR: '' } })).toBe(true);
  expect(await seen({ isTty: true, env: { TERM: 'dumb' } })).toBe(false);
  expect(await seen({ isTty: true }, 'today --no-color')).toBe(false);
  expect(await seen({ isTty: true }, 'today --plain')).toBe(false);
  expect((await console.run('today -o page.txt', { isTty: true })).out).toBe('');
  expect(console.read('page.txt').includes(ESCAPE)).toBe(false);
});

test('without a UTF-8 locale, and in --plain, all of a page is ASCII', async () => {
  // biome-ignore lint/suspicious/noControlCharactersInRegex: all of ASCII is meant
  const ascii = /^[\u0000-\u007F]*$/;
  for (const line of [
    ...READING,
    'log weigh c02 5kg+--1',
    'help',
    'help flags',
    'help log',
    'log undo 9999',
  ]) {
    const { out, err } = await console.run(line, { env: { LANG: 'C' } });
    expect({ line, isAscii: ascii.test(out + err) }).toEqual({ line, isAscii: true });
  }
  const line = 'waterwright today --width 70';
  expectGolden('cli/streams/ascii.txt', record(line, await console.run(line, { env: { LANG: 'C' } })));
});

test('the width is that of the terminal, of COLUMNS, or as asked for; no line is wider', async () => {
  const widest = async (line: string, options: Parameters<Console['run']>[1]) =>
    Math.max(...(await console.run(line, options)).out.split('\n').map((each) => [...each].length));
  const env = { NO_COLOR: '1' };
  expect(await widest('today', { isTty: true, columns: 50, env })).toBeLessThanOrEqual(50);
  expect(await widest('today', { env: { COLUMNS: '60' } })).toBeLessThanOrEqual(60);
  expect(await widest('today --width 40', { isTty: true, columns: 200, env })).toBeLessThanOrEqual(40);
});

test('hints go to standard error and not with --quiet; the practice book is told where nobody named it', async () => {
  const fallback = await new Console().withPractice('practice.waterwright');
  expect((await fallback.run('today')).err).toBe('Practice book: practice.waterwright\n');
  expect((await fallback.run('today -q')).err).toBe('');
  expect((await fallback.run('today --book practice.waterwright')).err).toBe('');
  expect((await console.run('today --verbose')).err).toBe('Book: waterwright.book\n');
  fallback.end();
});

test('the book: --book before WATERWRIGHT_BOOK before this folder before one’s own before the practice book', async () => {
  const places = ['flag.book', 'env.book', 'waterwright.book', 'practice.waterwright'];
  const fresh = new Console();
  for (const place of places) await fresh.withPractice(place);
  const book = async (line: string, env: Record<string, string> = {}) =>
    (await fresh.run(`${line} --verbose`, { env })).err.trim();
  expect(await book('today --book flag.book', { WATERWRIGHT_BOOK: 'env.book' })).toBe('Book: flag.book');
  expect(await book('today', { WATERWRIGHT_BOOK: 'env.book' })).toBe('Book: env.book');
  expect(await book('today')).toBe('Book: waterwright.book');
  fresh.end();
});

const MAIN = join(import.meta.dirname, '../../../src/doors/cli/main.ts');
const spawnMain = (words: readonly string[]) =>
  spawnSync(process.execPath, [MAIN, ...words], {
    cwd: console.folder,
    encoding: 'utf8',
    env: { ...process.env, LANG: 'C.UTF-8', XDG_CACHE_HOME: join(console.folder, 'cache') },
  });

test('the program itself: data when piped, exit codes of the system, and a version', () => {
  expect(spawnMain(['--version'])).toMatchObject({ status: 0, stderr: '' });
  const today = spawnMain(['today', '--book', 'waterwright.book']);
  expect([today.status, today.stderr, today.stdout.includes(ESCAPE)]).toEqual([0, '', false]);
  expect(spawnMain(['log', 'fill', 'c99', '--book', 'waterwright.book']).status).toBe(5);
});

test('a reader that has seen enough ends it quietly', async () => {
  const child = spawn(process.execPath, [MAIN, 'book', 'export', '--book', 'waterwright.book'], {
    cwd: console.folder,
  });
  let err = '';
  child.stderr.on('data', (text) => {
    err += text;
  });
  child.stdout.once('data', () => child.stdout.destroy());
  const code = await new Promise((done) => child.once('close', done));
  expect([code, err]).toEqual([0, '']);
});

test('completion knows stores, ports, offices, commands and flags', async () => {
  const complete = async (...words: readonly string[]) =>
    (await console.run(['--complete', ...words])).out.trim().split('\n');
  expect(await complete('')).toContain('today');
  expect(await complete('lo')).toEqual(['log']);
  expect(await complete('log', 'dr')).toEqual(['drink']);
  expect(await complete('store', 'show', 'c0')).toEqual(expect.arrayContaining(['C-01', 'C-09']));
  expect(await complete('log', 'hookup', 'c02', 'disp')).toEqual(['dispenser feed']);
  expect(await complete('log', 'drink', '8', '--by', '')).toEqual(
    expect.arrayContaining(['keeper', 'medic']),
  );
  expect(await complete('log', 'use', '1L', '--for', 'hy')).toEqual(['hygiene']);
  expect(await complete('log', 'sam')).toEqual(['sample']);
  expect(await complete('count', 'add', 'c02', '20L', 'purif')).toEqual(['purifier bed']);
  expect(await complete('count', 'start', '--places', 'we')).toEqual(['Weir']);
  expect(await complete('today', '--since', '')).toEqual(['me']);
  expect(await complete('today', '--u')).toEqual(['--units']);
  expect(await complete('log', 'relabel', 'c02', 'te')).toEqual(['technical']);
  await console.run('store add C-20 --kind container --capacity 22L');
  expect(await complete('store', 'show', 'c2')).toEqual(['C-20']);
  expect(existsSync(join(console.folder, 'cache/waterwright'))).toBe(true);
});
