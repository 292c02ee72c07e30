// A value drawn in plain signs: where it lies between nought and the top, with its limits and what the water does by itself.
import type { Trend, TrendPoint } from '../sheets/quality-trend.ts';
import { BAR_SIGNS } from './gauge-bar.ts';

const blank = '\u00A0';
const SIGNS = { no: BAR_SIGNS.read, below: '<', above: '>' } as const;

/** The highest thing that is drawn. */
export function topOf({ points, limits, chart }: Trend): number {
  const values = points.map(({ figure }) => figure.value);
  const lines = limits.map(({ value }) => value ?? 0);
  return Math.max(...values, ...lines, chart.limits?.high.value ?? 0);
}

/**
 * Limits are `│`, the range between the control limits is shaded, the value is a dot; one that was not seen points to where it
 * may be.
 * @param columns at least 2
 */
export function trendStrip(point: TrendPoint, trend: Trend, columns: number): string {
  const top = topOf(trend);
  const at = (value: number) => (top > 0 ? Math.round((Math.min(value, top) / top) * (columns - 1)) : 0);
  const signs = Array.from({ length: columns }, (): string => blank);
  const { chart, limits } = trend;
  if (chart.limits !== null)
    signs.fill(BAR_SIGNS.believed, at(chart.limits.low?.value ?? 0), at(chart.limits.high.value) + 1);
  for (const { value } of limits) if (value !== null) signs[at(value)] = BAR_SIGNS.middle;
  signs[at(point.figure.value)] = SIGNS[point.told.censored];
  return signs.join('');
}
