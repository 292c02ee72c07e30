// Table of the commands on the codes by which a second person confirms.
import type { Command } from '../command.ts';

export const CODE_COMMANDS: readonly Command[] = [
  {
    path: ['book', 'code', 'set'],
    does: 'set the code by which an office confirms, or another one instead of it',
    args: [{ name: 'OFFICE', what: 'whose code it is; that person types it' }],
    flags: ['lost'],
    examples: [
      [
        'waterwright book code set medic',
        'asks for the old code if there is one, then twice for the new one',
      ],
      [
        'waterwright book code set medic --lost --second keeper',
        'the chief sets it anew; both type their own codes',
      ],
    ],
    more: [
      'A code has 4 to 12 digits, is no run such as 1234 and no repetition such as 0000, and none of the last five of that office. What is typed is shown nowhere. That it was set stands in the book; of the code the file keeps argon2id only.',
    ],
  },
  {
    path: ['book', 'code', 'list'],
    does: 'which offices have a code, and since when',
    args: [],
    flags: [],
    examples: [['waterwright book code list', '']],
  },
];
