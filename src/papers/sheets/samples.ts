// Sheets of samples: what was drawn, what came back, and how each figure stands against its limit.
import type { KeptSheet } from './book.ts';
import type { SheetFigure } from './figure.ts';
import type { WordedFinding } from './finding.ts';
import type { HoldTree } from './holds.ts';
import type { SheetHead } from './today.ts';

/** How a figure stands: within, what speaks against it, or that nothing bears on it. */
export type FigureVerdict = 'within' | 'above' | 'below' | 'cannot be told' | 'no limit set' | 'no limit';

export interface FigureLine {
  readonly parameter: string;
  readonly value: number;
  /** `below`: less than the value, nobody knows how much; `above`: beyond the range of the method. */
  readonly censored: 'no' | 'below' | 'above';
  readonly unit: string;
  readonly basis: string | null;
  /** The limits that bear on it: `at least 0.05 mg/L`, each a row. */
  readonly limits: readonly {
    readonly row: string;
    readonly atLeast: number | null;
    readonly atMost: number | null;
    readonly unit: string;
  }[];
  readonly verdict: FigureVerdict;
  /** The medic took it out of judgement. */
  readonly setAside: boolean;
  /** `corrie 54`; null while it is not kept. */
  readonly ref: string | null;
}

/** waits: no result yet; late: longer than samples take; the others by its figures. */
export type SampleState = 'waits' | 'late' | 'passed' | 'failed' | 'not judged' | 'set aside';

export interface SampleLine {
  readonly sample: string;
  readonly state: SampleState;
  /** Store or point that it was drawn at. */
  readonly place: string;
  readonly drawnFrom: string | null;
  /** Stores of whose water it speaks. */
  readonly speaksOf: readonly string[];
  readonly taken: string;
  readonly takenDay: number;
  /** Hours since it was drawn. */
  readonly age: number;
  readonly tests: readonly string[];
  /** Tests that no result has answered. */
  readonly open: readonly string[];
  readonly bottles: readonly string[];
  readonly batch: string | null;
  readonly duplicateOf: string | null;
  readonly figures: readonly FigureLine[];
  /** When the last result came; null: none yet. */
  readonly result: string | null;
  /** Entries: of the sample (null where only a result names it), and of its results. */
  readonly ref: string | null;
  readonly resultRefs: readonly string[];
}

/** Something that is to be sampled, read or decided. */
export interface DueLine {
  readonly kind: 'interval' | 'test' | 'treated' | 'certificate';
  /** The interval of the outpost file, the sample, or the store. */
  readonly name: string;
  readonly place: string;
  readonly parameters: readonly string[];
  readonly dueDay: number;
  /** Whole days past it; 0: today or later. */
  readonly overdueDays: number;
  readonly lastDay: number | null;
}

export interface SamplesSheet {
  readonly head: SheetHead;
  /** The youngest last. */
  readonly samples: readonly SampleLine[];
  readonly older: number;
  readonly due: readonly DueLine[];
}

export interface SampleSheet {
  readonly head: SheetHead;
  readonly sample: SampleLine;
  readonly method: readonly string[];
  readonly volume: SheetFigure | null;
  /** What its water touched; null where no trace can start. */
  readonly tree: HoldTree | null;
}

/** What a result is, or would be, with what it asks to be held. */
export interface ResultSheet {
  readonly kept: boolean;
  readonly sample: string;
  /** What it is of: the stores of whose water it speaks. */
  readonly speaksOf: readonly string[];
  readonly figures: readonly FigureLine[];
  /** Parameters that fail. */
  readonly fails: readonly string[];
  /** Null where nothing fails. */
  readonly tree: HoldTree | null;
  /** Nobody has said what is to be held: it is kept only with that word. */
  readonly asks: boolean;
  readonly entry: KeptSheet;
  readonly findings: readonly WordedFinding[];
}
