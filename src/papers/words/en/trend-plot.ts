// English for the picture of a trend: its title, its axes, the ends of its lines, and the words for who does not see it.
import type { Trend, TrendLimit, TrendPoint, TrendSheet } from '../../sheets/quality-trend.ts';
import {
  chartInWords,
  headInWords,
  limitsInWords,
  placeOfTrend,
  saidAgainst,
  saidMeasure,
  saidTold,
  trendTitle,
  whole,
} from './quality-trend.ts';
import { counted, saidValue, saidValueAt } from './said.ts';

export const dayAxis = 'outpost day';
export const ofResult = 'result';
export const ofBelow = 'less than this: not seen';
export const ofAbove = 'more than this';
export const ofDuplicate = 'second figure, not counted';
export const ofBroken = 'beyond its control limits';
export const ofHigh = 'control limit';
export const ofLow = 'control limit';
export const ofCentre = 'centre';
export const farUp = '(above the picture)';

export function valueAxis(trend: Trend): string {
  return trend.unit === '' ? '' : saidMeasure(trend);
}

export function plotTitle(trend: Trend, { outpost, day }: TrendSheet['head']): string {
  return `${trendTitle(trend)} up to Day ${day}, ${outpost}`;
}

export function plotSubtitle(trend: Trend): string {
  const { points, chart } = trend;
  if (points.length === 0) return 'nothing was measured';
  const results = counted(points.length, 'result');
  if (chart.limits === null) return `${results}; no control limits`;
  return chart.isProvisional ? `${results}; control limits are provisional` : results;
}

/** What the picture shows, for those who do not see it. */
export function plotDescription(trend: Trend): string {
  return [headInWords(trend), 'Limit:', ...limitsInWords(trend), ...chartInWords(trend)].join(' ');
}

export function limitLabel({ side, value, row }: TrendLimit, unit: string): readonly string[] {
  return [`limit: ${side}`, `${saidValue(value ?? 0, unit)}`, `(${row})`];
}

export function ownLabel(name: string, value: number, trend: Trend): readonly string[] {
  return [`${name} ${saidValueAt(value, placeOfTrend(trend), '')}`];
}

/** `C-05`, `C-05 and 7 others`. */
export function saidCluster(names: readonly string[]): string {
  const [first = '', ...rest] = [...new Set(names)].sort();
  return rest.length === 0 ? first : `${first} and ${counted(rest.length, 'other')}`;
}

export function saidPoint(point: TrendPoint, trend: Trend): string {
  const where = point.place === null ? '' : `${point.place.name}, `;
  return `${where}Day ${whole(point.day)}: ${saidTold({ ...point.told, value: point.figure.value })} ${trend.unit}, limit: ${saidAgainst(point)} (${point.sample}, ${point.ref}).`;
}

export const saidMethodChange = (from: string, to: string): string => `method: ${from} \u2192 ${to}`;
export const saidGap = (days: number): string => `nothing for ${counted(days, 'day')}`;
