// A series: one unit, gaps by the service of the outpost, changes of method, and what is held apart.
import { describe, expect, test } from 'vitest';
import { DAY_RULE, measured, row } from '../../../tests/quality/measured.ts';
import type { MeasuredPoint, SeriesPlace } from './measured-point.ts';
import { samplingInterval } from './sampling-interval.ts';
import { seriesOf } from './series.ts';

const product: SeriesPlace = { kind: 'point', name: 'product' };
const service = [
  { id: 'weekly', everyDays: 7, measures: { parameters: ['TOC'], points: ['product'] } },
  {
    id: 'raised',
    everyDays: 3,
    whenAboveMgPerL: 0.6,
    insteadOf: 'weekly',
    measures: { parameters: ['TOC'], points: ['product'] },
  },
  { id: 'stroke check', everyDays: 60 },
];
const interval = samplingInterval({ service }, { parameter: 'TOC', point: 'product' });

const toc = (day: number, value: number, change: Partial<MeasuredPoint> = {}) =>
  measured({ day, value, parameter: 'TOC', point: 'product', basis: 'as C', ...change });
const of = (points: readonly MeasuredPoint[], change: Partial<Parameters<typeof seriesOf>[1]> = {}) =>
  seriesOf(
    { points, marks: [] },
    { parameter: 'TOC', place: product, rows: [], interval, dayRule: DAY_RULE, ...change },
  );

describe('the interval', () => {
  test('is of what a line of service says that it measures, and where', () => {
    expect(interval).toMatchObject({ service: 'weekly', everyDays: 7 });
    expect(samplingInterval({ service }, { parameter: 'TOC', point: 'dispenser' })).toBeNull();
    expect(samplingInterval({ service }, { parameter: 'silver', point: 'product' })).toBeNull();
  });

  test('is the shorter one after a raised figure, in its own unit alone', () => {
    expect(interval?.daysAfter(toc(1, 0.6))).toBe(7);
    expect(interval?.daysAfter(toc(1, 0.7))).toBe(3);
    expect(interval?.daysAfter(measured({ day: 1, value: 700, unit: 'µg/L' }))).toBe(7);
  });
});

describe('gaps', () => {
  test('are more days than are asked for, and an hour more is none', () => {
    const { gaps, points } = of([toc(1, 0.5), toc(8.6, 0.5), toc(16, 0.5)]);
    expect(gaps).toMatchObject([{ days: 8, everyDays: 7 }]);
    expect(points.map(({ afterGap }) => afterGap)).toEqual([false, false, true]);
  });

  test('come sooner while the figure is raised', () => {
    expect(of([toc(1, 0.9), toc(4, 0.5), toc(11, 0.5)]).gaps).toEqual([]);
    expect(of([toc(1, 0.9), toc(5, 0.5)]).gaps).toMatchObject([{ days: 4, everyDays: 3 }]);
  });

  test('are not told where nobody says how often, nor over several waters', () => {
    const far = [toc(1, 0.5), toc(40, 0.5)];
    expect(of(far, { interval: null }).gaps).toEqual([]);
    expect(of(far, { place: { kind: 'everywhere' } }).gaps).toEqual([]);
  });
});

describe('units', () => {
  test('are those of the first row; what cannot be told in it stands apart', () => {
    const points = [
      toc(1, 500, { told: { value: 500, unit: 'µg/L', basis: 'as C' } }),
      toc(2, 3, { told: { value: 3, unit: 'CFU/mL', basis: 'as itself' } }),
      toc(3, 4, { told: { value: 4, unit: 'mg/L', basis: null } }),
    ];
    const rows = [row({ limit: { atMost: 3 }, unit: 'mg/L', basis: 'as C' })];
    const series = of(points, { rows });
    expect(series.points.map(({ value }) => value)).toEqual([0.5]);
    expect(series.apart).toEqual(points.slice(1));
    expect([series.unit, series.basis]).toEqual(['mg/L', 'as C']);
  });

  test('without a row are those of most results', () => {
    const points = [toc(1, 500, { told: { value: 500, unit: 'µg/L', basis: 'as C' } }), toc(2, 1), toc(3, 2)];
    expect(of(points)).toMatchObject({ unit: 'mg/L', basis: 'as C' });
    expect(of(points).points.map(({ value }) => value)).toEqual([0.5, 1, 2]);
    expect(of([])).toMatchObject({ unit: '', basis: null, points: [] });
  });
});

test('a change of method is one between two that both say it', () => {
  const { methodChanges } = of([
    toc(1, 1, { madeAt: 'aboard' }),
    toc(2, 1),
    toc(3, 1, { madeAt: 'aboard' }),
    toc(4, 1, { madeAt: 'laboratory', method: 'combustion', duplicate: true }),
    toc(5, 1, { madeAt: 'laboratory', method: 'combustion' }),
  ]);
  expect(methodChanges).toMatchObject([{ from: 'aboard', to: 'combustion, laboratory' }]);
});

test('a place is a store, a point, a grade, or everywhere', () => {
  const points = [
    measured({ day: 1, value: 1, store: 'C-01', grade: 'drinking' }),
    measured({ day: 2, value: 2, store: 'C-02', grade: 'technical' }),
    measured({ day: 3, value: 3, point: 'tap' }),
  ];
  const valuesAt = (place: SeriesPlace) =>
    of(points, { parameter: 'silver', place }).points.map(({ value }) => value);
  expect(valuesAt({ kind: 'store', name: 'C-01' })).toEqual([1]);
  expect(valuesAt({ kind: 'grade', name: 'technical' })).toEqual([2]);
  expect(valuesAt({ kind: 'point', name: 'tap' })).toEqual([3]);
  expect(valuesAt({ kind: 'everywhere' })).toEqual([1, 2, 3]);
});
