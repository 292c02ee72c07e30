// English for what can be wrong with entries, with their chain, and with lines that bring them.
import type { BookFindingCode } from '../../../book/index.ts';
import type { FindingData, Where } from '../../../ground/units/index.ts';
import type { Sentences, Words } from '../shape.ts';
import { listOf, maybeNumber, maybeText, numberOf, textOf } from './data.ts';
import { counted, listed } from './said.ts';
import { saidWanted } from './wanted.ts';

function say(text: string, expected: string, received: string, remedy: string): Sentences {
  return { text, expected, received, remedy };
}

/** `Line 12: `, where there is a line. */
const atLine = (where: Where): string => (where.line === undefined ? '' : `Line ${where.line}: `);

/** `entry 41 of corrie`. */
const place = (data: FindingData): string => `entry ${numberOf(data, 'number')} of ${textOf(data, 'site')}`;

const restore =
  'Keep this file as it is, and go back to the newest copy of the book that passes `book check`.';

/** What a break of the chain means, in the one sentence that matters to a keeper. */
const broken = (text: string, expected: string, received: string): Sentences =>
  say(text, expected, received, restore);

export const bookWords: Words<BookFindingCode> = {
  'kind-unknown': (data, where) => {
    const received = maybeText(data, 'received');
    const near = listOf(data, 'nearest');
    return say(
      received === null
        ? `${atLine(where)}This entry does not say of what kind it is.`
        : `${atLine(where)}"${received}" is no kind of entry that the book knows.`,
      'one of the kinds of entry',
      received === null ? 'no kind' : `"${received}"`,
      near.length === 0
        ? 'Give the field "kind" one of the kinds.'
        : `Write ${listed(near, 'or')} if that is meant.`,
    );
  },
  'field-unknown': (data, where) =>
    say(
      `${atLine(where)}An entry of kind ${textOf(data, 'kind')} has no field "${where.field ?? textOf(data, 'field')}".`,
      `fields of ${textOf(data, 'kind')} only`,
      `"${textOf(data, 'field')}"`,
      'Take the field out, or correct its name.',
    ),
  'field-wrong': (data, where) => {
    const wanted = saidWanted(data, 'the entry');
    const received = maybeText(data, 'received');
    const field = where.field === '' ? 'The entry' : `The field "${where.field}" of ${textOf(data, 'kind')}`;
    return say(
      `${atLine(where)}${field} is ${received === null ? 'missing or not as it has to be' : received}; wanted is ${wanted}.`,
      wanted,
      received ?? 'nothing that can be used',
      'Correct the field and bring the entry again.',
    );
  },
  'shape-newer': (data, where) =>
    say(
      `${atLine(where)}This ${textOf(data, 'kind')} is of version ${maybeText(data, 'version') ?? 'unknown'}, newer than this program.`,
      `at most version ${textOf(data, 'known')}`,
      `version ${maybeText(data, 'version') ?? 'unknown'}`,
      'Use the program that wrote it, or a newer one. Nothing was taken.',
    ),
  'id-reused': (data, where) => {
    const number = maybeNumber(data, 'keptNumber');
    const kept =
      number === null ? 'another entry that came with it' : `entry ${number} of ${textOf(data, 'keptSite')}`;
    const known = maybeText(data, 'id') ?? where.entry ?? '';
    return say(
      `${atLine(where)}The id ${known} is taken by ${kept}, which says something else.`,
      'an id of its own for every entry',
      `the id of ${kept} with other content`,
      'If it is another act, give it a new id; if it corrects the first, enter a correction.',
    );
  },
  'number-reused': (data, where) =>
    say(
      `${atLine(where)}The book has another ${place(data)} than this line.`,
      'the same content and seal under the same number',
      'another seal',
      `Find out which of the two books of ${textOf(data, 'site')} is the true one before anything is exchanged. Nothing was taken.`,
    ),
  'seal-broken': (data, where) =>
    say(
      `${atLine(where)}The seal of ${place(data)} does not fit its content.`,
      'a seal over this content and the seal before it',
      'a line that was changed on the way',
      'Have the lines sent again. Nothing was taken.',
    ),
  'chain-gap': (data, where) => {
    const next = numberOf(data, 'next');
    const text = `${atLine(where)}After ${next === 1 ? 'the start' : `entry ${next - 1}`} of ${textOf(data, 'site')} comes entry ${numberOf(data, 'number')}.`;
    if (where.line === undefined) return broken(text, `entry ${next}`, place(data));
    return say(
      text,
      `entry ${next}`,
      place(data),
      `Bring the lines from entry ${next} on. Nothing was taken.`,
    );
  },
  'line-no-json': (data, where) =>
    say(
      `${atLine(where)}This is no line of a book.`,
      maybeText(data, 'expected') ?? 'one JSON object',
      'something else',
      'Check that the file is an export of a book and is whole. Nothing was taken.',
    ),
  'chain-broken': (data) =>
    broken(
      `The seal of ${place(data)} does not fit: its content, or the entry before it, was changed after it was kept.`,
      'content as it was sealed',
      'other content',
    ),
  'columns-differ': (data) =>
    broken(
      `The row of ${place(data)} does not say the same as its sealed text.`,
      'equal columns and text',
      'a changed column',
    ),
  'text-not-canonical': (data) =>
    broken(`The text of ${place(data)} cannot be read.`, 'canonical JSON', 'a damaged text'),
  'receipt-ahead': (data) => {
    const missing = numberOf(data, 'receipt') - numberOf(data, 'knows');
    return say(
      `This book is behind: it knows ${counted(numberOf(data, 'knows'), 'entry', 'entries')} of ${textOf(data, 'site')}, its receipt says ${numberOf(data, 'receipt')}.`,
      `entry ${numberOf(data, 'receipt')} of ${textOf(data, 'site')}`,
      `${counted(missing, 'entry is', 'entries are')} missing at the end`,
      'Put the newer copy of the book back. If the entries are lost for good, write down what the receipt says and delete the receipt; then the book takes entries again.',
    );
  },
  'receipt-differs': (data) =>
    say(
      `Entry ${numberOf(data, 'receipt')} of ${textOf(data, 'site')} is not the one that the receipt beside the book was written for.`,
      'the seal that the receipt notes',
      'another seal',
      'This is another copy of the book than the one that was last written here. Put that one back, or move the receipt to where it belongs.',
    ),
};
