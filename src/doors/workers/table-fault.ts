// What stops the reading of a file: one finding, thrown up to where the reading began.
import type { Finding, FindingData, Where } from '../../ground/units/index.ts';
import type { TableFindingCode } from '../../papers/index.ts';

export type TableFinding = Finding<TableFindingCode>;

export class TableFault extends Error {
  override readonly name = 'TableFault';
  readonly finding: TableFinding;

  constructor(code: TableFindingCode, data: FindingData = {}, where: Where = {}) {
    super(code);
    this.finding = { code, severity: 'error', where, data, entries: [] };
  }
}
