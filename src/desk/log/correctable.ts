// What of an entry can be told anew by a correction: its one amount, or readings of its meters.
import { type AnyDraft, isAmendmentKind } from '../../book/index.ts';

const AMOUNTS = ['amount', 'residual', 'planned', 'doseEach'] as const;

/** The field with the one amount of an entry; null where it has none. */
export function amountFieldOf({ kind, body }: Pick<AnyDraft, 'kind' | 'body'>): string | null {
  if (isAmendmentKind(kind)) return null;
  const fields = body as Readonly<Record<string, unknown>>;
  return AMOUNTS.find((name) => typeof fields[name] === 'object' && fields[name] !== null) ?? null;
}

/** A line of meters is corrected meter by meter. */
export function hasReadings({ kind }: Pick<AnyDraft, 'kind'>): boolean {
  return kind === 'day-line' || kind === 'meter';
}

/** How an entry is corrected: by one new amount, by new readings, or not at all: then it is undone and entered anew. */
export function mayCorrect(entry: Pick<AnyDraft, 'kind' | 'body'>): 'amount' | 'readings' | null {
  if (amountFieldOf(entry) !== null) return 'amount';
  return hasReadings(entry) ? 'readings' : null;
}
