// Sheets of the papers of quality: what each is made from, every figure with its row and the row with its source.
import type { BookSeal } from '../document/document.ts';
import type { WordedFinding } from './finding.ts';
import type { HoldLine, HoldSheet } from './holds.ts';
import type { TrendSheet } from './quality-trend.ts';
import type { FigureLine, SampleLine } from './samples.ts';
import type { StoreQuality } from './store-quality.ts';
import type { SheetHead, StoreLine } from './today.ts';

/** A row that is required of the water, in force or off. */
export interface PaperRow {
  readonly set: string;
  readonly row: string;
  readonly parameter: string;
  readonly basis: string;
  readonly unit: string;
  /** Both null: the row is off. */
  readonly atLeast: number | null;
  readonly atMost: number | null;
  readonly source: string;
  readonly locator: string;
  readonly evidence: string;
}

/** Somebody who said so, and the second person beside them: a word without a code stays declared. */
export interface PaperWord {
  readonly by: string;
  readonly second: { readonly office: string; readonly confirmation: string } | null;
  readonly at: string;
  readonly ref: string;
}

/** A figure with where it comes from. */
export interface PaperFigure {
  /** The stores that it is told for. */
  readonly stores: readonly string[];
  readonly sample: string;
  readonly taken: string;
  readonly figure: FigureLine;
}

export interface SamplePaperSheet {
  readonly head: SheetHead;
  readonly book: BookSeal;
  /** Null: blank, to be filled by hand. */
  readonly sample: SampleLine | null;
  readonly place: string;
  readonly speaksOf: readonly string[];
  readonly method: readonly string[];
  readonly volumeL: number | null;
  readonly tests: readonly {
    readonly parameter: string;
    readonly unit: string;
    readonly rows: readonly PaperRow[];
  }[];
  /** Water of the place that has a biocide of its own, or had one dosed. */
  readonly biocides: readonly string[];
}

export interface CertificateSheet {
  readonly head: SheetHead;
  readonly book: BookSeal;
  readonly store: StoreLine;
  readonly quality: StoreQuality;
  /** The word of the release that stands; null: there is none. The opening and a loader's certificate are none. */
  readonly word: PaperWord | null;
  /** The entry by which it counts without a release: the opening, or the loader's certificate. */
  readonly cameBy: PaperWord | null;
  readonly waived: readonly (PaperWord & {
    readonly hold: string;
    readonly reason: string;
    readonly until: string;
  })[];
  /** What results alone still lack, each `parameter: code`. */
  readonly lacks: readonly string[];
  /** Water that nobody drinks needs no figure. */
  readonly isForPeople: boolean;
  readonly rows: readonly PaperRow[];
  readonly figures: readonly PaperFigure[];
  /** What is open in the book about this store. */
  readonly findings: readonly WordedFinding[];
}

export interface HoldNoticeSheet {
  readonly book: BookSeal;
  /** Who drank is not in it, whoever asks. */
  readonly sheet: Omit<HoldSheet, 'drank'>;
}

/** How a store left a hold. */
export interface LeftHold extends PaperWord {
  readonly store: string;
  readonly how: 'released' | 'downgraded' | 'waived';
  readonly samples: readonly string[];
  /** The end of a release or a waiver; null: none was said. */
  readonly until: string | null;
  /** Of a downgrade. */
  readonly toGrade: string | null;
}

export interface HoldReleaseSheet {
  readonly head: SheetHead;
  readonly book: BookSeal;
  readonly hold: HoldLine;
  readonly left: readonly LeftHold[];
  readonly figures: readonly PaperFigure[];
  readonly rows: readonly PaperRow[];
}

export interface TrendPaperSheet {
  readonly book: BookSeal;
  readonly sheet: TrendSheet;
}
