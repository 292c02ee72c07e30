// What a set of limits is once it has been read: rows that are in force, and rows that are off and say so.
import type { EVIDENCES, EXPOSURES } from './limit-set-schema.ts';
import type { LimitBasis, LimitUnit } from './limit-units.ts';

export interface LimitFigures {
  readonly atLeast?: number;
  readonly atMost?: number;
}

export interface LimitRow {
  readonly id: string;
  readonly parameter: string;
  readonly basis: LimitBasis;
  readonly unit: LimitUnit;
  /** Null while the row is off: "no limit set: hold". */
  readonly limit: LimitFigures | null;
  /** From memory, to be shown and never judged by. */
  readonly remembered: LimitFigures | null;
  readonly evidence: (typeof EVIDENCES)[number];
  readonly exposure: (typeof EXPOSURES)[number];
  readonly source: string;
  readonly locator: string;
  readonly cause: string;
  readonly consequence: string;
  readonly firstAct: string;
  readonly timeToActH: number | null;
  readonly requiredFor: readonly string[];
  /** Of what a result is needed before release; one that is there is judged in any water. */
  readonly neededOf: 'every store' | 'product';
  readonly degassed: boolean;
  readonly noneIfBelow: number | null;
  readonly duplicatesWithinShare: number | null;
  readonly note: string;
  /** Who switched it on, from which copy and when; null for a row as it ships. */
  readonly typed: { readonly by: string; readonly copy: string; readonly atMs: number } | null;
}

export interface LimitSet {
  readonly id: string;
  readonly name: string;
  readonly what: string;
  readonly uses: readonly string[];
  readonly rows: readonly LimitRow[];
}
