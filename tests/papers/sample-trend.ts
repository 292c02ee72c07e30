// A trend of an invented outpost with everything in it: censored results, a gap, another method, a second figure, a pattern.
import type { Trend, TrendPoint, TrendSheet, TrendTold } from '../../src/papers/index.ts';
import { head } from './sample-sheets.ts';

const dayOne = Date.UTC(2147, 2, 1);
const iso = (day: number) => `${new Date(dayOne + (day - 1) * 86_400_000).toISOString().slice(0, 19)}Z`;

let count = 100;

function figure(value: number, ids: readonly string[], u95: number | null = null) {
  return { value, u95, unit: 'mg/L', because: { entries: ids, method: 'control-chart', inputs: [] } };
}

function point(
  day: number,
  value: number,
  change: Partial<TrendPoint> & { censored?: TrendTold['censored'] } = {},
): TrendPoint {
  count += 1;
  const { censored = 'no', ...rest } = change;
  return {
    day,
    at: iso(day),
    knownDay: Math.floor(day),
    place: { kind: 'point', name: 'tap' },
    grade: null,
    sample: `S-${count}`,
    ref: `skerry ${count}`,
    id: `id-${count}`,
    told: { value, unit: 'mg/L', basis: 'as N', censored },
    figure: figure(value, [`id-${count}`]),
    against: 'within',
    method: 'titration',
    madeAt: 'aboard',
    duplicate: false,
    drawnFrom: null,
    afterGap: false,
    ...rest,
  };
}

const points: readonly TrendPoint[] = [
  point(10.5, 2, { censored: 'below', method: 'strip' }),
  point(12.5, 3.4),
  point(14.5, 4.1),
  point(14.6, 4.4, { duplicate: true }),
  point(16.5, 5.25),
  point(30.5, 12, { against: 'above', afterGap: true }),
  point(32.5, 8.5),
  point(34.5, 25, { censored: 'above', against: 'above', drawnFrom: 'the long line' }),
  point(38.5, 4.9, { knownDay: 44 }),
  point(40.5, 4.2, { knownDay: 44 }),
];

const [high, beyond] = [points[5], points[7]] as [TrendPoint, TrendPoint];

/** Of one sampling point, with a control chart. */
export const oneTrend: Trend = {
  parameter: 'nitrate',
  place: { kind: 'point', name: 'tap' },
  unit: 'mg/L',
  basis: 'as N',
  points,
  apart: [
    {
      sample: 'S-90',
      ref: 'skerry 90',
      told: { value: 3, unit: 'µS/cm', basis: 'at 25 °C', censored: 'no' },
    },
  ],
  interval: { service: 'nitrate at the tap', everyDays: 7 },
  gaps: [{ fromDay: 16, toDay: 30, days: 14, everyDays: 7 }],
  methodChanges: [{ day: 12.5, at: iso(12.5), from: 'strip, aboard', to: 'titration, aboard' }],
  marks: [
    {
      day: 36.25,
      at: iso(36.25),
      what: 'lead bed: bed changed',
      before: { day: 32, value: 8.5 },
      after: { day: 38, value: 4.9 },
    },
  ],
  limits: [
    {
      row: 'nitrate most',
      side: 'at most',
      value: 11,
      isOff: false,
      source: 'outpost policy',
      evidence: 'policy',
      firstAct: 'sample again',
    },
    {
      row: 'nitrate remembered',
      side: 'at most',
      value: null,
      isOff: true,
      source: 'a book',
      evidence: 'memory',
      firstAct: '',
    },
  ],
  chart: {
    limits: { centre: figure(5.2, []), low: figure(0.7, []), high: figure(9.7, []) },
    by: 'censored fit',
    results: 8,
    seen: 7,
    isProvisional: true,
    full: 20,
    sinceDay: 12,
    signals: [
      { rule: 'beyond the limits', side: 'high', fromDay: 30, toDay: 30, ids: [high.id] },
      { rule: 'beyond the limits', side: 'high', fromDay: 34, toDay: 34, ids: [beyond.id] },
    ],
  },
  patternDays: 30,
  pattern: null,
};

const store = (name: string, day: number, value: number, against: TrendPoint['against'] = 'within') =>
  point(day, value, {
    place: { kind: 'store', name },
    grade: 'drinking',
    against,
    method: null,
    madeAt: null,
  });
const stores = [
  store('C-01', 41.5, 14, 'above'),
  store('C-02', 41.503, 14, 'above'),
  store('C-03', 41.506, 14, 'above'),
  store('C-04', 42.5, 2),
  store('C-05', 42.5, 2),
  store('C-06', 42.5, 2),
  store('C-07', 42.5, 2),
];

/** Of several stores, with a pattern in it. */
export const storesTrend: Trend = {
  ...oneTrend,
  place: { kind: 'everywhere', name: '' },
  points: stores,
  apart: [],
  interval: null,
  gaps: [],
  methodChanges: [],
  marks: [],
  limits: oneTrend.limits.slice(0, 1),
  chart: {
    limits: null,
    why: 'several waters',
    results: 7,
    seen: 7,
    least: 8,
    enough: [{ kind: 'point', name: 'tap', results: 9 }],
  },
  pattern: {
    isByLimit: true,
    now: { beyond: 3, of: 7 },
    before: { count: { beyond: 0, of: 9 }, chance: 10 },
    stores: stores.map((one) => ({
      store: one.place?.name ?? '',
      found: one.against === 'above' ? 'above' : 'within',
      isBeyond: one.against === 'above',
      day: Math.floor(one.day),
      told: one.told,
      ref: one.ref,
    })),
    sharedByAll: [{ kind: 'stands in', name: 'rack' }],
    groups: [
      {
        traits: [
          { kind: 'from', name: 'FA' },
          { kind: 'by', name: 'H-1' },
        ],
        stores: ['C-01', 'C-02', 'C-03'],
        inside: { beyond: 3, of: 3 },
        outside: { beyond: 0, of: 4 },
        chance: 20,
      },
      {
        traits: [{ kind: 'filled on', name: 'Day 40' }],
        stores: ['C-01', 'C-02', 'C-04', 'C-05'],
        inside: { beyond: 2, of: 4 },
        outside: { beyond: 1, of: 3 },
        chance: 1,
      },
    ],
  },
};

export const sheetOf = (trend: Trend | null): TrendSheet => ({
  head,
  parameters: [
    {
      parameter: 'nitrate',
      results: 17,
      places: [
        { kind: 'point', name: 'tap', results: 10 },
        { kind: 'store', name: 'C-01', results: 1 },
      ],
      last: { day: 42, told: { value: 2, unit: 'mg/L', basis: 'as N', censored: 'below' } },
    },
  ],
  trend,
});
