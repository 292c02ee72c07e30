// The picture of a trend: readable without colour and without eyes, its marks where their figures are, its lines broken at gaps.
import { describe, expect, test } from 'vitest';
import { expectGolden } from '../../../tests/golden/record.ts';
import { oneTrend, sheetOf, storesTrend } from '../../../tests/papers/sample-trend.ts';
import type { Trend } from '../sheets/quality-trend.ts';
import { spread } from './trend-labels.ts';
import { trendPlot } from './trend-plot.ts';

const { head } = sheetOf(null);
const svg = trendPlot(oneTrend, head);
const ofStores = trendPlot(storesTrend, head);

/** Throws when a tag is not closed by its own name; a tag is all between < and >. */
function mustBeNested(text: string): number {
  const open: string[] = [];
  let tags = 0;
  for (const [, closing, name, own] of text.matchAll(/<(\/?)([a-z]+)[^>]*?(\/?)>/g)) {
    tags += 1;
    if (closing === '/') expect(open.pop()).toBe(name);
    else if (own !== '/') open.push(name ?? '');
  }
  expect(open).toEqual([]);
  return tags;
}

test('golden records of the pictures', () => {
  expectGolden('papers/quality-trend.svg', svg);
  expectGolden('papers/quality-trend-stores.svg', ofStores);
});

describe('the picture', () => {
  test('is well nested, and has a title, a description and real text', () => {
    expect(mustBeNested(svg)).toBeGreaterThan(60);
    expect(mustBeNested(ofStores)).toBeGreaterThan(30);
    expect(svg).toContain('<title>nitrate at tap up to Day 46, Skerry</title>');
    expect(svg).toMatch(/<desc>nitrate at tap.*at most 11.*Control limits/);
    for (const text of [
      'limit: at most',
      'control limit 9.7',
      'centre 5.2',
      'less than this: not seen',
      'outpost day',
    ])
      expect(svg).toContain(`>${text}</text>`);
  });

  test('has no colour', () => {
    const colours = [...svg.matchAll(/#([0-9a-f]{2})([0-9a-f]{2})([0-9a-f]{2})/g)];
    expect(colours.length).toBeGreaterThan(20);
    for (const [, red, green, blue] of colours) expect([green, blue]).toEqual([red, red]);
  });

  test('tells limit, control limit and centre apart by their dashes', () => {
    const dashes = [...svg.matchAll(/y1="([\d.]+)" y2="\1"[^>]*stroke-dasharray="([^"]+)"/g)].map(
      ([, , dash]) => dash,
    );
    expect(new Set(dashes)).toEqual(new Set(['10 4', '2 3', '7 3 2 3']));
  });

  test('draws what was not seen as an open triangle, down for less and up for more', () => {
    const triangles = [...svg.matchAll(/<polygon points="([^"]+)" fill="#ffffff"/g)]
      .slice(0, 2)
      .map(([, points = '']) => {
        const ys = points.split(' ').map((pair) => Number(pair.split(',')[1]));
        return Math.sign((ys[2] ?? 0) - (ys[0] ?? 0));
      });
    expect(triangles).toEqual([1, -1]);
  });

  test('breaks its line at a gap and where the method changes, and leaves second figures out', () => {
    const lines = [...svg.matchAll(/<path d="M([^"Hv]+)" fill="none"[^>]*stroke-linejoin/g)].map(
      ([, d = '']) => d.split('L').length,
    );
    // The first result stands alone by another method; then up to the gap, and after it.
    expect(lines).toEqual([3, 5]);
  });

  test('marks stand higher for more and later to the right', () => {
    const dots = [...svg.matchAll(/<\/title><circle cx="([\d.]+)" cy="([\d.]+)" r="4.5"/g)].map(
      ([, x, y]) => [Number(x), Number(y)],
    );
    const seen = oneTrend.points.filter(({ told, duplicate }) => told.censored === 'no' && !duplicate);
    expect(dots).toHaveLength(seen.length);
    seen.slice(1).forEach((point, k) => {
      const [here = [0, 0], next = [0, 0]] = [dots[k], dots[k + 1]];
      expect(next[0]).toBeGreaterThan(here[0] ?? 0);
      expect(Math.sign((here[1] ?? 0) - (next[1] ?? 0))).toBe(
        Math.sign(point.figure.value - (seen[k]?.figure.value ?? 0)),
      );
    });
  });

  test('of several waters has no line; what lies in one spot is one mark with how many', () => {
    expect(ofStores).not.toContain('stroke-linejoin');
    expect(ofStores).toContain('>C-01 and 2\u00A0others</text>');
    expect(ofStores).toContain('>C-04 and 3\u00A0others</text>');
  });

  test('takes no name for a tag', () => {
    const odd: Trend = { ...oneTrend, parameter: '<script>"x"&' };
    const text = trendPlot(odd, head);
    expect(text).not.toContain('<script>');
    expect(mustBeNested(text)).toBe(mustBeNested(svg));
  });

  test('of nothing has its frame and its limits, and says so', () => {
    const text = trendPlot(
      { ...oneTrend, points: [], marks: [], gaps: [], methodChanges: [], chart: storesTrend.chart },
      head,
    );
    expect(mustBeNested(text)).toBeGreaterThan(15);
    expect(text).toContain('nothing was measured');
    expect(text).not.toMatch(/NaN|Infinity/);
  });

  test('names a limit far above everything instead of drawing it', () => {
    const limits = oneTrend.limits.map((limit) => ({ ...limit, value: 1000, isOff: false }));
    const text = trendPlot({ ...oneTrend, limits }, head);
    expect(text).toContain('(above the picture)');
    expect(text).not.toContain('stroke-dasharray="10 4"');
  });
});

test('labels move apart, stay in their order and in the range', () => {
  const lines = ['one', 'two', 'three'];
  const placed = spread(
    [
      { y: 200, lines },
      { y: 100, lines },
      { y: 104, lines },
      { y: 370, lines },
    ],
    { top: 90, bottom: 390 },
  );
  const ys = placed.map(({ y }) => y);
  expect(ys[0]).toBe(100);
  ys.slice(1).forEach((y, k) => {
    expect(y - (ys[k] ?? 0)).toBeGreaterThanOrEqual(49);
  });
  expect((ys.at(-1) ?? 0) + 45).toBeLessThanOrEqual(390);
});
