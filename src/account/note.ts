// Writing a finding about an entry.
import type { AnyEntry } from '../book/index.ts';
import type { FindingData, Severity } from '../ground/units/index.ts';
import type { AccountFindingCode } from './finding-codes.ts';
import type { Fold } from './fold.ts';

/** Adds a finding that an entry gave rise to. */
export function noteEntry(
  fold: Fold,
  entry: AnyEntry,
  finding: {
    readonly code: AccountFindingCode;
    readonly severity: Exclude<Severity, 'error'>;
    readonly store?: string | undefined;
    readonly field?: string;
    readonly data?: FindingData;
    readonly entries?: readonly string[];
  },
): void {
  fold.note({
    code: finding.code,
    severity: finding.severity,
    where: {
      entry: entry.id,
      ...(finding.store !== undefined && { store: finding.store }),
      ...(finding.field !== undefined && { field: finding.field }),
      ...(entry.origin?.line !== undefined && { line: entry.origin.line }),
    },
    data: { ...finding.data, ref: refOf(entry), entryNo: entryNoOf(entry), kind: entry.kind },
    entries: [entry.id, ...(finding.entries ?? [])],
    atMs: entry.happenedAtMs,
  });
}

/** How people know an entry: by site and number, as the daybook has it; its name in the file that it came from stands beside it. */
export function refOf({ site, number, origin }: AnyEntry): string {
  return origin === undefined ? `${site} ${number}` : `${site} ${number} [${origin.ref}]`;
}

/** How a command names an entry: one word, `corrie:34`. */
export function entryNoOf(entry: AnyEntry): string {
  return `${entry.site}:${entry.number}`;
}
