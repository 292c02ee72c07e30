// Cells of a table as a clipboard carries it in HTML: rows, cells and their texts; every other mark is passed over.
import type { TableRow } from '../../desk/index.ts';
import type { TableCaps } from './caps.ts';
import { take } from './csv-rows.ts';
import { TableFault } from './table-fault.ts';

/** A tag from its `<` to its `>`, or a stretch of text without one; each letter is looked at once. */
const PIECE = /<(\/?)([A-Za-z][A-Za-z0-9]{0,15})([^<>]{0,2000})>|<[^<>]{0,2000}>|[^<]+|</g;
const COLSPAN = /\bcolspan\s*=\s*["']?(\d{1,3})/i;
const ENTITY = /&(?:#(\d{1,7})|#x([0-9a-f]{1,6})|([a-z]{2,6}));/gi;
const NAMED: ReadonlyMap<string, string> = new Map([
  ['amp', '&'],
  ['lt', '<'],
  ['gt', '>'],
  ['quot', '"'],
  ['apos', "'"],
  ['nbsp', '\u00A0'],
  ['plusmn', '\u00B1'],
  ['deg', '\u00B0'],
  ['micro', '\u00B5'],
  ['minus', '\u2212'],
]);
/** What stands in these is no text of a cell. */
const SILENT = new Set(['script', 'style', 'head', 'title']);
const DIGITS = '0123456789abcdef';

export function htmlRows(text: string, caps: TableCaps): readonly TableRow[] {
  const reading = new HtmlReading(caps);
  let line = 1;
  for (const [piece, close, name, rest = ''] of text.matchAll(PIECE)) {
    if (name === undefined) reading.text(piece.startsWith('<') && piece.endsWith('>') ? '' : piece);
    else reading.tag({ name: name.toLowerCase(), close: close === '/', rest, line });
    if (piece.includes('\n')) line += piece.split('\n').length - 1;
  }
  return reading.end();
}

interface Tag {
  readonly name: string;
  readonly close: boolean;
  readonly rest: string;
  readonly line: number;
}

class HtmlReading {
  readonly #caps: TableCaps;
  readonly #rows: TableRow[] = [];
  #row: { line: number; cells: string[] } | null = null;
  #cell: { text: string; span: number } | null = null;
  #silent: string | null = null;

  constructor(caps: TableCaps) {
    this.#caps = caps;
  }

  text(piece: string): void {
    if (this.#cell !== null && this.#silent === null) this.#cell.text += piece;
  }

  tag({ name, close, rest, line }: Tag): void {
    if (this.#silent !== null) {
      if (close && name === this.#silent) this.#silent = null;
    } else if (SILENT.has(name)) this.#silent = close ? null : name;
    else if (name === 'br') this.text(' ');
    else if (name === 'tr' || name === 'table') this.#endRow(close || name === 'table' ? null : line);
    else if (name === 'td' || name === 'th') this.#endCell(close ? null : spanOf(rest));
  }

  #endCell(next: number | null): void {
    if (this.#cell !== null && this.#row !== null) {
      // The cells that it spans are there, and empty.
      const { text, span } = this.#cell;
      const { cells, line } = this.#row;
      cells.push(plainText(text), ...Array.from({ length: span - 1 }, () => ''));
      // Held while the row grows: one cell may say that it spans a thousand.
      if (cells.length > this.#caps.columns) {
        const data = { columns: cells.length, most: this.#caps.columns };
        throw new TableFault('table-columns-too-many', data, { line });
      }
    }
    this.#cell = next === null || this.#row === null ? null : { text: '', span: next };
  }

  #endRow(nextLine: number | null): void {
    this.#endCell(null);
    if (this.#row !== null) take(this.#rows, this.#row, this.#caps);
    this.#row = nextLine === null ? null : { line: nextLine, cells: [] };
  }

  end(): readonly TableRow[] {
    this.#endRow(null);
    return this.#rows;
  }
}

function spanOf(rest: string): number {
  let span = 0;
  for (const digit of COLSPAN.exec(rest)?.[1] ?? '1') span = span * 10 + DIGITS.indexOf(digit);
  return Math.max(1, span);
}

function plainText(text: string): string {
  return text
    .replace(ENTITY, (whole, decimal?: string, hex?: string, name?: string) => {
      if (name !== undefined) return NAMED.get(name.toLowerCase()) ?? whole;
      return letterOf(decimal ?? hex ?? '', decimal === undefined ? 16 : 10) ?? whole;
    })
    .replace(/[\t\n\r ]+/g, ' ')
    .trim();
}

function letterOf(digits: string, base: 10 | 16): string | null {
  let code = 0;
  for (const digit of digits.toLowerCase()) code = code * base + DIGITS.indexOf(digit);
  const isLetter = code >= 32 && code <= 0x10_ff_ff && (code < 0xd8_00 || code > 0xdf_ff);
  return isLetter ? String.fromCodePoint(code) : null;
}
