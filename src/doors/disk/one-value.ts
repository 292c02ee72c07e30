// The single value of a statement that has one row with one column.
import type { StatementSync } from 'node:sqlite';

export function oneValue(statement: StatementSync): unknown {
  return Object.values(statement.get() ?? {})[0];
}
