// The frame of a trend as a picture: how far its axes go, where a point lies, and the axes themselves.
import type { Trend, TrendPoint } from '../sheets/quality-trend.ts';
import { saidValue } from '../words/en/said.ts';
import * as words from '../words/en/trend-plot.ts';
import { element, textElement } from './element.ts';
import { pixelOf, type Scale, ticks } from './scale.ts';

/** Room around the field for what is written there. */
export const FIELD = { left: 64, right: 700, top: 96, bottom: 380 } as const;
export const INK = '#000000';
const FAINT = '#b3b3b3';
/** Room above the highest thing that is drawn. */
const ROOM = 1.08;
/** A limit farther up than this many times all else would press the results flat: it is named, not drawn. */
const FAR = 3;

export interface Frame {
  readonly x: Scale;
  readonly y: Scale;
}

/** From nought, because a concentration has a true one. */
export function frameOf(trend: Trend): Frame {
  const days = [...trend.points, ...trend.marks].map(({ day }) => day);
  const [first, last] =
    days.length === 0 ? [0, 1] : [Math.floor(Math.min(...days)), Math.ceil(Math.max(...days) + 0.5)];
  const top = topOfData(trend);
  const limits = trend.limits.flatMap(({ value }) => (value !== null && value <= FAR * top ? [value] : []));
  return {
    x: { from: first, to: Math.max(last, first + 1), pixelFrom: FIELD.left, pixelTo: FIELD.right },
    y: { from: 0, to: ROOM * Math.max(top, ...limits), pixelFrom: FIELD.bottom, pixelTo: FIELD.top },
  };
}

function topOfData({ points, chart }: Trend): number {
  const top = Math.max(...points.map(({ figure }) => figure.value), chart.limits?.high.value ?? 0);
  return top > 0 ? top : 1;
}

export function isInside({ y }: Frame, value: number): boolean {
  return value <= y.to;
}

export function spotOf(
  { x, y }: Frame,
  { day, figure }: Pick<TrendPoint, 'day' | 'figure'>,
): { x: number; y: number } {
  return { x: pixelOf(x, day), y: pixelOf(y, figure.value) };
}

export function axes(frame: Frame, trend: Trend): readonly string[] {
  return [
    ...yAxis(frame),
    textElement(words.valueAxis(trend), { x: 12, y: FIELD.top - 10, 'font-size': 14 }),
    ...xAxis(frame),
  ];
}

function yAxis({ y }: Frame): readonly string[] {
  return ticks({ from: y.from, to: y.to, most: 7 }).flatMap((value) => {
    const at = pixelOf(y, value);
    const line = { x1: FIELD.left, x2: FIELD.right, y1: at, y2: at, stroke: FAINT, 'stroke-width': '0.6' };
    return [
      element('line', line),
      textElement(saidValue(value, ''), {
        x: FIELD.left - 8,
        y: at + 5,
        'font-size': 14,
        'text-anchor': 'end',
      }),
    ];
  });
}

function xAxis({ x }: Frame): readonly string[] {
  const { bottom, left, right } = FIELD;
  const marks = ticks({ from: x.from, to: x.to, most: 10, whole: true }).flatMap((day) => {
    const at = pixelOf(x, day);
    return [
      element('line', { x1: at, x2: at, y1: bottom, y2: bottom + 6, stroke: INK, 'stroke-width': '1' }),
      textElement(saidValue(day, ''), { x: at, y: bottom + 22, 'font-size': 14, 'text-anchor': 'middle' }),
    ];
  });
  const axis = element('line', {
    x1: left,
    x2: right,
    y1: bottom,
    y2: bottom,
    stroke: INK,
    'stroke-width': '1',
  });
  const title = textElement(words.dayAxis, {
    x: right,
    y: bottom + 42,
    'font-size': 14,
    'text-anchor': 'end',
  });
  return [axis, ...marks, title];
}
