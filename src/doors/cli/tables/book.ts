// Table of the commands on the book itself, and of what goes into it whole.
import type { Command } from '../command.ts';

export const BOOK_COMMANDS: readonly Command[] = [
  {
    path: ['import'],
    does: 'a table, a field log, or the export of a book; what is in the book already is not added twice',
    args: [
      {
        name: 'FILE',
        what: 'CSV, TSV, a pasted table, JSON Lines, a field log, an export; - is standard input',
      },
    ],
    flags: [
      { name: 'kind', value: 'SHAPE', what: 'lines of a table: days (one day each) or acts (one act each)' },
      'decimal',
      'dates',
      'zone',
      'columns',
      'sheet-day-one',
      'until',
      'site',
    ],
    examples: [
      ['waterwright import april.csv --dry-run', 'what each line would become, and why some would wait'],
      ['waterwright import april.csv --zone +05:30', 'good lines are taken, doubtful ones wait in the inbox'],
      [
        'waterwright import april.csv --zone +05:30 --columns "Remarks=note" --columns "Initials="',
        'a column by its meaning, and one left out',
      ],
      ['waterwright import field-log.jsonl --yes', 'more than 100 entries want a yes'],
      ['waterwright import export.jsonl --book copy.book', 'an export makes a book where none is'],
    ],
    more: [
      'MEANING is time, date, clock, day, act, store, from, to, port, amount, doubt, unit, use, grade, people, person, note, by, or the name of a meter or a store; a unit may stand behind it, as in "amount [L]". What was matched is kept for the next table with these headings.',
    ],
  },
  {
    path: ['book', 'show'],
    does: 'the daybook: every entry, with what became of it',
    args: [],
    flags: ['day', 'kind', 'store', 'find', 'most', 'findings'],
    examples: [
      ['waterwright book show --day D46', ''],
      ['waterwright book show --store c07 --most 10', ''],
      ['waterwright book show --find E0247', 'by its name in the field log, or any other letters'],
      ['waterwright book show --findings', 'every finding, the old ones too'],
    ],
  },
  {
    path: ['book', 'check'],
    does: 'look whether the book is whole: pages, chains, receipt, and the account rebuilt',
    args: [],
    flags: [],
    examples: [['waterwright book check', 'ends with 6 when anything is wrong']],
  },
  {
    path: ['book', 'close'],
    does: 'close a day: its figures are kept as they are believed now',
    args: [],
    flags: ['day', 'note'],
    examples: [['waterwright book close --dry-run', 'the day of the last line']],
    more: ['What happened on a closed day is still taken, with --late REASON.'],
  },
  {
    path: ['book', 'backup'],
    does: 'a copy of the book, read back and checked before it gets its name',
    args: [{ name: 'TARGET', what: 'the file of the copy; nothing is written over' }],
    flags: [],
    examples: [['waterwright book backup copy-of-d46.book', '']],
  },
  {
    path: ['book', 'export'],
    does: 'the book as JSON Lines, for a copy of another kind or for the exchange with another site',
    args: [],
    flags: ['since'],
    examples: [
      ['waterwright book export -o book.jsonl', ''],
      ['waterwright book export --since corrie:240', 'only what comes after entry 240 of that site'],
    ],
  },
  {
    path: ['book', 'outpost'],
    does: 'the outpost file that counts now, or a changed one instead of it',
    args: [{ name: 'FILE', what: 'a changed outpost file', optional: true }],
    flags: ['reason'],
    examples: [
      [
        'waterwright book outpost -o outpost.yaml',
        'write it out, change it, then: book outpost outpost.yaml',
      ],
    ],
  },
];
