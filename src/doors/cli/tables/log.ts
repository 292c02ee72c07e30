// Table of the commands that enter what happened.
import type { Argument, Command } from '../command.ts';
import { type Flag, CIRCUMSTANCE_FLAGS as WITH } from '../flags.ts';

const store: Argument = { name: 'STORE', what: 'its name; c07 is C-07' };
const amount: Argument = { name: 'AMOUNT', what: 'with its unit: 200mL, 7.5L, 21.4kg, 20.5L+-0.2' };
const from: Flag = {
  name: 'from',
  value: 'PLACE',
  what: 'where it comes from: a store, a port, a unit, outside',
};

export const LOG_COMMANDS: readonly Command[] = [
  {
    path: ['log', 'day'],
    does: 'the day line: every meter with its last value and the range that is usual',
    args: [],
    flags: [
      { name: 'from', value: 'FILE', what: 'read it from FILE; - is standard input' },
      'set',
      'people',
      ...WITH,
    ],
    examples: [
      ['waterwright log day', 'asks meter by meter; - is no reading, < goes back'],
      ['waterwright log day --from evening.txt', 'lines of NAME VALUE, CSV of two columns, or JSON'],
      ['waterwright log day --set strokes=455 --set product=6.9', 'meters that are not named were not read'],
    ],
    more: [
      'Ctrl-C keeps what was typed; the next log day goes on from there.',
      'Without a terminal the values are read from standard input, one a line, in the order of the meters.',
    ],
  },
  {
    path: ['log', 'drink'],
    does: 'a drink: strokes of the dispenser, or an amount with its unit',
    args: [{ name: 'N', what: 'strokes, or an amount such as 200mL' }],
    flags: [from, 'person', ...WITH],
    examples: [
      ['waterwright log drink 8', '8 strokes of the dispenser'],
      ['waterwright log drink 200mL --person second', 'by whom; no page shows it'],
    ],
  },
  {
    path: ['log', 'fill'],
    does: 'a store was filled; without an amount, to its usual fill',
    args: [store, { ...amount, optional: true }],
    flags: [from, 'hose', 'method', 'also', ...WITH],
    examples: [
      ['waterwright log fill c05 20.5L --from outside', ''],
      ['waterwright log fill c05 20.5L --from outside --also "weighing=20.3L+-0.2"', 'two means, one fill'],
    ],
  },
  {
    path: ['log', 'move'],
    does: 'water moved from one place to another',
    args: [amount],
    flags: [from, 'to', 'hose', 'method', 'also', ...WITH],
    examples: [['waterwright log move 2L --from c10 --to c09', '']],
  },
  {
    path: ['log', 'use'],
    does: 'water was used for something',
    args: [amount],
    flags: ['for', from, 'person', ...WITH],
    examples: [['waterwright log use 1.5L --for hygiene', '']],
  },
  {
    path: ['log', 'make'],
    does: 'water was made or came from outside',
    args: [amount],
    flags: [from, 'to', ...WITH],
    examples: [['waterwright log make 3L --to KB', '']],
  },
  {
    path: ['log', 'weigh'],
    does: 'a store was weighed; - is planned and not done',
    args: [store, { ...amount, name: 'AMOUNT', what: 'content by weight: 21.4kg, or - for no reading' }],
    flags: WITH,
    examples: [['waterwright log weigh c10 20.8kg+-0.1', '']],
  },
  {
    path: ['log', 'gauge'],
    does: 'a store was gauged; - is planned and not done',
    args: [store, amount],
    flags: WITH,
    examples: [['waterwright log gauge R1 160L+-4', '']],
  },
  {
    path: ['log', 'empty'],
    does: 'a store was found or run empty',
    args: [store],
    flags: ['left', 'flow-stopped', 'flow-goes-on', 'counter', ...WITH],
    examples: [['waterwright log empty c09 --flow-stopped', 'nothing comes any more']],
  },
  {
    path: ['log', 'full'],
    does: 'a store was found full',
    args: [store, { ...amount, optional: true }],
    flags: WITH,
    examples: [['waterwright log full W-02', '']],
  },
  {
    path: ['log', 'hookup'],
    does: 'a store was put on a port',
    args: [store, { name: 'PORT', what: 'the port' }],
    flags: WITH,
    examples: [['waterwright log hookup c10 "electrolyser/flush feed"', '']],
  },
  {
    path: ['log', 'relabel'],
    does: 'a store is of another grade from now on; needs two persons',
    args: [store, { name: 'GRADE', what: 'the new grade' }],
    flags: ['photo', ...WITH],
    examples: [['waterwright log relabel c19 technical --second second', '']],
  },
  {
    path: ['log', 'undo'],
    does: 'take back an entry; both stay readable',
    args: [{ name: 'N', what: 'its number; else your last one of the last 10 minutes', optional: true }],
    flags: ['reason', ...WITH],
    examples: [
      ['waterwright log undo', 'what you have just entered'],
      ['waterwright log undo 240 --reason miscounted', 'the entry with that number'],
    ],
  },
  {
    path: ['log', 'correct'],
    does: 'an entry counts with another amount from now on; the old one stays readable',
    args: [{ name: 'N', what: 'its number' }],
    flags: ['value', 'set', 'reason', ...WITH],
    examples: [
      ['waterwright log correct 250 --value 6 --reason miscounted', ''],
      ['waterwright log correct 245 --set strokes=455 --reason misread', 'a reading of a day line'],
    ],
  },
  {
    path: ['log', 'decide'],
    does: 'two entries look like one act entered twice: say whether they are',
    args: [
      { name: 'FIRST', what: 'number of the one' },
      { name: 'SECOND', what: 'number of the other' },
      { name: 'DECISION', what: 'merge (one act) or both (two acts)' },
    ],
    flags: WITH,
    examples: [['waterwright log decide 34 35 merge', '']],
  },
  {
    path: ['log'],
    does: 'an entry of any other kind, field by field',
    args: [{ name: 'KIND', what: 'sample, result, hold, release, roster, service, note and others' }],
    flags: WITH,
    examples: [
      ['waterwright log note --text "gurgles at the galley"', ''],
      ['waterwright log sample --store R2 --sample S-20 --volume 200mL', ''],
      ['waterwright log opening --from opening.json', 'the fields of the entry as one JSON object'],
    ],
    more: ['The fields of a kind: waterwright help log KIND.'],
    open: true,
  },
];
