// Golden records of the stock count, of what is new since somebody looked, and of the page in words.
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
    'waterwright count start',
    'waterwright count add c02 20.4L kb 4.2L+-0.4 R1 - "purifier bed" 2',
    'waterwright count add c07 3L',
    'waterwright count add c07 19.5L c02 20.6L',
    'waterwright count add c99 3L',
    'waterwright count add c02',
    'waterwright count start',
    'waterwright count finish --dry-run',
    'waterwright count finish --second second',
    'waterwright count finish',
    'waterwright book show --most 2',
  );
  expect(hasDraft()).toBe(false);
  expectGolden('cli/count.txt', text);
});

test('before the reading no line of the sheet shows what the book has', async () => {
  const { out } = await console.run('count start');
  expect(out).toContain('C-02');
  const rows = out.split('\n').filter((line) => line.includes('________'));
  expect(rows).toHaveLength(43);
  for (const row of rows) expect(row).not.toMatch(/\d\s?L\b/);
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
});

test('the walk: what is far off is typed again, Ctrl-C keeps it, the next walk goes on', async () => {
  await console.run('count start');
  const line = 'waterwright count add';
  const first = await console.run(line, {
    replies: ['3 L', '0.5 L', '20.4 L', 'stopped'],
    env: { NO_COLOR: '1' },
  });
  expect([first.code, hasDraft()]).toEqual([130, true]);
  const second = await console.run(line, {
    replies: ['<', 'nonsense', '-', 'stopped'],
    env: { NO_COLOR: '1' },
  });
  expectGolden('cli/count-walk.txt', [first, second].map((ran) => record(line, ran)).join('\n'));
});

test('since me: the first look shows a day, the second what came in between', async () => {
  const text = await recordOf(
    'waterwright today --since me --by second',
    'waterwright log drink 8',
    'waterwright today --since me --by second',
    'waterwright today --since me --by second',
    'waterwright today --since D44 --plain',
    'waterwright today --since D46 --at D46',
  );
  expectGolden('cli/today-since.txt', text);
});

test.each(['D13', 'D14', 'D33', 'D46'])('the page in words at %s has at most 400 characters', async (day) => {
  const { out } = await console.run(`today --say --at ${day}`);
  expect(out.length).toBeLessThanOrEqual(401);
  expect(out).toMatch(/^Day \d+, .*\.\n$/);
  expectGolden(`cli/today-say-${day}.txt`, out);
});
