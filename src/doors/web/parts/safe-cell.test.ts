// Copied cells: defused where they would be a formula, and numbers where they are numbers.
import { expect, test } from 'vitest';
import { safeCell } from './safe-cell.ts';

test('a copied cell is no formula, and a number below zero stays a number', () => {
  for (const text of ['=1+1', '+SUM(A1)', '@x', '-cmd|x', '=HYPERLINK("x")'])
    expect(safeCell(text)).toBe(`'${text}`);
  for (const text of ['-12.5', '0.4', '21.4 +/- 0.4']) expect(safeCell(text)).toBe(text);
  expect(safeCell('\u22121.9\u00A0±\u00A01.3\u00A0L')).toBe('-1.9 ± 1.3 L');
  expect(safeCell('12\u202F346')).toBe('12346');
  expect(safeCell('a\tb\nc')).toBe('a b c');
});
