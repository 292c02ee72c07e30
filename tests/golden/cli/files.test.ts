// Golden records of files that are no good: torn, foreign, newer, damaged, too large, taken, or held by another process.
import { readFileSync, truncateSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { DatabaseSync } from 'node:sqlite';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { expectGolden } from '../record.ts';
import { Console, type Ran, record } from './console.ts';

let console: Console;
beforeEach(async () => {
  console = await new Console().withPractice();
});
afterEach(() => console.end());

/** Runs each line, and holds that no file of the folder has changed by it. */
async function refusedAll(...lines: readonly (readonly [line: string, code: number])[]): Promise<string> {
  const parts: string[] = [];
  for (const [line, code] of lines) parts.push(record(line, await refused(line, code)));
  return parts.join('\n');
}

async function refused(line: string, code: number): Promise<Ran> {
  const digests = console.digests();
  const ran = await console.run(line);
  expect(console.digests(), line).toEqual(digests);
  expect({ line, code: ran.code, out: ran.out }).toEqual({ line, code, out: '' });
  return ran;
}

const example = (name: string): string =>
  readFileSync(join(import.meta.dirname, '../../../examples/corrie', name), 'utf8');

test('field logs that cannot be read', async () => {
  const lines = example('field-log.jsonl').split('\n');
  console.write('torn.jsonl', lines.slice(0, 4).join('\n').slice(0, -40));
  console.write('other-outpost.jsonl', `${(lines[0] ?? '').replace('"Corrie"', '"Skerry"')}\n`);
  console.write('newer.jsonl', `${(lines[0] ?? '').replace('"version": 1', '"version": 9')}\n`);
  console.write(
    'latin.jsonl',
    Buffer.concat([Buffer.from(`${lines[0]}\n`), Buffer.from('{"id": "\xe9"}\n', 'latin1')]),
  );
  console.write('table.csv', 'day,litres\n1,20\n');
  console.write('empty.jsonl', '');
  console.write('one-line.jsonl', `{"note": "${'x'.repeat(1_000_001)}"}\n`);
  console.write('large.jsonl', `${'y'.repeat(999_999)}\n`.repeat(21));
  expectGolden(
    'cli/files/field-logs.txt',
    await refusedAll(
      ['waterwright import other-outpost.jsonl', 3],
      ['waterwright import newer.jsonl', 3],
      ['waterwright import latin.jsonl', 3],
      ['waterwright import table.csv', 3],
      ['waterwright import empty.jsonl', 3],
      ['waterwright import one-line.jsonl', 3],
      ['waterwright import large.jsonl', 3],
      ['waterwright import latin.jsonl --json', 3],
    ),
  );
});

test('a torn last line is told, and the lines before it are taken', async () => {
  const lines = example('field-log.jsonl').split('\n');
  const added = (lines.at(-2) ?? '').replace('"id": "E0248"', '"id": "E9001"');
  const fresh = lines.find((line) => line.includes('"id": "E0204"')) ?? added;
  console.write('torn.jsonl', `${fresh}\n${fresh.replace('E0204', 'E9002').slice(0, 60)}`);
  const line = 'waterwright import torn.jsonl';
  expectGolden('cli/files/torn.txt', record(line, await console.run(line)));
});

test('the same id with other content is not taken', async () => {
  const lines = example('field-log.jsonl').split('\n');
  const changed = (lines[1] ?? '').replace('"dispenser_strokes": 423', '"dispenser_strokes": 432');
  expect(changed).not.toBe(lines[1]);
  console.write('changed.jsonl', `${changed}\n`);
  expectGolden('cli/files/same-id.txt', await refusedAll(['waterwright import changed.jsonl', 3]));
});

test('many entries at once want a yes', async () => {
  const empty = new Console();
  empty.write('outpost.yaml', example('outpost.yaml'));
  empty.write('log.jsonl', example('field-log.jsonl'));
  expect((await empty.run('init --outpost outpost.yaml --book a.book')).code).toBe(0);
  const book = ['--book', 'a.book'];
  const digests = empty.digests();
  const [asked, looked] = [
    await empty.run(['import', 'log.jsonl', ...book]),
    await empty.run(['import', 'log.jsonl', '-n', ...book]),
  ];
  const person = (reply: string) => ({ replies: [reply], env: { NO_COLOR: '1' } });
  const no = await empty.run(['import', 'log.jsonl', ...book], person('no'));
  expect([asked.code, looked.code, no.code]).toEqual([2, 0, 2]);
  expect(empty.digests()).toEqual(digests);
  const yes = await empty.run(['import', 'log.jsonl', ...book], person('yes'));
  expect(yes.code).toBe(0);
  const parts = [
    record('waterwright import log.jsonl --book a.book', asked),
    record('waterwright import log.jsonl --book a.book -n', looked),
    record('waterwright import log.jsonl --book a.book', no),
    record('waterwright import log.jsonl --book a.book', yes),
  ];
  expectGolden('cli/files/many-entries.txt', parts.join('\n'));
  empty.end();
});

test('exports that do not fit', async () => {
  expect((await console.run('book export -o whole.jsonl')).code).toBe(0);
  const lines = console.read('whole.jsonl').split('\n');
  const changed = lines.map((line, k) => (k === 5 ? line.replace(/"value":(\d+)/, '"value":1$1') : line));
  expect(changed).not.toEqual(lines);
  console.write('changed.jsonl', changed.join('\n'));
  console.write('gap.jsonl', lines.filter((_, k) => k !== 5).join('\n'));
  console.write('newer.jsonl', lines.join('\n').replace('"version":1}', '"version":2}'));
  console.write('torn.jsonl', lines.slice(0, 9).join('\n').slice(0, -30));
  expectGolden(
    'cli/files/exports.txt',
    await refusedAll(
      ['waterwright import changed.jsonl', 3],
      ['waterwright import changed.jsonl --book new.book', 3],
      ['waterwright import gap.jsonl --book new.book', 3],
      ['waterwright import newer.jsonl --book new.book', 3],
      ['waterwright import newer.jsonl', 3],
      ['waterwright import torn.jsonl --book new.book', 3],
      ['waterwright import whole.jsonl --dry-run --book new.book', 2],
      ['waterwright import whole.jsonl --site ground', 2],
    ),
  );
});

test('outpost files that do not fit', async () => {
  const outpost = example('outpost.yaml');
  console.write('twice.yaml', `${outpost}\noutpost:\n  name: Again\n`);
  console.write('alias.yaml', 'a: &a [1, 2]\nb: [*a, *a]\n');
  console.write('proto.yaml', `__proto__: { isAdmin: true }\n${outpost}`);
  console.write('deep.yaml', `a: ${'['.repeat(500)}${']'.repeat(500)}\n`);
  console.write(
    'wrong.yaml',
    outpost
      .replace('waterDensityKgPerM3: 997.8', 'waterDensityKgPerM3: heavy')
      .replace('people: 4', 'peeple: 4'),
  );
  const lines = ['twice', 'alias', 'proto', 'deep', 'wrong'].map(
    (name) => [`waterwright init --outpost ${name}.yaml --book new.book`, 3] as const,
  );
  expectGolden(
    'cli/files/outposts.txt',
    await refusedAll(...lines, ['waterwright book outpost wrong.yaml', 3]),
  );
});

test('files that are no book, or not a whole one', async () => {
  const path = (name: string) => join(console.folder, name);
  const bytes = readFileSync(path('waterwright.book'));
  console.write('note.txt', 'this is no book\n');
  console.write('empty.book', '');
  const foreign = new DatabaseSync(path('foreign.db'));
  foreign.exec('CREATE TABLE a (b TEXT)');
  foreign.close();
  writeFileSync(path('newer.book'), bytes);
  const newer = new DatabaseSync(path('newer.book'));
  newer.exec('PRAGMA user_version = 99');
  newer.close();
  writeFileSync(path('short.book'), bytes);
  truncateSync(path('short.book'), bytes.length - 9000);
  expectGolden(
    'cli/files/no-books.txt',
    await refusedAll(
      ['waterwright today --book note.txt', 3],
      ['waterwright log drink 8 --book note.txt', 3],
      ['waterwright today --book empty.book', 3],
      ['waterwright today --book foreign.db', 3],
      ['waterwright today --book newer.book', 3],
      ['waterwright today --book short.book', 6],
      ['waterwright log drink 8 --book short.book', 6],
      ['waterwright today --book .', 2],
      ['waterwright import note.txt', 3],
    ),
  );
});

test('a flipped letter inside an entry is found by the check, and by nothing else', async () => {
  const path = join(console.folder, 'waterwright.book');
  const bytes = readFileSync(path);
  const at = bytes.indexOf('loader');
  expect(at).toBeGreaterThan(0);
  bytes[at] = (bytes[at] ?? 0) ^ 1;
  writeFileSync(path, bytes);
  const line = 'waterwright book check';
  const checked = await console.run(line);
  expect(checked.code).toBe(6);
  expectGolden('cli/files/flipped.txt', record(line, checked));
});

test('a book that lost its newest entries is noticed by the receipt beside it', async () => {
  const before = readFileSync(join(console.folder, 'waterwright.book'));
  expect((await console.run('log drink 8')).code).toBe(0);
  writeFileSync(join(console.folder, 'waterwright.book'), before);
  const lines = [
    ['waterwright log drink 8', 6],
    ['waterwright today -q', 0],
    ['waterwright book check', 6],
  ] as const;
  const parts: string[] = [];
  for (const [line, code] of lines) {
    const ran = await console.run(line);
    expect({ line, code: ran.code }).toEqual({ line, code });
    parts.push(record(line, ran.code === 0 ? { ...ran, out: '(Today, as ever)\n' } : ran));
  }
  expectGolden('cli/files/receipt.txt', parts.join('\n'));
});

test('a book that another process holds is waited for, and then named with its owner', async () => {
  const holder = new DatabaseSync(join(console.folder, 'waterwright.book'));
  holder.exec('BEGIN EXCLUSIVE');
  const ran = await console.run('waterwright log drink 8');
  holder.exec('ROLLBACK');
  holder.close();
  expect(ran.code).toBe(75);
  expect(ran.out).toBe('');
  expect(ran.err).toContain('[book-busy]');
  expect((await console.run('waterwright log drink 8')).code).toBe(0);
}, 20_000);
