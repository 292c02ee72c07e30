// Findings for programs: one record a line.
import type { WordedFinding } from '../sheets/finding.ts';
import { record } from './page.ts';
import { signed, unbound } from './signs.ts';

/** what · severity · code · file · line · column · store · field · entries · text · remedy. */
export function findingRecords(findings: readonly WordedFinding[], what: string): string[] {
  return findings.map(({ severity, code, where, entries, text, remedy }) =>
    record(
      [
        what,
        severity,
        code,
        where.file ?? '',
        `${where.line ?? ''}`,
        `${where.column ?? ''}`,
        where.store ?? '',
        where.field ?? '',
        entries.join(' '),
        text,
        remedy,
      ].map((field) => unbound(signed(field, 'plain'))),
    ),
  );
}
