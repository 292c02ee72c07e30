// Table of the commands about what the water is fit for: limits, and trends over time and over stores.
import type { Command } from '../command.ts';
import type { Flag } from '../flags.ts';

const SET = { name: 'SET', what: 'a set of limits, by its name or its file' } as const;
const FILE: Flag = {
  name: 'file',
  value: 'PATH',
  many: true,
  what: 'a set of your own, as docs/limit-sets.md tells',
};

export const QUALITY_COMMANDS: readonly Command[] = [
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
