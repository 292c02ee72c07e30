// Table of the commands on the inbox: lines that wait for a unit, a store or a decision.
import type { Command } from '../command.ts';

const LINE = { name: 'NUMBER', what: 'the line, as inbox list names it' } as const;

export const INBOX_COMMANDS: readonly Command[] = [
  {
    path: ['inbox', 'list'],
    does: 'lines that wait for a unit, a store or a decision, and why',
    args: [],
    flags: ['all'],
    examples: [['waterwright inbox list', '']],
  },
  {
    path: ['inbox', 'show'],
    does: 'one line whole: its cells, why it waits, what its bare number could be',
    args: [LINE],
    flags: [],
    examples: [['waterwright inbox show 192', '']],
  },
  {
    path: ['inbox', 'take'],
    does: 'take a line that waits into the book, with what it lacks',
    args: [LINE],
    flags: [
      'unit',
      { name: 'store', value: 'STORE', what: 'the store that is meant' },
      'from',
      'to',
      'port',
      'act',
      'amount',
      'grade',
      { name: 'set', value: 'NAME=VALUE', many: true, what: 'a cell anew, by its heading or its meaning' },
    ],
    examples: [['waterwright inbox take 192 --unit kg --dry-run', 'what it would become']],
  },
  {
    path: ['inbox', 'drop'],
    does: 'drop a line that waits; it stays settled when its file comes again',
    args: [LINE],
    flags: ['reason'],
    examples: [['waterwright inbox drop 192 --reason "asked: a request, no delivery" --dry-run', '']],
  },
];
