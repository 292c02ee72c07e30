// Table of the commands that show papers.
import type { Command } from '../command.ts';

export const REPORT_COMMANDS: readonly Command[] = [
  {
    path: ['report', 'list'],
    does: 'the papers that a book can give',
    args: [],
    flags: [],
    examples: [['waterwright report list', '']],
  },
  {
    path: ['report', 'show'],
    does: 'one paper: as a text, as a page to print, or a table of it',
    args: [
      { name: 'REPORT', what: 'its name, by report list' },
      { name: 'NAME', what: 'the sample, store, hold or parameter that it is of', optional: true },
    ],
    flags: [
      'html',
      'paper',
      { name: 'csv', what: 'a table of it for spreadsheets: the first, or that of --table' },
      'table',
      {
        name: 'tests',
        value: 'NAMES',
        what: 'sample-sheet of a store or point: which tests, commas between',
      },
      { name: 'store', value: 'STORE', what: 'trend-sheet: in this store' },
      { name: 'point', value: 'POINT', what: 'trend-sheet: at this sampling point' },
      { name: 'grade', value: 'GRADE', what: 'trend-sheet: in all stores that were of this grade' },
    ],
    examples: [
      ['waterwright report show quirks', 'what readings have taught of instruments'],
      ['waterwright report show certificate C-05', 'who released its water, or why it is not'],
      ['waterwright report show hold-notice Q-01 --at D14 --html', 'to be printed and hung on its stores'],
      ['waterwright report show sample-sheet R2 --html', 'a blank one, to be filled by hand'],
      ['waterwright report show trend-sheet TOC --point product', ''],
    ],
  },
];
