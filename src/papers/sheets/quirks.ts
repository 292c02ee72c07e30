// The sheet of learned quirks: what readings have taught of instruments, norms and openings, one sentence each.
import type { SheetFigure } from './figure.ts';
import type { SheetHead } from './today.ts';

export type QuirkKind = 'calibration' | 'gauge' | 'shell' | 'norm' | 'remainder' | 'level' | 'opening';

/** One thing that was learned, before it is said. */
export interface QuirkFacts {
  readonly kind: QuirkKind;
  /** Instrument, norm or store by its name. */
  readonly name: string;
  /** Relative for calibrations and norms, else in the unit; ± at 95 %. */
  readonly error: { readonly value: number; readonly u95: number; readonly assumedU95: number };
  readonly unit: string;
  /** Milliliters that one count is taken for; counters of counts only. */
  readonly countMl: number | null;
  /** Litres a person and day that the norm says; norms only. */
  readonly normL: number | null;
  /** Entries behind it by kind, the most of them first, and how many there were in all. */
  readonly lessons: readonly { readonly kind: string; readonly count: number }[];
  readonly lessonsInAll: number;
}

export interface Quirk extends QuirkFacts {
  readonly text: string;
  readonly figure: SheetFigure;
  /** Entries that taught it, the youngest first: how people name them. */
  readonly shown: readonly string[];
}

/** How readings of one instrument kept to the doubts that are declared for them. */
export interface ScatterLine {
  readonly of: string;
  readonly readings: number;
  readonly factor: number;
}

export interface QuirksSheet {
  readonly head: SheetHead;
  readonly quirks: readonly Quirk[];
  readonly scatter: readonly ScatterLine[];
}
