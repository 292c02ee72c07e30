// Table of the commands on the book itself, and of what goes into it whole.
import type { Command } from '../command.ts';

export const BOOK_COMMANDS: readonly Command[] = [
  {
    path: ['import'],
    does: 'a field log, or the export of a book; what is in the book already is not added twice',
    args: [{ name: 'FILE', what: 'the file; - is standard input' }],
    flags: ['until', 'site'],
    examples: [
      ['waterwright import field-log.jsonl --dry-run', 'look first'],
      ['waterwright import field-log.jsonl --yes', 'more than 100 entries want a yes'],
      ['waterwright import export.jsonl --book copy.book', 'an export makes a book where none is'],
    ],
  },
  {
    path: ['book', 'show'],
    does: 'the daybook: every entry, with what became of it',
    args: [],
    flags: ['day', 'kind', 'store', 'most', 'findings'],
    examples: [
      ['waterwright book show --day D46', ''],
      ['waterwright book show --store c07 --most 10', ''],
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
