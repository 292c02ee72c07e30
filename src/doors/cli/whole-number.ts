// Whole numbers on a command line: counts, columns, and days such as `D46`.
import { parseNumber } from '../../ground/units/index.ts';
import { wrongUse } from './problem.ts';

interface Rule {
  readonly flag: string;
  readonly least: number;
  readonly most: number;
}

export function readWholeNumber(text: string, { flag, least, most }: Rule): number {
  const read = parseNumber(text);
  if (read.ok && Number.isSafeInteger(read.value) && read.value >= least && read.value <= most) {
    return read.value;
  }
  const wanted = [`a whole number from ${least} to ${most}`];
  throw wrongUse('flag-value-wrong', { flag, received: text.slice(0, 60), wanted, nearest: [] });
}

/** `D46` or `46`. */
export function readDay(text: string, flag: string): number {
  const match = /^[Dd]?(\d{1,5})$/.exec(text.trim());
  if (match !== null) return readWholeNumber(match[1] ?? '', { flag, least: 0, most: 99_999 });
  throw wrongUse('flag-value-wrong', {
    flag,
    received: text.slice(0, 60),
    wanted: ['a day such as D46'],
    nearest: [],
  });
}
