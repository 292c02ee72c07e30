// The series of one parameter at one place: its points in one unit, its gaps, and where the method changed.
import { type DayRule, dayOf } from '../../ground/units/index.ts';
import { type LimitRow, toldIn } from '../../outpost/index.ts';
import {
  isAt,
  type Measured,
  type MeasuredPoint,
  type SeriesPlace,
  type WaterMark,
} from './measured-point.ts';
import type { SamplingInterval } from './sampling-interval.ts';

export interface SeriesPoint extends MeasuredPoint {
  /** In the unit and on the basis of the series. */
  readonly value: number;
  /** Nothing was measured for longer than the interval before it. */
  readonly afterGap: boolean;
}

export interface SeriesGap {
  readonly fromMs: number;
  readonly toMs: number;
  readonly days: number;
  /** What the outpost file asks for between these two. */
  readonly everyDays: number;
}

export interface MethodChange {
  readonly atMs: number;
  readonly from: string;
  readonly to: string;
}

export interface QualitySeries {
  readonly parameter: string;
  readonly place: SeriesPlace;
  readonly unit: string;
  readonly basis: string | null;
  readonly points: readonly SeriesPoint[];
  /** What cannot be told in the unit of the series: it is counted, and not drawn. */
  readonly apart: readonly MeasuredPoint[];
  readonly gaps: readonly SeriesGap[];
  readonly methodChanges: readonly MethodChange[];
  readonly marks: readonly WaterMark[];
}

export interface SeriesAsked {
  readonly parameter: string;
  readonly place: SeriesPlace;
  /** Rows of the parameter: they give the unit. */
  readonly rows: readonly Pick<LimitRow, 'unit' | 'basis'>[];
  /** How often somebody has to measure there; null where nobody says. */
  readonly interval: SamplingInterval | null;
  readonly dayRule: DayRule;
}

/** The unit of the first row, else that of most results: the first of equals. */
export function seriesOf({ points, marks }: Measured, asked: SeriesAsked): QualitySeries {
  const { parameter, place, rows, dayRule } = asked;
  const ours = points.filter((point) => point.parameter === parameter && isAt(place, point));
  const measure = rows[0] ?? commonest(ours.map(({ told }) => told)) ?? { unit: '', basis: null };
  const interval = isOneWater(place) ? asked.interval : null;
  const told = withValues(ours, measure);
  const gaps = interval === null ? [] : gapsIn(told, interval, dayRule);
  const ends = new Set(gaps.map(({ toMs }) => toMs));
  return {
    parameter,
    place,
    unit: measure.unit,
    basis: measure.basis,
    points: told.map((point) => ({ ...point, afterGap: ends.has(point.atMs) })),
    apart: ours.filter((point) => !told.some(({ from }) => from === point)),
    gaps,
    methodChanges: isOneWater(place) ? changesIn(told) : [],
    marks: place.kind === 'point' ? marks : [],
  };
}

/** Of several waters no neighbour tells anything of the other. */
export function isOneWater({ kind }: SeriesPlace): boolean {
  return kind === 'store' || kind === 'point';
}

interface Measure {
  readonly unit: string;
  readonly basis: string | null;
}

type Valued = MeasuredPoint & { readonly value: number; readonly from: MeasuredPoint };

function withValues(points: readonly MeasuredPoint[], { unit, basis }: Measure): readonly Valued[] {
  return points.flatMap((point) => {
    const { told } = point;
    const value =
      told.unit === unit && told.basis === basis
        ? told.value
        : basis === null || told.basis === null
          ? undefined
          : toldIn({ value: told.value, unit: told.unit, basis: told.basis }, { unit, basis });
    return value === undefined ? [] : [{ ...point, value, from: point }];
  });
}

function commonest(measures: readonly Measure[]): Measure | undefined {
  const same = (one: Measure, other: Measure) => one.unit === other.unit && one.basis === other.basis;
  const count = (one: Measure) => measures.filter((other) => same(one, other)).length;
  return measures.reduce<Measure | undefined>(
    (best, each) => (best === undefined || count(each) > count(best) ? each : best),
    undefined,
  );
}

/** By outpost days, so that an hour's delay is no gap. */
function gapsIn(
  points: readonly Valued[],
  interval: SamplingInterval,
  dayRule: DayRule,
): readonly SeriesGap[] {
  return points.slice(1).flatMap((point, k) => {
    const before = points[k];
    if (before === undefined) return [];
    const days = dayOf(point.atMs, dayRule) - dayOf(before.atMs, dayRule);
    const everyDays = interval.daysAfter(before);
    return days > everyDays ? [{ fromMs: before.atMs, toMs: point.atMs, days, everyDays }] : [];
  });
}

/** Only between two that both say how or where they were made. */
function changesIn(points: readonly Valued[]): readonly MethodChange[] {
  const changes: MethodChange[] = [];
  let before: string | null = null;
  for (const { atMs, method, madeAt, duplicate } of points) {
    const words = [method, madeAt].filter((word) => word !== null).join(', ');
    if (words === '' || duplicate) continue;
    if (before !== null && before !== words) changes.push({ atMs, from: before, to: words });
    before = words;
  }
  return changes;
}
