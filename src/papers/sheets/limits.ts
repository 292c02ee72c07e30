// Sheets of limits: what is in force, the sets that there are, one set, and what a choice or a typed figure would do.
import type { SheetFigure } from './figure.ts';
import type { WordedFinding } from './finding.ts';
import type { SheetHead } from './today.ts';

export interface LimitLine {
  readonly id: string;
  readonly parameter: string;
  readonly unit: string;
  readonly basis: string;
  /** Null while the row is off: "no limit set: hold". */
  readonly limit: LimitSides | null;
  /** From memory: shown, and never judged by. */
  readonly remembered: LimitSides | null;
  readonly exposure: string;
  readonly evidence: 'seen' | 'quoted' | 'memory' | 'policy';
  readonly source: string;
  readonly locator: string;
  readonly cause: string;
  readonly consequence: string;
  readonly firstAct: string;
  readonly timeToActH: number | null;
  readonly requiredFor: readonly string[];
  readonly neededOf: 'every store' | 'product';
  readonly degassed: boolean;
  readonly note: string;
  /** Who typed the figure from which copy; null for a row as it ships. */
  readonly typed: { readonly by: string; readonly copy: string; readonly at: string } | null;
}

export interface LimitSides {
  readonly atLeast?: number;
  readonly atMost?: number;
}

export interface LimitSetLines {
  readonly id: string;
  readonly name: string;
  readonly what: string;
  readonly uses: readonly string[];
  readonly rows: readonly LimitLine[];
}

/** What bears on release now. */
export interface LimitsSheet {
  readonly head: SheetHead;
  readonly sets: readonly LimitSetLines[];
  /** How long people drink the water; null where nobody said: longer than any row is made for. */
  readonly exposureDays: number | null;
  /** The entry that chose them; null: nobody has, and the outpost file counts. */
  readonly chosen: {
    readonly ref: string;
    readonly id: string;
    readonly by: string;
    readonly at: string;
    readonly reason: string;
  } | null;
  readonly findings: readonly WordedFinding[];
}

export interface LimitSetLine {
  readonly id: string;
  readonly name: string;
  readonly rows: number;
  /** With a figure, and without one. */
  readonly on: number;
  readonly off: number;
  /** Rows of it that bear on release now. */
  readonly required: number;
  /** The outpost file, a file that ships, or an entry that chose a file of somebody's own. */
  readonly from: 'outpost file' | 'program' | 'book';
}

export interface LimitSetsSheet {
  readonly sets: readonly LimitSetLine[];
}

export interface LimitSetSheet extends LimitSetLine {
  readonly set: LimitSetLines;
  /** Ids of its rows that bear on release now. */
  readonly inForce: readonly string[];
}

export interface LimitHold {
  readonly store: string;
  readonly grade: string | null;
  readonly volume: SheetFigure;
  /** What fails, as it was found. */
  readonly failed: readonly string[];
  /** It waits already, for another reason. */
  readonly already: boolean;
}

export interface LimitGrade {
  readonly grade: string;
  readonly freeBefore: SheetFigure;
  readonly freeAfter: SheetFigure;
  /** Days of cover in 19 of 20 outcomes; null without data, or where it does not run out. */
  readonly coverBefore: number | null;
  readonly coverAfter: number | null;
  /** Required rows without a figure: no water of the grade is counted on while there is one. */
  readonly off: readonly { readonly set: string; readonly row: string; readonly parameter: string }[];
  /** Required from now on, and no result is known of in water that stays free. */
  readonly notMeasured: {
    readonly parameters: readonly string[];
    readonly stores: readonly string[];
    readonly volume: SheetFigure;
  } | null;
}

export interface LimitClash {
  readonly kind: 'dose-above' | 'dose-below' | 'no-water-meets-both' | 'part-of-policy-fails';
  readonly set: string;
  readonly row: string;
  readonly grade: string;
  readonly biocide: string;
  readonly doseMgPerL: number | null;
  readonly rowMgPerL: LimitSides;
  readonly policyMgPerL: LimitSides | null;
  readonly text: string;
}

/** What a change of the limits does, or would. */
export interface LimitsEffect {
  readonly holds: readonly LimitHold[];
  /** All that is held by it and was not before. */
  readonly held: SheetFigure;
  /** Stores whose hold by an earlier choice ends. */
  readonly ends: readonly string[];
  readonly grades: readonly LimitGrade[];
  readonly clashes: readonly LimitClash[];
  /** Rows that bore on release before and do not any more. */
  readonly noMore: readonly { readonly set: string; readonly row: string; readonly parameter: string }[];
}

export interface LimitsChosenSheet {
  readonly kept: boolean;
  readonly ref: string | null;
  readonly id: string | null;
  readonly happened: string;
  readonly by: string;
  readonly reason: string | null;
  /** All that bears on release after it. */
  readonly sets: readonly LimitSetLines[];
  /** Ids of the sets that were asked for. */
  readonly asked: readonly string[];
  readonly beside: boolean;
  readonly exposureDays: number | null;
  readonly effect: LimitsEffect;
  readonly findings: readonly WordedFinding[];
}

export interface LimitTypedSheet {
  readonly kept: boolean;
  readonly ref: string | null;
  readonly id: string | null;
  readonly happened: string;
  readonly by: string;
  readonly copy: string;
  readonly set: string;
  readonly setName: string;
  /** As it is in force where the set is chosen. */
  readonly row: LimitLine;
  /** Null: the row is not required now, and nothing changes before its set is chosen. */
  readonly effect: LimitsEffect | null;
  readonly findings: readonly WordedFinding[];
}
