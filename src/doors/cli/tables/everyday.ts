// Table of the commands that begin and show: start, init, today, store, completion, help.
import type { Command } from '../command.ts';
import { CIRCUMSTANCE_FLAGS } from '../flags.ts';

export const EVERYDAY_COMMANDS: readonly Command[] = [
  {
    path: ['start'],
    does: 'show Today in short and serve the page; where there is no book, make the practice book first',
    args: [],
    flags: ['no-serve', 'port', 'no-open'],
    examples: [
      ['waterwright start', 'what npm start runs; Ctrl-C ends it'],
      ['waterwright start --no-serve', 'Today, three things to try, and the end'],
    ],
  },
  {
    path: ['serve'],
    does: 'the page in a browser, and the interface for programs; on this machine only, until Ctrl-C',
    args: [],
    flags: ['port', 'no-open'],
    examples: [
      ['waterwright serve', 'prints the address; it lets one page in'],
      ['waterwright serve --port 7500', 'this port, or the next that is free'],
    ],
    more: [
      'While it serves, other commands on the same book go through it. Run again, it prints a fresh address.',
      'No browser is opened: open the address, or run it once more for another page.',
    ],
  },
  {
    path: ['init'],
    does: 'begin a book, or the practice book',
    args: [],
    flags: ['practice', 'until', 'outpost', 'site', 'template'],
    examples: [
      ['waterwright init --practice', 'the practice book of the invented outpost Corrie'],
      ['waterwright init --practice --until D46', 'the same, up to the end of Day 46'],
      ['waterwright init --template corrie -o my-outpost.yaml', 'an outpost file to begin with'],
      ['waterwright init --outpost my-outpost.yaml', 'a book of your own'],
    ],
    more: [
      'A book of your own goes on with its opening stocks: waterwright log opening --from FILE.json, or with a field log that begins with them: waterwright import FILE.',
    ],
  },
  {
    path: ['today'],
    does: 'how much water there is, where, fit for what, until when, and what needs you',
    args: [],
    flags: [
      { name: 'since', value: 'ME|TIME', what: 'what is new since you last looked, or since TIME' },
      'say',
    ],
    examples: [
      ['waterwright today', ''],
      ['waterwright today --at D13', 'as it was known at the end of the line of Day 13'],
      ['waterwright today --as-of D13', 'as it was then, by all that is known now'],
      ['waterwright today --since me', 'what came in and what is believed otherwise'],
      ['waterwright today --say', 'to be read aloud, 400 characters at the most'],
      ['waterwright today --json', 'every figure with its ± and what it rests on'],
    ],
  },
  {
    path: ['store', 'list'],
    does: 'all stores: what is in them and how surely',
    args: [],
    flags: [],
    examples: [['waterwright store list', '']],
  },
  {
    path: ['store', 'show'],
    does: 'one store, and the answer to: may I use this water?',
    args: [{ name: 'STORE', what: 'its name; c07 is C-07' }],
    flags: ['history', 'svg', 'csv'],
    examples: [
      ['waterwright store show c07', ''],
      ['waterwright store show R2 --history 40', 'more of the entries that name it'],
      ['waterwright store show R2 --svg -o R2.svg', 'its gauging plot: estimate and readings over the days'],
      ['waterwright store show R2 --csv -o R2.csv', 'the figures of that plot'],
    ],
    more: [
      'Where -o names a folder, a plot or its figures go there under a name with the store, the day and the time.',
    ],
  },
  {
    path: ['store', 'add'],
    does: 'a store that the outpost file does not name has come aboard',
    args: [{ name: 'STORE', what: 'its new name' }],
    flags: [
      {
        name: 'kind',
        value: 'KIND',
        what: 'tank, container, softBag, buffer, vehicleTank or wasteContainer',
      },
      'capacity',
      'remainder',
      'grade',
      'amount',
      'name',
      'place',
      ...CIRCUMSTANCE_FLAGS,
    ],
    examples: [
      ['waterwright store add C-20 --kind container --capacity 22L --remainder 0.6L', 'never used yet'],
    ],
  },
  {
    path: ['completion'],
    does: 'completion of commands, flags, stores and offices, for a shell',
    args: [{ name: 'SHELL', what: 'bash, zsh or fish' }],
    flags: [],
    examples: [['waterwright completion bash', 'to use it: source <(waterwright completion bash)']],
  },
  {
    path: ['help'],
    does: 'this help, or that of one command',
    args: [
      { name: 'COMMAND', what: 'a command, or flags', optional: true },
      { name: 'WORD', what: 'its second word', optional: true },
      { name: 'WORD', what: 'its third word', optional: true },
    ],
    flags: [],
    examples: [
      ['waterwright help log drink', ''],
      ['waterwright help log sample', 'the fields of an entry kind'],
    ],
  },
];
