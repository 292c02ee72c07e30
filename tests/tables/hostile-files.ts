// Table of families of files made to break whoever reads them; each gives as many as are asked for, from a seed.

/** Whole numbers from 0 to below `below`, the same for the same seed. */
type Chance = (below: number) => number;

/** A small generator for tests alone: xorshift of 32 bits. */
export function chanceOf(seed: number): Chance {
  let state = seed >>> 0 || 1;
  return (below) => {
    state ^= state << 13;
    state ^= state >>> 17;
    state ^= state << 5;
    state >>>= 0;
    return state % below;
  };
}

type Family = (chance: Chance) => string | Uint8Array;

const HEAD = 'When;What;Store;To;Amount;Notes';
const line = (amount: string, note = '', at = '2147-04-03 10:00'): string =>
  `${at};weighed;C-02;;${amount};${note}`;
const sheet = (...lines: readonly string[]): string => `${[HEAD, ...lines].join('\n')}\n`;
const pick = <T>(chance: Chance, list: readonly T[]): T => list[chance(list.length)] as T;
const times = (count: number, text: string): string => text.repeat(count);
const bytes = (...values: readonly number[]): Uint8Array => Uint8Array.from(values);
const joined = (...parts: readonly Uint8Array[]): Uint8Array => new Uint8Array(Buffer.concat(parts));
const utf8 = (text: string): Uint8Array => new TextEncoder().encode(text);

export const FAMILIES: Readonly<Record<string, Family>> = {
  'deep nesting in JSON': (chance) => `{"a":${times(1000 + chance(200_000), pick(chance, ['[', '{"a":']))}`,
  'an object in an object': (chance) => `{"when":"2147-04-03","amount":{"l":${chance(9)}}}\n`,
  'keys of every object': (chance) =>
    `{"${pick(chance, ['__proto__', 'constructor', 'prototype', 'toString'])}":"x","when":"2147-04-0${1 + chance(8)}","amount":"430"}\n`,
  'the same key twice': (chance) => `{"when":"2147-04-03","amount":"${chance(900)}","amount":"430"}\n`,
  'a number without an end': (chance) =>
    `{"when":"2147-04-03","what":"weighed","store":"C-02","amount":${pick(chance, ['1e400', '-1e999', '9'.repeat(400)])}}\n`,
  'a torn line of JSON': (chance) => `{"when":"2147-04-03","amount":"43${times(chance(60), ' ')}`,
  'a long key': (chance) => `{"${times(5000 + chance(90_000), 'k')}":1}\n`,
  'a huge cell': (chance) => sheet(line('20 kg', times(4001 + chance(400_000), 'x'))),
  'very many columns': (chance) => `${times(201 + chance(300_000), pick(chance, [';', ',', '\t']))}\n1;2\n`,
  'very many empty lines': (chance) => `${HEAD}\n${times(100_000 + chance(900_000), '\n')}`,
  'very many lines': (chance) => times(200_001 + chance(50_000), 'a;b\n'),
  'an open quote': (chance) => sheet(line('20 kg', `"${times(chance(300_000), 'open and ')}`)),
  'a storm of quotes': (chance) =>
    `${HEAD}\n${times(2000 + chance(100_000), pick(chance, ['"', '""";', '";"']))}`,
  'zero bytes': (chance) =>
    joined(utf8(sheet(line('20 kg')).slice(0, 10 + chance(60))), bytes(0, 0, 0), utf8(';;\n')),
  'a byte order mark and nothing': (chance) =>
    pick(chance, [bytes(0xef, 0xbb, 0xbf), bytes(0xff, 0xfe), bytes(0xfe, 0xff)]),
  'half a letter of UTF-16': (chance) => joined(bytes(0xff, 0xfe), utf8(times(1 + 2 * chance(40), 'a'))),
  'latin letters': (chance) =>
    joined(utf8(`${HEAD}\n`), bytes(0xe9 + chance(10), 0x3b, 0x0a, 0x80 + chance(60))),
  'lone surrogates': (chance) =>
    `{"when":"2147-04-03","what":"note","notes":"\\ud8${(chance(90) + 10).toString(16)}"}\n`,
  'text that turns direction': (chance) => sheet(line(`${chance(90)}`, '\u202e\u2066\u200f gk 02')),
  'line ends of all kinds': (chance) => `${HEAD}\r\r\n\n\r${line(`${100 + chance(900)}`)}\r${line('x')}\n\r`,
  formulas: (chance) =>
    sheet(line(pick(chance, ['=1+1', '@SUM(A1)', '+A1', '-A1', '=cmd|"/c calc"!A0', '=HYPERLINK(1)']))),
  'commas that may be points': (chance) => sheet(line(`${1 + chance(9)},${100 + chance(900)} kg`)),
  'words for amounts': (chance) =>
    sheet(
      line(
        pick(chance, [
          'some',
          'NaN kg',
          'Infinity L',
          '0x1F L',
          '1_000 L',
          '\u0661\u0662 L',
          'null',
          'undefined L',
          '-0,0,0 L',
        ]),
      ),
    ),
  'units that are none': (chance) =>
    sheet(
      line(
        `${1 + chance(90)} ${pick(chance, ['ML', 'Kg.', 'cups', 'l/d', 'mg/L', 'strokes/', 'L L', '\u33a4'])}`,
      ),
    ),
  'amounts beyond any store': (chance) =>
    sheet(
      line(
        `${pick(chance, ['9007199254740993', '1e30', '99999999999999999999', `${1000 + chance(9000)}`])} L`,
      ),
    ),
  'days that never were': (chance) =>
    sheet(
      line(
        '20 kg',
        '',
        pick(chance, [
          '2147-02-30 10:00',
          '2147-04-31',
          '00.00.0000',
          '2147-04-03 23:59:60',
          '2147-04-03 24:00',
          '32.13.2147',
          'D99999',
          '9999-99-99',
          '2147-04-03T10:00+99:99',
          '-1',
          '1e9',
          '29 Feb 2147',
        ]),
      ),
    ),
  'days outside of the book': (chance) =>
    sheet(
      line(
        '20 kg',
        '',
        `${pick(chance, ['1970', '2026', '2147-12', '3000', '0001'])}-01-01 10:00`.replace(
          '-12-01-01',
          '-12-31',
        ),
      ),
    ),
  'names of nothing': (chance) =>
    sheet(
      `2147-04-03;${pick(chance, ['weighed', 'fill', 'moved'])};${pick(chance, ['C-99', '../C-02', `${'C-02\u0000'.slice(0, 3)}*`, "'; --", '<script>', '${x}'])};C-03;1 L;`,
    ),
  'rows that are too wide': (chance) => sheet(`${line('20 kg', 'a')}${times(1 + chance(60), ';more')}`),
  'a web page': (chance) =>
    `<!doctype html><html><script>${times(chance(2000), 'alert(1);')}</script><table><tr><td>When<td>${times(chance(500), '<b>')}What<tr><td>x<td>y</table>`,
  'a table of open tags': (chance) =>
    `<table>${times(1000 + chance(150_000), pick(chance, ['<tr><td', '<td>', '<tr>', '<', '<td colspan=999>', '&#99999999;']))}`,
  'a workbook': (chance) =>
    joined(
      bytes(0x50, 0x4b, 3, 4),
      Uint8Array.from({ length: 200 + chance(2000) }, () => chance(256)),
    ),
  'packed bytes': (chance) =>
    joined(
      bytes(0x1f, 0x8b, 8, 0),
      Uint8Array.from({ length: 200 + chance(2000) }, () => chance(256)),
    ),
  'chance alone': (chance) => Uint8Array.from({ length: chance(5000) }, () => chance(256)),
  'letters by chance': (chance) =>
    Array.from({ length: chance(3000) }, () =>
      pick(chance, [...';,\t|"\n\r 0123456789-:.=LkgC\u00b1\u0644']),
    ).join(''),
  'bait for patterns': (chance) =>
    sheet(
      line(
        `${times(500 + chance(3000), pick(chance, ['1 ', '1,', '1.', ' ', '-', "1'", '\u00a0']))}x`,
        `${times(1500, 'a ')}!`,
      ),
    ),
  'headings without an end': (chance) => `${times(30 + chance(20), `${times(1 + chance(100), 'what;')}\n`)}`,
  'two of everything': (chance) =>
    `When;When;Amount;Amount (L)\n2147-04-03;2147-04-04;${chance(30)} L;${chance(30)}\n`,
  nothing: (chance) => times(chance(400), pick(chance, [' ', '\n', '\t', ';', '\r\n'])),
  'a sum under nothing': (chance) => sheet(`Total;;;;${chance(9000)};`, `Sum;;;;${chance(900)} L;`),
};
