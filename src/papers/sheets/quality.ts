// The medic's queue: what is due, what waits for a release and who waits on it, what is parked, what ends soon, what is off.
import type { SheetFigure } from './figure.ts';
import type { WordedFinding } from './finding.ts';
import type { HoldLine, WaitingOn } from './holds.ts';
import type { DueLine, SampleLine } from './samples.ts';
import type { SheetHead } from './today.ts';

/** A store whose water waits for a word. */
export interface WaitingStore {
  readonly store: string;
  readonly grade: string | null;
  readonly volume: SheetFigure;
  readonly why: 'hold' | 'conditional' | 'not released' | 'release over';
  readonly hold: string | null;
  /** What is still lacking by results, each `parameter: code`; empty: it can be released. */
  readonly lacks: readonly string[];
}

export interface EndingLine {
  readonly store: string;
  readonly kind: 'release' | 'waiver';
  readonly by: string;
  readonly until: string;
  readonly untilDay: number;
  readonly days: number;
}

export interface QualitySheet {
  readonly head: SheetHead;
  readonly due: readonly DueLine[];
  /** Samples whose results are not back, the oldest first. */
  readonly results: readonly SampleLine[];
  readonly waiting: readonly WaitingStore[];
  /** What people wait on, by grade. */
  readonly waits: readonly WaitingOn[];
  readonly parked: readonly HoldLine[];
  readonly ending: readonly EndingLine[];
  /** Rows that are required and off. */
  readonly off: readonly { readonly set: string; readonly row: string; readonly parameter: string }[];
  readonly findings: readonly WordedFinding[];
}
