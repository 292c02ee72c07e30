// Random tidy tables in every form give the same entries, and a spoiled cell gives a reason at that cell, never another entry.
import * as fc from 'fast-check';
import { beforeAll, expect, test } from 'vitest';
import type { Desk } from '../../src/desk/index.ts';
import { corrieDesk, taken } from './corrie-desk.ts';

let desk: Desk;
beforeAll(async () => {
  desk = await corrieDesk();
});

interface Act {
  readonly at: string;
  readonly what: 'weighed' | 'moved' | 'note';
  readonly store: string;
  readonly to: string;
  readonly tenths: number;
  readonly unit: 'L' | 'kg' | 'mL';
  readonly note: string;
}

const two = (value: number): string => String(value).padStart(2, '0');
const act: fc.Arbitrary<Act> = fc.record({
  at: fc
    .tuple(fc.integer({ min: 1, max: 30 }), fc.integer({ min: 0, max: 23 }), fc.integer({ min: 0, max: 59 }))
    .map(([day, hour, minute]) => `2147-04-${two(day)} ${two(hour)}:${two(minute)}`),
  what: fc.constantFrom('weighed', 'moved', 'note'),
  store: fc.constantFrom('C-02', 'C-03', 'C-04'),
  to: fc.constantFrom('C-05', 'C-06'),
  tenths: fc.integer({ min: 1, max: 219 }).filter((tenths) => tenths % 10 !== 0),
  unit: fc.constantFrom('L', 'kg', 'mL'),
  note: fc.constantFrom(
    '',
    'clear',
    'a; b',
    'said "no"',
    '1,5 of it',
    '=A1+B1',
    '-7',
    '@home',
    '\u0645\u0627\u0621',
  ),
});
const acts = fc.uniqueArray(act, { minLength: 2, maxLength: 12, selector: ({ at }) => at });

const HEADINGS = ['When', 'What', 'Store', 'To', 'Amount', 'Notes'];

function cellsOf(each: Act, comma: boolean): string[] {
  const isNote = each.what === 'note';
  const value = String(each.tenths / 10);
  const amount = isNote ? '' : `${comma ? value.replace('.', ',') : value} ${each.unit}`;
  const note = isNote && each.note === '' ? 'seen' : each.note;
  return [
    each.at,
    each.what,
    each.what === 'moved' ? '' : each.store,
    each.what === 'moved' ? each.to : '',
    amount,
    note,
  ];
}

const quoted = (cell: string, sign: string): string =>
  /["\n\r]/.test(cell) || cell.includes(sign) ? `"${cell.replaceAll('"', '""')}"` : cell;

function csv(rows: readonly (readonly string[])[], sign: string, end = '\n'): string {
  return rows.map((cells) => cells.map((cell) => quoted(cell, sign)).join(sign) + end).join('');
}

const escaped = (cell: string): string =>
  cell.replaceAll('&', '&amp;').replaceAll('<', '&lt;').replaceAll('"', '&quot;');

const FORMS: Readonly<Record<string, (rows: readonly (readonly string[])[]) => string | Uint8Array>> = {
  CSV: (rows) => csv(rows, ','),
  'CSV with CRLF and a byte order mark': (rows) => `\ufeff${csv(rows, ',', '\r\n')}`,
  semicolons: (rows) => csv(rows, ';'),
  TSV: (rows) => csv(rows, '\t'),
  bars: (rows) => csv(rows, '|'),
  'UTF-16 LE': (rows) => {
    const text = `\ufeff${csv(rows, '\t')}`;
    return new Uint8Array(Uint16Array.from(text, (letter) => letter.charCodeAt(0)).buffer);
  },
  'UTF-16 BE': (rows) => {
    const text = `\ufeff${csv(rows, ';')}`;
    return Uint8Array.from(
      [...text].flatMap((letter) => [letter.charCodeAt(0) >> 8, letter.charCodeAt(0) & 255]),
    );
  },
  HTML: (rows) =>
    `<meta charset="utf-8"><table>${rows.map((cells) => `<tr>${cells.map((cell) => `<td>${escaped(cell)}</td>`).join('')}</tr>`).join('\n')}</table>`,
  'a title above and empty lines and columns around': (rows) => {
    const width = HEADINGS.length + 2;
    const empty = ';'.repeat(width - 1);
    return `Log of April${';'.repeat(width - 1)}\n${empty}\n${rows.map((cells) => `${cells.map((cell) => quoted(cell, ';')).join(';')};;\n`).join('')}${empty}\n${empty}\n`;
  },
};

const textsOf = (sheet: Awaited<ReturnType<typeof taken>>): readonly string[] =>
  sheet.preview.map(({ what, text }) => `${what}: ${text}`);

test('the same table in every form, with decimal points and commas, gives the same entries', async () => {
  await fc.assert(
    fc.asyncProperty(acts, async (list) => {
      const rows = (comma: boolean) => [HEADINGS, ...list.map((each) => cellsOf(each, comma))];
      const wanted = await taken(desk, csv(rows(false), ','), { dryRun: true });
      expect(wanted.taken).toBe(list.length);
      for (const [name, form] of Object.entries(FORMS)) {
        for (const comma of [false, true]) {
          const sheet = await taken(desk, form(rows(comma)), { dryRun: true });
          expect({ name, comma, texts: textsOf(sheet) }).toEqual({ name, comma, texts: textsOf(wanted) });
        }
      }
      const lines = list.map((each) =>
        JSON.stringify(Object.fromEntries(HEADINGS.map((key, k) => [key, cellsOf(each, false)[k]]))),
      );
      expect(textsOf(await taken(desk, lines.join('\n'), { dryRun: true }))).toEqual(textsOf(wanted));
    }),
    { numRuns: 60, seed: 2147 },
  );
});

/** Slips that no value of the column can be; each leaves the other cells as they are. */
const SLIPS: Readonly<Record<string, { readonly column: number; readonly spoil: (cell: string) => string }>> =
  {
    'a question mark': { column: 4, spoil: (cell) => `${cell} ?` },
    about: { column: 4, spoil: (cell) => `~${cell}` },
    'no unit': { column: 4, spoil: (cell) => cell.replace(/ \w+$/, '') },
    'a unit that is none': { column: 4, spoil: (cell) => cell.replace(/\w+$/, 'qx') },
    mega: { column: 4, spoil: (cell) => cell.replace(/ \w+$/, ' ML') },
    'a lost point': { column: 4, spoil: () => '204 L' },
    'a formula': { column: 4, spoil: () => '=SUM(E2:E9)' },
    words: { column: 4, spoil: () => 'half of it' },
    'two signs': { column: 4, spoil: (cell) => cell.replace('.', '.,') },
    'less than nothing': { column: 4, spoil: (cell) => `-${cell}` },
    'no number': { column: 4, spoil: () => 'NaN L' },
    'no end': { column: 4, spoil: () => '1e400 L' },
    nothing: { column: 4, spoil: () => '' },
    'a day that is not': { column: 0, spoil: () => '2147-02-30 10:00' },
    'no hour': { column: 0, spoil: (cell) => cell.replace(/ .*/, ' 25:10') },
    'a leap second': { column: 0, spoil: (cell) => `${cell}:60` },
    'no time': { column: 0, spoil: () => '' },
    'next century': { column: 0, spoil: (cell) => cell.replace('2147', '2247') },
    'a year in two': { column: 0, spoil: (cell) => cell.replace('2147', '47') },
    'no act': { column: 1, spoil: () => 'sang to it' },
  };

test.each(Object.entries(SLIPS))(
  '%s: the line waits with a reason at that cell, the others are taken',
  async (_name, slip) => {
    await fc.assert(
      fc.asyncProperty(acts, fc.nat(), async (list, at) => {
        const full = list.map(
          (each) => ({ ...each, what: each.what === 'note' ? 'weighed' : each.what }) as Act,
        );
        const rows = full.map((each) => cellsOf(each, false));
        const before = await taken(desk, csv([HEADINGS, ...rows], ','), { dryRun: true });
        const k = at % rows.length;
        const spoiled = rows.map((cells, row) =>
          cells.map((cell, column) => (row === k && column === slip.column ? slip.spoil(cell) : cell)),
        );
        const after = await taken(desk, csv([HEADINGS, ...spoiled], ','), { dryRun: true });
        after.preview.forEach((line, row) => {
          if (row !== k) {
            expect(line).toEqual(before.preview[row]);
            return;
          }
          expect(line.what).toBe('waits');
          expect(line.reasons.map(({ where }) => where.column)).toContain(slip.column + 1);
          for (const { text, expected, received, remedy } of line.reasons)
            expect([text, expected, received, remedy].every((sentence) => sentence.trim() !== '')).toBe(true);
        });
      }),
      { numRuns: 15, seed: 7 },
    );
  },
);

/** Other spellings of the same: nothing of these may wait or change. */
const HARMLESS: Readonly<
  Record<string, { readonly column: number; readonly respell: (cell: string) => string }>
> = {
  'spaces around': { column: 4, respell: (cell) => `  ${cell} ` },
  'no space before the unit': { column: 4, respell: (cell) => cell.replace(' ', '') },
  'a small store': { column: 2, respell: (cell) => cell.toLowerCase().replace('-', '') },
  'an ISO time': { column: 0, respell: (cell) => `${cell.replace(' ', 'T')}Z` },
  'a name of the month': {
    column: 0,
    respell: (cell) => cell.replace(/2147-04-(\d\d)/, (_, day: string) => `${day} Apr 2147`),
  },
  'another zone': { column: 0, respell: (cell) => `${cell} +00:00` },
};

test.each(Object.entries(HARMLESS))('%s: the same entries', async (_name, { column, respell }) => {
  await fc.assert(
    fc.asyncProperty(acts, async (list) => {
      const rows = list.map((each) => cellsOf(each, false));
      const other = rows.map((cells) => cells.map((cell, k) => (k === column ? respell(cell) : cell)));
      const [one, two] = [
        await taken(desk, csv([HEADINGS, ...rows], ','), { dryRun: true }),
        await taken(desk, csv([HEADINGS, ...other], ','), { dryRun: true }),
      ];
      expect(textsOf(two)).toEqual(textsOf(one));
    }),
    { numRuns: 15, seed: 8 },
  );
});
