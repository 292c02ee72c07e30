// Table of the commands on samples, holds and the medic's queue.
import type { Argument, Command } from '../command.ts';
import { type Flag, CIRCUMSTANCE_FLAGS as WITH } from '../flags.ts';

const hold: Argument = { name: 'HOLD', what: 'the hold, as hold list names it' };
const stores: Argument = { name: 'STORE', what: 'a store; may come again', optional: true, many: true };
const until: Flag = { name: 'until', value: 'DAY', what: 'the last day: D60' };
const name: Flag = { name: 'name', value: 'NAME', what: 'its name; else the next one of the series' };
const reason: Flag = { name: 'reason', value: 'REASON', what: 'why' };

const SET = { name: 'SET', what: 'a set of limits, by its name or its file' } as const;
const FILE: Flag = {
  name: 'file',
  value: 'PATH',
  many: true,
  what: 'a set of your own, as docs/limit-sets.md tells',
};

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
  {
    path: ['quality', 'trend'],
    does: 'one parameter over time: results, limit, control limits, gaps, and what bad stores share',
    args: [{ name: 'PARAMETER', what: 'TOC, silver, plate count …; else what was measured', optional: true }],
    flags: [
      { name: 'store', value: 'STORE', what: 'in this store' },
      { name: 'point', value: 'POINT', what: 'at this sampling point' },
      { name: 'grade', value: 'GRADE', what: 'in all stores that were of this grade when they were sampled' },
      { name: 'svg', what: 'the trend as an SVG picture' },
      { name: 'csv', what: 'its results as a table for spreadsheets' },
    ],
    examples: [
      ['waterwright quality trend', 'what was measured, and where'],
      ['waterwright quality trend TOC --point product', 'the water behind the beds'],
      ['waterwright quality trend silver --at D20', 'in every store, with what those beyond the limit share'],
      ['waterwright quality trend TOC --point product --svg -o TOC.svg', 'the control chart as a picture'],
      ['waterwright quality trend "plate count" --point "dispenser cold" --csv', 'for a spreadsheet'],
    ],
    more: [
      'The limit says what the water may be; the control limits say what it has been by itself. They take eight results of one place.',
    ],
  },
  {
    path: ['quality', 'limits'],
    does: 'the limits that bear on release, and which of them are off',
    args: [],
    flags: [],
    examples: [['waterwright quality limits', '']],
  },
  {
    path: ['quality', 'limits', 'list'],
    does: 'every set of limits: rows with a figure, rows that are off',
    args: [],
    flags: [],
    examples: [['waterwright quality limits list', '']],
  },
  {
    path: ['quality', 'limits', 'show'],
    does: 'one set whole: limits, sources, cause, consequence, first act',
    args: [SET],
    flags: [],
    examples: [['waterwright quality limits show national-aesthetic-limits', '']],
  },
  {
    path: ['quality', 'limits', 'choose'],
    does: 'choose sets of limits; what they would hold is shown first',
    args: [{ ...SET, optional: true, many: true }],
    flags: [
      {
        name: 'rows',
        value: 'ROWS',
        what: 'only these rows, commas between; else all that the set requires',
      },
      { name: 'exposure', value: '180d', what: 'for how many days people will drink the water' },
      { name: 'only', what: 'instead of what is in force, and not beside it' },
      { name: 'reason', value: 'REASON', what: 'why they are chosen' },
      FILE,
    ],
    examples: [
      ['waterwright quality limits choose national-aesthetic-limits --dry-run', 'what it would hold'],
      [
        'waterwright quality limits choose national-aesthetic-limits --rows "silver most" --reason "asked by the planner" --dry-run',
        'one row of it',
      ],
      [
        'waterwright quality limits choose outpost-policy --only --reason "back to our own" --dry-run',
        'the way back',
      ],
    ],
    more: [
      'By default the sets stand beside those in force, and water has to meet all of them.',
      'It takes effect when it is confirmed: asked for, or with --yes, and with a reason.',
    ],
  },
  {
    path: ['quality', 'limits', 'type'],
    does: 'type the figure of a row that is off, from your own copy of the rule',
    args: [SET, { name: 'ROW', what: 'the row, by its id' }],
    flags: [
      { name: 'at-least', value: 'FIGURE', what: 'the lower limit, with its unit' },
      { name: 'at-most', value: 'FIGURE', what: 'the upper limit, with its unit: 0.4mg/L' },
      {
        name: 'basis',
        value: 'WORDS',
        what: 'what it is told as, such as "as N"; else the only one that there is',
      },
      { name: 'copy', value: 'TEXT', what: 'the copy: title, edition, page' },
      FILE,
    ],
    examples: [
      [
        'waterwright quality limits type crewed-water-standard "silver most" --at-most 0.4mg/L --copy "the standard, edition 2, table 4" --dry-run',
        '',
      ],
    ],
  },
];
