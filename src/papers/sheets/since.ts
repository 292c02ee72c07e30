// The sheet *since I last looked*: what came into the book, and what is believed otherwise than before.
import type { BookLine } from './book.ts';
import type { SheetFigure } from './figure.ts';
import type { WordedFinding } from './finding.ts';
import type { SheetHead } from './today.ts';

export interface SinceSheet {
  readonly head: SheetHead;
  /** `Day 42 21:40 UTC` */
  readonly since: string;
  readonly entries: number;
  readonly corrections: number;
  readonly late: number;
  /** Stores on hold now that were not, and the other way round. */
  readonly heldSince: readonly string[];
  readonly freedSince: readonly string[];
  /** Contents told anew by more than their old ±, other than by what was moved since. */
  readonly moved: readonly {
    readonly store: string;
    readonly before: SheetFigure;
    readonly after: SheetFigure;
  }[];
  readonly newFindings: readonly WordedFinding[];
  /** The youngest lines. */
  readonly lines: readonly BookLine[];
}
