// Trends of the practice outpost: the bed that gives way, silver in the containers, plate counts; undo, correction, views.
import { beforeAll, describe, expect, test } from 'vitest';
import { type AnyEntry, entryOf } from '../../src/book/index.ts';
import { type Desk, log, qualityTrend, type TrendQuery } from '../../src/desk/index.ts';
import type { Trend, TrendSheet } from '../../src/papers/index.ts';
import { corrieDesk, MOMENT } from '../reckon/corrie-at-the-end.ts';

let desk: Desk;
beforeAll(async () => {
  desk = await corrieDesk();
});

const at = (day: number, hour = 21) => Date.UTC(2147, 2, day, hour);

async function sheetOf(query: TrendQuery, from = desk, asKnownAtMs?: number): Promise<TrendSheet> {
  const sight =
    asKnownAtMs === undefined ? { kind: 'now' as const } : { kind: 'as known at' as const, ms: asKnownAtMs };
  const answer = await qualityTrend(from, query, sight, MOMENT);
  if (!answer.ok) throw new Error(JSON.stringify(answer.findings));
  return answer.value;
}

async function trendOf(query: TrendQuery, from = desk, asKnownAtMs?: number): Promise<Trend> {
  const { trend } = await sheetOf(query, from, asKnownAtMs);
  if (trend === null) throw new Error('no trend');
  return trend;
}

const valuesOf = ({ points }: Trend) => points.map(({ day, figure }) => [Math.floor(day), figure.value]);

describe('TOC at the product', () => {
  test('rises to Day 35 and drops after the bed change of Day 36', async () => {
    const trend = await trendOf({ parameter: 'toc', point: 'product' });
    expect([trend.parameter, trend.unit, trend.basis]).toEqual(['TOC', 'mg/L', 'as C']);
    expect(valuesOf(trend)).toEqual([
      [23, 0.7],
      [26, 1],
      [29, 1.5],
      [32, 2.1],
      [35, 2.6],
      [37, 1.4],
      [40, 0.5],
      [47, 0.5],
      [54, 0.6],
    ]);
    expect(trend.marks).toMatchObject([
      { what: 'lead bed: bed changed', before: { day: 35, value: 2.6 }, after: { day: 37, value: 1.4 } },
    ]);
    expect(Math.floor(trend.marks[0]?.day ?? 0)).toBe(36);
  });

  test('leaves its control limits on Day 35, under the limit of 3 mg/L', async () => {
    const { chart, limits, points } = await trendOf({ parameter: 'TOC', point: 'product' });
    expect(limits).toMatchObject([{ row: 'TOC most', side: 'at most', value: 3, isOff: false }]);
    expect(points.every(({ against }) => against === 'within')).toBe(true);
    if (chart.limits === null) throw new Error(chart.why);
    expect(chart.limits.high.value).toBeLessThan(2.6);
    expect(chart.limits.low).toBeNull();
    expect(chart).toMatchObject({ by: 'moving ranges', results: 9, isProvisional: true });
    expect(chart.signals).toMatchObject([
      { rule: 'beyond the limits', side: 'high', fromDay: 35, toDay: 35 },
    ]);
  });

  test('is measured as often as the outpost file asks, the shorter interval while it is raised', async () => {
    const { interval, gaps } = await trendOf({ parameter: 'TOC', point: 'product' });
    expect(interval).toEqual({ service: 'TOC of the product', everyDays: 7 });
    expect(gaps).toEqual([]);
  });

  test('gives every figure its entry, and ± by the instrument of the outpost', async () => {
    const { points } = await trendOf({ parameter: 'TOC', point: 'product' });
    for (const { figure, id } of points) {
      expect(figure.because.entries).toEqual([id]);
      // 0.08 mg/L new at each reading and 5 % of calibration, both one standard deviation.
      const u95 = 2 * Math.sqrt(0.08 * 0.08 + 0.05 * 0.05 * figure.value * figure.value);
      expect(figure.u95).toBeCloseTo(u95, 12);
    }
  });

  test('as known on Day 32 has four results, and too few for control limits', async () => {
    const trend = await trendOf({ parameter: 'TOC', point: 'product' }, desk, at(32));
    expect(trend.points).toHaveLength(4);
    expect(trend.chart).toMatchObject({ limits: null, why: 'few results', results: 4, least: 8 });
    expect(trend.marks).toEqual([]);
  });
});

describe('silver in the containers', () => {
  test('is 0.03 in SMP-03 and 0.19 after the dose', async () => {
    const trend = await trendOf({ parameter: 'silver', grade: 'drinking' });
    const [first, ...rest] = trend.points;
    expect(first).toMatchObject({
      sample: 'SMP-03',
      against: 'below',
      knownDay: 14,
      figure: { value: 0.03 },
    });
    expect(Math.floor(first?.day ?? 0)).toBe(8);
    expect(first?.drawnFrom).toContain('fill hose');
    expect(rest.map(({ figure, against }) => [figure.value, against])).toEqual(
      Array.from({ length: 8 }, () => [0.19, 'within']),
    );
    expect(trend.chart).toMatchObject({ limits: null, why: 'several waters', enough: [] });
  });

  test('as known on Day 20 is below in one of eight, all of which came from FA by H-1', async () => {
    const { pattern } = await trendOf({ parameter: 'silver' }, desk, at(20));
    expect(pattern).toMatchObject({ isByLimit: true, now: { beyond: 1, of: 8 }, before: null });
    expect(pattern?.sharedByAll).toEqual([
      { kind: 'from', name: 'FA' },
      { kind: 'by', name: 'H-1' },
      { kind: 'stands in', name: 'store rack' },
    ]);
    for (const { chance } of pattern?.groups ?? []) expect(chance).toBe(1);
  });

  test('at the end lies too far back for a pattern', async () => {
    expect((await trendOf({ parameter: 'silver' })).pattern).toBeNull();
  });
});

describe('plate counts', () => {
  test('at the dispenser are eight, weekly, a nought among them that is a result', async () => {
    const trend = await trendOf({ parameter: 'plate-count', point: 'dispenser cold' });
    expect(valuesOf(trend).map(([, value]) => value)).toEqual([2, 2, 0, 1, 6, 2, 3, 2]);
    expect(trend).toMatchObject({ interval: { everyDays: 7 }, gaps: [], unit: 'CFU/mL' });
    expect(trend.chart).toMatchObject({ results: 8, signals: [] });
    // Counting statistics alone: nobody knows of which volume.
    expect(trend.points.every(({ figure }) => figure.u95 === null)).toBe(true);
  });

  test('as known on Day 20 are above in two of eight stores', async () => {
    const { pattern } = await trendOf({ parameter: 'plate count' }, desk, at(20));
    expect(pattern?.now).toEqual({ beyond: 2, of: 8 });
    expect(pattern?.stores.filter(({ isBeyond }) => isBeyond).map(({ store }) => store)).toEqual([
      'C-06',
      'C-13',
    ]);
  });
});

describe('what is asked for', () => {
  test('nothing: what was measured, and where', async () => {
    const { trend, parameters } = await sheetOf({});
    expect(trend).toBeNull();
    expect(parameters.map(({ parameter, results }) => [parameter, results])).toEqual([
      ['plate count', 17],
      ['TOC', 10],
      ['conductivity', 10],
      ['silver', 9],
    ]);
    expect(parameters[1]?.places).toEqual([
      { kind: 'point', name: 'product', results: 9 },
      { kind: 'store', name: 'C-13', results: 1 },
    ]);
  });

  test('a place without results is an empty trend, not a refusal', async () => {
    const trend = await trendOf({ parameter: 'TOC', store: 'C-05' });
    expect(trend).toMatchObject({ points: [], unit: 'mg/L', chart: { why: 'few results' } });
  });

  test.each([
    [{ parameter: 'nitrate' }, 'not-in-book'],
    [{ parameter: 'TOC', store: 'C-99' }, 'not-in-book'],
    [{ parameter: 'TOC', point: 'tap' }, 'not-in-book'],
    [{ parameter: 'TOC', store: 'C-05', point: 'product' }, 'trend-places-clash'],
  ] as const)('%j is a finding', async (query, code) => {
    const answer = await qualityTrend(desk, query, { kind: 'now' }, MOMENT);
    expect(answer.ok ? [] : answer.findings.map((finding) => finding.code)).toEqual([code]);
  });
});

test('what was undone is gone, and what was corrected is as corrected', async () => {
  const own = await corrieDesk();
  const before = await trendOf({ parameter: 'TOC', point: 'product' }, own);
  const [first, second] = before.points;
  const entries: AnyEntry[] = [];
  for await (const rows of own.port.scan({ order: 'total', kinds: ['result'] }))
    entries.push(...rows.map(entryOf));
  const corrected = entries.find(({ id }) => id === second?.id);
  if (corrected?.kind !== 'result') throw new Error('no such result');
  const values = corrected.body.values.map((value) =>
    value.parameter === 'TOC' ? { ...value, value: 1.1 } : value,
  );
  const undone = await log(own, MOMENT, { what: 'undo', entry: first?.ref ?? '' });
  expect(undone.ok).toBe(true);
  const draft = {
    ...{ id: own.newId(MOMENT.nowUtcMs), kind: 'correction' as const, version: 1, by: 'keeper' },
    ...{ happenedAtMs: at(60), happenedOffsetMin: 0, enteredAtMs: at(60, 22), enteredOffsetMin: 0 },
    body: { target: corrected.id, body: { ...corrected.body, values }, reason: 'a slip' },
  };
  const kept = await own.keep([draft], MOMENT);
  expect(kept.ok ? '' : kept.findings).toBe('');
  const after = await trendOf({ parameter: 'TOC', point: 'product' }, own);
  expect(valuesOf(after).slice(0, 2)).toEqual([
    [26, 1.1],
    [29, 1.5],
  ]);
});
