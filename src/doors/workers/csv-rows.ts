// Cells of a text by RFC 4180: quotes hold a cell together, two quotes are one, and what is in a cell stays text.
import { CsvError, parse } from 'csv-parse/sync';
import type { TableRow } from '../../desk/index.ts';
import type { TableCaps } from './caps.ts';
import { lineAt } from './decode.ts';
import type { Delimiter } from './delimiter.ts';
import { TableFault } from './table-fault.ts';

/** @source rfc-4180, section 2 */
export function csvRows(text: string, delimiter: Delimiter, caps: TableCaps): readonly TableRow[] {
  return text.includes('"') ? quotedRows(text, delimiter, caps) : plainRows(text, delimiter, caps);
}

/** Without a quote there is nothing to hold together: cutting at line ends and signs gives the same cells. */
function plainRows(text: string, delimiter: Delimiter, caps: TableCaps): readonly TableRow[] {
  const rows: TableRow[] = [];
  let line = 0;
  for (let from = 0; from < text.length; ) {
    const end = text.indexOf('\n', from);
    const to = end < 0 ? text.length : end;
    line += 1;
    const last = text.charCodeAt(to - 1) === 13 && to > from ? to - 1 : to;
    take(rows, { line, cells: text.slice(from, last).split(delimiter) }, caps);
    from = to + 1;
  }
  return rows;
}

function quotedRows(text: string, delimiter: Delimiter, caps: TableCaps): readonly TableRow[] {
  const rows: TableRow[] = [];
  let lineBefore = 0;
  try {
    parse(text, {
      delimiter,
      relax_column_count: true,
      // A sign for inches in the middle of a note is a letter of that note.
      relax_quotes: true,
      // A cell that is too long is said at its place, before the parser would give up.
      max_record_size: 0,
      record_delimiter: ['\r\n', '\n'],
      on_record: (cells: string[], { lines }: { lines: number }) => {
        take(rows, { line: lineBefore + 1, cells }, caps);
        lineBefore = lines;
        return null;
      },
    });
  } catch (error) {
    if (!(error instanceof CsvError)) throw error;
    throw quoteFault(error, text);
  }
  return rows;
}

function quoteFault(error: CsvError, text: string): TableFault {
  const { lines } = error as CsvError & { lines?: unknown };
  const line = typeof lines === 'number' ? lines : lineAt(text, text.length);
  return new TableFault('table-quote-open', {}, { line: Math.max(1, line) });
}

/** Keeps a row within the caps. */
export function take(rows: TableRow[], row: TableRow, caps: TableCaps): void {
  const { line, cells } = row;
  if (rows.length >= caps.rows)
    throw new TableFault('table-rows-too-many', { rows: null, most: caps.rows }, { line });
  if (cells.length > caps.columns)
    throw new TableFault('table-columns-too-many', { columns: cells.length, most: caps.columns }, { line });
  for (let k = 0; k < cells.length; k++) {
    const length = cells[k]?.length ?? 0;
    if (length > caps.cellLength)
      throw new TableFault('table-cell-too-long', { length, most: caps.cellLength }, { line, column: k + 1 });
  }
  rows.push(row);
}
