// From the bytes of a file to a table, or the one finding that says why there is none.
import type { Table, TableRow } from '../../desk/index.ts';
import type { TableCaps } from './caps.ts';
import { csvRows } from './csv-rows.ts';
import { decoded } from './decode.ts';
import { type Delimiter, delimiterOf } from './delimiter.ts';
import { htmlRows } from './html-rows.ts';
import { jsonRows } from './json-rows.ts';
import { TableFault, type TableFinding } from './table-fault.ts';

export type TableOutcome =
  | { readonly ok: true; readonly table: Table }
  | { readonly ok: false; readonly finding: TableFinding };

const FORMATS: Readonly<Record<Delimiter, Table['format']>> = {
  '\t': 'TSV',
  ';': 'semicolon table',
  '|': 'bar table',
  ',': 'CSV',
};

export function parseTable(file: string, bytes: Uint8Array, caps: TableCaps): TableOutcome {
  try {
    if (bytes.length > caps.bytes)
      throw new TableFault('table-too-large', { bytes: bytes.length, most: caps.bytes });
    return { ok: true, table: { file, ...tableOf(decoded(bytes), caps) } };
  } catch (error) {
    if (!(error instanceof TableFault)) throw error;
    const { finding } = error;
    return { ok: false, finding: { ...finding, where: { file, ...finding.where } } };
  }
}

function tableOf(text: string, caps: TableCaps): Omit<Table, 'file'> {
  const start = text.trimStart().slice(0, 1);
  if (start === '') throw new TableFault('table-empty');
  if (start === '{') return { format: 'JSON Lines', ...jsonRows(text, caps) };
  if (start === '<' && /<t(able|r)[\s>]/i.test(text)) {
    return withRows({ format: 'HTML table', rows: htmlRows(text, caps) });
  }
  const delimiter = delimiterOf(text);
  return withRows({ format: FORMATS[delimiter], rows: csvRows(text, delimiter, caps) });
}

function withRows(table: { readonly format: Table['format']; readonly rows: readonly TableRow[] }) {
  if (table.rows.length === 0) throw new TableFault('table-empty');
  return table;
}
