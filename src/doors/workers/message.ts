// What goes between the thread that asks and the one that reads: rows as flat lists, which are copied fastest.
import type { Table, TableRow } from '../../desk/index.ts';
import type { TableCaps } from './caps.ts';
import type { TableOutcome } from './parse-table.ts';
import type { TableFinding } from './table-fault.ts';

export interface TableRequest {
  readonly file: string;
  readonly bytes: Uint8Array;
  readonly caps: TableCaps;
}

export type TableReply =
  | { readonly ok: false; readonly finding: TableFinding }
  | {
      readonly ok: true;
      readonly head: Omit<Table, 'rows'>;
      readonly cells: readonly string[];
      readonly lines: Int32Array;
      /** Cells of each row. */
      readonly widths: Int32Array;
    };

export function replyOf(outcome: TableOutcome): TableReply {
  if (!outcome.ok) return outcome;
  const { rows, ...head } = outcome.table;
  return {
    ok: true,
    head,
    cells: rows.flatMap(({ cells }) => cells),
    lines: Int32Array.from(rows, ({ line }) => line),
    widths: Int32Array.from(rows, ({ cells }) => cells.length),
  };
}

export function outcomeOf(reply: TableReply): TableOutcome {
  if (!reply.ok) return reply;
  const { head, cells, lines, widths } = reply;
  const rows: TableRow[] = [];
  let from = 0;
  for (const [k, width] of widths.entries()) {
    rows.push({ line: lines[k] ?? 0, cells: cells.slice(from, from + width) });
    from += width;
  }
  return { ok: true, table: { ...head, rows } };
}
