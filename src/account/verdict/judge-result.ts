// One result held against one row: what speaks against the water, and what keeps the result from being evidence.
import { type LimitFigures, type LimitRow, toldIn } from '../../outpost/index.ts';
import type { Blocker, Lack, SampleResult, WaterSince } from './sample-result.ts';

export interface JudgedResult {
  readonly result: SampleResult;
  readonly against: readonly Blocker[];
  readonly lacks: readonly Lack[];
  /** What the figure can be, in the unit of the row; null where it cannot be told in it. */
  readonly range: ToldRange | null;
}

export interface ToldRange {
  readonly low: number;
  readonly high: number;
}

/** A row with the limit that it was found to have. */
export interface RowInForce {
  readonly row: LimitRow;
  readonly limit: LimitFigures;
}

/** Every comparison is written so that a moment which is no number counts against release. */
export function judgeResult(
  result: SampleResult,
  { row, limit }: RowInForce,
  { nowMs, water }: { readonly nowMs: number; readonly water: WaterSince },
): JudgedResult {
  const range = rangeOf(result, row);
  const figure = range === null ? [whyNoRange(result)] : againstLimit(range, result, { row, limit });
  const lacks: Lack[] = [];
  if (result.verified !== true) lacks.push('unverified');
  if (!(nowMs < result.validUntilMs)) lacks.push('expired');
  if (!(result.takenAtMs >= water.unchangedSinceMs)) lacks.push('older-water');
  if (row.degassed && result.degassed !== true) lacks.push('not-degassed');
  return { result, against: result.takenAtMs <= nowMs ? figure : [...figure, 'future'], lacks, range };
}

/** Shared: nearly every result earns nothing, and there are many. */
const NOTHING: readonly Blocker[] = [];

const hasFigure = ({ value, censored }: SampleResult): boolean =>
  Number.isFinite(value) && value >= 0 && ['no', 'below', 'above'].includes(censored);

const whyNoRange = (result: SampleResult): Blocker => (hasFigure(result) ? 'unit-or-basis' : 'no-figure');

function rangeOf(result: SampleResult, row: LimitRow): ToldRange | null {
  if (!hasFigure(result) || result.basis === null) return null;
  const told = toldIn({ value: result.value, unit: result.unit, basis: result.basis }, row);
  if (told === undefined) return null;
  if (result.censored === 'no') return { low: told, high: told };
  return result.censored === 'below' ? { low: 0, high: told } : { low: told, high: Number.POSITIVE_INFINITY };
}

/** A censored figure is on one side of a limit only where all that it can be is. */
function againstLimit(
  { low, high }: ToldRange,
  { censored }: SampleResult,
  { row, limit }: RowInForce,
): readonly Blocker[] {
  const { atLeast = 0, atMost = Number.POSITIVE_INFINITY } = limit;
  if (censored === 'below' && atLeast === 0 && countsAsNone(high, row)) return NOTHING;
  if (low > atMost || (censored === 'above' && low >= atMost)) return ['above'];
  if (high < atLeast || (censored === 'below' && high <= atLeast && atLeast > 0)) return ['below'];
  return low >= atLeast && high <= atMost ? NOTHING : ['censored-across-limit'];
}

/** Where a limit of nought says how fine a method has to be. */
const countsAsNone = (detectionLimit: number, { noneIfBelow }: LimitRow): boolean =>
  noneIfBelow !== null && detectionLimit <= noneIfBelow;
