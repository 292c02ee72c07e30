// A table without lines: columns that are aligned, that give way when there is no room, and that say so.
import { type FigureCell, figureColumn } from './figure-cell.ts';
import type { TextOptions } from './options.ts';
import { signed } from './signs.ts';
import { padEnd, padStart, widthOf } from './width.ts';
import { hanging, wrap } from './wrap.ts';

export interface Column<Row> {
  readonly head: string;
  /** Texts to the left, bare numbers to the right, figures on their decimal points and their ± under each other. */
  readonly align: 'left' | 'right' | 'figure';
  /** 0 is never dropped; of the others the highest goes first. */
  readonly priority: number;
  readonly cell: (row: Row) => string | FigureCell;
  /** A text column that may be narrowed to this and then breaks its lines. */
  readonly least?: number;
}

export interface Table {
  readonly lines: readonly string[];
  /** Heads of the columns that had no room. */
  readonly dropped: readonly string[];
}

interface Laid {
  readonly head: string;
  readonly align: 'left' | 'right';
  readonly priority: number;
  readonly cells: readonly string[];
  readonly least: number | null;
  readonly width: number;
}

const gap = '  ';
/** Narrower than this no figure fits with its ±; a page of the narrowest kind has room for it two columns in. */
const NARROWEST = 18;

/** Lays a table out so that no line is wider than the options say. */
export function table<Row>(
  columns: readonly Column<Row>[],
  rows: readonly Row[],
  options: TextOptions,
): Table {
  const width = Math.max(NARROWEST, options.width);
  const laid = columns.map((column) => lay(column, rows, options)).filter((column) => isUsed(column));
  const kept = [...laid];
  const dropped: string[] = [];
  while (leastWidth(kept) > width) {
    const next = lowest(kept);
    if (next === null) return { lines: asRecords(laid, rows.length, width), dropped: [] };
    kept.splice(kept.indexOf(next), 1);
    dropped.push(next.head);
  }
  const fitted = narrowed(kept, width);
  const heads = fitted.map((column) => aligned(column.head, column));
  const body = rows.flatMap((_, k) => rowLines(fitted, k));
  return { lines: [heads.join(gap).trimEnd(), ...body], dropped };
}

function lay<Row>(column: Column<Row>, rows: readonly Row[], { style }: TextOptions): Laid {
  const raw = rows.map(column.cell);
  const figures = figureColumn(raw, style);
  const cells = raw.map((cell, k) => (typeof cell === 'string' ? signed(cell, style) : (figures[k] ?? '')));
  const head = signed(column.head, style);
  const width = Math.max(widthOf(head), ...cells.map(widthOf), 1);
  const align = column.align === 'left' ? 'left' : 'right';
  return { head, align, priority: column.priority, cells, least: leastOf(column, head, cells), width };
}

/** A column is not made so narrow that a word would be cut, unless the word is a very long one. */
const LONGEST_WORD = 24;

function leastOf(
  { least }: Pick<Column<never>, 'least'>,
  head: string,
  cells: readonly string[],
): number | null {
  if (least === undefined) return null;
  const words = [head, ...cells].flatMap((cell) => cell.split(/ |(?<=\/)/)).map(widthOf);
  return Math.max(least, ...words.filter((width) => width <= LONGEST_WORD));
}

/** A column that has nothing in any row goes by itself, and nobody misses it. */
function isUsed({ cells }: Laid): boolean {
  return cells.length === 0 || cells.some((cell) => cell !== '');
}

function leastWidth(columns: readonly Laid[]): number {
  const cells = columns.map((column) =>
    column.least === null ? column.width : Math.min(column.least, column.width),
  );
  return cells.reduce((sum, each) => sum + each, 0) + gap.length * Math.max(0, columns.length - 1);
}

function lowest(columns: readonly Laid[]): Laid | null {
  const droppable = columns.filter((column) => column.priority > 0);
  const [first] = [...droppable].sort((a, b) => b.priority - a.priority);
  return first ?? null;
}

/** Columns that may break their lines give what lacks, the widest first. */
function narrowed(columns: readonly Laid[], width: number): readonly Laid[] {
  let lacks =
    columns.reduce((sum, column) => sum + column.width, 0) + gap.length * (columns.length - 1) - width;
  const widths = new Map(columns.map((column) => [column, column.width]));
  for (const column of [...columns].sort((a, b) => b.width - a.width)) {
    if (column.least === null || lacks <= 0) continue;
    const give = Math.min(lacks, column.width - Math.min(column.least, column.width));
    widths.set(column, column.width - give);
    lacks -= give;
  }
  return columns.map((column) => ({ ...column, width: widths.get(column) ?? column.width }));
}

function rowLines(columns: readonly Laid[], row: number): string[] {
  const cells = columns.map((column) => wrap(column.cells[row] ?? '', column.width));
  const height = Math.max(...cells.map((lines) => lines.length));
  return Array.from({ length: height }, (_, k) =>
    columns
      .map((column, c) => aligned(cells[c]?.[k] ?? '', column))
      .join(gap)
      .trimEnd(),
  );
}

function aligned(text: string, { align, width }: Laid): string {
  return align === 'left' ? padEnd(text, width) : padStart(text, width);
}

/** Where not even the columns that must stay have room side by side, all stand under each other. */
function asRecords(columns: readonly Laid[], rows: number, width: number): string[] {
  const indent = Math.min(12, Math.max(...columns.map(({ head }) => widthOf(head))) + 2);
  return Array.from({ length: rows }, (_, k) => [
    ...(k === 0 ? [] : ['']),
    ...columns.flatMap(({ head, cells }) => {
      // Under each other there is nothing to be aligned with.
      const cell = (cells[k] ?? '').replace(/\u00A0+/g, '\u00A0').trim();
      return cell === '' ? [] : hanging(head, cell, { width, indent });
    }),
  ]).flat();
}
