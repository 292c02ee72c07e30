// Tables are aligned on the decimal point and the ±, give way by columns, and are never wider than asked for.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { unbound } from './signs.ts';
import { type Column, table } from './table.ts';
import { widthOf } from './width.ts';

interface Row {
  readonly id: string;
  readonly place: string;
  readonly value: number;
  readonly u95: number | null;
  readonly text: string;
}

const columns: readonly Column<Row>[] = [
  { head: 'STORE', align: 'left', priority: 0, cell: ({ id }) => id },
  { head: 'VOLUME L', align: 'figure', priority: 0, cell: ({ value, u95 }) => ({ value, u95 }) },
  { head: 'PLACE', align: 'left', priority: 2, cell: ({ place }) => place },
  { head: 'TEXT', align: 'left', priority: 1, cell: ({ text }) => text, least: 10 },
];
const rows: readonly Row[] = [
  { id: 'R1', place: 'outside', value: 172.04, u95: 6.2, text: 'gauged long ago' },
  { id: 'C-05', place: 'rack', value: 20.513, u95: 0.41, text: '' },
  { id: 'K-2', place: 'loft', value: -0.42, u95: 1.04, text: 'reckoned' },
  { id: 'X', place: 'loft', value: 3, u95: null, text: '' },
];
const options = { width: 60, style: 'screen', colour: false, units: 'L' } as const;
const shown = (width: number) => table(columns, rows, { ...options, width }).lines.map(unbound);

describe('a table', () => {
  it('aligns values on the point and doubts under each other', () => {
    expect(shown(60)).toEqual([
      'STORE     VOLUME L  PLACE    TEXT',
      'R1     172   ± 6    outside  gauged long ago',
      'C-05    20.5 ± 0.4  rack',
      'K-2     \u22120.4 ± 1.0  loft     reckoned',
      'X        3   ± ?    loft',
    ]);
  });

  it('breaks the lines of a text before it drops a column', () => {
    expect(shown(42)[1]).toBe('R1     172   ± 6    outside  gauged long');
    expect(shown(42)[2]?.trim()).toBe('ago');
    expect(table(columns, rows, { ...options, width: 42 }).dropped).toEqual([]);
  });

  it('drops the column of least value first, and says so', () => {
    expect(table(columns, rows, { ...options, width: 36 }).dropped).toEqual(['PLACE']);
    expect(table(columns, rows, { ...options, width: 24 }).dropped).toEqual(['PLACE', 'TEXT']);
  });

  it('puts all columns under each other where even those that must stay have no room', () => {
    const wide: Row = { id: 'a-store-with-a-very-long-name', place: 'loft', value: 20.5, u95: 0.4, text: '' };
    expect(table(columns, [wide], { ...options, width: 34 }).lines.map(unbound)).toEqual([
      'STORE     a-store-with-a-very-long',
      '          -name',
      'VOLUME L  20.5 ± 0.4',
      'PLACE     loft',
    ]);
  });

  it('leaves out a column that is empty throughout', () => {
    const bare = rows.map((row) => ({ ...row, text: '' }));
    expect(table(columns, bare, options).lines[0]).not.toContain('TEXT');
    expect(table(columns, bare, options).dropped).toEqual([]);
  });

  it('is never wider than asked for, for any content and style', () => {
    const row = fc.record({
      id: fc.string({ minLength: 1, maxLength: 30 }),
      place: fc.string({ unit: 'grapheme', maxLength: 30 }),
      value: fc.double({ min: -1e5, max: 1e5, noNaN: true }),
      u95: fc.option(fc.double({ min: 0, max: 100, noNaN: true })),
      text: fc.string({ unit: 'grapheme', maxLength: 80 }),
    });
    fc.assert(
      fc.property(
        fc.array(row, { maxLength: 6 }),
        fc.integer({ min: 20, max: 120 }),
        fc.constantFrom('screen' as const, 'ascii' as const),
        (list, width, style) => {
          const { lines } = table(columns, list, { ...options, style, width });
          for (const line of lines) expect(widthOf(line)).toBeLessThanOrEqual(width);
        },
      ),
    );
  });
});
