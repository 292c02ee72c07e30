// The codes of all that can be wrong with a number, a quantity or a time that somebody typed.
import type { Finding, FindingData, Where } from './finding.ts';

export type UnitsFindingCode =
  | 'input-too-long'
  | 'number-missing'
  | 'number-unreadable'
  | 'number-ambiguous'
  | 'number-separator'
  | 'number-too-many-digits'
  | 'number-too-large'
  | 'number-too-small'
  | 'unit-missing'
  | 'unit-unknown'
  | 'unit-two-readings'
  | 'unit-of-other-kind'
  | 'amount-negative'
  | 'doubt-not-positive'
  | 'time-unreadable'
  | 'time-offset-missing'
  | 'time-offset-unreadable'
  | 'time-date-not-in-calendar'
  | 'time-not-on-clock'
  | 'time-second-60'
  | 'time-hour-24'
  | 'time-year-out-of-range';

/** What a parser of this room gives: the thing read, or the one finding that says why not. */
export type Read<Key extends string, Value> =
  | ({ readonly ok: true } & { readonly [K in Key]: Value })
  | { readonly ok: false; readonly finding: Finding<UnitsFindingCode> };

/** The refusal of a parser. Nothing typed is ever taken in part, so the severity is always `error`. */
export function refuse(
  code: UnitsFindingCode,
  where: Where,
  data: FindingData,
): { readonly ok: false; readonly finding: Finding<UnitsFindingCode> } {
  return { ok: false, finding: { code, severity: 'error', where, data, entries: [] } };
}

/** What is quoted back to the person: never more than a line of it. */
export function quoted(text: string): string {
  const longestQuote = 40;
  return text.length > longestQuote ? `${text.slice(0, longestQuote)}...` : text;
}
