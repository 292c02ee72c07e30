// Table of the commands of the stock count.
import type { Command } from '../command.ts';
import { CIRCUMSTANCE_FLAGS } from '../flags.ts';

export const COUNT_COMMANDS: readonly Command[] = [
  {
    path: ['count', 'start'],
    does: 'begin a stock count: the sheet in the order of the places, without a figure of the book',
    args: [],
    flags: ['places'],
    examples: [
      ['waterwright count start', 'the sheet to walk with; it prints'],
      ['waterwright count start --places "store rack,parts"', 'only a part of it'],
    ],
  },
  {
    path: ['count', 'add'],
    does: 'readings of a count; without any, asks one by one',
    args: [
      { name: 'ITEM', what: 'a store or a part', optional: true },
      { name: 'READING', what: 'with its unit, a count, or - for not read', optional: true, many: true },
    ],
    flags: [],
    examples: [
      ['waterwright count add c10 20.8L+-0.4 c08 -', '- or not-read: C-08 was not read'],
      ['waterwright count add "purifier bed" 2', 'a part'],
    ],
    more: [
      'What is typed waits beside the book, is safe there, and is no entry yet. Typed again it replaces.',
      'What is far off the book, or more than a store holds, is asked about; --yes keeps it.',
    ],
  },
  {
    path: ['count', 'show'],
    does: 'the sheet with what was typed so far',
    args: [],
    flags: [],
    examples: [['waterwright count show', '']],
  },
  {
    path: ['count', 'finish'],
    does: 'the differences, and the readings into the book; never a movement',
    args: [],
    flags: CIRCUMSTANCE_FLAGS,
    examples: [
      ['waterwright count finish --dry-run', 'look first'],
      ['waterwright count finish --second chief', 'two signatures'],
    ],
    more: ['It counts for now, or for the time of --at.'],
  },
];
