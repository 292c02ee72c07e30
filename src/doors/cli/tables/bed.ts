// Table of the commands of the purifier beds.
import type { Command } from '../command.ts';

const bed = { name: 'BED', what: 'its name by bed list; without one, the first', optional: true } as const;

export const BED_COMMANDS: readonly Command[] = [
  {
    path: ['bed', 'list'],
    does: 'the purifier beds: how much of their life is used, and when the first limit is reached',
    args: [],
    flags: [],
    examples: [['waterwright bed list', '']],
  },
  {
    path: ['bed', 'show'],
    does: 'one bed: change it now or wait, what is read behind it, and why that rises',
    args: [bed],
    flags: ['svg', 'csv'],
    examples: [
      ['waterwright bed show lead', ''],
      ['waterwright bed show lead --at D32', 'as it was known at the end of the line of Day 32'],
      ['waterwright bed show lead --svg -o lead.svg', 'readings, band and limit over the days'],
      ['waterwright bed show lead --csv -o lead.csv', 'the figures of that plot'],
    ],
    more: [
      'Readings come in by log result --point product; a change by log service --item "lead bed" --what "bed changed".',
    ],
  },
  {
    path: ['bed', 'forecast'],
    does: 'one bed, day by day: what will have gone through it, and what will be read behind it',
    args: [bed],
    flags: [],
    examples: [['waterwright bed forecast --at D32', '']],
  },
];
