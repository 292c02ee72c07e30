// Where the headings of a table are: titles above them, headings in several lines, empty lines and columns around them.
import { unitOf } from './match-heading.ts';
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
/** Nobody reads a longer name of a column. */
const LONGEST_HEADING = 400;
/** A number, an amount, a date, a time, a day. */
const DATA = /^\s*(?:[~<]?[-+\u2212]?\s?\d|D(?:ay)?\s?\d)/i;

/** Whether a text means something as a heading. */
export type MeansSomething = (text: string) => boolean;

/** Null where no line says what the columns are. */
export function findHeadings(table: Table, means: MeansSomething): Headed | null {
  const { headings: known, rows } = table;
  const filled = rows.filter(isFilled);
  if (known !== undefined) return { headings: known.map((text) => ({ tries: [tidy(text)] })), body: filled };
  const blocks = rows.slice(0, MOST_LINES_ABOVE).flatMap((row, k): Block[] => {
    const isFirst = hasData(row) && isHeading(rows[k - 1]);
    return isFirst ? [blockAbove(rows, k, means)] : [];
  });
  const best = blocks.reduce<Block | null>(
    (most, block) => (block.known > (most?.known ?? -1) ? block : most),
    null,
  );
  if (best === null) return null;
  const body = rows.slice(best.bodyAt).filter(isFilled);
  const width = Math.max(...best.lines.map(usedWidth));
  return { headings: Array.from({ length: width }, (_, column) => headingOf(best.lines, column)), body };
}

interface Block {
  readonly lines: readonly TableRow[];
  readonly bodyAt: number;
  /** Cells of its best line that mean something. */
  readonly known: number;
}

function isFilled({ cells }: TableRow): boolean {
  return cells.some((cell) => cell.trim() !== '');
}

function hasData({ cells }: TableRow): boolean {
  return cells.some((cell) => DATA.test(cell));
}

function isHeading(row: TableRow | undefined): row is TableRow {
  return row !== undefined && isFilled(row) && !hasData(row);
}

/**
 * Contiguous lines without data above some. What follows the line that names the columns belongs to it only if it holds
 * units; else it is a line of data in which the numbers are missing. A single text over a wider table is its title.
 */
function blockAbove(rows: readonly TableRow[], at: number, means: MeansSomething): Block {
  const lines: TableRow[] = [];
  let first = at;
  for (let k = at - 1; k >= 0 && isHeading(rows[k]); k--) {
    lines.unshift(rows[k] as TableRow);
    first = k;
  }
  const counts = lines.map(
    ({ cells }) => cells.filter((cell) => cell.trim() !== '' && means(tidy(cell))).length,
  );
  const known = Math.max(...counts);
  const namesAt = counts.indexOf(known);
  let end = namesAt + 1;
  while (end < lines.length && isOfUnits(lines[end] as TableRow)) end += 1;
  const above = lines.slice(Math.max(0, end - MOST_HEADING_LINES), end);
  const titles = above.findLastIndex((line, k) => k < above.length - 1 && isTitle(line)) + 1;
  return { lines: above.slice(titles), bodyAt: first + end, known };
}

function isOfUnits({ cells }: TableRow): boolean {
  return cells.every((cell) => cell.trim() === '' || unitOf(cell.replace(/[()[\]]/g, '')) !== null);
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
  return parts
    .filter((part) => part !== '')
    .join(' ')
    .slice(0, LONGEST_HEADING)
    .toWellFormed();
}

function tidy(text: string): string {
  return text.replace(/\s+/g, ' ').trim().slice(0, LONGEST_HEADING).toWellFormed();
}
