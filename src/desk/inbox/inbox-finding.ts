// Making a finding about a table, a line or a cell of it.
import type { Finding, FindingData, Severity, Where } from '../../ground/units/index.ts';
import type { InboxFindingCode } from '../../papers/index.ts';

export type InboxFinding = Finding<InboxFindingCode>;

export function inboxFinding(
  code: InboxFindingCode,
  data: FindingData = {},
  where: Where = {},
  severity: Severity = 'error',
): InboxFinding {
  return { code, severity, where, data, entries: [] };
}

/** Quoted back to a person: never more than a line. */
export function quoted(text: string): string {
  const longest = 60;
  // A cut may go through a character of two halves.
  return text.length > longest ? `${text.slice(0, longest).toWellFormed()}\u2026` : text;
}
