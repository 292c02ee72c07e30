// Golden records of the stock count, of what is new since somebody looked, and of the page in words.
import { existsSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { expectGolden } from '../record.ts';
import { Console, record } from './console.ts';

let console: Console;
beforeEach(async () => {
  console = await new Console().withPractice();
});
afterEach(() => console.end());

async function recordOf(...lines: readonly string[]): Promise<string> {
  const parts: string[] = [];
  for (const line of lines) parts.push(record(line, await console.run(line)));
  return parts.join('\n');
}

const hasDraft = () => existsSync(join(console.folder, 'waterwright.book.stock-count'));

test('a count: the sheet hides the book, a slip is asked about, differences are told, readings are posted', async () => {
  const text = await recordOf(
    'waterwright count show',
    'waterwright count finish',
    'waterwright count start --dry-run',
    'waterwright count start --places Wier',
    'waterwright count start --places "Weir,outside, parts"',
    'waterwright count finish',
    'waterwright count add c02 20.4L kb 4.2L+-0.4 R1 - "purifier bed" 2',
    'waterwright count add c07 3L',
    'waterwright count add c08 30L fa 120L c99 3L',
    'waterwright count add c07 19.5L c02 20.6L',
    'waterwright count add c02',
    'waterwright count start',
    'waterwright count show --plain',
    'waterwright count finish --dry-run',
    'waterwright count finish --dry-run --plain',
    'waterwright count finish --second cook',
    'waterwright count finish --second second',
    'waterwright count finish',
    'waterwright book show --most 2',
  );
  expect(hasDraft()).toBe(false);
  expectGolden('cli/count.txt', text);
});

test('before the reading no line of the sheet shows what the book has', async () => {
  const before = await console.run('count start --json');
  expect(before.out).toContain('"C-02"');
  // The sheet is the same whatever is in the stores.
  expect((await console.run('log move 2L --from c10 --to outside')).code).toBe(0);
  const after = await console.run('count start --json');
  const places = (out: string) => JSON.parse(out).data.places;
  expect(places(after.out)).toEqual(places(before.out));
  expect((await console.run('count show')).out).not.toMatch(/±/);
});

test('a count moves no water, and draws the estimate', async () => {
  await console.run('count start');
  await console.run('count add c02 20.4L+-0.2');
  const before = JSON.parse((await console.run('today --json')).out);
  expect((await console.run('count finish')).code).toBe(0);
  const after = JSON.parse((await console.run('today --json')).out);
  const of = (sheet: typeof before) =>
    sheet.data.stores.find(({ id }: { id: string }) => id === 'C-02').volume;
  expect(of(after).u95).toBeLessThan(of(before).u95);
  expect(after.data.closureMg).toBe(0);
});

test('two stores whose labels were swapped are said at the end', async () => {
  await console.run('count start');
  const { out } = await console.run('count add c01 20.8L c09 0.6L --yes');
  expect(out).toContain('far off');
  const finished = await console.run('count finish --dry-run');
  expect(finished.out.replaceAll(/\s+/g, ' ')).toContain('C-01 and C-09 look swapped');
  expectGolden('cli/count-swapped.txt', record('waterwright count finish --dry-run', finished));
});

test('the walk: what is far off is typed again, Ctrl-C keeps it, the next walk goes on', async () => {
  await console.run('count start');
  const line = 'waterwright count add';
  const first = await console.run(line, {
    // The doubted text of one store is not taken for another one.
    replies: ['3 L', '0.5 L', '3 L', '20.4 L', '30 L', '30 L', 'stopped'],
    env: { NO_COLOR: '1' },
  });
  expect([first.code, hasDraft()]).toEqual([130, true]);
  const second = await console.run(line, {
    replies: ['<', '', 'nonsense', '-', 'end of input'],
    env: { NO_COLOR: '1' },
  });
  expectGolden('cli/count-walk.txt', [first, second].map((ran) => record(line, ran)).join('\n'));
});

test('what was typed of a day that is closed since is asked about, and comes in with its time and its reason', async () => {
  await console.run('count start');
  await console.run('count add c02 20.4L');
  await console.run('book close');
  const text = await recordOf(
    'waterwright count finish',
    'waterwright count finish --at D46T20:30',
    'waterwright count finish --at D46T20:30 --late "typed the next morning"',
  );
  expect(hasDraft()).toBe(false);
  expectGolden('cli/count-closed.txt', text);
});

test('a count that a crash left behind after it had come into the book is not entered again', async () => {
  await console.run('count start');
  await console.run('count add c02 20.4L');
  const left = console.read('waterwright.book.stock-count');
  await console.run('count finish');
  console.write('waterwright.book.stock-count', left);
  const book = console.digests()['waterwright.book'];
  const again = await console.run('count finish');
  expect([again.code, hasDraft(), console.digests()['waterwright.book']]).toEqual([2, false, book]);
  expect(again.err).toContain('The count begun Day 46 21:00 UTC is in the book: entry corrie 204.');
});

test('a dry run types nothing, whoever cannot be asked is told how to say it, and a first reading begins a count', async () => {
  await console.run('count start');
  const dry = await console.run('count add c02 20.4L --dry-run');
  expect([dry.code, dry.err]).toEqual([0, 'Nothing was written.\n']);
  expect(JSON.parse(console.read('waterwright.book.stock-count'))).toMatchObject({ typed: {} });
  expect((await console.run('count add')).code).toBe(2);
  expect((await console.run('count add c02')).code).toBe(2);
  rmSync(join(console.folder, 'waterwright.book.stock-count'));
  expect((await console.run('count add c02 20.4L')).code).toBe(0);
  expect((await console.run('count show')).out).toContain('1 of 44 typed');
});

test('every command of the count is one object with --json', async () => {
  const schemas: string[] = [];
  for (const line of ['start', 'add c02 20.4L', 'show', 'finish']) {
    const { out, err } = await console.run(`count ${line} --json`);
    const { schema, version, data } = JSON.parse(out);
    expect([err, version, typeof data]).toEqual(['', 1, 'object']);
    schemas.push(schema);
  }
  expect(schemas).toEqual(['count-sheet', 'counted', 'count-sheet', 'count']);
});

test('since me: the first look shows a day, the second what came in between', async () => {
  const text = await recordOf(
    'waterwright today --since me --by second',
    'waterwright log drink 8',
    'waterwright today --since me --by second',
    'waterwright today --since me --by second',
    'waterwright today --since D44 --plain',
    'waterwright today --since D46 --at D46',
    'waterwright today --since D99',
    'waterwright today --since me --by cook',
    'waterwright log undo',
    'waterwright today --since me --by second',
  );
  expectGolden('cli/today-since.txt', text);
});

test('a look is kept for each office and each book, and one at another time is none', async () => {
  await console.run('today --at D13');
  expect((await console.run('today --since me')).err).toContain('No earlier look of the keeper');
  await console.run('log drink 8');
  expect((await console.run('today --since me --by medic')).err).toContain('No earlier look of the medic');
  expect((await console.run('today')).code).toBe(0);
  expect((await console.run('today --since me')).out).toContain('0 entries');
  await console.withPractice('other.book');
  expect((await console.run('today --since me --fail-on act-now')).code).toBe(0);
  expect(existsSync(join(console.folder, 'state/waterwright'))).toBe(true);
});

test.each(['D13', 'D14', 'D33', 'D46', 'D60'])(
  'the page in words at %s has at most 400 characters',
  async (day) => {
    if (day === 'D60') await console.withPractice('waterwright.book', 'whole');
    const { out } = await console.run(`today --say --at ${day}`);
    expect(out.length).toBeLessThanOrEqual(401);
    expect(out).toMatch(/^Day \d+, .*\.\n$/);
    expectGolden(`cli/today-say-${day}.txt`, out);
  },
);
