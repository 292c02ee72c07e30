// The chart of a series: what makes limits, what does not and why, and which results leave them.
import { describe, expect, test } from 'vitest';
import { DAY_RULE, measured } from '../../../tests/quality/measured.ts';
import { chartOf, LEAST_RESULTS } from './chart.ts';
import type { MeasuredPoint, SeriesPlace } from './measured-point.ts';
import { seriesOf } from './series.ts';

const tap: SeriesPlace = { kind: 'point', name: 'tap' };

function chart(points: readonly MeasuredPoint[], place = tap, everyDays = 1000) {
  const interval = { service: 'any', everyDays, daysAfter: () => everyDays };
  return chartOf(
    seriesOf({ points, marks: [] }, { parameter: 'silver', place, rows: [], interval, dayRule: DAY_RULE }),
  );
}

const at = (day: number, value: number, change: Partial<MeasuredPoint> = {}) =>
  measured({ day, value, point: 'tap', ...change });
const each = (values: readonly number[], change: Partial<MeasuredPoint> = {}) =>
  values.map((value, k) => at(k + 1, value, change));
const TEN = [49.6, 47.6, 49.9, 51.3, 47.8, 51.2, 52.6, 52.4, 53.6, 52.1];

describe('limits', () => {
  test('of what was seen are by moving ranges, and provisional up to twenty', () => {
    const found = chart(each(TEN));
    if (found.limits === null) throw new Error(found.why);
    expect(found.by).toBe('moving ranges');
    expect(found.limits.high).toBeCloseTo(55.8041, 4);
    expect(found).toMatchObject({ results: 10, seen: 10, isProvisional: true, signals: [] });
    expect(chart(each([...TEN, ...TEN]))).toMatchObject({ isProvisional: false });
  });

  test('with some not seen are by the fit, as long as half of them were seen', () => {
    const seen = each([2, 3, 4, 5]);
    const below = [6, 7, 8, 9].map((day) => at(day, 1.5, { censored: 'below' }));
    const found = chart([...seen, ...below]);
    if (found.limits === null) throw new Error(found.why);
    expect(found).toMatchObject({ by: 'censored fit', results: 8, seen: 4 });
    // Half lie below 1.5: the middle is near it, and below what the seen ones alone would say.
    expect(found.limits.centre).toBeLessThan(2.2);
    const oneMore = chart([...seen, ...below, at(10, 1.5, { censored: 'below' })]);
    expect(oneMore).toMatchObject({ limits: null, why: 'too few seen', results: 9, seen: 4 });
  });

  test('are none of few results, of several waters and without any spread', () => {
    expect(chart(each(TEN.slice(0, LEAST_RESULTS - 1)))).toMatchObject({ why: 'few results' });
    expect(chart(each(TEN), { kind: 'everywhere' })).toMatchObject({ why: 'several waters' });
    expect(chart(each([1, 1, 1, 1, 1, 1, 1, 1]))).toMatchObject({ why: 'no spread' });
    expect(chart([])).toMatchObject({ limits: null, results: 0 });
  });

  test('do not count second figures, nor results by a method of before', () => {
    const second = TEN.map((_, k) => at(k + 1.2, 900, { duplicate: true }));
    expect(chart([...each(TEN), ...second].sort((a, b) => a.atMs - b.atMs))).toMatchObject({ results: 10 });
    const before = each([900, 901, 902], { madeAt: 'aboard' });
    const after = TEN.map((value, k) => at(10 + k, value, { madeAt: 'laboratory' }));
    const found = chart([...before, ...after]);
    expect(found).toMatchObject({ results: 10, sinceMs: after[0]?.atMs });
  });

  test('take no range over a gap', () => {
    const low = each([1, 2, 1, 2]);
    const high = [50, 51, 50, 51].map((value, k) => at(60 + k, value));
    const found = chart([...low, ...high], tap, 7);
    if (found.limits === null) throw new Error(found.why);
    expect(found.sigma).toBeCloseTo(1 / 1.128, 12);
    expect(chart([...low, ...high])).not.toMatchObject({ sigma: found.sigma });
  });
});

test('a signal names its results', () => {
  const points = each([...TEN, 70]);
  const found = chart(points);
  if (found.limits === null) throw new Error(found.why);
  expect(found.signals).toMatchObject([{ rule: 'beyond the limits', side: 'high' }]);
  expect(found.signals[0]?.points.map(({ entry }) => entry)).toEqual([points.at(-1)?.entry]);
});
