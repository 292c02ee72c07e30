// The trend of a parameter: its series, its control chart, its limits, and the pattern over stores.
import {
  chartOf,
  type Fold,
  type Measured,
  type MeasuredPoint,
  type SeriesPlace,
  samplingInterval,
  seriesOf,
  WINDOW_DAYS,
} from '../../account/index.ts';
import { type BookPort, entryOf } from '../../book/index.ts';
import { dayOf, formatIsoUtc } from '../../ground/units/index.ts';
import type { LimitRow } from '../../outpost/index.ts';
import type { Trend, TrendParameter, TrendPlace, TrendSheet } from '../../papers/index.ts';
import { type Answer, yes } from '../answer.ts';
import { type Desk, type Moment, positionAt, type Sight, viewOf } from '../desk.ts';
import { headOf } from '../today.ts';
import {
  chartLines,
  dayWithPart,
  limitLines,
  markLines,
  placesOf,
  pointLine,
  toldOf,
} from './trend-lines.ts';
import { findParameter, findPlace, type TrendQuery } from './trend-names.ts';
import { patternLines } from './trend-pattern.ts';

/**
 * The sheet of a trend.
 * @param query without a parameter: what was measured at all, and no trend
 */
export async function qualityTrend(
  desk: Desk,
  query: TrendQuery,
  sight: Sight,
  moment: Moment,
): Promise<Answer<TrendSheet>> {
  const seen = await positionAt(desk, sight, moment);
  if (!seen.ok) return seen;
  const position = seen.value;
  const opened = await desk.account(viewOf(sight));
  if (!opened.ok) return opened;
  const { fold } = opened.value;
  const told = await desk.measured(viewOf(sight));
  if (!told.ok) return told;
  const measured = told.value;
  const sheet = { head: headOf(desk, sight, position), parameters: parametersOf(measured, fold) };
  const place = findPlace(query, fold, measured);
  if (!place.ok) return place;
  if (query.parameter === undefined) return yes({ ...sheet, trend: null });
  const parameter = findParameter(query.parameter, fold, measured);
  if (!parameter.ok) return parameter;
  const asked = { parameter: parameter.value, place: place.value, nowMs: position.atMs };
  const trend = await trendOf(desk, sight, { fold, measured, ...asked });
  return trend.ok ? yes({ ...sheet, trend: trend.value }) : trend;
}

interface Asked {
  readonly fold: Fold;
  readonly measured: Measured;
  readonly parameter: string;
  readonly place: SeriesPlace;
  readonly nowMs: number;
}

/** Rows in force that bear on a parameter, whatever water it is. */
function rowsOf({ limits }: Fold, parameter: string): readonly LimitRow[] {
  return limits.sets.flatMap(({ rows }) => rows.filter((row) => row.parameter === parameter));
}

async function trendOf(desk: Desk, sight: Sight, asked: Asked): Promise<Answer<Trend>> {
  const { fold, measured, parameter, place } = asked;
  const { dayRule, index } = fold;
  const rows = rowsOf(fold, parameter);
  const interval =
    place.kind === 'point' ? samplingInterval(index.outpost, { parameter, point: place.name }) : null;
  const series = seriesOf(measured, { parameter, place, rows, interval, dayRule });
  const refOf = await refsOf(desk.port, [...series.points, ...series.apart]);
  const tools = { dayRule, index, rows, refOf, nowMs: asked.nowMs };
  const all = [...series.points, ...series.apart];
  const pattern = await patternAt(desk, sight, { series: all, place, tools });
  if (!pattern.ok) return pattern;
  return yes({
    parameter,
    place: saidPlace(place),
    unit: series.unit,
    basis: series.basis,
    points: series.points.map((point) => pointLine(point, series, tools)),
    apart: series.apart.map((point) => ({
      sample: point.sample,
      ref: refOf(point.entry),
      told: toldOf(point),
    })),
    interval: interval === null ? null : { service: interval.service, everyDays: interval.everyDays },
    gaps: series.gaps.map(({ fromMs, toMs, days, everyDays }) => ({
      fromDay: dayOf(fromMs, dayRule),
      toDay: dayOf(toMs, dayRule),
      ...{ days, everyDays },
    })),
    methodChanges: series.methodChanges.map(({ atMs, from, to }) => ({
      day: dayWithPart(atMs, dayRule),
      at: formatIsoUtc(atMs),
      ...{ from, to },
    })),
    marks: markLines(series, dayRule),
    limits: limitLines(series, rows),
    chart: chartLines(chartOf(series), series, dayRule),
    patternDays: WINDOW_DAYS,
    pattern: pattern.value,
  });
}

/** Of one store or point there is nothing to compare: the pass over the water is spared. */
async function patternAt(
  desk: Desk,
  sight: Sight,
  asked: {
    readonly series: readonly MeasuredPoint[];
    readonly place: SeriesPlace;
    readonly tools: Parameters<typeof patternLines>[2];
  },
): Promise<Answer<Trend['pattern']>> {
  const { series, place, tools } = asked;
  const stores = new Set(series.flatMap(({ store }) => store ?? []));
  if (place.kind === 'store' || place.kind === 'point' || stores.size < 2) return yes(null);
  const told = await desk.history(viewOf(sight));
  return told.ok ? yes(patternLines(series, told.value, tools)) : told;
}

function saidPlace(place: SeriesPlace): TrendPlace {
  return place.kind === 'everywhere' ? { kind: 'everywhere', name: '' } : place;
}

async function refsOf(port: BookPort, points: readonly MeasuredPoint[]): Promise<(id: string) => string> {
  const refs = new Map<string, string>();
  for (const { entry } of points) {
    if (refs.has(entry)) continue;
    const found = await port.find(entry);
    if (found === null) continue;
    const { site, number } = entryOf(found);
    refs.set(entry, `${site} ${number}`);
  }
  return (id) => refs.get(id) ?? id;
}

function parametersOf({ points }: Measured, { dayRule }: Fold): readonly TrendParameter[] {
  const names = [...new Set(points.map(({ parameter }) => parameter))];
  return names
    .flatMap((parameter) => {
      const ours = points.filter((point) => point.parameter === parameter);
      const last = ours.at(-1);
      if (last === undefined) return [];
      const places = placesOf(ours);
      const told = { day: dayOf(last.atMs, dayRule), told: toldOf(last) };
      return [{ parameter, results: ours.length, places, last: told }];
    })
    .sort((one, other) => other.results - one.results || (one.parameter < other.parameter ? -1 : 1));
}
