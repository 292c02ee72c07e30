// Cells of every form: what is cut at signs and what csv-parse reads are the same, quotes are those of RFC 4180, and lines keep their numbers.
import { parse } from 'csv-parse/sync';
import * as fc from 'fast-check';
import { expect, test } from 'vitest';
import { TABLE_CAPS } from './caps.ts';
import { csvRows } from './csv-rows.ts';
import { delimiterOf } from './delimiter.ts';
import { htmlRows } from './html-rows.ts';
import { parseTable } from './parse-table.ts';

const cellsOf = (text: string, sign: ';' | ',' = ';') =>
  csvRows(text, sign, TABLE_CAPS).map(({ cells }) => cells);
const text = fc
  .array(fc.constantFrom('a', '1', ';', '\n', '\r\n', ' ', ',', '.'), { maxLength: 80 })
  .map((parts) => parts.join(''));

test('without quotes cutting gives the cells of csv-parse', () => {
  fc.assert(
    fc.property(text, (given) => {
      // csv-parse reads no line behind a last line end, and neither do we.
      const theirs = parse(given, {
        delimiter: ';',
        relax_column_count: true,
        record_delimiter: ['\r\n', '\n'],
      }) as string[][];
      expect(cellsOf(given)).toEqual(theirs);
    }),
    { numRuns: 2000, seed: 1 },
  );
});

test.each([
  ['a;"b;c";d', [['a', 'b;c', 'd']]],
  ['"say ""no""";x', [['say "no"', 'x']]],
  [
    '"two\nlines";x\ny;z',
    [
      ['two\nlines', 'x'],
      ['y', 'z'],
    ],
  ],
  ['5" hose;x', [['5" hose', 'x']]],
  ['"";x', [['', 'x']]],
])('%s', (given, wanted) => {
  expect(cellsOf(given)).toEqual(wanted);
});

test('a line behind a cell of several lines has the number that an editor shows', () => {
  const rows = csvRows('"h";i\n"a\nb";c\nd;e\n"f";g\n', ';', TABLE_CAPS);
  expect(rows.map(({ line }) => line)).toEqual([1, 2, 4, 5]);
});

test.each([
  ['a;b\n1,5;2,5\n3,5;4,5\n', ';'],
  ['a,b\n"1,5",2\n3,"4;5"\n', ','],
  ['a\tb\n1,5\t2;3\n', '\t'],
  ['Title\n\na|b\n1|2\n3|4\n', '|'],
])('the sign of %j is %j', (given, sign) => {
  expect(delimiterOf(given)).toBe(sign);
});

test('a clipboard table: texts of cells, entities, spans, and nothing else', () => {
  const html =
    '<html><head><style>td{a:b}</style></head><table><tr><th colspan="2">A&amp;B<th>c\n d<tr><td><b>1,5</b> L<td>&#177; 0.2<td><script>x</script>y</table>';
  expect(htmlRows(html, TABLE_CAPS).map(({ cells }) => cells)).toEqual([
    ['A&B', '', 'c d'],
    ['1,5 L', '± 0.2', 'y'],
  ]);
});

test('flat JSON Lines: keys are headings, in the order in which they come', () => {
  const read = parseTable(
    'a.jsonl',
    new TextEncoder().encode('{"b":1,"a":"x"}\n\n{"c":null,"a":true,"__proto__":"p"}\n'),
    TABLE_CAPS,
  );
  expect(read).toMatchObject({
    ok: true,
    table: {
      headings: ['b', 'a', 'c', '__proto__'],
      rows: [
        { line: 1, cells: ['1', 'x'] },
        { line: 3, cells: ['', 'yes', '', 'p'] },
      ],
    },
  });
});
