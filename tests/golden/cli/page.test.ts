// Holds docs/command-line.md against the tables of the program, and runs every example that the help shows.
import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { formKinds, formOf, USES } from '../../../src/desk/index.ts';
import {
  ALL_FLAGS,
  CIRCUMSTANCE_FLAGS,
  COMMANDS,
  type Command,
  EXIT,
  type Flag,
  flagsOf,
  GLOBAL_FLAGS,
} from '../../../src/doors/cli/index.ts';
import { Console } from './console.ts';

const PAGE = join(import.meta.dirname, '../../../docs/command-line.md');

const regions: Readonly<Record<string, () => string>> = {
  flags: () => tableOf(GLOBAL_FLAGS),
  circumstances: () => tableOf(CIRCUMSTANCE_FLAGS),
  commands: () => COMMANDS.map(sectionOf).join('\n\n'),
  kinds: () => formKinds.map(kindLine).join('\n'),
};

function tableOf(flags: readonly Flag[]): string {
  const rows = flags.map((flag) => `| \`${calledAs(flag)}\` | ${flag.what} |`);
  return ['| flag | what it does |', '|---|---|', ...rows].join('\n');
}

function calledAs({ name, short, value }: Flag): string {
  const long = value === undefined ? `--${name}` : `--${name} ${value.replaceAll('|', '\\|')}`;
  return short === undefined ? long : `-${short}\`, \`${long}`;
}

function sectionOf(command: Command): string {
  const args = command.args.map(({ name, optional }) => (optional === true ? `[${name}]` : name));
  const told = [...GLOBAL_FLAGS, ...CIRCUMSTANCE_FLAGS];
  const own = flagsOf(command).filter((flag) => !told.includes(flag));
  const width = Math.max(...command.examples.map(([line]) => line.length)) + 3;
  const examples = command.examples.map(([line, does]) =>
    does === '' ? line : `${line.padEnd(width)}# ${does}`,
  );
  return [
    `### \`${[...command.path, ...args].join(' ')}\``,
    `${command.does.charAt(0).toUpperCase()}${command.does.slice(1)}.`.replace('?.', '?'),
    ['```', ...examples, '```'].join('\n'),
    ...(command.more ?? []),
    ...command.args.map(({ name, what }) => `- ${name}: ${what}`),
    ...own.map((flag) => `- \`${calledAs(flag).replaceAll('\\|', '|')}\`: ${flag.what}`),
  ].join('\n');
}

function kindLine(kind: string): string {
  const fields = (formOf(kind) ?? []).map(({ name, needed }) => (needed ? name : `[${name}]`));
  return `- \`${kind}\`: ${fields.join(', ')}`;
}

function pageWith(text: string): string {
  return Object.entries(regions).reduce((page, [name, make]) => {
    const [start, end] = [`<!-- from the tables: ${name} -->\n`, '<!-- end -->'];
    const at = page.indexOf(start) + start.length;
    expect(at, `the page has no region ${name}`).toBeGreaterThan(start.length);
    return `${page.slice(0, at)}${make()}\n${page.slice(page.indexOf(end, at))}`;
  }, text);
}

test('the page about the command line says what the tables say', () => {
  const text = readFileSync(PAGE, 'utf8');
  const wanted = pageWith(text);
  if (process.env['WATERWRIGHT_GOLDEN'] === 'write') writeFileSync(PAGE, wanted);
  else expect(text, 'differs from the tables; run: npm run golden').toBe(wanted);
});

test('the table of exit codes on the page has every code of the program', () => {
  const text = readFileSync(PAGE, 'utf8');
  for (const code of Object.values(EXIT)) expect(text).toContain(`\n| ${code} | `);
});

test('help names every use of water', () => {
  const { what = '' } = ALL_FLAGS.find(({ name }) => name === 'for') ?? {};
  expect(what.split(/, | or /)).toEqual([...USES]);
});

const OPENING = {
  asOf: '2147-02-28T21:00Z',
  peopleAboard: 4,
  stores: [{ store: 'R1', amount: '172 L+-6', grade: 'drinking' }],
};

/** What an example needs beside the practice book, and the code with which it ends where that is not 0. */
const needs: Readonly<
  Record<
    string,
    {
      readonly code?: number;
      readonly before?: readonly string[];
      readonly book?: boolean;
      /** What is typed at the prompts of the commands before it, and of itself. */
      readonly typed?: readonly (readonly string[])[];
    }
  >
> = {
  'waterwright init --practice': { book: false },
  'waterwright init --practice --until D46': { book: false },
  'waterwright init --outpost my-outpost.yaml': {
    book: false,
    before: ['init --template corrie -o my-outpost.yaml'],
  },
  'waterwright log opening --from opening.json': {
    book: false,
    before: ['init --template corrie -o o.yaml', 'init --outpost o.yaml'],
  },
  'waterwright count finish --dry-run': { before: ['count add c10 20.8L'] },
  'waterwright count finish --second chief': { before: ['count add c10 20.8L'] },
  'waterwright log undo': { before: ['log drink 8'] },
  'waterwright hold waive Q-02 --until D62 --reason "nothing else is left" --second medic': {
    before: ['hold add c02 --reason "smells of plastic"'],
  },
  'waterwright hold park Q-02 --owner medic --until D66': {
    before: ['hold add c02 --reason "smells of plastic"'],
  },
  'waterwright import export.jsonl --book copy.book': { before: ['book export -o export.jsonl'] },
  'waterwright book code set medic': { typed: [['73915', '73915']] },
  'waterwright book code set medic --lost --second keeper': {
    before: ['book code set medic', 'book code set keeper'],
    typed: [
      ['73915', '73915'],
      ['48213', '48213'],
      ['48213', '60517', '60517'],
    ],
  },
  'waterwright log correct 250 --value 6 --reason miscounted': { before: ['log drink 8'] },
};

const examples = COMMANDS.flatMap(({ examples }) => examples.map(([line]) => line));

test.each(examples)('the example runs: %s', async (line) => {
  const { before = [], book = true, typed = [] } = needs[line] ?? {};
  const console = new Console();
  if (book) await console.withPractice('waterwright.book', 'whole');
  console.write('evening.txt', 'strokes 455\nproduct 6.9 L\ncondensate -\n');
  console.write(
    'field-log.jsonl',
    readFileSync(join(import.meta.dirname, '../../../examples/corrie/field-log.jsonl')),
  );
  console.write('opening.json', JSON.stringify(OPENING));
  console.write(
    'april.csv',
    'Date;Clock;Strokes;Remarks;Initials\n01.05.2147;21:00;440;;ik\n02.05.2147;21:02;455;loud;ik\n13.05.2147;20:58;431;;ik\n',
  );
  for (const [k, words] of before.entries()) {
    const replies = typed[k];
    const { code } = await console.run(words, replies === undefined ? {} : { replies });
    expect({ words, code }).toEqual({ words, code: 0 });
  }
  const ran = await console.run(line, {
    replies: typed[before.length] ?? Array.from({ length: 8 }, () => '-'),
    env: { NO_COLOR: '1' },
  });
  expect({ line, code: ran.code, err: ran.code === 0 ? '' : ran.err }).toEqual({ line, code: 0, err: '' });
  console.end();
});
