// English for files that no table can be made of: the cap or the fault, its place, and what helps.

import type { Words } from '../shape.ts';
import type { TableFindingCode } from '../table-codes.ts';
import { listOf, maybeNumber, numberOf, textOf } from './data.ts';
import { listed } from './said.ts';
import { say } from './say.ts';

const nothing = 'Nothing was written.';
const parts = 'Part the file in two and import each of them.';

export const tableWords: Words<TableFindingCode> = {
  'table-too-large': (data) =>
    say(
      `The file has ${numberOf(data, 'bytes')} bytes; ${numberOf(data, 'most')} are the most that is read. ${nothing}`,
      `at most ${numberOf(data, 'most')} bytes`,
      `${numberOf(data, 'bytes')} bytes`,
      parts,
    ),
  'table-no-text': (data) =>
    say(
      `The file is no text that can be read: ${textOf(data, 'says')}. ${nothing}`,
      'UTF-8, or UTF-16 with a byte order mark',
      textOf(data, 'says'),
      'Save the sheet as CSV with the encoding UTF-8, or paste the table.',
    ),
  'table-rows-too-many': (data) =>
    say(
      `The table has more than ${numberOf(data, 'most')} lines. ${nothing}`,
      `at most ${numberOf(data, 'most')} lines`,
      maybeNumber(data, 'rows') === null ? 'more' : `${numberOf(data, 'rows')}`,
      parts,
    ),
  'table-columns-too-many': (data) =>
    say(
      `A line has ${numberOf(data, 'columns')} cells; ${numberOf(data, 'most')} are the most that is read. ${nothing}`,
      `at most ${numberOf(data, 'most')} cells in a line`,
      `${numberOf(data, 'columns')}`,
      'Leave out the columns that the book does not need.',
    ),
  'table-cell-too-long': (data) =>
    say(
      `A cell has ${numberOf(data, 'length')} letters; ${numberOf(data, 'most')} are the most that is read. ${nothing}`,
      `at most ${numberOf(data, 'most')} letters in a cell`,
      `${numberOf(data, 'length')}`,
      'Shorten the text, or look whether a quote before it was never closed.',
    ),
  'table-not-flat': (data) =>
    say(
      `A line holds a list or an object in an object: "${textOf(data, 'received')}". ${nothing}`,
      'one flat object in each line',
      `"${textOf(data, 'received')}"`,
      'Write plain values only: texts, numbers, null.',
    ),
  'table-line-no-json': (data) =>
    say(
      `A line is no JSON object: "${textOf(data, 'received')}". ${nothing}`,
      'one flat object in each line',
      `"${textOf(data, 'received')}"`,
      'Correct the line, or bring the table as CSV.',
    ),
  'table-delimiter-open': (data) =>
    say(
      `No sign parts the cells alike in every line. ${nothing}`,
      listed(listOf(data, 'signs'), 'or'),
      'none of them alike',
      'Check that this is a table; save it as CSV, or with tabs between the cells.',
    ),
  'table-quote-open': () =>
    say(
      `A quoted cell does not end as it should. ${nothing}`,
      'two quotes around a cell, and two for one inside',
      'a quote that stays open',
      'Close the quote, or leave it out, and import the file again.',
    ),
  'table-empty': () =>
    say(
      `The file has no line with anything in it. ${nothing}`,
      'a table',
      'nothing',
      'Check that this is the right file.',
    ),
  'table-too-slow': (data) =>
    say(
      `Reading the file took longer than ${numberOf(data, 'most')} s and was stopped. ${nothing}`,
      `at most ${numberOf(data, 'most')} s`,
      'longer',
      parts,
    ),
  'table-reader-ended': (data) =>
    say(
      `The reader of the file ended before it was done (${textOf(data, 'says')}); the program and the book are as they were. ${nothing}`,
      'a file that fits the memory of its reader',
      'one that does not',
      parts,
    ),
};
