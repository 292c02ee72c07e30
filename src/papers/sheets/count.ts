// The sheets of a stock count: what is to be read, in the order of the places and without the book's figures; then the differences.
import type { SheetHead } from './today.ts';

export interface CountItem {
  readonly kind: 'store' | 'part';
  readonly id: string;
  readonly name: string;
  /** How it is read: weighing, sight glass, …; empty for parts. */
  readonly readBy: string;
  /** As it was typed; null: not read yet. */
  readonly typed: string | null;
}

export interface CountSheet {
  readonly head: SheetHead;
  /** When it was begun; null: no count is under way. */
  readonly begun: string | null;
  readonly places: readonly { readonly place: string; readonly items: readonly CountItem[] }[];
  readonly read: number;
  readonly items: number;
}

export type CountVerdict = 'agrees' | 'a little off' | 'far off' | 'not read';

/** A store whose reading was typed: only now may the book's figure be seen. */
export interface CountedStore {
  readonly id: string;
  readonly place: string;
  readonly counted: { readonly value: number; readonly u95: number; readonly unit: 'L' } | null;
  readonly book: { readonly value: number; readonly u95: number; readonly unit: 'L' };
  /** Counted less book, and how far the two may differ. */
  readonly difference: { readonly value: number; readonly u95: number; readonly unit: 'L' } | null;
  readonly verdict: CountVerdict;
}

export interface CountResult {
  readonly head: SheetHead;
  readonly kept: boolean;
  readonly stores: readonly CountedStore[];
  readonly parts: readonly { readonly id: string; readonly count: number }[];
  /** Pairs of which each reading fits the other store. */
  readonly swapped: readonly (readonly [string, string])[];
  readonly notRead: readonly string[];
  readonly second: string | null;
  /** How people name the entries that were kept. */
  readonly entries: readonly string[];
}
