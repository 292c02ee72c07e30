// The trend of a parameter as a picture: results over the days, the limit, the control limits, gaps and what was done.
import type { Trend, TrendSheet } from '../sheets/quality-trend.ts';
import * as words from '../words/en/trend-plot.ts';
import { element, escaped, textElement } from './element.ts';
import { pixelOf } from './scale.ts';
import { axes, FIELD, type Frame, frameOf, INK, isInside } from './trend-frame.ts';
import { type EndLabel, LABEL_LINE, spread } from './trend-labels.ts';
import { gapBars, pointMarks, seriesLine, uprights } from './trend-marks.ts';

const WIDTH = 880;
const HEIGHT = 500;
const FONT = 'font-family="Noto Sans, DejaVu Sans, Arial, sans-serif"';

/** Letters of the legend are about so wide. */
const LETTER = 7.2;

/** A level line with its dashes and what stands at its end. */
interface Level {
  readonly value: number;
  readonly dashes: string;
  readonly width: string;
  readonly label: readonly string[];
}

/**
 * Black on white, for paper: no colour means anything, every line has dashes of its own and its name at its end. The text is
 * real text. A picture without a result has its frame, its limits and the words that nothing was measured.
 */
export function trendPlot(trend: Trend, head: TrendSheet['head']): string {
  const frame = frameOf(trend);
  const parts = [
    element('title', {}, [escaped(words.plotTitle(trend, head))]),
    element('desc', {}, [escaped(words.plotDescription(trend))]),
    element('rect', { width: WIDTH, height: HEIGHT, fill: '#ffffff' }),
    textElement(words.plotTitle(trend, head), {
      x: FIELD.left,
      y: 28,
      'font-size': 19,
      'font-weight': 'bold',
    }),
    textElement(words.plotSubtitle(trend), { x: FIELD.left, y: 50, 'font-size': 14 }),
    ...axes(frame, trend),
    ...levels(trend, frame),
    ...uprights(trend, frame),
    ...gapBars(trend, frame),
    ...seriesLine(trend, frame),
    ...pointMarks(trend, frame),
    ...legend(trend),
  ];
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${WIDTH} ${HEIGHT}" width="${WIDTH}" height="${HEIGHT}" role="img" ${FONT} fill="${INK}">`,
    ...parts.filter((part) => part !== ''),
    '</svg>',
    '',
  ].join('\n');
}

function levels(trend: Trend, frame: Frame): readonly string[] {
  const all = levelsOf(trend);
  const inside = all.filter(({ value }) => isInside(frame, value));
  const labels = all.map(({ value, label }): EndLabel => {
    const isFar = !isInside(frame, value);
    return { y: isFar ? FIELD.top : pixelOf(frame.y, value), lines: isFar ? [...label, words.farUp] : label };
  });
  return [
    ...inside.map(({ value, dashes, width }) => {
      const y = pixelOf(frame.y, value);
      const line = { x1: FIELD.left, x2: FIELD.right, y1: y, y2: y, stroke: INK, 'stroke-width': width };
      return element('line', dashes === '' ? line : { ...line, 'stroke-dasharray': dashes });
    }),
    ...spread(labels, { top: FIELD.top, bottom: FIELD.bottom }).flatMap(({ y, lines }) =>
      lines.map((text, k) =>
        textElement(text, { x: FIELD.right + 8, y: y + 4 + k * LABEL_LINE, 'font-size': 13 }),
      ),
    ),
  ];
}

function levelsOf(trend: Trend): readonly Level[] {
  const limits = trend.limits.flatMap((limit): Level[] =>
    limit.value === null
      ? []
      : [{ value: limit.value, dashes: '10 4', width: '2', label: words.limitLabel(limit, trend.unit) }],
  );
  const { chart } = trend;
  if (chart.limits === null) return limits;
  const { centre, low, high } = chart.limits;
  const own = (value: number, name: string, dashes: string): Level => ({
    ...{ value, dashes, width: '1.2' },
    label: words.ownLabel(name, value, trend),
  });
  return [
    ...limits,
    own(high.value, words.ofHigh, '2 3'),
    own(centre.value, words.ofCentre, '7 3 2 3'),
    ...(low === null ? [] : [own(low.value, words.ofLow, '2 3')]),
  ];
}

/** Only of what is in the picture. */
function legend(trend: Trend): readonly string[] {
  const line = { stroke: INK, 'stroke-width': '1.6' };
  const has = (censored: string) => trend.points.some(({ told }) => told.censored === censored);
  const triangle = (x: number, y: number, side: number) =>
    element('polygon', {
      points: `${x},${y - 5 - side * 5} ${x + 12},${y - 5 - side * 5} ${x + 6},${y - 5 + side * 5}`,
      fill: '#ffffff',
      ...line,
    });
  const items: readonly (readonly [boolean, (x: number, y: number) => string, string])[] = [
    [
      has('no'),
      (x, y) => element('circle', { cx: x + 6, cy: y - 5, r: 4.5, fill: INK, ...line }),
      words.ofResult,
    ],
    [has('below'), (x, y) => triangle(x, y, 1), words.ofBelow],
    [has('above'), (x, y) => triangle(x, y, -1), words.ofAbove],
    [
      trend.points.some(({ duplicate }) => duplicate),
      (x, y) => element('circle', { cx: x + 6, cy: y - 5, r: 3, fill: '#ffffff', ...line }),
      words.ofDuplicate,
    ],
    [
      trend.chart.limits?.high !== undefined && hasBroken(trend),
      (x, y) => element('circle', { cx: x + 6, cy: y - 5, r: 8, fill: 'none', ...line }),
      words.ofBroken,
    ],
  ];
  let [x, row]: [number, number] = [FIELD.left, 0];
  return items.flatMap(([isThere, mark, text]) => {
    if (!isThere) return [];
    const wide = 20 + text.length * LETTER;
    if (x + wide > WIDTH) [x, row] = [FIELD.left, row + 1];
    const [at, y] = [x, HEIGHT - 42 + row * 24];
    x += wide + 24;
    return [mark(at, y), textElement(text, { x: at + 20, y, 'font-size': 14 })];
  });
}

function hasBroken({ chart }: Trend): boolean {
  return chart.limits !== null && chart.signals.some(({ rule }) => rule === 'beyond the limits');
}
