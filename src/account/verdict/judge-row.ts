// One required row held against all results of its parameter: evidence, or every reason why there is none.
import type { LimitFigures, LimitRow } from '../../outpost/index.ts';
import { type JudgedResult, judgeResult, type ToldRange } from './judge-result.ts';
import type { Reason, ReasonCode, SampleResult, WaterSince } from './sample-result.ts';

export interface JudgedRow {
  readonly reasons: readonly Reason[];
  /** The result that holds longest; null while there are reasons. */
  readonly evidence: SampleResult | null;
}

interface Asked {
  readonly nowMs: number;
  readonly water: WaterSince;
}

/** @param results those of the row's parameter */
export function judgeRow(row: LimitRow, results: readonly SampleResult[], asked: Asked): JudgedRow {
  const { limit } = row;
  if (!hasLimit(limit)) return { reasons: [reason(row, 'row-off', [])], evidence: null };
  const judged = results
    .filter(({ takenAtMs }) => !isOver(takenAtMs, asked.water))
    .map((result) => judgeResult(result, { row, limit }, asked));
  const blockers = reasonsOf(row, judged, ({ against }) => against);
  const contradictory = contradicting(judged, row.duplicatesWithinShare);
  if (contradictory.length > 0) blockers.push(reason(row, 'contradictory', contradictory));
  const evidence = judged.filter(({ lacks }) => lacks.length === 0).map(({ result }) => result);
  const lacks = evidence.length > 0 ? [] : whyNone(row, judged);
  const reasons = [...blockers, ...lacks];
  return { reasons, evidence: reasons.length === 0 ? longest(evidence) : null };
}

const isFigure = (value: number | undefined): boolean => value !== undefined && Number.isFinite(value);

/** A limit without a figure would let everything pass. */
function hasLimit(limit: LimitFigures | null): limit is LimitFigures {
  return limit !== null && (isFigure(limit.atLeast) || isFigure(limit.atMost));
}

/** `a < b`, so that a moment which is no number is not over. */
const isOver = (takenAtMs: number, { badNewsCountsSinceMs }: WaterSince): boolean =>
  takenAtMs < badNewsCountsSinceMs;

function reason({ id, parameter }: LimitRow, code: ReasonCode, results: readonly JudgedResult[]): Reason {
  return { code, row: id, parameter, results: results.map(({ result }) => result.id).sort() };
}

function reasonsOf(
  row: LimitRow,
  judged: readonly JudgedResult[],
  codesOf: (each: JudgedResult) => readonly ReasonCode[],
): Reason[] {
  if (judged.every((each) => codesOf(each).length === 0)) return [];
  const codes = [...new Set(judged.flatMap(codesOf))].sort();
  return codes.map((code) =>
    reason(
      row,
      code,
      judged.filter((each) => codesOf(each).includes(code)),
    ),
  );
}

function whyNone(row: LimitRow, judged: readonly JudgedResult[]): readonly Reason[] {
  return judged.length === 0 ? [reason(row, 'missing', [])] : reasonsOf(row, judged, ({ lacks }) => lacks);
}

/** Results of one sample that cannot both be true: one passes and one fails, or they lie further apart than the row bears. */
function contradicting(judged: readonly JudgedResult[], withinShare: number | null): readonly JudgedResult[] {
  if (judged.length < 2) return [];
  return judged.filter((one) =>
    judged.some((other) => one.result.sample === other.result.sample && contradict(one, other, withinShare)),
  );
}

function contradict(one: JudgedResult, other: JudgedResult, withinShare: number | null): boolean {
  if (one.range === null || other.range === null) return false;
  const fails = ({ against }: JudgedResult) => against.includes('above') || against.includes('below');
  if (fails(one) !== fails(other)) return true;
  return withinShare !== null && apart(one.range, other.range) > withinShare;
}

/** The gap between two ranges as a share of the larger figure; nothing where they meet. */
function apart(one: ToldRange, other: ToldRange): number {
  const gap = Math.max(one.low, other.low) - Math.min(one.high, other.high);
  return gap > 0 ? gap / Math.max(one.low, other.low) : 0;
}

/** Of two that hold equally long the one that comes first by its id, so that the order of results is nothing. */
function longest(results: readonly SampleResult[]): SampleResult | null {
  return results.reduce<SampleResult | null>(
    (best, each) => (best === null || holdsLonger(each, best) ? each : best),
    null,
  );
}

function holdsLonger(each: SampleResult, best: SampleResult): boolean {
  return each.validUntilMs === best.validUntilMs ? each.id < best.id : each.validUntilMs > best.validUntilMs;
}
