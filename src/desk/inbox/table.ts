// What a file is once its bytes are read: lines of cells, all of them texts, and nothing guessed yet.

/** A line of a table. */
export interface TableRow {
  /** Where it begins in the file, counted from 1. */
  readonly line: number;
  readonly cells: readonly string[];
}

export const TABLE_FORMATS = [
  'CSV',
  'TSV',
  'semicolon table',
  'bar table',
  'HTML table',
  'JSON Lines',
] as const;

export interface Table {
  /** As a person named it. */
  readonly file: string;
  readonly format: (typeof TABLE_FORMATS)[number];
  readonly rows: readonly TableRow[];
  /** Known where every line names its cells; else the headings are looked for among the rows. */
  readonly headings?: readonly string[];
}
