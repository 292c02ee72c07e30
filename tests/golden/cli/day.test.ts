// Golden records of the day line: walked with a person, broken off and taken up again, and read from sheets.
import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { afterEach, beforeEach, expect, test } from 'vitest';
import type { Reply } from '../../../src/doors/cli/index.ts';
import { expectGolden } from '../record.ts';
import { Console, record } from './console.ts';

let console: Console;
beforeEach(async () => {
  console = await new Console().withPractice();
});
afterEach(() => console.end());

const LINE = 'waterwright log day';
const person = (...replies: readonly (string | Reply)[]) => ({ replies, env: { NO_COLOR: '1' } });
const hasDraft = () => existsSync(join(console.folder, 'waterwright.book.day-line'));

test('the walk: an unusual value is asked about once, a slip again, < goes back, Enter keeps what was typed', async () => {
  const ran = await console.run(
    LINE,
    person('', '430', '12', '<', '', '6.7', 'abc', '208.3 L', '-', '24', '47', '22', '101.2'),
  );
  expect(ran.code).toBe(0);
  expect(hasDraft()).toBe(false);
  expectGolden('cli/day/walk.txt', record(LINE, ran));
});

test('an unusual value that is entered again is kept', async () => {
  const ran = await console.run(LINE, person('700', '700', '-', '-', '-', '-', '-', '-', '-'));
  expect(ran.out).toContain('strokes 700');
});

test('Ctrl-C keeps what was typed, and the next walk goes on from there', async () => {
  const before = console.digests()['waterwright.book'];
  const first = await console.run(LINE, person('430', '6.7', 'stopped'));
  expect([first.code, first.out, hasDraft()]).toEqual([130, '', true]);
  expect(console.digests()['waterwright.book']).toBe(before);
  const second = await console.run(LINE, person('208.3', 'end of input'));
  expect(second.code).toBe(130);
  const third = await console.run(LINE, person('2.9', '24', '-', '-', '-'));
  expect([third.code, hasDraft()]).toEqual([0, false]);
  expect(third.out).toContain('strokes 430');
  expectGolden('cli/day/resumed.txt', [first, second, third].map((ran) => record(LINE, ran)).join('\n'));
});

test('leaving before anything was typed leaves nothing', async () => {
  const ran = await console.run(LINE, person('stopped'));
  expect([ran.code, hasDraft()]).toEqual([130, false]);
});

test('what was typed for another day is shown and left out', async () => {
  await console.run(LINE, person('430', 'stopped'));
  expect((await console.run('log day --set strokes=430')).code).toBe(0);
  const ran = await console.run(LINE, person('stopped'));
  expect(ran.err).toContain('Typed for Day 47 and not entered: strokes 430. It is left out here.');
});

test('a day that has its line is told before anybody walks to the meters', async () => {
  const ran = await console.run(`${LINE} --at D46T21:00`, person('430'));
  expect([ran.code, ran.err.includes('1/8')]).toEqual([3, false]);
});

const sheets: Readonly<Record<string, string>> = {
  words: '# evening\nstrokes 430\ndispenser strokes: 430\n',
  lines: '# evening\nstrokes 430\nproduct meter: 6.7 L\ncondensate = 208.3\nelectrolyser-feed -\n',
  table: 'name,value\nstrokes,430\n"product",6.7\ncondensate;208,3\n',
  json: '{"strokes": 430, "product": "6.7 L", "condensate": null}',
  order: '430\n6.7\n208.3\n2.9\n24\n47\n22\n101.2\n',
  short: '430\n6.7\n',
  stranger: 'strokes 430\nstroke 440\n',
  list: '[430, 6.7]',
};

test('sheets: lines, columns, JSON, bare values in order, and what is none', async () => {
  const parts: string[] = [];
  for (const [name, text] of Object.entries(sheets)) {
    const fresh = await new Console().withPractice();
    fresh.write('sheet.txt', text);
    const ran = await fresh.run(`${LINE} --from sheet.txt`);
    parts.push(`# ${name}\n${record(`${LINE} --from sheet.txt`, ran)}`);
    fresh.end();
  }
  expectGolden('cli/day/sheets.txt', parts.join('\n'));
});

test('without a terminal the values come from standard input; nothing there is no line', async () => {
  const none = await console.run(LINE, { stdin: '' });
  expect([none.code, none.out]).toEqual([3, '']);
  const all = await console.run(LINE, { stdin: sheets['order'] ?? '' });
  expect([all.code, all.out.includes('strokes 430')]).toEqual([0, true]);
});
