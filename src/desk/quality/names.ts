// Names of new samples and holds: the next one of the series that the book has.

const SERIES = /^(.*?)(\d+)$/s;

export interface NameSeries {
  /** Names of the series, in the order in which they came. */
  readonly series: readonly string[];
  /** The first name, where there is no series yet. */
  readonly first: string;
  /** Names that no new one may have. */
  readonly taken: readonly string[];
}

/**
 * The next free names of a series.
 * @example nextNames({ series: ['SMP-11', 'SMP-12'], first: 'S-01', taken: [] }, 2) // ['SMP-13', 'SMP-14']
 */
export function nextNames(of: NameSeries, count: number): readonly string[] {
  const { series, first } = of;
  const last = series.findLast((name) => SERIES.test(name)) ?? null;
  const [, stem = '', digits = '1'] = SERIES.exec(last ?? first) ?? [];
  const taken = new Set([...series, ...of.taken]);
  const names: string[] = [];
  for (let number = wholeOf(digits) + (last === null ? 0 : 1); names.length < count; number++) {
    const name = `${stem}${String(number).padStart(digits.length, '0')}`;
    if (!taken.has(name)) names.push(name);
  }
  return names;
}

function wholeOf(digits: string): number {
  let value = 0;
  for (const digit of digits.slice(-9)) value = value * 10 + '0123456789'.indexOf(digit);
  return value;
}
