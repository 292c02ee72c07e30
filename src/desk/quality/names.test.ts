// New names go on with the series that the book has.
import { expect, test } from 'vitest';
import { nextNames } from './names.ts';

const of = (series: readonly string[], taken: readonly string[] = []) => ({ series, taken, first: 'S-01' });

test.each([
  [of([]), 2, ['S-01', 'S-02']],
  [of(['SMP-08', 'SMP-09']), 2, ['SMP-10', 'SMP-11']],
  [of(['Q-1', 'smell']), 1, ['Q-2']],
  [of(['smell']), 1, ['S-01']],
  [of(['SMP-03'], ['SMP-04', 'SMP-06']), 2, ['SMP-05', 'SMP-07']],
  [of(['A99']), 1, ['A100']],
])('%j', (series, count, names) => {
  expect(nextNames(series, count)).toEqual(names);
});
