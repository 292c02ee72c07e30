// What a reading would be worth: doubts before and after it, and the minutes that it takes.
import type { SheetFigure } from './figure.ts';

/** One figure before and after a reading: it is as large and better known. */
export interface BeforeAndAfter {
  readonly before: SheetFigure;
  readonly after: SheetFigure;
}

export type ReadingWay = 'gas injection' | 'weighing' | 'sight glass' | 'dip stick' | 'level gauge';

export interface ReadingWorth {
  readonly store: string;
  readonly way: ReadingWay;
  readonly instrument: string | null;
  /** Task of the outpost file, with its minutes and people; null where the file names none. */
  readonly task: { readonly id: string; readonly minutes: number; readonly people: number } | null;
  /** ± of such a reading by itself, litres. */
  readonly readingU95L: number;
  readonly content: BeforeAndAfter;
  /** The stock that counts this store, and how long it lasts; null: no cover hangs on this store. */
  readonly cover: {
    readonly grade: string;
    /** Free water until it is used up, or the reserve besides, until it stands at its floor. */
    readonly reach: 'free' | 'to floor';
    readonly stock: BeforeAndAfter;
    /** Days; ± is half the width of the 95 % interval, null where that has no end. */
    readonly days: BeforeAndAfter | null;
  } | null;
}

/** Days that water lasts at one rate of policy, nothing made meanwhile. */
export interface CoverAtRateFigure {
  readonly rate: 'planning' | 'survival';
  readonly litresPerPersonDay: number;
  readonly people: number;
  readonly free: SheetFigure;
  readonly toFloor: SheetFigure;
  readonly reserve: SheetFigure;
}
