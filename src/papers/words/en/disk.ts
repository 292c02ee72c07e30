// English for what can be wrong with the file that keeps a book, and with the disk under it.
import type { DiskFindingCode } from '../../../book/index.ts';
import { type FindingData, formatIsoUtc, type Where } from '../../../ground/units/index.ts';
import type { Sentences, Words } from '../shape.ts';
import { maybeNumber, maybeText, numberOf, textOf } from './data.ts';
import { counted, saidSpan } from './said.ts';

function say(text: string, expected: string, received: string, remedy: string): Sentences {
  return { text, expected, received, remedy };
}

const file = (where: Where): string => where.file ?? 'the book';

/** What the system itself said, for whoever looks deeper. */
const says = (data: FindingData): string => maybeText(data, 'says') ?? 'nothing more';

const goBack =
  'Keep this file as it is, and go back to the newest copy of the book that passes `book check`.';

/** Whoever holds the book, as far as it is known: `log day (process 4711), since 2147-04-15T21:00Z`. */
function holder(data: FindingData): string {
  const pid = maybeNumber(data, 'pid');
  const command = maybeText(data, 'command');
  const since = maybeNumber(data, 'sinceMs');
  if (pid === null) return 'another process, which could not be named';
  const name = command === null ? `process ${pid}` : `"${command}" (process ${pid})`;
  return since === null ? name : `${name}, which has it open since ${formatIsoUtc(since)}`;
}

function waited(waitedMs: number): string {
  return waitedMs < 60_000 ? counted(Math.round(waitedMs / 1000), 'second') : saidSpan(waitedMs / 60_000);
}

const WHY_STOPPED: Readonly<Record<string, string>> = {
  'receipt-ahead': 'the receipt beside it knows more entries than it does',
  'receipt-differs': 'the receipt beside it was written for another copy',
  'receipt-foreign': 'the receipt beside it belongs to another book',
  'book-damaged': 'a page of it could not be read as it was written',
  'disk-error': 'the disk failed while it was written',
};

const stoppedByReceipt = (because: string): boolean => because.startsWith('receipt-');

export const diskWords: Words<DiskFindingCode> = {
  'book-missing': (_, where) =>
    say(
      `There is no book at ${file(where)}.`,
      'the file of a book',
      'no file',
      'Give the path with --book, or make a book with `init`.',
    ),
  'book-exists': (_, where) =>
    say(
      `There is a file at ${file(where)} already.`,
      'a path that is free',
      'a file',
      'Choose another path, or move that file away first. It was not touched.',
    ),
  'folder-missing': (data, where) =>
    say(
      `There is no folder ${maybeText(data, 'folder') ?? ''} for ${file(where)}.`,
      'a folder that is there',
      'no folder',
      'Make the folder first, or correct the path.',
    ),
  'not-a-file': (_, where) =>
    say(`${file(where)} is a folder.`, 'the file of a book', 'a folder', 'Give the path of the file in it.'),
  'book-empty': (_, where) =>
    say(`${file(where)} is an empty file.`, 'a book', 'no bytes', `A book is never empty. ${goBack}`),
  'not-a-book': (_, where) =>
    say(
      `${file(where)} is no book.`,
      'a file that this program made',
      'another file, or one that lost its beginning',
      'Check the path. The file was not touched.',
    ),
  'book-foreign': (_, where) =>
    say(
      `${file(where)} belongs to another program.`,
      'a file that this program made',
      'a database of another program',
      'Check the path. The file was not touched.',
    ),
  'book-newer': (data, where) =>
    say(
      `${file(where)} was made by a newer program.`,
      `a book of version ${textOf(data, 'known')} or older`,
      `version ${textOf(data, 'version')}`,
      'Open it with the newer program. The file was not touched.',
    ),
  'book-damaged': (data, where) =>
    say(
      `${file(where)} is damaged, cut short, or cannot be read from this disk.`,
      'a whole book',
      says(data),
      goBack,
    ),
  'page-damaged': (data, where) =>
    say(`A page of ${file(where)} is not as it was written.`, 'whole pages', says(data), goBack),
  'book-altered': (data, where) =>
    say(
      `${file(where)} was changed by something else than this program: its ${textOf(data, 'what')}.`,
      'a book as this program made it',
      `other ${textOf(data, 'what')}`,
      goBack,
    ),
  'recovery-needed': (_, where) =>
    say(
      `A write to ${file(where)} was interrupted, and it has to be taken back before anybody reads.`,
      'a place that may be written',
      'a place that may only be read',
      'Copy the book together with the file ending in -journal beside it to a place that may be written, and open it there.',
    ),
  'read-only': (data, where) =>
    maybeText(data, 'why') === 'asked'
      ? say(
          `${file(where)} is open for reading only.`,
          'a book that is open for writing',
          'a book that is open for reading',
          'Use a command that writes.',
        )
      : say(
          `${file(where)} is on a disk that may only be read.`,
          'a disk that may be written',
          'a disk that may only be read',
          'Copy the book to another disk to write in it. Reading works here.',
        ),
  'not-permitted': (data, where) =>
    say(
      `This account of the computer may not write ${maybeText(data, 'why') === 'folder' ? `in the folder of ${file(where)}` : file(where)}.`,
      'the right to read and write the book and its folder',
      'no such right',
      `Have the owner of ${maybeText(data, 'place') ?? file(where)} give the right, or copy the book. Nothing was changed.`,
    ),
  'too-many-files': (_, where) =>
    say(
      `${file(where)} cannot be opened: too many files are open at once.`,
      'a free place in the list of open files',
      'a full list',
      'Close other programs and try again.',
    ),
  'book-busy': (data, where) =>
    say(
      `${file(where)} is held by ${holder(data)}.`,
      `the book free within ${waited(numberOf(data, 'waitedMs'))}`,
      'the book held',
      'Wait until the other one is done and try again. Nothing was written.',
    ),
  'book-moved': (_, where) =>
    say(
      `${file(where)} was moved, replaced or deleted while it was open.`,
      'the file that was opened',
      'another file, or none, in its place',
      'Open the book again, and look that the right copy is there. Nothing was written.',
    ),
  'disk-full': (_, where) =>
    say(
      `The disk of ${file(where)} is full.`,
      'room for one more entry',
      'no room',
      'Free some space and enter it again. Nothing was written, and nothing is lost.',
    ),
  'disk-error': (data, where) =>
    say(
      `The disk of ${file(where)} failed.`,
      'a disk that takes and gives what it is asked for',
      `an error of the system at: ${maybeText(data, 'call') ?? says(data)}`,
      'The entry is not confirmed. Check the disk, then look with `book show` whether the entry is there, and enter it again if not.',
    ),
  'writing-stopped': (data, where) => {
    const because = textOf(data, 'because');
    return say(
      `Nothing more is written to ${file(where)}: ${WHY_STOPPED[because] ?? because}.`,
      'a book that can be trusted with more',
      because,
      stoppedByReceipt(because)
        ? `Put the right copy of the book back. If there is none, write down what ${maybeText(data, 'receiptFile') ?? 'the receipt'} says and delete that file; then the book takes entries again. Reading works.`
        : 'Check the disk, run `book check`, and open the book again. Reading works.',
    );
  },
  'settings-refused': (data, where) =>
    say(
      `${file(where)} does not take the setting ${textOf(data, 'setting')}, without which nothing is safe in it.`,
      `${textOf(data, 'setting')} = ${textOf(data, 'wanted')}`,
      `${textOf(data, 'setting')} = ${maybeText(data, 'received') ?? 'nothing'}`,
      'Copy the book to a place that may be written, and open it there once.',
    ),
  'sqlite-too-old': (data, where) =>
    say(
      `This SQLite is too old for ${file(where)}: it has a fault that can damage a file.`,
      `SQLite ${textOf(data, 'needed')} or newer`,
      `SQLite ${textOf(data, 'version')}`,
      'Use the Node that comes with the program: run `npm start` once.',
    ),
  'receipt-foreign': (data, where) =>
    say(
      `${file(where)} is the receipt of another book.`,
      `the receipt of ${textOf(data, 'bookId')}`,
      `the receipt of ${textOf(data, 'receipt')}, with ${counted(numberOf(data, 'count'), 'entry', 'entries')}`,
      'Find out which book belongs here. Move the receipt to its own book, or delete it.',
    ),
  'receipt-unreadable': (_, where) =>
    say(
      `${file(where)} is no receipt that can be read.`,
      'a receipt of this program',
      'something else',
      'It is written anew with the next entry. Until then a shortened book would not be noticed.',
    ),
  'receipt-left': (data, where) =>
    say(
      `There was a book here: its receipt ${file(where)} is still there.`,
      'a place without a receipt, or the book with it',
      data['count'] === null || data['count'] === undefined
        ? 'a receipt that cannot be read'
        : `a receipt over ${counted(numberOf(data, 'count'), 'entry', 'entries')}`,
      'Put that book back. If it is lost for good, keep or delete the receipt yourself, and make the new book then.',
    ),
  'receipt-not-written': (data, where) =>
    say(
      `The receipt of ${file(where)} could not be written. The entries are safe.`,
      'a receipt that is at most a second old',
      says(data),
      'Free some space or give the right to write in the folder: until then a shortened book might not be noticed.',
    ),
  'backup-exists': (_, where) =>
    say(
      `There is a file at ${file(where)} already.`,
      'a path that is free',
      'a file',
      'Give the copy another name. The file was not touched.',
    ),
  'backup-not-equal': (data, where) =>
    say(
      `The copy at ${file(where)} was not kept: it did not pass the check.`,
      'a copy that is whole and equal to the book',
      maybeText(data, 'because') ?? 'a copy that could not be read',
      'Run `book check` on the book itself; if that passes, try another disk for the copy.',
    ),
};
