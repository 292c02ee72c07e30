// Where the headings of a table are: titles above them, headings in several lines, empty lines and columns around them.
import type { Table, TableRow } from './table.ts';

/** The texts that a column may be called by, the fullest last. */
export interface Heading {
  readonly tries: readonly [string, ...string[]];
}

export interface Headed {
  readonly headings: readonly Heading[];
  readonly body: readonly TableRow[];
}

/** Lines above the first one with data in it that are looked at. */
const MOST_LINES_ABOVE = 60;
const MOST_HEADING_LINES = 4;
/** A number, an amount, a date, a time, a day. */
const DATA = /^\s*(?:[~<]?[-+\u2212]?\s?\d|D(?:ay)?\s?\d)/i;

/** Null where no line says what the columns are. */
export function findHeadings(table: Table): Headed | null {
  const { headings: known, rows } = table;
  const filled = rows.filter(({ cells }) => cells.some((cell) => cell.trim() !== ''));
  if (known !== undefined) return { headings: known.map((text) => ({ tries: [text.trim()] })), body: filled };
  const at = rows.slice(0, MOST_LINES_ABOVE).findIndex((row, k) => isData(row) && isHeading(rows[k - 1]));
  if (at < 1) return null;
  const above = headingLines(rows, at);
  const body = rows.slice(at).filter(({ cells }) => cells.some((cell) => cell.trim() !== ''));
  const width = Math.max(...above.map(usedWidth));
  return { headings: Array.from({ length: width }, (_, column) => headingOf(above, column)), body };
}

function isData({ cells }: TableRow): boolean {
  const filled = cells.filter((cell) => cell.trim() !== '');
  const data = filled.filter((cell) => DATA.test(cell)).length;
  return data >= 2 || (data === 1 && filled.length > 1 && DATA.test(filled[0] ?? ''));
}

function isHeading(row: TableRow | undefined): row is TableRow {
  return row !== undefined && !isData(row) && row.cells.some((cell) => cell.trim() !== '');
}

/** Contiguous lines above the data; a line with a single text over a wider table is its title. */
function headingLines(rows: readonly TableRow[], at: number): readonly TableRow[] {
  const lines: TableRow[] = [];
  for (let k = at - 1; k >= 0 && lines.length < MOST_HEADING_LINES; k--) {
    const row = rows[k];
    if (!isHeading(row)) break;
    if (lines.length > 0 && isTitle(row)) break;
    lines.unshift(row);
  }
  return lines;
}

function isTitle({ cells }: TableRow): boolean {
  const [first, ...others] = cells.filter((cell) => cell.trim() !== '');
  return first !== undefined && others.length === 0 && cells[0]?.trim() !== '';
}

function usedWidth({ cells }: TableRow): number {
  return cells.findLastIndex((cell) => cell.trim() !== '') + 1;
}

/** A cell that was merged over several columns stands in the first of them; it may speak for those to its right. */
function headingOf(lines: readonly TableRow[], column: number): Heading {
  const own = lines.map(({ cells }) => tidy(cells[column] ?? ''));
  const last = own.at(-1) ?? '';
  const spread = lines.map(
    (line, k) => own[k] || (k < lines.length - 1 && last !== '' ? leftOf(line, column) : ''),
  );
  const tries = [joined(own), joined(spread), last].filter((text) => text !== '');
  const [first = '', ...others] = [...new Set(tries)];
  return { tries: [first, ...others] };
}

function leftOf({ cells }: TableRow, column: number): string {
  const at = cells.slice(0, column).findLastIndex((cell) => cell.trim() !== '');
  return at < 0 ? '' : tidy(cells[at] ?? '');
}

function joined(parts: readonly string[]): string {
  return parts.filter((part) => part !== '').join(' ');
}

function tidy(text: string): string {
  return text.replace(/\s+/g, ' ').trim();
}
