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
    does: 'one paper',
    args: [{ name: 'REPORT', what: 'its name, by report list' }],
    flags: [],
    examples: [['waterwright report show quirks', 'what readings have taught of instruments']],
  },
];
