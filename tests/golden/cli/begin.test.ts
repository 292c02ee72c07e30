// Golden records of beginnings: the first start, a practice book up to a day, and a book of one's own from its outpost file.
import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { expectGolden } from '../record.ts';
import { Console, record } from './console.ts';

/** Then the program is called by its name, whatever the path of this copy. */
const ON_PATH = { PATH: join(import.meta.dirname, '../../../bin') };

let console: Console;
beforeEach(() => {
  console = new Console();
});
afterEach(() => console.end());

async function session(...lines: readonly string[]): Promise<string> {
  const parts: string[] = [];
  for (const line of lines) parts.push(record(line, await console.run(line)));
  return parts.join('\n');
}

test('the first start makes the practice book, shows Today, and ends with three things to try', async () => {
  const line = 'waterwright start --no-serve --book p.book';
  const [first, second] = [
    await console.run(line, { env: ON_PATH }),
    await console.run(line, { env: ON_PATH }),
  ];
  expect([first.code, second.code, second.out]).toEqual([0, 0, first.out]);
  const foot = first.out.slice(first.out.indexOf('Nothing in the practice book'));
  expect(first.out).toContain('Drinking water we can count on');
  expectGolden('cli/begin/start.txt', foot);
});

test('what a start names to try does what it says', async () => {
  const { out } = await console.run('start --no-serve --book p.book', { env: ON_PATH });
  const tries = [...out.matchAll(/^ {2}waterwright (.*?)(?: {2,}.*)?$/gm)].map(([, words]) => words ?? '');
  expect(tries).toHaveLength(3);
  for (const words of tries) {
    const ran = await console.run(words, {
      replies: Array.from({ length: 8 }, () => '-'),
      env: { NO_COLOR: '1' },
    });
    expect({ words, code: ran.code }).toEqual({ words, code: 0 });
  }
});

test('a practice book up to a day, and whole', async () => {
  const record = await session(
    'waterwright init --practice --until D46 --book d46.book',
    'waterwright init --practice --until D46 --book d46.book',
    'waterwright init --practice --book whole.book',
    'waterwright log drink 8 --book whole.book',
  );
  expectGolden('cli/begin/practice.txt', record);
});

const OPENING = {
  asOf: '2147-04-30T21:00Z',
  peopleAboard: 4,
  stores: [
    { store: 'R1', amount: '172 L+-6', grade: 'drinking', how: 'gauged' },
    { store: 'C-01', amount: '20.4kg +- 0.5', grade: 'drinking' },
    { store: 'c02', amount: '0 L', grade: null },
  ],
};

test('a book of one’s own: outpost file, opening stocks, first entries', async () => {
  console.write(
    'opening.json',
    JSON.stringify({ ...OPENING, ports: [{ port: 'dispenser feed', store: 'C-01' }] }),
  );
  console.write(
    'bare.json',
    JSON.stringify({ ...OPENING, ports: [], stores: [{ store: 'R1', amount: 172, grade: 'drinking' }] }),
  );
  console.write(
    'typo.json',
    JSON.stringify({ ...OPENING, ports: [], stores: [{ store: 'R9', amount: '172 L', grade: 'drinking' }] }),
  );
  const record = await session(
    'waterwright today',
    'waterwright init --template corrie -o my-outpost.yaml',
    'waterwright init --outpost my-outpost.yaml',
    'waterwright today',
    'waterwright log drink 8',
    'waterwright log opening --from bare.json',
    'waterwright log opening --from typo.json',
    'waterwright log opening --from opening.json',
    'waterwright log drink 8 --at -15m',
    'waterwright log drink 8 --at 2147-05-02T10:00Z',
    'waterwright log undo',
    'waterwright today',
    'waterwright book check --plain',
  );
  expectGolden('cli/begin/own-book.txt', record);
  expect(existsSync(join(console.folder, 'data/waterwright/waterwright.book'))).toBe(true);
});

test.each(['corrie', 'polar', 'lunar'])(
  'the template %s is an outpost file that begins a book',
  async (name) => {
    expect((await console.run(`init --template ${name} -o outpost.yaml`)).code).toBe(0);
    expect(console.read('outpost.yaml')).toBe(
      readFileSync(join(import.meta.dirname, '../../../examples', name, 'outpost.yaml'), 'utf8'),
    );
    expect((await console.run('init --outpost outpost.yaml --book a.book')).code).toBe(0);
    expect((await console.run('today --book a.book')).code).toBe(0);
  },
);
