// Flags of the commands on limits, by name.
import type { Flag } from './flag.ts';

export const LIMIT_FLAGS: readonly Flag[] = [
  { name: 'rows', value: 'ROWS', what: 'only these rows of a set, commas between' },
  { name: 'exposure', value: '180d', what: 'for how many days people will drink the water' },
  { name: 'only', what: 'instead of what is in force, and not beside it' },
  { name: 'file', value: 'PATH', many: true, what: 'a file of your own' },
  { name: 'at-least', value: 'FIGURE', what: 'a lower limit, with its unit' },
  { name: 'at-most', value: 'FIGURE', what: 'an upper limit, with its unit' },
  { name: 'basis', value: 'WORDS', what: 'what a figure is told as, such as "as N"' },
  { name: 'copy', value: 'TEXT', what: 'the copy that a figure was typed from: title, edition, page' },
];
