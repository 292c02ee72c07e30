// Findings about a log: what is wrong with a line before its place is known, and the list of them all.
import type { Finding, FindingData, Severity } from '../../ground/units/index.ts';
import type { FieldLogFindingCode } from '../../papers/index.ts';

export type FieldLogFinding = Finding<FieldLogFindingCode>;

/** What does not fit in a line; the reader of the log adds the file and the line. */
export interface FieldLogFault {
  readonly code: FieldLogFindingCode;
  readonly severity: Severity;
  /** `stores[C-04].capacity_L`; empty where the line as a whole is meant. */
  readonly field: string;
  readonly data: FindingData;
}

/** More than this on one screen helps nobody; the last finding then says how many more there are. */
const MOST_FINDINGS = 200;

export class LogFindings {
  readonly #file: string;
  readonly #found: FieldLogFinding[] = [];
  readonly #refused = new Set<number>();

  constructor(file: string) {
    this.#file = file;
  }

  /** An error keeps its line out. */
  add(line: number, { code, severity, field, data }: FieldLogFault): void {
    const where = { file: this.#file, line, ...(field !== '' && { field }) };
    this.#found.push({ code, severity, where, data, entries: [] });
    if (severity === 'error') this.#refused.add(line);
  }

  error(line: number, code: FieldLogFindingCode, data: FindingData = {}, field = ''): void {
    this.add(line, { code, severity: 'error', field, data });
  }

  /** About the file as a whole: shown before what is about a line. */
  whole(code: FieldLogFindingCode, data: FindingData = {}): void {
    this.#found.push({ code, severity: 'error', where: { file: this.#file }, data, entries: [] });
  }

  isRefused(line: number): boolean {
    return this.#refused.has(line);
  }

  /** In the order of the lines. */
  all(): readonly FieldLogFinding[] {
    const ordered = [...this.#found].sort((a, b) => (a.where.line ?? 0) - (b.where.line ?? 0));
    const left = ordered.length - MOST_FINDINGS;
    if (left <= 0) return ordered;
    const kept = ordered.slice(0, MOST_FINDINGS);
    const where = { file: this.#file };
    const data = { kept: kept.length, left };
    const severity = ordered.slice(MOST_FINDINGS).some((each) => each.severity === 'error')
      ? 'error'
      : 'know';
    return [...kept, { code: 'log-findings-cut', severity, where, data, entries: [] }];
  }
}
