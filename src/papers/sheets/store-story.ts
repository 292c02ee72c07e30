// What the sheet of a store tells of its past: the family of its water, what was believed of it, and what was read.
import type { SheetFigure } from './figure.ts';

/** A part of the water, and where it was before. */
export interface FamilyNode {
  /** `older` is all the rest: small shares, and what was in it before it was last filled. */
  readonly kind: 'store' | 'hose' | 'pool' | 'opening' | 'delivery' | 'came aboard' | 'older';
  /** Store, pool, visit or run; nothing for the rest. */
  readonly name: string;
  readonly grade: string | null;
  readonly volume: SheetFigure;
  /** Of the whole content, from 0 to 1. */
  readonly share: number;
  /** Outpost days on which the first and the last of it came; null where it is not known. */
  readonly days: { readonly first: number; readonly last: number } | null;
  /** The entries by which it came as people name them, the youngest first, and how many there are in all. */
  readonly refs: readonly string[];
  readonly entryCount: number;
  readonly parts: readonly FamilyNode[];
}

/** When something was so: the day as a number, with its part of a day, and the same in ISO 8601. */
export interface PlotMoment {
  readonly day: number;
  readonly at: string;
}

export interface EstimatePoint extends PlotMoment {
  /** At a day line; or just before and just after an entry that moved or read its water. */
  readonly when: 'line' | 'before' | 'after';
  readonly volume: SheetFigure;
}

export interface GaugingPoint extends PlotMoment {
  readonly ref: string;
  readonly id: string;
  readonly stamp: string;
  readonly how: string;
  readonly read: SheetFigure;
  /** Null where the content was told for the first time. */
  readonly believed: SheetFigure | null;
  /** Reading less belief, with the doubt of both. */
  readonly difference: SheetFigure | null;
}

/** What the gauging plot is drawn from, in litres. */
export interface GaugingSheet {
  readonly capacityL: number;
  readonly remainderL: number;
  readonly estimates: readonly EstimatePoint[];
  readonly readings: readonly GaugingPoint[];
}
