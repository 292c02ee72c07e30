// Comma-separated values: quotes where they are needed, numbers as they are, and no text that a spreadsheet runs.
import { expect, test } from 'vitest';
import { csvText } from './csv-text.ts';

test('lines end with CR LF, nothing is nothing, numbers stay numbers', () => {
  expect(
    csvText(
      ['store', 'volume_L'],
      [
        ['R2', -1.5],
        [null, 0],
      ],
    ),
  ).toBe('store,volume_L\r\nR2,-1.5\r\n,0\r\n');
});

test('commas, quotes and line ends are quoted', () => {
  expect(csvText(['a'], [['x, "y"\nz']])).toBe('a\r\n"x, ""y""\nz"\r\n');
});

test.each(['=1+1', '+49', '-2', '@sum', '\tx'])('%j is defused', (text) => {
  expect(csvText(['a'], [[text]])).toBe(`a\r\n'${text}\r\n`);
});
