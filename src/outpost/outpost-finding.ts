// The codes of everything that can be wrong with an outpost file, and how one is made.
import type { Finding, FindingData } from '../ground/units/index.ts';

/** Faults of the text, before it is a tree. */
type TextCode =
  | 'file-too-large'
  | 'file-control-sign'
  | 'file-too-many-parts'
  | 'file-too-deep'
  | 'file-scalar-too-long'
  | 'yaml-alias'
  | 'yaml-tag'
  | 'yaml-directive'
  | 'yaml-merge-key'
  | 'yaml-more-than-one-document'
  | 'yaml-duplicate-key'
  | 'yaml-tab-indent'
  | 'yaml-broken'
  | 'file-empty'
  | 'key-forbidden'
  | 'key-not-text'
  | 'number-not-finite'
  | 'number-spelling';

/** Faults of the shape: the wrong key, the wrong kind of value, out of range. */
type ShapeCode =
  | 'key-unknown'
  | 'key-missing'
  | 'value-wrong-kind'
  | 'value-not-in-list'
  | 'value-out-of-range'
  | 'value-wrong-form'
  | 'list-too-short'
  | 'flow-end-unclear';

/** Faults between parts that are right one by one. */
type CrossCode =
  | 'id-twice'
  | 'id-unknown'
  | 'store-id-or-ids'
  | 'store-needs-key'
  | 'store-key-not-for-kind'
  | 'amount-order'
  | 'floor-over-reserve'
  | 'reserve-not-marked'
  | 'reserve-not-counted'
  | 'gauge-measures-other'
  | 'sum-differs'
  | 'date-not-real'
  | 'limit-without-figure'
  | 'limit-from-memory-on'
  | 'table-not-rising'
  | 'instrument-needs-key'
  | 'route-twice'
  | 'grade-flow-uphill'
  | 'biocides-flow-together'
  | 'rating-order';

export type OutpostFindingCode = TextCode | ShapeCode | CrossCode | 'findings-cut';
export type OutpostFinding = Finding<OutpostFindingCode>;

/** The way to a value: the keys, and for a list the index. */
export type Path = readonly (string | number)[];

/** Where in the text: counted from 0 in UTF-16 units, turned into line and column by the reader. */
export interface Spot {
  readonly offset: number;
  /** Absent for faults of the bare text. */
  readonly path?: Path;
}

/** More than this on one screen helps nobody; the last finding then says that there are more. */
export const MOST_FINDINGS = 200;

/** A fault before its offset has become a line and a column. */
export interface Fault<Code extends string = OutpostFindingCode> {
  readonly code: Code;
  readonly spot: Spot;
  readonly data: FindingData;
}
