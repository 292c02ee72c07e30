// What a disk refuses: an error that carries a code and its data, so that the papers can put it into words.
import type { DiskFindingCode } from '../../book/index.ts';
import type { Finding, FindingData } from '../../ground/units/index.ts';

export type DiskFinding = Finding<DiskFindingCode>;

/** Whatever keeps a book from being read or written: its finding is told to the person as it is. */
export class StoreProblem extends Error {
  override readonly name: string = 'StoreProblem';
  readonly finding: Finding;

  constructor(finding: Finding) {
    super(`${finding.code} ${finding.where.file ?? ''} ${JSON.stringify(finding.data)}`);
    this.finding = finding;
  }
}

/** A fault of the file, of the disk under it, or of what may be done with it. Never a fault of an entry. */
export class DiskProblem extends StoreProblem {
  override readonly name: string = 'DiskProblem';
  readonly code: DiskFindingCode;
  declare readonly finding: DiskFinding;

  constructor(code: DiskFindingCode, path: string, data: FindingData = {}) {
    super(diskFinding(code, path, data));
    this.code = code;
  }
}

/** Who writes to a book at the moment, as far as it can be told. */
export interface Owner {
  readonly pid: number | null;
  readonly command: string | null;
  /** When it opened the book for writing, in UTC milliseconds. */
  readonly sinceMs: number | null;
}

/** Another process held the book for longer than the caller would wait. */
export class BookBusy extends DiskProblem {
  override readonly name = 'BookBusy';
  readonly owner: Owner;

  constructor(path: string, owner: Owner, waitedMs: number) {
    super('book-busy', path, { ...owner, waitedMs });
    this.owner = owner;
  }
}

export function diskFinding(code: DiskFindingCode, path: string, data: FindingData = {}): DiskFinding {
  return { code, severity: severityOf(code), where: { file: path }, data, entries: [] };
}

/** A finding that is not in the way of the work is worth knowing today; the others stop something. */
function severityOf(code: DiskFindingCode): DiskFinding['severity'] {
  if (code === 'receipt-not-written') return 'act-today';
  return code === 'page-damaged' || code === 'receipt-foreign' || code === 'receipt-unreadable'
    ? 'act-now'
    : 'error';
}
