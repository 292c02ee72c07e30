// The marks of a trend: results as dots, what was not seen as open triangles, and lines that break where nothing was measured.
import type { Trend, TrendPoint } from '../sheets/quality-trend.ts';
import * as words from '../words/en/trend-plot.ts';
import { element, escaped, place, textElement } from './element.ts';
import { pixelOf } from './scale.ts';
import { FIELD, type Frame, INK, spotOf } from './trend-frame.ts';

/** Marks nearer than this lie on one another. */
const NEAR_PX = 7;

interface Cluster {
  readonly points: TrendPoint[];
  readonly x: number;
  readonly y: number;
}

/** One water has a line; of several no line says anything. Gaps and another method break it. */
export function seriesLine(trend: Trend, frame: Frame): readonly string[] {
  if (trend.place.kind !== 'store' && trend.place.kind !== 'point') return [];
  const stretches: TrendPoint[][] = [];
  for (const point of trend.points.filter(({ duplicate }) => !duplicate)) {
    const last = stretches.at(-1);
    const before = last?.at(-1);
    const isNew = before === undefined || point.afterGap || isOtherMethod(trend, before, point);
    if (last === undefined || isNew) stretches.push([point]);
    else last.push(point);
  }
  return stretches
    .filter(({ length }) => length > 1)
    .map((stretch) => {
      const spots = stretch.map((point) => spotOf(frame, point));
      const d = `M${spots.map(({ x, y }) => `${place(x)} ${place(y)}`).join('L')}`;
      return element('path', {
        d,
        fill: 'none',
        stroke: INK,
        'stroke-width': '1.6',
        'stroke-linejoin': 'round',
      });
    });
}

function isOtherMethod({ methodChanges }: Trend, before: TrendPoint, here: TrendPoint): boolean {
  return methodChanges.some(({ day }) => day > before.day && day <= here.day);
}

/** What lies in one spot is one mark with its number beside it. */
export function pointMarks(trend: Trend, frame: Frame): readonly string[] {
  const isOne = trend.place.kind === 'store' || trend.place.kind === 'point';
  return clustersOf(trend, frame).map(({ points, x, y }) => {
    const [first] = points;
    if (first === undefined) return '';
    const label = isOne ? '' : words.saidCluster(points.map((point) => point.place?.name ?? ''));
    const isLate = x > (FIELD.left + FIELD.right) / 2;
    const at = {
      x: isLate ? x - 11 : x + 11,
      y: y + 5,
      'font-size': 13,
      'text-anchor': isLate ? 'end' : 'start',
    };
    return element('g', {}, [
      element('title', {}, [escaped(points.map((point) => words.saidPoint(point, trend)).join(' '))]),
      markOf(first, { x, y }),
      ...(isBroken(points, trend)
        ? [element('circle', { cx: x, cy: y, r: 9, fill: 'none', stroke: INK, 'stroke-width': '1.4' })]
        : []),
      ...(label === '' ? [] : [textElement(label, at)]),
    ]);
  });
}

function clustersOf({ points }: Trend, frame: Frame): readonly Cluster[] {
  const clusters: Cluster[] = [];
  for (const point of points) {
    const { x, y } = spotOf(frame, point);
    const near = clusters.find(
      (one) =>
        Math.abs(one.x - x) < NEAR_PX &&
        Math.abs(one.y - y) < NEAR_PX &&
        one.points[0]?.told.censored === point.told.censored &&
        one.points[0]?.duplicate === point.duplicate,
    );
    if (near === undefined) clusters.push({ points: [point], x, y });
    else near.points.push(point);
  }
  return clusters;
}

function markOf({ told, duplicate }: TrendPoint, { x, y }: { x: number; y: number }): string {
  const line = { stroke: INK, 'stroke-width': '1.6' };
  if (told.censored === 'no')
    return element('circle', {
      cx: x,
      cy: y,
      r: duplicate ? 3 : 4.5,
      fill: duplicate ? '#ffffff' : INK,
      ...line,
    });
  const side = told.censored === 'below' ? 1 : -1;
  const corners = [
    [x - 6, y],
    [x + 6, y],
    [x, y + side * 10],
  ].map(([px = 0, py = 0]) => `${place(px)},${place(py)}`);
  return element('polygon', { points: corners.join(' '), fill: '#ffffff', ...line });
}

function isBroken(points: readonly TrendPoint[], { chart }: Trend): boolean {
  if (chart.limits === null) return false;
  const broken = chart.signals.filter(({ rule }) => rule === 'beyond the limits').flatMap(({ ids }) => ids);
  return points.some(({ id }) => broken.includes(id));
}

/** What was done, and where the method became another: an upright line with its words above the field. */
export function uprights(trend: Trend, frame: Frame): readonly string[] {
  const lines = [
    ...trend.marks.map(({ day, what }) => ({ day, what, dashes: '3 3' })),
    ...trend.methodChanges.map(({ day, from, to }) => ({
      day,
      what: words.saidMethodChange(from, to),
      dashes: '8 3 2 3',
    })),
  ];
  return lines.flatMap(({ day, what, dashes }, k) => {
    const x = pixelOf(frame.x, day);
    const anchor = x > (FIELD.left + FIELD.right) / 2 ? 'end' : 'start';
    const line = {
      x1: x,
      x2: x,
      y1: FIELD.top,
      y2: FIELD.bottom,
      stroke: INK,
      'stroke-width': '1.2',
      'stroke-dasharray': dashes,
    };
    // Two labels one above the other at the most: more would lie in the title.
    return [
      element('line', line),
      textElement(what, { x, y: FIELD.top - 6 - 15 * (k % 2), 'font-size': 13, 'text-anchor': anchor }),
    ];
  });
}

/** A gap is a bar on the axis with its days. */
export function gapBars({ gaps }: Trend, frame: Frame): readonly string[] {
  return gaps.flatMap(({ fromDay, toDay, days }) => {
    const [from, to] = [pixelOf(frame.x, fromDay + 0.5), pixelOf(frame.x, toDay + 0.5)];
    const y = FIELD.bottom - 8;
    return [
      element('path', {
        d: `M${place(from)} ${place(y - 5)}v10M${place(from)} ${place(y)}H${place(to)}M${place(to)} ${place(y - 5)}v10`,
        fill: 'none',
        stroke: INK,
        'stroke-width': '1.2',
      }),
      textElement(words.saidGap(days), {
        x: (from + to) / 2,
        y: y - 8,
        'font-size': 13,
        'text-anchor': 'middle',
      }),
    ];
  });
}
