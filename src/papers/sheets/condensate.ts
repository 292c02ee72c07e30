// The sheet of condensate: what every day should have brought, what it brought, and what is missing.
import type { SheetFigure } from './figure.ts';
import type { SheetHead } from './today.ts';

/** Against the ± of the shortfall: nothing stands out, or less or more came than that can explain. */
export type CondensateVerdict = 'as expected' | 'less came' | 'more came';

export interface CondensateLine {
  readonly day: number;
  /** ISO 8601, of the line that closes it. */
  readonly at: string;
  /** Days that it spans: 2 when a count was missed. */
  readonly days: number;
  readonly personDays: number;
  /** By what had been entered when the line of that day was. */
  readonly expected: SheetFigure;
  readonly collected: SheetFigure;
  /** Expected less collected. */
  readonly shortfall: SheetFigure;
  readonly verdict: CondensateVerdict;
  /** What the expectation is made of. */
  readonly parts: readonly { readonly name: string; readonly volume: SheetFigure }[];
}

/** Days one after another on which less came, or more. */
export interface CondensateRun {
  readonly verdict: Exclude<CondensateVerdict, 'as expected'>;
  readonly firstDay: number;
  readonly lastDay: number;
  readonly total: SheetFigure;
}

/** Condensate that came to light later in a store without a meter. */
export interface CondensateFound {
  readonly store: string;
  readonly day: number;
  readonly volume: SheetFigure;
}

export interface CondensateSheet {
  readonly head: SheetHead;
  readonly lines: readonly CondensateLine[];
  /** Among the lines that are shown. */
  readonly runs: readonly CondensateRun[];
  readonly found: readonly CondensateFound[];
  readonly foundTotal: SheetFigure;
  /** Of one person and day: as learned, and as the outpost file has it. */
  readonly rate: SheetFigure;
  readonly norm: SheetFigure;
  readonly taughtBy: number;
  /** Of all days of the book: how many there are, and on how many 0 lies within the ±. */
  readonly judged: { readonly days: number; readonly held: number };
}
