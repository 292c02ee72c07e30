// A command that a sentence names is one that the program has, with the flags that it takes.
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { galleryRooms } from './gallery/rooms.ts';
import { commandsMarked, commandsNamed, whatIsWrongWith } from './named-commands.ts';

const PAPERS = join(import.meta.dirname, '../../src/papers');

function faultsOf(lines: readonly string[]): readonly string[] {
  const different = [...new Set(lines)];
  // A test that saw no command has seen nothing.
  expect(different.length).toBeGreaterThan(30);
  return different.flatMap((line) => whatIsWrongWith(line) ?? []);
}

// The whole gallery is made for it.
test('in every sentence of the gallery', { timeout: 120_000 }, async () => {
  const rooms = await galleryRooms();
  const findings = rooms.flatMap(({ entries }) =>
    entries.flatMap(({ failures }) => failures.map(({ finding }) => finding)),
  );
  const sentences = findings.flatMap(({ text, expected, received, remedy }) => [
    text,
    expected,
    received,
    remedy,
  ]);
  expect(faultsOf(sentences.flatMap((each) => [...commandsNamed(each), ...commandsMarked(each)]))).toEqual(
    [],
  );
});

test('in every text of the papers, also those that no sample brings', () => {
  const files = readdirSync(PAPERS, { recursive: true, encoding: 'utf8' });
  const sources = files.filter((name) => name.endsWith('.ts') && !name.endsWith('.test.ts'));
  const lines = sources.flatMap((name) => textsOf(readFileSync(join(PAPERS, name), 'utf8')));
  const faults = faultsOf(lines.flatMap(commandsNamed));
  // Of a command that is filled in whole, only the gallery can tell.
  expect(faults.filter((fault) => !fault.endsWith('begins with: WORD'))).toEqual([]);
});

/** Pieces of the texts in a source: what is filled in is one word, or ends the command where it is a part of one. */
function textsOf(source: string): readonly string[] {
  const filled = /(?<=([ "]?))\$\{[^{}]*(?:\{[^{}]*\}[^{}]*)*\}/g;
  return source.replace(filled, (_, before: string) => (before === '' ? ';' : 'WORD')).split(/\n|'/);
}

test.each([
  ['Do it: waterwright store sho C-07.', 'no command begins with: store sho C-07'],
  ['To see: waterwright log weather --at TIME.', 'no kind of entry: weather in log weather --at TIME'],
  ['Pump: waterwright log empty V-1 --flow-stoped.', 'log empty has no flag --flow-stoped'],
  ['Run `book chek` once.', 'no command begins with: book chek'],
])('control: %s', (text, fault) => {
  expect([...commandsNamed(text), ...commandsMarked(text)].map(whatIsWrongWith)).toEqual([fault]);
});

test('a command ends with its sentence, and names may have spaces', () => {
  const text =
    'Put it on: waterwright log hookup STORE "tap feed" --at TIME. If not: waterwright log undo holm:2, and again.';
  expect(commandsNamed(text)).toEqual(['log hookup STORE "tap feed" --at TIME', 'log undo holm:2']);
  expect(commandsNamed(text).map(whatIsWrongWith)).toEqual([null, null]);
});
