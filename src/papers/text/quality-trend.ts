// The sheet of a trend as a text: a line a result with where it lies, then limits, runs, gaps and what stores share in words.
import type { Trend, TrendParameter, TrendPoint, TrendSheet } from '../sheets/quality-trend.ts';
import { patternInWords, sharedInWords } from '../words/en/quality-pattern.ts';
import * as words from '../words/en/quality-trend.ts';
import { proseWidth, type TextOptions } from './options.ts';
import { page, record } from './page.ts';
import { signed } from './signs.ts';
import { type Column, table } from './table.ts';
import { headLines } from './today-head.ts';
import { topOf, trendStrip } from './trend-strip.ts';
import { hanging, wrap } from './wrap.ts';

const { trendLabels: labels } = words;
const STRIP = 17;
const INDENT = 11;

export function qualityTrendText(sheet: TrendSheet, options: TextOptions): string {
  if (options.style === 'plain') return page(plainLines(sheet), options);
  return page([...headLines(sheet.head, options), '', ...bodyOf(sheet, options)], options);
}

function bodyOf({ trend, parameters }: TrendSheet, options: TextOptions): readonly string[] {
  return trend === null ? parameterLines(parameters, options) : trendLines(trend, options);
}

/** A line of a trend: a result, or something that happened between two of them. */
type Row = { readonly day: number; readonly point: TrendPoint | null; readonly notes: string };

function trendLines(trend: Trend, options: TextOptions): string[] {
  const rows = rowsOf(trend);
  const drawn = rows.length === 0 ? [] : [...table(columnsOf(trend), rows, options).lines, ''];
  return [...prose(words.headInWords(trend), options), '', ...drawn, ...sentences(trend, options)];
}

function rowsOf(trend: Trend): readonly Row[] {
  const signals = trend.chart.limits === null ? [] : trend.chart.signals;
  const points = trend.points.map(
    (point): Row => ({ day: point.day, point, notes: words.pointNotes(point, signals).join('; ') }),
  );
  const between = [
    ...trend.marks.map(({ day, what }): Row => ({ day, point: null, notes: what })),
    ...trend.methodChanges.map(
      ({ day, from, to }): Row => ({ day: day - 1e-9, point: null, notes: `${from} \u2192 ${to}` }),
    ),
  ];
  return [...points, ...between].sort((one, other) => one.day - other.day);
}

function columnsOf(trend: Trend): readonly Column<Row>[] {
  const ofPoint = (say: (point: TrendPoint) => string) => (row: Row) =>
    row.point === null ? '' : say(row.point);
  const strip = {
    head: `0 to ${words.shortly(topOf(trend), trend)}`,
    align: 'left' as const,
    priority: 3,
    cell: ofPoint((point) => trendStrip(point, trend, STRIP)),
  };
  const isOne = trend.place.kind === 'store' || trend.place.kind === 'point';
  return [
    { head: labels.day, align: 'right', priority: 0, cell: ({ day }) => `${words.whole(day)}` },
    {
      head: trend.unit,
      align: 'right',
      priority: 0,
      cell: ofPoint((point) => words.saidInColumn(point, trend)),
    },
    ...(trend.points.length === 0 ? [] : [strip]),
    { head: labels.against, align: 'left', priority: 0, cell: ofPoint(words.saidAgainst) },
    ...(isOne
      ? []
      : [
          {
            head: labels.where,
            align: 'left' as const,
            priority: 0,
            cell: ofPoint(({ place }) => place?.name ?? ''),
          },
        ]),
    { head: labels.sample, align: 'left', priority: 2, cell: ofPoint(({ sample }) => sample) },
    { head: labels.made, align: 'left', priority: 4, cell: ofPoint(words.saidMade) },
    { head: labels.notes, align: 'left', priority: 1, least: 16, cell: ({ notes }) => notes },
  ];
}

/** Each thought behind its word; nothing of what there is nothing to say. */
function sentences(trend: Trend, options: TextOptions): string[] {
  const width = proseWidth(options);
  const thoughts: readonly (readonly [string, readonly string[]])[] = [
    [labels.limit, words.limitsInWords(trend)],
    [labels.itself, trend.points.length === 0 ? [] : words.chartInWords(trend)],
    ['', trend.chart.limits === null || trend.limits.length === 0 ? [] : [labels.twoKinds]],
    [labels.done, trend.marks.map((mark) => words.markInWords(mark, trend.unit))],
    [labels.method, words.methodsInWords(trend)],
    [labels.gaps, words.gapsInWords(trend)],
    [labels.apart, words.apartInWords(trend)],
    [labels.stores, trend.points.length === 0 ? [] : patternInWords(trend)],
    [labels.shared, sharedInWords(trend)],
  ];
  const lines = thoughts.flatMap(([head, texts]) =>
    texts.flatMap((text, k) =>
      hanging(k === 0 ? head : '', signed(text, options.style), { width, indent: INDENT }),
    ),
  );
  return trend.points.length === 0 ? lines : [...lines, '', ...prose(labels.blank, options)];
}

function prose(text: string, options: TextOptions): string[] {
  return wrap(signed(text, options.style), proseWidth(options));
}

function parameterLines(parameters: readonly TrendParameter[], options: TextOptions): string[] {
  if (parameters.length === 0) return prose(labels.none, options);
  const columns: readonly Column<TrendParameter>[] = [
    { head: labels.parameter, align: 'left', priority: 0, cell: ({ parameter }) => parameter },
    { head: labels.results, align: 'right', priority: 0, cell: ({ results }) => `${results}` },
    {
      head: labels.last,
      align: 'left',
      priority: 1,
      cell: ({ last }) => `${words.saidTold(last.told)}\u00A0${last.told.unit}, Day\u00A0${last.day}`,
    },
    { head: labels.where, align: 'left', priority: 0, least: 20, cell: words.saidPlaces },
  ];
  return [labels.measured, '', ...table(columns, parameters, options).lines];
}

/**
 * measured parameter results day sign value unit places · trend parameter kind place unit basis results ·
 * point day day-known kind place sample ref sign value unit basis against made-at method duplicate ·
 * limit row side value off · chart by centre low high results seen provisional, or chart none why results seen ·
 * signal rule side from to count · mark day what · method day from to · gap from to days every ·
 * pattern beyond of days beyond-before of-before chance · store name found sign value day ref · group beyond of others-beyond others-of chance what.
 */
function plainLines({ trend, parameters }: TrendSheet): readonly string[] {
  if (trend !== null) return plainTrend(trend);
  return parameters.map((one) => {
    const { parameter, results, last, places } = one;
    const told = [`${last.day}`, signOf(last.told), `${last.told.value}`, last.told.unit];
    return plain(['measured', parameter, `${results}`, ...told, places.map(({ name }) => name).join(', ')]);
  });
}

function plainTrend(trend: Trend): readonly string[] {
  const { parameter, place, unit, basis, points, limits, marks, methodChanges, gaps, apart } = trend;
  return [
    plain(['trend', parameter, place.kind, place.name, unit, basis ?? '', `${points.length}`]),
    ...points.map(plainPoint),
    ...apart.map(({ sample, ref, told }) =>
      plain(['apart', sample, ref, signOf(told), `${told.value}`, told.unit, told.basis ?? '']),
    ),
    ...limits.map(({ row, side, value, isOff }) =>
      plain(['limit', row, side, `${value ?? ''}`, isOff ? 'off' : 'on']),
    ),
    ...plainChart(trend),
    ...marks.map(({ day, what }) => plain(['mark', `${words.whole(day)}`, what])),
    ...methodChanges.map(({ day, from, to }) => plain(['method', `${words.whole(day)}`, from, to])),
    ...gaps.map(({ fromDay, toDay, days, everyDays }) =>
      plain(['gap', `${fromDay}`, `${toDay}`, `${days}`, `${everyDays}`]),
    ),
    ...plainPattern(trend),
  ];
}

function plainPoint(point: TrendPoint): string {
  const { day, knownDay, place, sample, ref, told, figure, against, madeAt, method, duplicate } = point;
  const where = [place?.kind ?? '', place?.name ?? '', sample, ref];
  const value = [signOf(told), `${figure.value}`, figure.unit, told.basis ?? '', against];
  const made = [madeAt ?? '', method ?? '', duplicate ? 'duplicate' : ''];
  return plain(['point', `${words.whole(day)}`, `${knownDay}`, ...where, ...value, ...made]);
}

function plainChart({ chart }: Trend): readonly string[] {
  const { results, seen } = chart;
  if (chart.limits === null) return [plain(['chart', 'none', chart.why, `${results}`, `${seen}`])];
  const { centre, low, high } = chart.limits;
  const limits = [`${centre.value}`, `${low?.value ?? ''}`, `${high.value}`];
  const provisional = chart.isProvisional ? 'provisional' : '';
  return [
    plain(['chart', chart.by, ...limits, `${results}`, `${seen}`, provisional]),
    ...chart.signals.map(({ rule, side, fromDay, toDay, ids }) =>
      plain(['signal', rule, side ?? '', `${fromDay}`, `${toDay}`, `${ids.length}`]),
    ),
  ];
}

function plainPattern({ pattern, patternDays }: Trend): readonly string[] {
  if (pattern === null) return [];
  const { now, before, stores, groups } = pattern;
  const earlier =
    before === null ? ['', '', ''] : [before.count.beyond, before.count.of, before.chance].map(String);
  return [
    plain(['pattern', `${now.beyond}`, `${now.of}`, `${patternDays}`, ...earlier]),
    ...stores.map(({ store, found, told, day, ref }) =>
      plain(['store', store, found, signOf(told), `${told.value}`, `${day}`, ref]),
    ),
    ...groups.map(({ inside, outside, chance, traits }) => {
      const counts = [inside.beyond, inside.of, outside.beyond, outside.of, chance].map(String);
      return plain(['group', ...counts, ...traits.map(({ kind, name }) => `${kind} ${name}`)]);
    }),
  ];
}

const signOf = ({ censored }: TrendPoint['told']): string => ({ no: '=', below: '<', above: '>' })[censored];

const plain = (fields: readonly string[]): string => record(fields.map((field) => signed(field, 'plain')));
