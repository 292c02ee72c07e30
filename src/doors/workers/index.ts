// The door of the threads: what other rooms may use.
export { TABLE_CAPS, type TableCaps } from './caps.ts';
export { firstBadLine } from './first-bad-line.ts';
export { parseTable, type TableOutcome } from './parse-table.ts';
export type { TableFinding } from './table-fault.ts';
export { readTable, TableReader } from './table-reader.ts';
