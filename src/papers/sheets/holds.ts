// Sheets of holds: what is held and why, what its water touched, what waits on it, and every way out.
import type { SheetFigure } from './figure.ts';
import type { WordedFinding } from './finding.ts';
import type { CoverFigure, SheetHead } from './today.ts';

/** What becomes of a place that suspect water came into. */
export type TouchFate =
  | 'hold'
  | 'conditional'
  /** Some of it is in it, and nobody holds it. */
  | 'not held'
  | 'waste'
  | 'gone'
  | 'none left'
  | 'in the hose'
  | 'used';

export interface TouchHop {
  readonly from: string;
  readonly to: string;
  readonly ref: string;
  readonly at: string;
  readonly hose: string | null;
}

export interface TouchLine {
  readonly kind: 'store' | 'hose' | 'pool';
  readonly name: string;
  /** Its own water was sampled. */
  readonly isSource: boolean;
  readonly fate: TouchFate;
  /** Suspect water that is in it now; of a pool, what went there. */
  readonly suspect: SheetFigure;
  /** All water that is in it now; null for a pool. */
  readonly held: SheetFigure | null;
  readonly share: number | null;
  readonly first: string;
  readonly last: string;
  readonly firstDay: number;
  /** From the source on. */
  readonly path: readonly TouchHop[];
  /** Some of it came straight from the source by the way that was sampled. */
  readonly bySampledWay: boolean;
}

/** How much of it people drank. Who did is for the medic, and stands in another sheet. */
export interface DrunkSum {
  readonly volume: SheetFigure;
  readonly sinceDay: number;
  readonly untilDay: number;
}

export interface TraceSheet {
  readonly sample: string | null;
  readonly drawn: string;
  /** Since when and why each source is under suspicion. */
  readonly windows: readonly {
    readonly store: string;
    readonly opened: string;
    readonly since: string;
    readonly until: string;
    readonly ref: string | null;
  }[];
  readonly touched: readonly TouchLine[];
  readonly cuts: readonly {
    readonly store: string;
    readonly how: 'clean result' | 'release';
    readonly ref: string;
    readonly at: string;
    readonly cleared: SheetFigure;
  }[];
  /** Null: nobody drank of it. */
  readonly drunk: DrunkSum | null;
}

/** What holding changes for one grade, or what ending a hold would. */
export interface EffectLine {
  readonly grade: string;
  readonly before: CoverFigure;
  readonly after: CoverFigure;
}

export interface HoldTree {
  readonly trace: TraceSheet;
  readonly hold: readonly string[];
  readonly conditional: readonly string[];
  /** All water in them. */
  readonly heldVolume: SheetFigure;
  readonly conditionalVolume: SheetFigure;
  readonly effect: readonly EffectLine[];
}

export interface HeldStore {
  readonly store: string;
  readonly as: 'hold' | 'conditional' | 'waived';
  readonly grade: string | null;
  readonly volume: SheetFigure;
  /** By results alone: what is still lacking before it can be released, each `parameter: code`; empty: nothing. */
  readonly lacks: readonly string[];
  /** The end of a waiver; null for the others. */
  readonly until: string | null;
}

export interface HoldLine {
  readonly hold: string;
  /** False: every store of it is released, downgraded or gone. */
  readonly open: boolean;
  readonly since: string;
  readonly sinceDay: number;
  readonly reason: string;
  readonly failed: readonly string[];
  readonly sample: string | null;
  readonly stores: readonly HeldStore[];
  readonly volume: SheetFigure;
  readonly conditionalVolume: SheetFigure;
  readonly parked: {
    readonly owner: string;
    readonly until: string;
    readonly untilDay: number;
    readonly over: boolean;
  } | null;
  readonly leftFree: readonly string[];
  readonly ref: string | null;
}

/** What would be counted on again if the hold ended. */
export interface WaitingOn {
  readonly grade: string;
  readonly volume: SheetFigure;
  /** Days of use that it is; null without data. */
  readonly days: number | null;
}

export interface HoldsSheet {
  readonly head: SheetHead;
  readonly holds: readonly HoldLine[];
  readonly waits: readonly WaitingOn[];
}

export interface HoldOrigin {
  readonly store: string;
  readonly parts: readonly {
    readonly kind: string;
    readonly name: string;
    readonly visit: string | null;
    readonly volume: SheetFigure;
    readonly share: number;
    readonly since: string;
  }[];
}

/** Who drank of it, and when: for the medic alone, and never in any other sheet. */
export interface DrankLine {
  readonly at: string;
  /** Null where a counter counted it and nobody is named. */
  readonly person: string | null;
  readonly from: string;
  readonly volume: SheetFigure;
  readonly suspect: SheetFigure;
  readonly ref: string;
}

export interface HoldSheet {
  readonly head: SheetHead;
  readonly hold: HoldLine;
  /** The sample was not named by the hold: the result that it most likely rests on. */
  readonly sampleIsGuess: boolean;
  readonly trace: TraceSheet | null;
  readonly origins: readonly HoldOrigin[];
  readonly waits: readonly WaitingOn[];
  readonly ways: readonly { readonly act: string; readonly text: string; readonly command: string }[];
  readonly findings: readonly WordedFinding[];
  /** Only where the medic's code was given. */
  readonly drank?: readonly DrankLine[];
}
