// A table that is understood so far: what each column means, and what holds for all of its numbers, dates and clocks.
import { unitNamesOf } from '../../ground/units/index.ts';
import type { DecimalRule } from './cell-number.ts';
import { provenDecimal } from './cell-number.ts';
import type { BookSpan } from './date-order.ts';
import type { Column } from './match-columns.ts';
import type { Role } from './meaning.ts';
import type { DateOrder, Decimal, Shape } from './options.ts';
import type { TableRow } from './table.ts';
import type { Vocabulary } from './vocabulary.ts';

export interface Sheet {
  readonly file: string;
  readonly shape: Shape;
  readonly columns: readonly Column[];
  readonly vocabulary: Vocabulary;
  readonly span: BookSpan;
  /** Place of each role; −1 where no column has it. */
  readonly at: Readonly<Record<Role, number>>;
  readonly decimals: readonly DecimalRule[];
  readonly order: DateOrder | 'open' | null;
  readonly zoneMin: number;
  /** How the zone came to be known; it is told with the import. */
  readonly zoneBy: 'declared' | 'heading' | 'last time' | 'outpost clock' | 'known entries';
  /** Date of the table's own Day 1, as days since 1970-01-01. */
  readonly dayOneDays: number;
  /** Columns whose cells go into the note. */
  readonly besides: readonly number[];
  /** Dates that were read before, by their text. */
  readonly dates: Map<string, readonly number[]>;
}

/** Everything that water is told in, counts of a counter among them. */
export function amountUnits(vocabulary: Vocabulary): ReadonlySet<string> {
  const counts = vocabulary.fold.index.outpost.instruments.flatMap(({ litresPerCount, unit }) =>
    litresPerCount === undefined ? [] : [unit],
  );
  return new Set([...unitNamesOf('volume'), ...unitNamesOf('mass'), ...counts]);
}

export function roleColumns(
  columns: readonly Column[],
  roles: readonly Role[],
): Readonly<Record<Role, number>> {
  const places = roles.map(
    (role) => [role, columns.findIndex(({ meaning }) => meaning?.means.what === role)] as const,
  );
  return Object.fromEntries(places) as Record<Role, number>;
}

/** A declared sign holds for the table; a proven one for its column. */
export function decimalRules(
  columns: readonly Column[],
  body: readonly TableRow[],
  declared: Decimal | undefined,
): readonly DecimalRule[] {
  if (declared !== undefined)
    return columns.map(() => ({ decimal: declared, commaSeen: declared === 'comma' }));
  const proven = columns.map(({ meaning }, k) =>
    meaning !== null && hasNumbers(meaning.means.what) ? provenDecimal(cellsOf(body, k)) : null,
  );
  const commaSeen = proven.some((sign) => sign === 'comma' || sign === 'both');
  return proven.map((sign) => ({ decimal: sign === 'both' ? null : sign, commaSeen }));
}

function hasNumbers(what: string): boolean {
  return (
    what === 'instrument' || what === 'content' || what === 'amount' || what === 'doubt' || what === 'people'
  );
}

function* cellsOf(body: readonly TableRow[], column: number): Iterable<string> {
  for (const { cells } of body) {
    const cell = cells[column];
    if (cell !== undefined && cell !== '') yield cell;
  }
}
