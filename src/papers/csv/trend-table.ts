// The results of a trend as a table for spreadsheets: what was told, what it is in the unit of the trend, and where it lies.
import type { Trend, TrendPoint } from '../sheets/quality-trend.ts';
import { csvText } from './csv-text.ts';

const heads = [
  'parameter',
  'at',
  'day',
  'known_day',
  'place_kind',
  'place',
  'grade',
  'sample',
  'entry',
  'censored',
  'value',
  'u95',
  'unit',
  'basis',
  'told_value',
  'told_unit',
  'told_basis',
  'against_limit',
  'at_least',
  'at_most',
  'centre',
  'control_low',
  'control_high',
  'signals',
  'made_at',
  'method',
  'duplicate',
  'after_gap',
];

/** Times in ISO 8601; what is censored has its bound in `value` and the side in `censored`; what was not measured has no line. */
export function trendTable(trend: Trend): string {
  return csvText(
    heads,
    trend.points.map((point) => cellsOf(point, trend)),
  );
}

function cellsOf(point: TrendPoint, trend: Trend): readonly (string | number | null)[] {
  const { told, figure, place } = point;
  return [
    trend.parameter,
    point.at,
    // To the ten-thousandth of a day, which is nine seconds.
    Math.round(point.day * 1e4) / 1e4,
    point.knownDay,
    place?.kind ?? null,
    place?.name ?? null,
    point.grade,
    point.sample,
    point.id,
    told.censored,
    figure.value,
    figure.u95 === null ? null : Math.round(figure.u95 * 1e6) / 1e6,
    trend.unit,
    trend.basis,
    ...[told.value, told.unit, told.basis],
    point.against,
    limitOf(trend, 'at least'),
    limitOf(trend, 'at most'),
    ...chartCells(point, trend),
    ...[point.madeAt, point.method],
    point.duplicate ? 'yes' : 'no',
    point.afterGap ? 'yes' : 'no',
  ];
}

/** The narrowest of several rows. */
function limitOf({ limits }: Trend, side: 'at least' | 'at most'): number | null {
  const values = limits.flatMap((limit) =>
    limit.side === side && limit.value !== null ? [limit.value] : [],
  );
  if (values.length === 0) return null;
  return side === 'at least' ? Math.max(...values) : Math.min(...values);
}

function chartCells({ id }: TrendPoint, { chart }: Trend): readonly (string | number | null)[] {
  if (chart.limits === null) return [null, null, null, null];
  const { centre, low, high } = chart.limits;
  const broken = chart.signals.filter(({ ids }) => ids.includes(id)).map(({ rule }) => rule);
  return [
    inMillionths(centre.value),
    low === null ? null : inMillionths(low.value),
    inMillionths(high.value),
    broken.join('; '),
  ];
}

function inMillionths(value: number): number {
  return Math.round(value * 1e6) / 1e6;
}
