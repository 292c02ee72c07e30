// Table of the commands about what the water is fit for, over time and over stores.
import type { Command } from '../command.ts';

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
];
