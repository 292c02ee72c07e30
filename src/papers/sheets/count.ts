// The sheets of a stock count: what is to be read, in the order of the places and without the book's figures; then the differences.
import type { SheetFigure } from './figure.ts';
import type { SheetHead } from './today.ts';

export interface CountItem {
  readonly kind: 'store' | 'part';
  readonly id: string;
  readonly name: string;
  /** How the outpost file says that it is read: weighing, sight glass, …; empty for parts. */
  readonly readBy: string;
  /** Of a part that is weighed and not counted; else empty. */
  readonly unit: string;
  /** Crew minutes for it by the outpost file, of all who are at it; null: it says none. */
  readonly minutes: number | null;
  /** As it was typed, `-` for not read; null: nothing yet. */
  readonly typed: string | null;
}

export interface CountSheet {
  readonly head: SheetHead;
  /** When it was begun; null: no count is under way. */
  readonly begun: string | null;
  readonly places: readonly { readonly place: string; readonly items: readonly CountItem[] }[];
  readonly read: number;
  readonly items: number;
  /** Crew minutes for what was not typed yet; null: the outpost file says none. */
  readonly minutesLeft: number | null;
}

/** By the doubt of the difference: within two standard deviations, within three, beyond. */
export type CountVerdict = 'agrees' | 'a little off' | 'far off';

/** A store whose reading was typed: only now may the book's figure be seen. */
export interface CountedStore {
  readonly id: string;
  readonly place: string;
  readonly counted: SheetFigure;
  readonly book: SheetFigure;
  /** Counted less book, and how far the two may differ. */
  readonly difference: SheetFigure;
  readonly verdict: CountVerdict;
  /** More than the store can hold. */
  readonly overCapacity: boolean;
}

export interface CountedPart {
  readonly id: string;
  readonly count: number;
  /** Empty for what is counted piece by piece. */
  readonly unit: string;
}

/** One reading that was taken, and what stood in its place before. */
export interface TakenReading {
  readonly id: string;
  readonly text: string;
  readonly store: CountedStore | null;
  readonly part: CountedPart | null;
  readonly before: string | null;
}

export interface CountTakenSheet {
  readonly readings: readonly TakenReading[];
  /** Readings in the whole count now. */
  readonly read: number;
}

export interface CountResult {
  readonly head: SheetHead;
  readonly kept: boolean;
  /** For when the readings stand in the book: `Day 46 21:00 UTC`. */
  readonly at: string;
  readonly stores: readonly CountedStore[];
  readonly parts: readonly CountedPart[];
  /** Pairs of which each reading fits the other store. */
  readonly swapped: readonly (readonly [string, string])[];
  readonly notRead: readonly string[];
  /** Read, and no longer aboard. */
  readonly gone: readonly string[];
  readonly second: { readonly office: string; readonly confirmation: string } | null;
  /** How people name the entries that were kept. */
  readonly entries: readonly string[];
}
