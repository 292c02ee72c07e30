// JSON Lines of flat objects as a table: the keys are headings, in the order in which they first appear.
import type { TableRow } from '../../desk/index.ts';
import type { TableCaps } from './caps.ts';
import { take } from './csv-rows.ts';
import { TableFault } from './table-fault.ts';

const QUOTED = 60;

export function jsonRows(
  text: string,
  caps: TableCaps,
): { readonly headings: readonly string[]; readonly rows: readonly TableRow[] } {
  const columns = new Map<string, number>();
  const rows: TableRow[] = [];
  let line = 0;
  for (const piece of text.split('\n')) {
    line += 1;
    if (piece.trim() === '') continue;
    const cells: string[] = [];
    for (const [key, value] of Object.entries(flatObject(piece, line))) {
      const column = columns.get(whole(key, line)) ?? columns.size;
      columns.set(key, column);
      while (cells.length <= column) cells.push('');
      cells[column] = cellOf(value, key, line);
    }
    take(rows, { line, cells }, caps);
  }
  return { headings: [...columns.keys()], rows };
}

/** Nesting is looked for before anything is parsed: a table has none, and a deep one costs its parser dearly. */
function flatObject(piece: string, line: number): Record<string, unknown> {
  if (isNested(piece)) throw new TableFault('table-not-flat', { received: piece.slice(0, QUOTED) }, { line });
  let value: unknown;
  try {
    value = JSON.parse(piece);
  } catch {
    throw new TableFault('table-line-no-json', { received: piece.slice(0, QUOTED) }, { line });
  }
  if (typeof value === 'object' && value !== null && !Array.isArray(value))
    return value as Record<string, unknown>;
  throw new TableFault('table-line-no-json', { received: piece.slice(0, QUOTED) }, { line });
}

function isNested(piece: string): boolean {
  let depth = 0;
  let inText = false;
  for (let at = 0; at < piece.length; at += 1) {
    const letter = piece[at];
    if (inText) {
      if (letter === '\\') at += 1;
      else if (letter === '"') inText = false;
    } else if (letter === '"') inText = true;
    else if (letter === '{' || letter === '[') depth += 1;
    else if (letter === '}' || letter === ']') depth -= 1;
    if (depth > 1) return true;
  }
  return false;
}

/** An escape can spell half a character, which is no text and cannot be kept. */
function whole(text: string, line: number): string {
  if (text.isWellFormed()) return text;
  throw new TableFault('table-no-text', { says: 'half a character' }, { line });
}

/** A number is spelled as JSON spells it; a number that JSON cannot hold is told as the text that it was. */
function cellOf(value: unknown, key: string, line: number): string {
  if (value === null) return '';
  if (typeof value === 'string') return whole(value, line);
  if (typeof value === 'number' && Number.isFinite(value)) return `${value}`;
  if (typeof value === 'boolean') return value ? 'yes' : 'no';
  throw new TableFault('table-line-no-json', { received: `${value}` }, { line, field: key.slice(0, QUOTED) });
}
