// The control chart of a series: what this water does by itself, and what in it is more than that.
import {
  censoredNormal,
  individualsChart,
  LIMIT_SIGMAS,
  type RunRule,
  runSignals,
} from '../../ground/maths/index.ts';
import { isOneWater, type QualitySeries, type SeriesPoint } from './series.ts';

/** Fewer results make no limits. Ours: docs/methods/control-chart.md has what fewer would cost in false alarms. */
export const LEAST_RESULTS = 8;
/** Limits of fewer are told to be provisional. @source common practice: twenty to twenty-five values */
export const FULL_RESULTS = 20;

/** Why there are no limits. */
export type NoLimits = 'several waters' | 'few results' | 'too few seen' | 'no spread';

export interface ChartSignal {
  readonly rule: RunRule;
  readonly side: 'high' | 'low' | null;
  readonly points: readonly SeriesPoint[];
}

export type Chart =
  | { readonly limits: null; readonly why: NoLimits; readonly results: number; readonly seen: number }
  | {
      readonly limits: { readonly centre: number; readonly low: number; readonly high: number };
      readonly sigma: number;
      readonly by: 'moving ranges' | 'censored fit';
      /** Results that made them, and how many of these were seen and not only known to be below or above. */
      readonly results: number;
      readonly seen: number;
      readonly isProvisional: boolean;
      /** Only results from here on: the method was another before. */
      readonly sinceMs: number;
      readonly signals: readonly ChartSignal[];
    };

/** A lower limit under nought says nothing of a concentration, and is given as it comes out: papers leave it away. */
export function chartOf(series: QualitySeries): Chart {
  const points = comparable(series);
  const seen = points.filter(({ censored }) => censored === 'no').length;
  const counts = { results: points.length, seen };
  if (!isOneWater(series.place)) return { limits: null, why: 'several waters', ...counts };
  if (points.length < LEAST_RESULTS) return { limits: null, why: 'few results', ...counts };
  if (2 * seen < points.length) return { limits: null, why: 'too few seen', ...counts };
  const by = seen === points.length ? 'moving ranges' : 'censored fit';
  const found = by === 'moving ranges' ? byRanges(points) : byFit(points);
  if (found === null || !(found.sigma > 0)) return { limits: null, why: 'no spread', ...counts };
  const { centre, sigma } = found;
  const limits = { centre, low: centre - LIMIT_SIGMAS * sigma, high: centre + LIMIT_SIGMAS * sigma };
  const signals = runSignals(points, limits).map(({ rule, side, from, to }) => ({
    rule,
    side,
    points: points.slice(from, to + 1),
  }));
  const isProvisional = points.length < FULL_RESULTS;
  return { limits, sigma, by, ...counts, isProvisional, sinceMs: points[0]?.atMs ?? 0, signals };
}

/** One figure a sample, by the method of today. */
function comparable({ points, methodChanges }: QualitySeries): readonly SeriesPoint[] {
  const sinceMs = methodChanges.at(-1)?.atMs ?? Number.NEGATIVE_INFINITY;
  return points.filter(({ atMs, duplicate }) => !duplicate && atMs >= sinceMs);
}

function byRanges(points: readonly SeriesPoint[]): { centre: number; sigma: number } | null {
  const stretches: number[][] = [];
  for (const { value, afterGap } of points) {
    const last = stretches.at(-1);
    if (last === undefined || afterGap) stretches.push([value]);
    else last.push(value);
  }
  return individualsChart(stretches);
}

function byFit(points: readonly SeriesPoint[]): { centre: number; sigma: number } | null {
  const of = (kind: SeriesPoint['censored']) =>
    points.filter(({ censored }) => censored === kind).map(({ value }) => value);
  const fit = censoredNormal({ seen: of('no'), below: of('below'), above: of('above') });
  return fit === null ? null : { centre: fit.mean, sigma: fit.sd };
}
