// Golden records of two untidy sheets: looked at, taken, asked about, settled, and imported once more.
import { cpSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { expectGolden } from '../record.ts';
import { Console, record } from './console.ts';

const SHEETS = join(import.meta.dirname, '../../../examples/spreadsheet');
let console: Console;

beforeAll(async () => {
  console = new Console('spreadsheet');
  const made = await console.run('init --practice --until D31 --book april.book');
  expect(made.code).toBe(0);
  for (const name of ['april-days.csv', 'april-acts.tsv'])
    cpSync(join(SHEETS, name), join(console.folder, name));
});
afterAll(() => console.end());

async function session(...lines: readonly string[]): Promise<string> {
  const parts: string[] = [];
  for (const line of lines) parts.push(record(line, await console.run(`${line} --book april.book`)));
  return parts.join('\n');
}

// One after the other on one book: the order is that of a keeper.
test('the days of April, and the acts, are looked at first', async () => {
  const before = console.digests();
  const said = await session(
    'waterwright import april-acts.tsv --dry-run',
    'waterwright import april-days.csv --dry-run --width 100',
    'waterwright import april-days.csv --dry-run --plain',
  );
  expect(console.digests()).toEqual(before);
  expectGolden('cli/spreadsheet/looked-at.txt', said);
});

test('good lines become entries, doubtful ones wait, and the same sheet again adds nothing', async () => {
  expectGolden(
    'cli/spreadsheet/imported.txt',
    await session(
      'waterwright import april-days.csv',
      'waterwright import april-acts.tsv',
      'waterwright import april-days.csv',
      'waterwright inbox list',
      'waterwright inbox list --plain',
      'waterwright today --width 100',
    ),
  );
});

test('what waits is shown, taken with what it lacks, or dropped', async () => {
  const [voice, unitless, store, lostPoint, noAct] = await waiting('april-acts.tsv', [16, 20, 30, 33, 39]);
  const [words, one, other, formula, total] = await waiting('april-days.csv', [14, 24, 25, 29, 37]);
  const said = await session(
    `waterwright inbox show ${voice}`,
    `waterwright inbox take ${voice} --unit L`,
    `waterwright inbox take ${unitless}`,
    `waterwright inbox take ${unitless} --unit kg --dry-run`,
    `waterwright inbox take ${unitless} --unit kg`,
    `waterwright inbox take ${store} --store c10`,
    `waterwright inbox take ${lostPoint} --set "Amount=20.4 L"`,
    `waterwright inbox take ${noAct} --act note`,
    `waterwright inbox show ${words}`,
    `waterwright inbox take ${words} --set "Dispenser strokes=440"`,
    `waterwright inbox drop ${one} --reason "the second one is right"`,
    `waterwright inbox take ${other}`,
    `waterwright inbox take ${formula} --set "Condensate totaliser (L)=228.3"`,
    `waterwright inbox drop ${total} --reason "a sum"`,
    `waterwright inbox drop ${total} --reason "a sum"`,
    'waterwright inbox list',
    'waterwright inbox list --all --width 100',
    'waterwright import april-days.csv',
    'waterwright import april-acts.tsv',
    'waterwright book check',
  );
  expectGolden('cli/spreadsheet/settled.txt', said);
});

/** Numbers of the lines of a file that wait, in the order asked for. */
async function waiting(file: string, lines: readonly number[]): Promise<readonly string[]> {
  const { out } = await console.run('inbox list --all --json --book april.book');
  const { data } = JSON.parse(out) as { data: { lines: { ref: string; file: string; line: number }[] } };
  return lines.map((line) => {
    const found = data.lines.find((each) => each.file === file && each.line === line);
    if (found === undefined) throw new Error(`line ${line} of ${file} does not wait`);
    return found.ref.replace(/^\S+ /, '');
  });
}
