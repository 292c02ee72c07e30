// Table of command lines that cannot be carried out as they were typed.
import type { CliFindingCode } from '../../../src/papers/index.ts';
import { failure, type Sample, type Samples, sample, writtenOut } from './sample.ts';
import {
  type TypedFile,
  typedAfter,
  typedFailure,
  typedWithoutBook,
  typedWithoutClock,
} from './typed-lines.ts';

type Line = readonly [line: string, file?: TypedFile];

function typed(code: CliFindingCode, when: string, ...lines: readonly [Line, ...Line[]]): Sample {
  const [[line, file], ...others] = lines;
  const more = others.map(
    ([other, itsFile]) =>
      () =>
        typedFailure(code, other, itsFile),
  );
  return sample(when, () => typedFailure(code, line, file), ...more);
}

const words = {
  'command-unknown': typed(
    'command-unknown',
    'The first words name no command.',
    ['tody'],
    ['book shw'],
    ['log sampel'],
  ),
  'command-unfinished': typed('command-unfinished', 'A command of two words was given one.', ['book']),
  'flag-unknown': typed('flag-unknown', 'A flag that this command does not take.', ['today --pretty']),
  'flag-without-value': typed('flag-without-value', 'A flag that takes a value was given none.', [
    'today --at',
  ]),
  'flag-with-value': typed('flag-with-value', 'A flag that takes no value was given one.', [
    'today --plain=yes',
  ]),
  'flag-value-wrong': typed('flag-value-wrong', 'A flag was given a value that it does not take.', [
    'today --units gallons',
  ]),
  'flag-twice': typed('flag-twice', 'One flag with two values.', ['today --at D1 --at D2']),
  'flags-clash': typed('flags-clash', 'Two flags that say two different things.', [
    'today --at D1 --as-of D2',
  ]),
  'flag-needed': typed(
    'flag-needed',
    'A command lacks a flag without which it cannot be carried out.',
    ['log use 1L'],
    ['init'],
  ),
  'argument-missing': typed('argument-missing', 'A command lacks a word.', ['log weigh']),
  'argument-extra': typed('argument-extra', 'A command was given one word too many.', ['today now']),
  'kind-has-command': typed(
    'kind-has-command',
    'Entries of this kind have a command that is easier to type.',
    ['log day-close'],
  ),
} satisfies Partial<Samples<CliFindingCode>>;

const sheet = (content: string): TypedFile => ({ name: 'evening.txt', content });

const files = {
  'no-book-found': sample('No book was named, and none is at the usual places.', () =>
    typedWithoutBook('no-book-found', 'today'),
  ),
  'file-not-read': typed('file-not-read', 'A file that was named cannot be read.', ['import none.jsonl']),
  'file-not-written': typed('file-not-written', 'The file for the data cannot be written.', [
    'today -o none/today.txt',
  ]),
  'output-is-book': typed('output-is-book', 'The data would be written over a book or its receipt.', [
    'today -o waterwright.book',
  ]),
  'input-file-too-large': typed('input-file-too-large', 'A file is larger than any that is read.', [
    'import log.jsonl',
    { name: 'log.jsonl', content: '{}', bytes: 25_000_000 },
  ]),
  'line-of-file-too-long': typed('line-of-file-too-long', 'A file has a line longer than any that is read.', [
    'import long.jsonl',
    { name: 'long.jsonl', content: `{"note":"${'x'.repeat(1_000_000)}"}` },
  ]),
  'file-not-text': typed('file-not-text', 'A file is not written in UTF-8.', [
    'import latin.jsonl',
    { name: 'latin.jsonl', content: Uint8Array.from([0x7b, 0x7d, 0x0a, 0xe9, 0x0a]) },
  ]),
  'json-unreadable': typed(
    'json-unreadable',
    'The fields of an entry were to be read from a file that is no JSON.',
    ['log sample --from sample.json', { name: 'sample.json', content: 'store: R2' }],
  ),
  'day-sheet-line': typed('day-sheet-line', 'A line of a day sheet names no meter.', [
    'log day --from evening.txt',
    sheet('strokes 455\nprodukt 6.9\n'),
  ]),
  'day-sheet-form': typed('day-sheet-form', 'A day sheet has nothing in it.', [
    'log day --from evening.txt',
    sheet('# nothing read tonight\n'),
  ]),
  'day-sheet-count': typed('day-sheet-count', 'Bare values, more or fewer than there are meters.', [
    'log day --from evening.txt',
    sheet('455\n6.9\n'),
  ]),
  'count-file-unreadable': sample(
    'What was typed of a stock count, in the small file beside the book, cannot be read.',
    () =>
      typedAfter(
        'count-file-unreadable',
        'book backup counted.book',
        'today -o counted.book.stock-count',
        'count show --book counted.book',
      ),
  ),
  'program-not-whole': writtenOut(
    'A part of the program is not there.',
    'the clone that runs the tests is whole.',
    failure(['waterwright init --practice'], {
      code: 'program-not-whole',
      severity: 'error',
      where: {},
      data: { what: 'examples/corrie/outpost.yaml' },
      entries: [],
    }),
  ),
  'program-failed': sample('The program itself failed; here its clock was taken away.', () =>
    typedWithoutClock('program-failed', 'today'),
  ),
} satisfies Partial<Samples<CliFindingCode>>;

export const cliSamples: Samples<CliFindingCode> = { ...words, ...files };
