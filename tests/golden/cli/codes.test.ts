// Golden records of the codes by which a second person confirms: set, asked for, wrong, waiting, lost; and no file or stream ever has one.
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { expectGolden } from '../record.ts';
import { Console, type Ran, type RunOptions, record } from './console.ts';
import { isThroughServer } from './servers.ts';

const RELABEL = 'waterwright log relabel c19 technical --second second';
const SET = 'waterwright book code set';
/** Codes that these tests type, the wrong ones too: none of them is in any figure of the practice book. */
const TYPED = ['482159', '739160', '605172', '918364', '271835', '482'];
const SECOND = '482159';
const MEDIC = '739160';

let console: Console;
let all: string;
beforeEach(async () => {
  console = await new Console().withPractice();
  all = '';
});
afterEach(() => console.end());

async function run(line: string, options: RunOptions = {}): Promise<Ran> {
  const ran = await console.run(line, options);
  all += ran.out + ran.err;
  return ran;
}

type Step = string | readonly [line: string, ...replies: RunOptions['replies'] & readonly unknown[]];

async function recordOf(...steps: readonly Step[]): Promise<string> {
  const parts: string[] = [];
  for (const step of steps) {
    const [line, ...replies] = typeof step === 'string' ? [step] : step;
    const options = replies.length === 0 ? {} : { replies: replies as RunOptions['replies'] & object };
    parts.push(record(line, await run(line, options)));
  }
  return parts.join('\n');
}

/** Every byte of every file in the folder of the run, and everything that was printed. */
function nothingTells(): void {
  const files = readdirSync(console.folder, { recursive: true, withFileTypes: true }).filter((each) =>
    each.isFile(),
  );
  expect(files.length).toBeGreaterThan(1);
  const bytes = isThroughServer()
    ? []
    : files.map(({ name, parentPath }) => readFileSync(join(parentPath, name), 'latin1'));
  for (const code of TYPED.filter((each) => each.length > 4)) {
    expect(all, code).not.toContain(code);
    for (const each of bytes) expect(each.includes(code), code).toBe(false);
  }
}

test('a code is set, asked for at the last moment, and what was confirmed by it says so for ever', async () => {
  const text = await recordOf(
    'waterwright book code list',
    RELABEL,
    'waterwright log undo',
    [`${SET} second`, SECOND, SECOND],
    `${RELABEL} --dry-run`,
    [RELABEL, '918364'],
    [RELABEL, SECOND],
    ['waterwright log relabel c18 technical --second second', ''],
    'waterwright log relabel c17 technical --second second --no-input',
    ['waterwright log relabel c16 technical --second second', 'stopped'],
    ['waterwright log relabel c16 technical --second second --by second', SECOND],
    ['waterwright log relabel c16 purple --second second', SECOND],
    'waterwright book show --kind relabel',
    'waterwright book show --kind relabel --plain',
    'waterwright store show c19 --history 1',
    'waterwright book code list',
    'waterwright book code list --plain',
    'waterwright book code list --json',
  );
  expectGolden('cli/codes/second.txt', text);
  nothingTells();
});

test('what may not be a code, and who may set one', async () => {
  const text = await recordOf(
    [`${SET} medic`, '482', '482'],
    [`${SET} medic`, '123456', '123456'],
    [`${SET} medic`, '0000', '0000'],
    [`${SET} medic`, '605172', '271835'],
    [`${SET} medic`, 'stopped'],
    [`${SET} medic`, 'end of input'],
    `${SET} medic`,
    [`${SET} cook`, MEDIC],
    [`${SET} medic --by keeper`, MEDIC],
    `${SET} medic --dry-run`,
    [`${SET} medic`, MEDIC, MEDIC],
    [`${SET} medic`, '605172', '271835', '271835'],
    [`${SET} medic`, MEDIC, MEDIC, MEDIC],
    [`${SET} medic`, MEDIC, '605172', '605172'],
    'waterwright log undo',
    'waterwright log undo 205',
    'waterwright log code-set --office medic --because first',
    'waterwright book code',
    'waterwright help book code',
    'waterwright help book code set',
  );
  expectGolden('cli/codes/set.txt', text);
  nothingTells();
});

test('after five wrong ones the office waits, through any number of commands; a lost code is set anew by two others', async () => {
  await recordOf(
    [`${SET} second`, SECOND, SECOND],
    [`${SET} medic`, MEDIC, MEDIC],
    [`${SET} chief`, '605172', '605172'],
  );
  for (let k = 0; k < 4; k++) expect((await run(RELABEL, { replies: ['918364'] })).code).toBe(4);
  const before = await recordOf([RELABEL, '918364'], [RELABEL, SECOND], 'waterwright book code list');
  console.nowMs += 15 * 60_000 - 30_000;
  const nearly = await recordOf([RELABEL, SECOND]);
  console.nowMs += 30_000;
  const after = await recordOf(
    [RELABEL, SECOND],
    `${SET} second --lost`,
    `${SET} second --lost --second second`,
    `${SET} second --lost --second keeper`,
    [`${SET} second --lost --second medic`, '605172', '918364'],
    [`${SET} second --lost --second medic`, '605172', MEDIC, '271835', '271835'],
    ['waterwright log relabel c18 technical --second second', '271835'],
    'waterwright book show --kind code-set',
  );
  expectGolden('cli/codes/wrong.txt', [before, nearly, after].join('\n'));
  nothingTells();
});

test('without a terminal codes come from standard input, and only where a flag says so', async () => {
  const parts: string[] = [];
  const piped = async (line: string, stdin: string) => {
    parts.push(record(`${line} <<< ${'(codes)'}`, await run(line, { stdin })));
  };
  await piped(`${SET} second --codes-from-stdin`, `${SECOND}\n`);
  await piped(`${SET} second --codes-from-stdin`, `${SECOND}\n605172\n`);
  await piped(`${RELABEL} --codes-from-stdin`, `${SECOND}\n`);
  await piped(`${RELABEL} --codes-from-stdin`, '605172\n');
  await piped('waterwright log relabel c18 technical --second second', '605172\n');
  await piped('waterwright log relabel c17 technical --second second --codes-from-stdin', '');
  await piped(`${SET} second --codes-from-stdin`, '605172\n');
  const hold = JSON.stringify({ hold: 'H-9', stores: ['C-17'], reason: 'smell' });
  await piped('waterwright log hold --from - --second second --codes-from-stdin', hold);
  expectGolden('cli/codes/stdin.txt', parts.join('\n'));
  nothingTells();
});

test('exports, backups and what programs read have no code; a backup keeps the hashes, an export none', async () => {
  await recordOf([`${SET} second`, SECOND, SECOND], [RELABEL, SECOND]);
  expect((await run('waterwright book backup copy.book')).code).toBe(0);
  expect((await run('waterwright book export -o book.jsonl')).code).toBe(0);
  expect((await run('waterwright import book.jsonl --book from-export.book --yes')).code).toBe(0);
  const ofCopy = await run('waterwright book code list --book copy.book --json');
  expect(JSON.parse(ofCopy.out).data.offices[2]).toMatchObject({
    office: 'second',
    since: 'Day 46 21:00 UTC',
  });
  const ofExport = await run('waterwright book code list --book from-export.book --json');
  expect(JSON.parse(ofExport.out).data.offices[2]).toMatchObject({ office: 'second', since: null });
  const shown = await run('waterwright book show --kind relabel --book from-export.book');
  expect(shown.out).toContain('by own code');
  expect(console.read('book.jsonl')).not.toMatch(/argon|"salt"|tag"/);
  nothingTells();
});
