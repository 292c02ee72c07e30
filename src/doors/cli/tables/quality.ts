// Table of the commands on samples, holds and the medic's queue.
import type { Argument, Command } from '../command.ts';
import { type Flag, CIRCUMSTANCE_FLAGS as WITH } from '../flags.ts';

const hold: Argument = { name: 'HOLD', what: 'the hold, as hold list names it' };
const stores: Argument = { name: 'STORE', what: 'a store; may come again', optional: true, many: true };
const until: Flag = { name: 'until', value: 'DAY', what: 'the last day: D60' };
const name: Flag = { name: 'name', value: 'NAME', what: 'its name; else the next one of the series' };
const reason: Flag = { name: 'reason', value: 'REASON', what: 'why' };

const SAMPLE_COMMANDS: readonly Command[] = [
  {
    path: ['sample', 'add'],
    does: 'a sample was drawn: of a store, or at a point; of several, each gets one',
    args: [
      { name: 'PLACE', what: 'a store, a sampling point, a port or a unit; may come again', many: true },
    ],
    flags: [
      name,
      'tests',
      { name: 'volume', value: 'AMOUNT', what: 'what was drawn: 10mL' },
      'drawn-from',
      'bottles',
      'batch',
      'duplicate-of',
      ...WITH,
    ],
    examples: [
      [
        'waterwright sample add R2 --volume 200mL',
        'the next name of the series, tested for what a release needs',
      ],
      ['waterwright sample add c02 c03 --tests "silver,plate count" --volume 10mL', 'one for each'],
    ],
  },
  {
    path: ['sample', 'result'],
    does: 'a result came back; of one that fails, what its water touched is shown before anything is kept',
    args: [
      {
        name: 'SAMPLE',
        what: 'the sample or a bottle of it; or a store or a point that was read without one',
      },
    ],
    flags: [
      { name: 'value', value: 'NAME=VALUE', many: true, what: 'any parameter: "nitrate=3 mg/L as N"' },
      { name: 'method', value: 'WORD', what: 'how it was read' },
      'laboratory',
      'custody',
      'preliminary',
      'degassed',
      'taken',
      { name: 'store', value: 'STORE', what: 'the store that it is of: held against the sample' },
      'hold',
      { name: 'name', value: 'NAME', what: 'the name of the hold; else the next one of the series' },
      { name: 'reason', value: 'REASON', what: 'why fewer stores are held than the trace proposes' },
      ...WITH,
    ],
    open: true,
    examples: [
      ['waterwright sample result dispenser --plate-count 3', 'read at a point, without a sample of its own'],
      ['waterwright sample result product --toc "<0.5mg/L" --cond 86uS/cm', '< is below the detection limit'],
      [
        'waterwright sample result c02 --silver 0.03mg/L --dry-run',
        'what it would hold, and the days of cover',
      ],
    ],
    more: [
      'A parameter is told by its name or the beginning of it: --silver, --plate-count, --toc, --cond. Each figure has its unit; counts and pH may stand bare.',
      'A result that fails is kept together with the hold that answers it: --hold all, or --hold only STORE … with --reason and --second. At a terminal it asks; else nothing is written without that word.',
    ],
  },
  {
    path: ['sample', 'list'],
    does: 'samples, how each stands, and what is due',
    args: [],
    flags: ['most'],
    examples: [['waterwright sample list', '']],
  },
  {
    path: ['sample', 'show'],
    does: 'one sample: its figures against the limits, and what a failing one touched',
    args: [{ name: 'SAMPLE', what: 'its name' }],
    flags: [],
    examples: [['waterwright sample show SMP-03', '']],
  },
];

const HOLD_COMMANDS: readonly Command[] = [
  {
    path: ['hold', 'list'],
    does: 'all holds: which stores, since when and why, and what waits for them',
    args: [],
    flags: [],
    examples: [
      ['waterwright hold list', ''],
      ['waterwright hold list --at D15', 'as it was known then'],
    ],
  },
  {
    path: ['hold', 'show'],
    does: 'one hold: what its water touched, where that came from, what waits for it, and the ways out',
    args: [hold],
    flags: ['drank'],
    examples: [['waterwright hold show Q-01 --at D15', '']],
    more: ['How much people drank of it is told; who did stands only behind --drank, for the medic.'],
  },
  {
    path: ['hold', 'add'],
    does: 'put stores on hold, or all that the water of a sample touched',
    args: [stores],
    flags: ['sample', 'only', 'conditional', reason, name, ...WITH],
    examples: [
      ['waterwright hold add c02 --reason "smells of plastic" --dry-run', ''],
      ['waterwright hold add --sample SMP-03 --dry-run', 'what its water touched'],
    ],
  },
  {
    path: ['hold', 'release'],
    does: 'release water on results that prove it; the word of the medic',
    args: [{ ...hold, what: 'a hold, or a store that waits for its first release' }, stores],
    flags: ['samples', until, ...WITH],
    examples: [
      [
        'waterwright hold release Q-01 R2 --by medic --happened "told on the loop"',
        'without proof it stays as it was, and the book says so',
      ],
    ],
    more: [
      'Without stores: all that are on the hold. What results do not prove is refused, with every reason.',
    ],
  },
  {
    path: ['hold', 'waive'],
    does: 'let held water be used for a time, as it is; needs two persons',
    args: [hold, stores],
    flags: [reason, until, ...WITH],
    examples: [
      ['waterwright hold waive Q-02 --until D62 --reason "nothing else is left" --second medic', ''],
    ],
  },
  {
    path: ['hold', 'downgrade'],
    does: 'make it water of a lower grade: a way out that does not come back',
    args: [
      { ...hold, what: 'a hold, or the store itself' },
      { ...stores, name: 'STORE' },
    ],
    flags: [
      { name: 'grade', value: 'GRADE', what: 'the lower grade; else the next one that it may flow into' },
      ...WITH,
    ],
    examples: [['waterwright hold downgrade c02 --dry-run', '']],
  },
  {
    path: ['hold', 'treat'],
    does: 'treat water by a recipe of the outpost: the only way up; it waits for its sample and the medic',
    args: [{ name: 'STORE', what: 'the store' }],
    flags: ['recipe', 'dose', ...WITH],
    examples: [['waterwright hold treat c10 --dose 10mL --second second', '']],
  },
  {
    path: ['hold', 'park'],
    does: 'leave it held, with somebody who looks after it until a day',
    args: [hold],
    flags: ['owner', until, reason, ...WITH],
    examples: [['waterwright hold park Q-02 --owner medic --until D66', '']],
  },
  {
    path: ['hold', 'aside'],
    does: 'take a result out of judgement, with the reason; the word of the medic',
    args: [
      { name: 'SAMPLE', what: 'the sample' },
      { name: 'PARAMETER', what: 'only this figure of it', optional: true },
    ],
    flags: [reason, ...WITH],
    examples: [
      ['waterwright hold aside SMP-06 "plate count" --reason "the plate was opened" --by medic', ''],
    ],
  },
];

export const QUALITY_COMMANDS: readonly Command[] = [
  ...SAMPLE_COMMANDS,
  ...HOLD_COMMANDS,
  {
    path: ['quality', 'today'],
    does: 'the medic\u2019s queue: what is due, what waits for a release and who waits on it',
    args: [],
    flags: [],
    examples: [
      ['waterwright quality today', ''],
      ['waterwright quality today --at D14', 'as it was known then'],
    ],
  },
];
