// Names of new samples and holds: the next one of the series that the book has.

const SERIES = /^(.*?)(\d+)$/s;

/**
 * The next free names of a series.
 * @param known in the order in which they came
 * @param first where there is no series yet
 * @example nextNames(['SMP-11', 'SMP-12'], 'S-01', 2) // ['SMP-13', 'SMP-14']
 */
export function nextNames(known: readonly string[], first: string, count: number): readonly string[] {
  const last = known.findLast((name) => SERIES.test(name)) ?? null;
  const [, stem = '', digits = '1'] = SERIES.exec(last ?? first) ?? [];
  const taken = new Set(known);
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
