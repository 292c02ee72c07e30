// English for what can be wrong with a command line and with the files that it names.
import type { FindingData, Where } from '../../../ground/units/index.ts';
import type { CliFindingCode } from '../cli-codes.ts';
import type { Words } from '../shape.ts';
import { listOf, maybeNumber, maybeText, numberOf, textOf } from './data.ts';
import { counted, listed } from './said.ts';
import { say } from './say.ts';

const nothing = 'Nothing was written.';
const file = (where: Where): string => where.file ?? 'the file';
const help = (command: string): string => `waterwright help${command === '' ? '' : ` ${command}`}`;

function meant(near: readonly string[], otherwise: string): string {
  return near.length === 0 ? otherwise : `Did you mean ${listed(near, 'or')}? ${otherwise}`;
}

/** `20 MB`: caps are round numbers of bytes. */
function size(bytes: number): string {
  return bytes < 1_000_000 ? counted(bytes, 'byte') : `${Math.round(bytes / 1_000_000)}\u00A0MB`;
}

/** What the system calls a fault of a file, for people. */
const systemWords: ReadonlyMap<string, string> = new Map([
  ['ENOENT', 'there is none'],
  ['ENOTDIR', 'a part of its path is no folder'],
  ['EISDIR', 'it is a folder'],
  ['EACCES', 'this user may not'],
  ['EPERM', 'this user may not'],
  ['ENOSPC', 'the disk is full'],
  ['EROFS', 'the disk cannot be written'],
]);

function because(data: FindingData): string {
  const says = textOf(data, 'says');
  return systemWords.get(says) ?? `the system says ${says}`;
}

const commandLine: Words<
  Extract<CliFindingCode, `command-${string}` | `flag${string}` | `argument-${string}`>
> = {
  'command-unknown': (data) =>
    say(
      `There is no command "${textOf(data, 'name')}".`,
      'the name of a command',
      `"${textOf(data, 'name')}"`,
      meant(listOf(data, 'nearest'), `All commands: ${help('')}.`),
    ),
  'command-unfinished': (data) =>
    say(
      `"${textOf(data, 'command')}" wants a second word.`,
      listed(listOf(data, 'words'), 'or'),
      'nothing more',
      `What they do: ${help(textOf(data, 'command'))}.`,
    ),
  'flag-unknown': (data) =>
    say(
      `"${textOf(data, 'command')}" has no flag ${textOf(data, 'flag')}. ${nothing}`,
      'a flag of this command',
      textOf(data, 'flag'),
      meant(listOf(data, 'nearest'), `Its flags: ${help(textOf(data, 'command'))}.`),
    ),
  'flag-without-value': (data) =>
    say(
      `${textOf(data, 'flag')} wants a value. ${nothing}`,
      `${textOf(data, 'flag')} ${textOf(data, 'value')}`,
      'no value',
      `Give it behind the flag: ${textOf(data, 'flag')} ${textOf(data, 'value')}.`,
    ),
  'flag-with-value': (data) =>
    say(
      `${textOf(data, 'flag')} takes no value. ${nothing}`,
      `${textOf(data, 'flag')} alone`,
      `"${textOf(data, 'received')}"`,
      'Leave the value out.',
    ),
  'flag-value-wrong': (data) =>
    say(
      `${textOf(data, 'flag')} does not take "${textOf(data, 'received')}". ${nothing}`,
      listed(listOf(data, 'wanted'), 'or'),
      `"${textOf(data, 'received')}"`,
      listOf(data, 'nearest').length === 0
        ? `It takes ${listed(listOf(data, 'wanted'), 'or')}.`
        : `Did you mean ${listed(listOf(data, 'nearest'), 'or')}?`,
    ),
  'flag-twice': (data) =>
    say(
      `${textOf(data, 'flag')} stands there more than once. ${nothing}`,
      'one value',
      'more than one',
      'Say it once.',
    ),
  'flags-clash': (data) =>
    say(
      `${textOf(data, 'first')} and ${textOf(data, 'second')} say two different things. ${nothing}`,
      'one of the two',
      'both',
      `Leave ${textOf(data, 'first')} or ${textOf(data, 'second')} out.`,
    ),
  'flag-needed': (data) =>
    say(
      `"${textOf(data, 'command')}" needs ${textOf(data, 'flag')}. ${nothing}`,
      textOf(data, 'flag'),
      'none',
      `${maybeText(data, 'because') ?? 'Add it.'} More: ${help(textOf(data, 'command'))}.`,
    ),
  'argument-missing': (data) =>
    say(
      `"${textOf(data, 'command')}" wants ${textOf(data, 'argument')}. ${nothing}`,
      textOf(data, 'argument'),
      'nothing',
      `For example: ${textOf(data, 'example')}. More: ${help(textOf(data, 'command'))}.`,
    ),
  'argument-extra': (data) =>
    say(
      `"${textOf(data, 'received')}" is one word too many for "${textOf(data, 'command')}". ${nothing}`,
      'fewer words',
      `"${textOf(data, 'received')}"`,
      `For example: ${textOf(data, 'example')}. A text of several words stands in quotes.`,
    ),
};

export const cliWords: Words<CliFindingCode> = {
  ...commandLine,
  'no-book-found': (data) =>
    say(
      'There is no book yet.',
      'a book at one of the usual places',
      `none at ${listed(listOf(data, 'places'), 'and')}`,
      'To practise: waterwright init --practice. To begin a real one: waterwright init --outpost FILE. A book elsewhere: --book PATH.',
    ),
  'file-not-read': (data, where) =>
    say(
      `${file(where)} cannot be read: ${because(data)}. ${nothing}`,
      'a file that can be read',
      because(data),
      'Check the name and the folder.',
    ),
  'file-not-written': (data, where) =>
    say(
      `${file(where)} cannot be written: ${because(data)}.`,
      'a file that can be written',
      because(data),
      'Name another file, or another folder.',
    ),
  'output-is-book': (_, where) =>
    say(
      `${file(where)} is a book, or the receipt of one: nothing is written over it. ${nothing}`,
      'another file',
      file(where),
      'Name another file with -o. A copy of a book is made by waterwright book backup TARGET.',
    ),
  'input-file-too-large': (data, where) => {
    const most = size(numberOf(data, 'most'));
    const bytes = maybeNumber(data, 'bytes');
    return say(
      `${file(where)} is larger than ${most}. ${nothing}`,
      `at most ${most}`,
      bytes === null ? `more than ${most}` : size(bytes),
      'Check that this is the right file. A long log is imported in parts: what is in the book already is not added twice.',
    );
  },
  'line-of-file-too-long': (data, where) => {
    const most = size(numberOf(data, 'most'));
    return say(
      `Line ${where.line ?? ''} of ${file(where)} is longer than ${most}. ${nothing}`,
      `lines of at most ${most}`,
      'a longer one',
      'Check that this is the right file.',
    );
  },
  'file-not-text': (_, where) =>
    say(
      `${file(where)} is not written in UTF-8. ${nothing}`,
      'text in UTF-8',
      `other bytes in line ${where.line ?? '?'}`,
      'Save it as UTF-8 and try again.',
    ),
  'program-not-whole': (data) =>
    say(
      `A part of this program is missing: ${textOf(data, 'what')}.`,
      'a whole clone',
      'a part of one',
      'Get the clone anew.',
    ),
  'program-failed': (data) =>
    say(
      'Waterwright itself failed. What was acknowledged before is safe in the book.',
      'no failure of the program',
      textOf(data, 'says'),
      'Try it again with --verbose and keep the text that it prints. To see that the book is whole: waterwright book check.',
    ),
  'day-sheet-line': (data, where) =>
    say(
      `Line ${where.line ?? ''} of ${file(where)} is no reading: "${textOf(data, 'received')}". ${nothing}`,
      'a name and a value, such as: strokes 455',
      `"${textOf(data, 'received')}"`,
      meant(
        listOf(data, 'nearest'),
        `A line is NAME VALUE, NAME: VALUE or NAME,VALUE; - is no reading. The meters here: ${listed(listOf(data, 'names'))}.`,
      ),
    ),
  'day-sheet-form': (data, where) =>
    say(
      `${file(where)} is no day sheet. ${nothing}`,
      'lines of NAME VALUE, or one JSON object of names and values',
      textOf(data, 'received'),
      `The meters here: ${listed(listOf(data, 'names'))}.`,
    ),
  'day-sheet-count': (data, where) =>
    say(
      `${file(where)} has ${counted(numberOf(data, 'values'), 'value')} without names, and the day line has ${counted(numberOf(data, 'wanted'), 'meter')}. ${nothing}`,
      `${counted(numberOf(data, 'wanted'), 'value')}, - where nothing was read`,
      counted(numberOf(data, 'values'), 'value'),
      'Give one value for each meter, or the names with them: NAME VALUE.',
    ),
  'kind-has-command': (data) =>
    say(
      `Entries of the kind "${textOf(data, 'kind')}" have a command of their own. ${nothing}`,
      `waterwright ${textOf(data, 'command')}`,
      `log ${textOf(data, 'kind')}`,
      `See: ${help(textOf(data, 'command'))}.`,
    ),
  'count-file-unreadable': (_, where) =>
    say(
      `${file(where)} is no stock count that can be read. ${nothing}`,
      'what was typed of a stock count, as this program keeps it',
      'something else',
      'Move the file away and keep it, or begin anew without it: waterwright count start --yes.',
    ),
  'json-unreadable': (data, where) =>
    say(
      `${file(where)} is no JSON object. ${nothing}`,
      'one JSON object: the fields of the entry',
      textOf(data, 'received'),
      'The fields of a kind: waterwright help log KIND.',
    ),
};
