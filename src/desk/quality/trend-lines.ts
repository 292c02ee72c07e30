// The parts of a series as the lines of a trend: days instead of milliseconds, figures with what they rest on.
import {
  againstLimits,
  type Chart,
  FULL_RESULTS,
  LEAST_RESULTS,
  type MeasuredPoint,
  type QualitySeries,
  type SeriesPoint,
} from '../../account/index.ts';
import { type DayRule, dayOf, dayStartUtcMs, formatIsoUtc, msPerDay } from '../../ground/units/index.ts';
import { type LimitRow, type OutpostIndex, toldIn } from '../../outpost/index.ts';
import type {
  SheetFigure,
  TrendChart,
  TrendLimit,
  TrendMark,
  TrendParameter,
  TrendPoint,
  TrendTold,
} from '../../papers/index.ts';

export interface LineTools {
  readonly dayRule: DayRule;
  readonly index: Pick<OutpostIndex, 'outpost'>;
  readonly rows: readonly LimitRow[];
  readonly refOf: (id: string) => string;
}

const METHOD = 'control-chart';

export function toldOf({ told, censored }: MeasuredPoint): TrendTold {
  return { ...told, censored };
}

/** Day 12.5 is the noon of Day 12. */
export function dayWithPart(atMs: number, rule: DayRule): number {
  const day = dayOf(atMs, rule);
  return day + (atMs - dayStartUtcMs(day, rule)) / msPerDay;
}

export function pointLine(point: SeriesPoint, { unit }: QualitySeries, tools: LineTools): TrendPoint {
  const { atMs, knownAtMs, grade, sample, entry, method, madeAt, duplicate, drawnFrom, afterGap } = point;
  const because = { entries: [entry], method: METHOD, inputs: [] };
  return {
    day: dayWithPart(atMs, tools.dayRule),
    at: formatIsoUtc(atMs),
    knownDay: dayOf(knownAtMs, tools.dayRule),
    place: placeOf(point),
    grade,
    sample,
    ref: tools.refOf(entry),
    id: entry,
    told: toldOf(point),
    figure: { value: point.value, u95: doubtOf(point, unit, tools.index), unit, because },
    against: againstLimits(point, tools.rows),
    ...{ method, madeAt, duplicate, drawnFrom, afterGap },
  };
}

function placeOf({ store, point }: MeasuredPoint): TrendPoint['place'] {
  if (store !== null) return { kind: 'store', name: store };
  return point === null ? null : { kind: 'point', name: point };
}

/**
 * ± of one reading by the outpost's own instrument of that parameter: null where another made it, where it is censored, and
 * where the outpost file tells only counting statistics, of which nobody knows the volume.
 */
function doubtOf(
  { parameter, told, value, censored, method, madeAt }: SeriesPoint,
  unit: string,
  { outpost }: LineTools['index'],
): number | null {
  if (censored !== 'no' || method !== null || madeAt === 'laboratory' || told.unit !== unit) return null;
  const instrument = outpost.instruments.find(
    ({ measures, quantity }) => measures === 'quality' && quantity === parameter,
  );
  const { random, calibration } = instrument ?? {};
  if (random === undefined || random.poisson === true || instrument?.unit !== unit) return null;
  const parts = [random.absolute, calibration?.absolute].map((part) => part ?? 0);
  const shares = [random.relative, calibration?.relative].map((share) => (share ?? 0) * value);
  return 2 * Math.sqrt([...parts, ...shares].reduce((sum, u) => sum + u * u, 0));
}

/** A row that is off stands there and says so. */
export function limitLines(series: QualitySeries, rows: readonly LimitRow[]): readonly TrendLimit[] {
  return rows.flatMap((row) =>
    (['atLeast', 'atMost'] as const).flatMap((key) => {
      const value = (row.limit ?? row.remembered)?.[key];
      if (value === undefined) return [];
      const { id, source, evidence, firstAct } = row;
      const told = row.limit === null ? null : inUnitOf(series, row, value);
      const side = key === 'atLeast' ? ('at least' as const) : ('at most' as const);
      return [{ row: id, side, value: told, isOff: row.limit === null, source, evidence, firstAct }];
    }),
  );
}

function inUnitOf({ unit, basis }: QualitySeries, row: LimitRow, value: number): number | null {
  return basis === null
    ? null
    : (toldIn({ value, unit: row.unit, basis: row.basis }, { unit, basis }) ?? null);
}

export function markLines({ points, marks }: QualitySeries, dayRule: DayRule): readonly TrendMark[] {
  const told = (point: SeriesPoint | undefined) =>
    point === undefined ? null : { day: dayOf(point.atMs, dayRule), value: point.value };
  const seen = points.filter(({ censored, duplicate }) => censored === 'no' && !duplicate);
  return marks.map(({ atMs, what }) => ({
    day: dayWithPart(atMs, dayRule),
    at: formatIsoUtc(atMs),
    what,
    before: told(seen.findLast((point) => point.atMs <= atMs)),
    after: told(seen.find((point) => point.atMs > atMs)),
  }));
}

export function chartLines(chart: Chart, { points, unit }: QualitySeries, dayRule: DayRule): TrendChart {
  if (chart.limits === null) {
    const enough = placesOf(points.filter(({ duplicate }) => !duplicate));
    return { ...chart, least: LEAST_RESULTS, enough: enough.filter((one) => one.results >= LEAST_RESULTS) };
  }
  const { limits, by, results, seen, isProvisional, sinceMs, sigma } = chart;
  const entries = points
    .filter(({ atMs, duplicate }) => !duplicate && atMs >= sinceMs)
    .map(({ entry }) => entry);
  const inputs = [
    { name: 'results', value: results, unit: '' },
    { name: 'standard deviation', value: sigma, unit },
  ];
  const figure = (value: number): SheetFigure => ({
    value,
    u95: null,
    unit,
    because: { entries, method: METHOD, inputs },
  });
  const { centre, low, high } = limits;
  return {
    // Under nought nothing is measured: such a limit is none.
    limits: { centre: figure(centre), low: low > 0 ? figure(low) : null, high: figure(high) },
    ...{ by, results, seen, isProvisional },
    full: FULL_RESULTS,
    sinceDay: dayOf(sinceMs, dayRule),
    signals: chart.signals.map(({ rule, side, points: those }) => ({
      ...{ rule, side },
      fromDay: dayOf(those[0]?.atMs ?? 0, dayRule),
      toDay: dayOf(those.at(-1)?.atMs ?? 0, dayRule),
      ids: those.map(({ entry }) => entry),
    })),
  };
}

/** The place with the most results comes first. */
export function placesOf(points: readonly MeasuredPoint[]): TrendParameter['places'] {
  const found = new Map<string, TrendParameter['places'][number]>();
  for (const point of points) {
    const place = placeOf(point);
    if (place === null || place.kind === 'grade' || place.kind === 'everywhere') continue;
    const { kind, name } = place;
    const key = JSON.stringify([kind, name]);
    found.set(key, { kind, name, results: (found.get(key)?.results ?? 0) + 1 });
  }
  return [...found.values()].sort(
    (one, other) => other.results - one.results || (one.name < other.name ? -1 : 1),
  );
}
